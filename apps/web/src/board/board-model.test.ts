import { describe, expect, it } from 'vitest';
import { board, day, plan } from '../testing/two-hogs.ts';
import { viewBoard } from './board-model.ts';
import { changesBetween } from './changes-model.ts';
import { sayPiece } from './piece-words.ts';
import { placePlates } from './plates-model.ts';
import { assuranceOf } from './proof-model.ts';
import { nearestBlock, stepAlong } from './walk-model.ts';

const view = viewBoard(board, plan);
/** Figures are held to their units by a space that does not break. */
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');
const order = (orderId: string) => view.orderById.get(orderId)!;

describe('the orders', () => {
  it('stand with short promises first, then short wishes, then by number', () => {
    expect(view.orders.map(({ orderId }) => orderId)).toEqual([
      'okafor',
      'quist',
      'marsh',
      'lamp',
      'vance',
      'lindqvist',
      'corder',
    ]);
  });

  it('say why a line is short and who else wants the meat, never themselves', () => {
    const [short] = order('okafor').lines;
    expect(short?.isShort).toBe(true);
    expect(short?.short?.says).toBe('The loins that could be boned are sawn into chops.');
    expect(short?.short?.orderIds).toEqual(['marsh', 'vance', 'corder']);
    expect(order('quist').lines[0]?.short?.orderIds).toEqual(['marsh']);
  });

  it('are counted line by line', () => {
    expect(view.tally).toEqual({ lines: 10, filledLines: 8, shortPromised: 1, shortWished: 1 });
  });

  it('are not called short before there is a plan', () => {
    const bare = viewBoard({ ...board, plan: null }, null);
    expect(bare.orders.some(({ isShort }) => isShort)).toBe(false);
    expect(bare.totals).toBeNull();
    expect(bare.animals.map(({ sides }) => sides.length)).toEqual([0, 0]);
  });
});

describe('the pieces', () => {
  it('know whose they are, through a line or with the whole side', () => {
    const owners = [...view.pieces.values()].map(({ holder }) => holder?.orderId ?? 'counter');
    const count = (id: string) => owners.filter((owner) => owner === id).length;
    expect(count('marsh')).toBe(7);
    expect(count('lindqvist')).toBe(1);
    const left = [...view.pieces.values()].filter(({ sideId }) => sideId === 'a-left');
    expect(left.every(({ holder }) => holder?.orderId === 'corder')).toBe(true);
  });

  it('weigh together what their side weighs, with its trim', () => {
    for (const side of plan.sides) {
      const pieces = [...view.pieces.values()].filter(({ sideId }) => sideId === side.sideId);
      const bulk = Object.values(side.bulkMg).reduce((sum, mg) => sum + mg, 0);
      expect(pieces.reduce((sum, { massMg }) => sum + massMg, bulk)).toBe(side.massMg);
    }
  });

  it('are said in one breath', () => {
    const chop = [...view.pieces.values()].find(({ holder }) => holder?.lineId === 'marsh-1')!;
    expect(plain(sayPiece(chop, view))).toMatch(
      /^Bone-in rib chop, 1¼ in, about (\d+ oz|[\d.]+ lb), for Marsh, order A$/,
    );
    const free = [...view.pieces.values()].find(({ isFree, holder }) => isFree && holder === null)!;
    expect(plain(sayPiece(free, view))).toMatch(/^Free: .* in, about .*, for the counter$/);
  });

  it('stamp a whole side with its owner', () => {
    const stamped = view.animals
      .flatMap(({ sides }) => sides)
      .filter(({ stampedFor }) => stampedFor !== null);
    expect(stamped.map(({ sideId, stampedFor }) => [sideId, stampedFor])).toEqual([['a-left', 'corder']]);
  });
});

describe('the totals', () => {
  const totals = view.totals!;

  it('keep leaf fat apart from hard back fat, and owned sides apart from the shop’s', () => {
    const bulk = (id: string) => totals.bulks.find(({ bulkId }) => bulkId === id)!;
    const sum = (id: string, owned: boolean) =>
      plan.sides
        .filter(({ shareId }) => (shareId !== null) === owned)
        .reduce((all, side) => all + (side.bulkMg[id] ?? 0), 0);
    for (const id of ['leaf-fat', 'back-fat', 'trim']) {
      expect(bulk(id).shopMg).toBe(sum(id, false));
      expect(bulk(id).ownersMg).toBe(sum(id, true));
    }
    expect(bulk('trim').orderedMg).toBe(2_000_000);
  });

  it('leave for the counter all that nobody has', () => {
    const unowned = [...view.pieces.values()].filter(({ holder }) => holder === null);
    const mass = unowned.reduce((sum, { massMg }) => sum + massMg, 0);
    expect(totals.left.reduce((sum, { massMg }) => sum + massMg, totals.offcutMg)).toBe(mass);
  });
});

describe('letters on the drawing', () => {
  const run = view.animals[1]!.sides[0]!.bars.find(({ barId }) => barId === 'loin-out')!.runs.find(
    ({ stock }) => stock === 'rib-bone-in',
  )!;

  it('stand on each piece where there is room', () => {
    const plates = placePlates(run.blocks, view.pieces, 1 / 1000);
    expect(plates.map(({ orderId }) => orderId)).toEqual(Array(6).fill('marsh'));
  });

  it('are shared by narrow neighbours of one order', () => {
    const plates = placePlates(run.blocks, view.pieces, 0.4 / 1000);
    expect(plates.map(({ orderId }) => orderId)).toEqual(['marsh']);
    const [first, last] = [run.blocks[0]!, run.blocks[5]!];
    expect(plates[0]?.middlePx).toBeCloseTo((((first.fromUm + last.toUm) / 2) * 0.4) / 1000, 6);
  });
});

describe('walking along a bar', () => {
  const blocks = [
    { pieceId: 'a', fromUm: 0, toUm: 10, isFree: false },
    { pieceId: 'b', fromUm: 13, toUm: 20, isFree: false },
    { pieceId: 'c', fromUm: 20, toUm: 60, isFree: true },
  ];

  it.each([
    ['a', 'ArrowRight', 'b'],
    ['c', 'ArrowRight', undefined],
    ['b', 'ArrowLeft', 'a'],
    ['a', 'ArrowLeft', undefined],
    ['c', 'Home', 'a'],
    ['a', 'End', 'c'],
    ['a', 'x', undefined],
  ])('from %s by %s', (from, key, to) => {
    expect(stepAlong(blocks, from, key)?.pieceId).toBe(to);
  });

  it('takes the nearest piece for a finger in the kerf or past the end', () => {
    expect(nearestBlock(blocks, 11)?.pieceId).toBe('a');
    expect(nearestBlock(blocks, 12.5)?.pieceId).toBe('b');
    expect(nearestBlock(blocks, 99)?.pieceId).toBe('c');
    expect(nearestBlock([], 1)).toBeUndefined();
  });
});

describe('changes between two plans', () => {
  it('name who loses and who gains', () => {
    const after = {
      ...plan,
      lines: plan.lines.map((fill) =>
        fill.lineId === 'marsh-1'
          ? { ...fill, filled: 4 }
          : fill.lineId === 'okafor-1'
            ? { ...fill, filled: 1 }
            : fill,
      ),
    };
    const changes = changesBetween(day, plan, after);
    expect(changes.lost).toEqual([
      { orderId: 'marsh', lineId: 'marsh-1', shareId: null, before: 6, after: 4 },
    ]);
    expect(changes.gained).toEqual([
      { orderId: 'okafor', lineId: 'okafor-1', shareId: null, before: 0, after: 1 },
    ]);
    expect(changes.minutes).toBe(0);
  });

  it('name a share that loses its side, and the sides cut otherwise', () => {
    const after = {
      ...plan,
      sides: plan.sides.map((side) =>
        side.sideId === 'b-left'
          ? { ...side, operations: { ...side.operations, ham: 'ham-halves' }, minutes: side.minutes + 7 }
          : side,
      ),
      shares: [{ shareId: 'corder-half', sideIds: [], shortfall: null }],
    };
    const changes = changesBetween(day, plan, after);
    expect(changes.lost).toEqual([
      { orderId: 'corder', lineId: null, shareId: 'corder-half', before: 1, after: 0 },
    ]);
    expect(changes.sideIds).toEqual(['b-left']);
    expect(changes.minutes).toBe(7);
  });

  it('find nothing between a plan and itself', () => {
    expect(changesBetween(day, plan, plan)).toEqual({
      gained: [],
      lost: [],
      bulks: [],
      sideIds: [],
      minutes: 0,
    });
  });
});

describe('how sure a plan is', () => {
  const proof = {
    goals: { promised: 1000, wished: 200, rest: 50 },
    bound: { promised: 1000, wished: 260, rest: 90 },
    gap: 0.048,
    status: 'deadline',
    method: 'columns',
    seconds: 5.2,
    seed: 1,
  } as const;

  it('is what its bound leaves open', () => {
    expect(assuranceOf(null)).toEqual({ sure: 'unproven' });
    expect(assuranceOf(proof)).toMatchObject({
      sure: 'ran-out',
      promisedMore: 0,
      wishedMore: 60,
      restMore: 40,
      gapPercent: 4.8,
    });
    expect(assuranceOf({ ...proof, status: 'within-gap' })).toMatchObject({ sure: 'nearly' });
  });

  it('is proven when no goal can be more than rounding away from its bound', () => {
    expect(assuranceOf({ ...proof, bound: { promised: 1001, wished: 200, rest: 50 } })).toMatchObject({
      sure: 'proven',
      promisedMore: 0,
    });
  });
});

import { describeOnBoth } from '@flitchbook/db/testing';
import { beforeAll, describe, expect, it } from 'vitest';
import { animal, line, order } from '../testing/bodies.ts';
import { endpoints, expectDescribed } from '../testing/described-answers.ts';
import { bodyOf, type Call, openTestShop, type TestShop } from '../testing/test-shop.ts';

/** What is wrong, the body that has it, the field that must be named, the value that must be shown. */
type Bad = readonly [name: string, body: unknown, at: string, value: unknown];

const nobody = '0190f1d2-6b7e-7c3a-9f00-2d6c1c7a4e51';
const chop = (change: object) => order({ lines: [{ ...line(), ...change }] });
const um = (thickness: unknown) => chop({ portion: { by: 'thickness', um: thickness } });
const pieces = (count: unknown) => chop({ ask: { pieces: count } });
const share = (change: object) =>
  order({
    lines: [],
    shares: [
      {
        size: 'half',
        rank: 'promised',
        instructions: { operations: {}, manners: {}, portions: {} },
        ...change,
      },
    ] as never,
  });

const badOrders: readonly Bad[] = [
  ['asks for nothing', order({ lines: [] }), 'lines', []],
  ['an unknown cut', chop({ cut: 'rib-chopp' }), 'lines[0].cut', 'rib-chopp'],
  ['a cut named as a built-in', chop({ cut: '__proto__' }), 'lines[0].cut', '__proto__'],
  ['an unknown species', chop({ speciesId: 'yak' }), 'lines[0].speciesId', 'yak'],
  ['thickness 0', um(0), 'lines[0].portion.um', 0],
  ['thickness 1 mm', um(1000), 'lines[0].portion.um', 1000],
  ['thickness 300 mm', um(300_000), 'lines[0].portion.um', 300_000],
  ['thickness NaN in words', um('NaN'), 'lines[0].portion.um', 'NaN'],
  ['thickness null, as JSON writes NaN', um(Number.NaN), 'lines[0].portion.um', null],
  ['half a micrometre', um(25_400.5), 'lines[0].portion.um', 25_400.5],
  ['a portion nobody knows', chop({ portion: { by: 'slice' } }), 'lines[0].portion.by', 'slice'],
  [
    'a weight range upside down',
    chop({ cut: 'slab-bacon', portion: { by: 'weight', fromGrams: 1800, toGrams: 1400 } }),
    'lines[0].portion.toGrams',
    1400,
  ],
  ['no piece', pieces(0), 'lines[0].ask.pieces', 0],
  ['less than none', pieces(-3), 'lines[0].ask.pieces', -3],
  ['a huge count', pieces(1e15), 'lines[0].ask.pieces', 1e15],
  ['half a piece', pieces(0.5), 'lines[0].ask.pieces', 0.5],
  [
    'loose meat by the piece',
    chop({ cut: 'ground-pork', portion: { by: 'bulk' } }),
    'lines[0].ask',
    { pieces: 2 },
  ],
  ['a negative price', chop({ priceMinorPerKg: -1 }), 'lines[0].priceMinorPerKg', -1],
  ['a price beyond all prices', chop({ priceMinorPerKg: 2 ** 31 }), 'lines[0].priceMinorPerKg', 2 ** 31],
  ['a rank of its own', chop({ rank: 'first' }), 'lines[0].rank', 'first'],
  ['an animal nobody booked', chop({ onlyAnimal: nobody }), 'lines[0].onlyAnimal', nobody],
  ['an id that is none', chop({ lineId: 'line 1' }), 'lines[0].lineId', 'line 1'],
  ['an owner without a name', order({ owner: ' ' }), 'owner', ' '],
  ['an owner on two lines', order({ owner: 'A\nB' }), 'owner', 'A\nB'],
  ['an owner of a thousand letters', order({ owner: 'a'.repeat(1000) }), 'owner', 'a'.repeat(1000)],
  ['an escape in the note', order({ note: '\u001b[2J' }), 'note', '\u001b[2J'],
  ['lines that are no list', order({ lines: {} as never }), 'lines', {}],
  ['a share of a third', share({ size: 'third' }), 'shares[0].size', 'third'],
  [
    'a share cut in an unknown way',
    share({ instructions: { operations: { ham: 'fly' }, manners: {}, portions: {} } }),
    'shares[0].instructions.operations.ham',
    'fly',
  ],
];

const scale = (text: unknown, unit = 'kg') => animal({ hanging: { text, unit } as never });
const side = (hand: string, text: string) => ({ hand, weight: { text, unit: 'lb' } });

const badAnimals: readonly Bad[] = [
  ['3 kg', scale('3'), 'hanging', { text: '3', unit: 'kg' }],
  ['900 kg', scale('900'), 'hanging', { text: '900', unit: 'kg' }],
  ['NaN', scale('NaN'), 'hanging.text', 'NaN'],
  ['a weight with an exponent', scale('8e1'), 'hanging.text', '8e1'],
  ['a weight as a number', scale(83), 'hanging.text', 83],
  ['an unknown unit', scale('83', 'stone'), 'hanging.unit', 'stone'],
  ['an unknown species', animal({ speciesId: 'yak' }), 'speciesId', 'yak'],
  ['a hog of 5 ribs', animal({ ribs: 5 }), 'ribs', 5],
  [
    'a side heavier than the animal',
    animal({ sides: [side('left', '200')] as never }),
    'sides[0].weight',
    { text: '200', unit: 'lb' },
  ],
  ['an unknown lost item', animal({ lostItems: ['wing'] }), 'lostItems[0]', 'wing'],
  ['a farm nobody has', animal({ farmId: nobody }), 'farmId', nobody],
  ['an unknown fact', animal({ facts: ['tail-on'] as never }), 'facts[0]', 'tail-on'],
];

const lock = (change: object) => ({
  locks: [{ lock: 'operation', sideId: 'left', part: 'middle', operation: 'clear-cavity', ...change }],
});

const badLocks: readonly Bad[] = [
  ['a side nobody has', lock({ sideId: nobody }), 'locks[0].sideId', nobody],
  ['a lock of its own', lock({ lock: 'everything' }), 'locks[0].lock', 'everything'],
  ['locks that are no list', { locks: 'all' }, 'locks', 'all'],
];

describeOnBoth('bad requests', (db) => {
  let shop: TestShop;
  beforeAll(async () => {
    shop = await openTestShop(db());
    await shop.ask({ method: 'GET', path: '/api/session', as: 'owner' }); // the session is there before rows are counted
  });

  /** Refused with this field and value among the errors, and no row changed. */
  async function refusesAll(
    operationId: string,
    path: string,
    bad: readonly Bad[],
    headers: () => Record<string, string>,
  ) {
    const endpoint = endpoints.find(({ operation }) => operation.operationId === operationId);
    if (!endpoint) throw new Error(`no route ${operationId}`);
    const before = await shop.state();
    for (const [name, body, at, value] of bad) {
      const call: Call = { method: endpoint.method, path, as: 'owner', headers: headers(), body };
      const answer = await shop.ask(call);
      const problem = (await expectDescribed(endpoint, answer)) as { errors?: unknown[] };
      expect(answer.status, name).toBe(422);
      expect(problem.errors, name).toContainEqual({
        at,
        value,
        says: expect.stringMatching(/^[A-Za-z].{5,}/),
      });
    }
    expect(await shop.state()).toEqual(before);
  }
  const key = () => ({ 'Idempotency-Key': shop.newKey() });

  it('for an order name the field and the value, and store nothing', () =>
    refusesAll('orders.take', `/api/days/${shop.own.dayId}/orders`, badOrders, key));

  it('for an animal name the field and the value, and store nothing', () =>
    refusesAll('animals.book', `/api/days/${shop.own.dayId}/animals`, badAnimals, key));

  it('for a correction name the field and the value, and store nothing', async () => {
    const edits = badAnimals
      .filter(([, , at]) => !/^(speciesId|farmId)/.test(at))
      .map(([name, body, at, value]): Bad => {
        const [field = ''] = /^\w+/.exec(at) ?? [];
        return [name, { [field]: (body as Record<string, unknown>)[field] }, at, value];
      });
    await refusesAll('animals.correct', `/api/animals/${shop.own.animalId}`, edits, () => ({
      'If-Match': '"1"',
    }));
  });

  it('for locks name the field and the value, and store nothing', async () => {
    const days = `/api/days/${shop.own.dayId}`;
    await refusesAll('plans.try', `${days}/what-if`, badLocks, () => ({}));
    const board = await shop.ask({ method: 'GET', path: `${days}/board`, as: 'owner' });
    const tag = board.headers.get('etag') ?? '';
    await refusesAll('locks.settle', `${days}/locks`, badLocks, () => ({ 'If-Match': tag }));
  });

  it('for a day name the field and the value, and store nothing', () =>
    refusesAll(
      'days.open',
      '/api/days',
      [
        ['no such date', { date: '2026-02-30' }, 'date', '2026-02-30'],
        ['a date in words', { date: 'tomorrow' }, 'date', 'tomorrow'],
        ['a number', { date: 20261126 }, 'date', 20261126],
      ],
      key,
    ));

  describe('that are large but right', () => {
    it('are taken: an order of 500 lines', async () => {
      const lines = Array.from({ length: 500 }, (_, index) => line({ ask: { pieces: 1 + index } }));
      const answer = await shop.ask({
        method: 'POST',
        path: `/api/days/${shop.own.dayId}/orders`,
        as: 'owner',
        headers: key(),
        body: order({ lines }),
      });
      expect(answer.status).toBe(201);
      expect((await bodyOf<{ lines: unknown[] }>(answer)).lines).toHaveLength(500);
    });

    it('are refused with a line more', () =>
      refusesAll(
        'orders.take',
        `/api/days/${shop.own.dayId}/orders`,
        [['501 lines', order({ lines: Array(501).fill(line()) }), 'lines', Array(501).fill(line())]],
        key,
      ));
  });
});

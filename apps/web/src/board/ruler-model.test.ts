import { describe, expect, it } from 'vitest';
import { board, inch, plan } from '../testing/two-hogs.ts';
import { viewBoard } from './board-model.ts';
import { inchTicks, millimetreTicks, placeInCarcass, type RulerBar, ribsOver } from './ruler-model.ts';

const view = viewBoard(board, plan);
const bar = (sideId: string, barId: string): RulerBar => {
  const side = view.animals.flatMap(({ sides }) => sides).find((each) => each.sideId === sideId);
  return side!.bars.find((each) => each.barId === barId)!;
};
const loin = bar('b-left', 'loin-out');
const ribs = (of: RulerBar) => of.zones.flatMap(({ stations }) => stations.flatMap(({ rib }) => rib ?? []));

describe('a bar on the rule', () => {
  it('has its zones end to end over its whole length', () => {
    expect(loin.zones.map(({ zoneId }) => zoneId)).toEqual(['blade', 'rib', 'lumbar', 'sirloin']);
    expect(loin.zones[0]?.fromUm).toBe(0);
    for (const [at, zone] of loin.zones.slice(1).entries()) expect(zone.fromUm).toBe(loin.zones[at]?.toUm);
    expect(loin.zones.at(-1)?.toUm).toBe(loin.lengthUm);
  });

  // The shoulder comes off between ribs 2 and 3 (the species' own sentence), so the loin of a hog of 15 ribs holds 3 to 15.
  it('numbers the ribs as they stand on the animal', () => {
    expect(ribs(loin)).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]);
  });

  it('numbers no ribs on a sheeted belly and none behind the last rib', () => {
    expect(ribs(bar('b-left', 'belly-slab'))).toEqual([]);
    const behind = loin.zones.filter(({ zoneId }) => ['lumbar', 'sirloin'].includes(zoneId));
    expect(behind.flatMap(({ stations }) => stations)).toHaveLength(8);
    expect(behind.flatMap(({ stations }) => stations).every(({ rib }) => rib === null)).toBe(true);
  });

  it('draws boned meat shorter than its place and sawn meat at its full length', () => {
    const sawn = loin.runs.find(({ stock }) => stock === 'rib-bone-in')!;
    const boned = loin.runs.find(({ stock }) => stock === 'loin-boned')!;
    expect(sawn.drawnToUm).toBe(sawn.toUm);
    expect(sawn.boned).toBe(false);
    expect(boned.boned).toBe(true);
    expect(boned.drawnToUm).toBeLessThan(boned.toUm);
    expect(boned.blocks.every(({ toUm }) => toUm <= boned.drawnToUm)).toBe(true);
  });

  it('leaves the kerf open between sawn pieces, none between knife cuts', () => {
    const gaps = (stock: string) => {
      const { blocks } = loin.runs.find((run) => run.stock === stock)!;
      const pieces = blocks.filter(({ isFree }) => !isFree);
      return new Set(pieces.slice(1).map((piece, at) => piece.fromUm - pieces[at]!.toUm));
    };
    expect(gaps('rib-bone-in')).toEqual(new Set([3_000]));
    expect(gaps('loin-boned')).toEqual(new Set([0]));
  });

  it('ends each run with what is free, up to its usable end', () => {
    for (const run of loin.runs) {
      const last = run.blocks.at(-1)!;
      expect(last.toUm).toBeLessThanOrEqual(run.drawnToUm);
      if (last.isFree) expect(last.toUm).toBe(run.drawnToUm);
    }
  });

  it('says which ribs lie over a rack of eight', () => {
    const right = bar('a-right', 'loin-in');
    const run = right.runs.find(({ stock }) => stock === 'rib-bone-in')!;
    expect(ribsOver(right, run, run.blocks[0]!)).toEqual({ first: 7, last: 14 });
  });

  it('stretches boned meat back over its bones', () => {
    const boned = loin.runs.find(({ stock }) => stock === 'loin-boned')!;
    expect(placeInCarcass(boned, boned.fromUm)).toBe(boned.fromUm);
    expect(placeInCarcass(boned, boned.drawnToUm)).toBe(boned.toUm);
  });
});

describe('the marks of the rule', () => {
  it('stand on whole inches with numbers, finer where there is room', () => {
    const wide = inchTicks(10 * inch, 1.75);
    expect(wide.filter(({ label }) => label !== null).map(({ label }) => label)).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
      '9',
      '10',
    ]);
    expect(wide).toHaveLength(81);
    const narrow = inchTicks(10 * inch, 0.42);
    expect(narrow).toHaveLength(21);
    expect(narrow.flatMap(({ label }) => label ?? [])).toEqual(['2', '4', '6', '8', '10']);
  });

  it('never set numbers closer than they are wide', () => {
    for (const pxPerMm of [0.3, 0.42, 0.6, 0.9, 1.2, 1.75]) {
      for (const ticks of [inchTicks(700_000, pxPerMm), millimetreTicks(700_000, pxPerMm)]) {
        const labelled = ticks.filter(({ label }) => label !== null);
        const gaps = labelled.slice(1).map(({ um }, at) => ((um - labelled[at]!.um) / 1000) * pxPerMm);
        expect(Math.min(...gaps)).toBeGreaterThanOrEqual(20);
      }
    }
  });
});

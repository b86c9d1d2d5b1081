import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type DealtPiece, dealPieces, usualTolerance } from './deal-pieces.ts';

const piece = fc.record({
  kind: fc.constantFrom('chop', 'roast', 'rack', 'tenderloin', 'hock'),
  grams: fc.integer({ min: 1, max: 4000 }),
  worthMinor: fc.integer({ min: 0, max: 5000 }),
});
const pieces = (maxLength: number) =>
  fc
    .array(piece, { maxLength })
    .map((list): readonly DealtPiece[] => list.map((each, at) => ({ ...each, pieceId: `piece-${at}` })));

const sum = (list: readonly DealtPiece[], of: 'grams' | 'worthMinor'): number =>
  list.reduce((running, each) => running + each[of], 0);

/** By trying every way to put pieces on two piles, neighbours in worth of one kind on different ones. */
function nearest(list: readonly DealtPiece[]): number {
  const all = { grams: sum(list, 'grams'), worthMinor: sum(list, 'worthMinor') };
  const neighbours = [...new Set(list.map(({ kind }) => kind))].flatMap((kind) => {
    const sorted = list
      .filter((each) => each.kind === kind)
      .toSorted(
        (a, b) => b.worthMinor - a.worthMinor || b.grams - a.grams || (a.pieceId < b.pieceId ? -1 : 1),
      );
    return sorted.flatMap((each, at) => (at % 2 === 0 && sorted[at + 1] ? [[each, sorted[at + 1]]] : []));
  });
  let best = Number.POSITIVE_INFINITY;
  for (let mask = 0; mask < 2 ** list.length; mask++) {
    const first = list.filter((_, at) => mask & (1 << at));
    if (neighbours.some(([a, b]) => first.includes(a!) === first.includes(b!))) continue;
    const apart = (of: 'grams' | 'worthMinor') =>
      all[of] === 0 ? 0 : Math.abs(2 * sum(first, of) - all[of]) / all[of];
    best = Math.min(best, Math.max(apart('grams'), apart('worthMinor')));
  }
  return best;
}

describe('two names deal a half', () => {
  it('as near as trying every deal comes', () => {
    fc.assert(
      fc.property(pieces(9), (list) => {
        expect(dealPieces(list).apart).toBeCloseTo(nearest(list), 12);
      }),
      { numRuns: 60 },
    );
  });

  it('so that no piece is lost or dealt twice, and of each kind both get as many, give or take one', () => {
    fc.assert(
      fc.property(pieces(60), (list) => {
        const { piles, apart, fair } = dealPieces(list);
        const dealt = [...piles[0].pieceIds, ...piles[1].pieceIds];
        expect(dealt.toSorted()).toEqual(list.map(({ pieceId }) => pieceId).toSorted());
        expect(piles[0].grams + piles[1].grams).toBe(sum(list, 'grams'));
        expect(piles[0].worthMinor + piles[1].worthMinor).toBe(sum(list, 'worthMinor'));
        for (const kind of new Set(list.map((each) => each.kind))) {
          const of = (pile: 0 | 1): number =>
            list.filter((each) => each.kind === kind && piles[pile].pieceIds.includes(each.pieceId)).length;
          expect(Math.abs(of(0) - of(1))).toBeLessThanOrEqual(1);
        }
        expect(fair).toBe(apart <= usualTolerance);
      }),
      { numRuns: 60 },
    );
  });

  it('says when it cannot be fair: one leg and nothing else', () => {
    const leg = { pieceId: 'leg', kind: 'leg', grams: 9000, worthMinor: 4000 };
    expect(dealPieces([leg])).toMatchObject({ apart: 1, fair: false });
    expect(dealPieces([])).toMatchObject({ apart: 0, fair: true });
  });
});

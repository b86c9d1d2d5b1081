/** A piece that two names deal between them. */
export interface DealtPiece {
  readonly pieceId: string;
  /** pieces of one kind are dealt out evenly: a cut in its portion, or an item */
  readonly kind: string;
  readonly grams: number;
  /** what it would fetch over the counter, minor units */
  readonly worthMinor: number;
}

interface Pile {
  readonly pieceIds: readonly string[];
  readonly grams: number;
  readonly worthMinor: number;
}

export interface Deal {
  readonly piles: readonly [Pile, Pile];
  /** how far the piles lie apart, as a share of all: the larger of weight and worth. 0.02 is two percent */
  readonly apart: number;
  /** both differ by no more than was allowed */
  readonly fair: boolean;
}

/** Two piles that differ by no more than a twentieth in weight and in worth: common practice, no source. */
export const usualTolerance = 0.05;

/** One decision: these pieces to one pile and those to the other, or the other way round. */
interface Toss {
  readonly here: readonly DealtPiece[];
  readonly there: readonly DealtPiece[];
  readonly grams: number;
  readonly worthMinor: number;
}

const sumOf = (pieces: readonly DealtPiece[], of: 'grams' | 'worthMinor'): number =>
  pieces.reduce((sum, piece) => sum + piece[of], 0);

const toss = (here: readonly DealtPiece[], there: readonly DealtPiece[]): Toss => ({
  here,
  there,
  grams: sumOf(here, 'grams') - sumOf(there, 'grams'),
  worthMinor: sumOf(here, 'worthMinor') - sumOf(there, 'worthMinor'),
});

const byWorth = (left: DealtPiece, right: DealtPiece): number =>
  right.worthMinor - left.worthMinor || right.grams - left.grams || (left.pieceId < right.pieceId ? -1 : 1);

/** Neighbours in worth of one kind face each other; the odd one out stands alone. So each name has as many of a kind, give or take one. */
function tossesOf(pieces: readonly DealtPiece[]): readonly Toss[] {
  const kinds = [...new Set(pieces.map(({ kind }) => kind))];
  return kinds.flatMap((kind) => {
    const sorted = pieces.filter((piece) => piece.kind === kind).toSorted(byWorth);
    return Array.from({ length: Math.ceil(sorted.length / 2) }, (_, at) =>
      toss(sorted.slice(2 * at, 2 * at + 1), sorted.slice(2 * at + 1, 2 * at + 2)),
    );
  });
}

interface Scale {
  readonly grams: number;
  readonly worthMinor: number;
}

const apartBy = ({ grams, worthMinor }: Scale, all: Scale): number =>
  Math.max(
    all.grams === 0 ? 0 : Math.abs(grams) / all.grams,
    all.worthMinor === 0 ? 0 : Math.abs(worthMinor) / all.worthMinor,
  );

const exactMax = 14;

/** Every way to settle a few tosses, on top of what the others came to: the best one. Ties go to the first. */
function settleAll(tosses: readonly Toss[], start: Scale, all: Scale): readonly boolean[] {
  let best = { apart: Number.POSITIVE_INFINITY, mask: 0 };
  for (let mask = 0; mask < 2 ** tosses.length; mask++) {
    let { grams, worthMinor } = start;
    for (const [at, each] of tosses.entries()) {
      const sign = mask & (1 << at) ? -1 : 1;
      grams += sign * each.grams;
      worthMinor += sign * each.worthMinor;
    }
    const apart = apartBy({ grams, worthMinor }, all);
    if (apart < best.apart) best = { apart, mask };
  }
  return tosses.map((_, at) => (best.mask & (1 << at)) === 0);
}

/** Settles tosses one after the other, the weightiest first, each to the side that brings the piles nearer. */
function settleInTurn(
  tosses: readonly Toss[],
  all: Scale,
): { readonly signs: readonly boolean[]; readonly start: Scale } {
  let start: Scale = { grams: 0, worthMinor: 0 };
  const signs = tosses.map((each) => {
    const plus = { grams: start.grams + each.grams, worthMinor: start.worthMinor + each.worthMinor };
    const minus = { grams: start.grams - each.grams, worthMinor: start.worthMinor - each.worthMinor };
    const stays = apartBy(plus, all) <= apartBy(minus, all);
    start = stays ? plus : minus;
    return stays;
  });
  return { signs, start };
}

/**
 * Deals the pieces of a half between two names. Of each kind both get as many, give or take one; within that the piles are
 * as near as they come in weight and in worth. With up to 14 choices no deal of this kind is nearer; with more, the large
 * ones are dealt in turn and the 14 smallest so that they even out what is left. Pure; the same pieces give the same deal.
 */
export function dealPieces(pieces: readonly DealtPiece[], tolerance: number = usualTolerance): Deal {
  const all = { grams: sumOf(pieces, 'grams'), worthMinor: sumOf(pieces, 'worthMinor') };
  const tosses = tossesOf(pieces).toSorted((left, right) => apartBy(right, all) - apartBy(left, all));
  const large = tosses.slice(0, Math.max(0, tosses.length - exactMax));
  const { signs, start } = settleInTurn(large, all);
  const settled = [...signs, ...settleAll(tosses.slice(large.length), start, all)];
  const pile = (first: boolean): Pile => {
    const mine = tosses.flatMap(({ here, there }, at) => (settled[at] === first ? here : there));
    const pieceIds = mine.map(({ pieceId }) => pieceId).toSorted();
    return { pieceIds, grams: sumOf(mine, 'grams'), worthMinor: sumOf(mine, 'worthMinor') };
  };
  const piles = [pile(true), pile(false)] as const;
  const apart = apartBy(
    { grams: piles[0].grams - piles[1].grams, worthMinor: piles[0].worthMinor - piles[1].worthMinor },
    all,
  );
  return { piles, apart, fair: apart <= tolerance };
}

import { lengthText, type ShownIn, weightText } from '../measures.ts';
import type { CutListPiece, CutStep } from './side-steps.ts';

/** Pieces of one step that are alike and for one owner: they are wrapped together. */
export interface PackRow {
  readonly name: string;
  /** thickness, ribs or weight of each piece */
  readonly size: string;
  readonly count: number;
  /** where they lie on their bar, from the head end; empty for pieces that leave whole */
  readonly place: string;
  /** all of them together, estimated */
  readonly weight: string;
  /** null: nobody yet, for the counter */
  readonly owner: string | null;
  readonly pieceIds: readonly string[];
}

interface Stretch {
  readonly fromUm: number;
  readonly toUm: number;
}

// Wider than the cut of any saw: pieces that are only a cut apart lie side by side.
const besideUm = 6000;

/** Where pieces lie, neighbours said as one stretch: "6 to 10 1/8 in". */
function placeText(pieces: readonly CutListPiece[], shown: ShownIn): string {
  const stretches: Stretch[] = [];
  for (const { fromUm, toUm } of pieces) {
    if (fromUm === undefined || toUm === undefined) continue;
    const last = stretches.at(-1);
    if (last && fromUm - last.toUm <= besideUm) stretches.splice(-1, 1, { fromUm: last.fromUm, toUm });
    else stretches.push({ fromUm, toUm });
  }
  return stretches
    .map(({ fromUm, toUm }) => `${lengthText(fromUm, shown, 8)} to ${lengthText(toUm, shown, 8)}`)
    .join('; ');
}

/** The packs that a step makes, in the order in which their first pieces are cut. */
export function packRows({ pieces }: Pick<CutStep, 'pieces'>, shown: ShownIn = {}): readonly PackRow[] {
  const packs = new Map<string, CutListPiece[]>();
  for (const piece of pieces) {
    const alike = JSON.stringify([piece.name, piece.size, piece.owner, piece.fromUm === undefined]);
    packs.set(alike, [...(packs.get(alike) ?? []), piece]);
  }
  return [...packs.values()].flatMap((own) => {
    const [first] = own;
    if (!first) return [];
    return {
      name: first.name,
      size: first.size,
      count: own.length,
      place: placeText(own, shown),
      weight: weightText(
        own.reduce((sum, { massMg }) => sum + massMg, 0),
        shown,
      ),
      owner: first.owner,
      pieceIds: own.map(({ pieceId }) => pieceId),
    };
  });
}

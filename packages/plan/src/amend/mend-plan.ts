import type { CuttingPlan } from '../cutting-plan.ts';
import { askedPieces, type CuttingDay, type DemandLine, sidesOf, wantsBothSides } from '../day.ts';
import { draftOf, type PlanDraft, piecesOfLine } from './draft.ts';
import { layIn } from './lay-in.ts';
import { dropGone, type KnifeWork, knifeShort } from './on-the-block.ts';

/** Owner of what nobody may have while lines are laid in. */
const nobody = { lineId: '\u0000' };

const freeKey = (sideId: string, bar: string, fromUm: number): string => `${sideId}:${bar}:${fromUm}:free`;

/** Hides what is packed or no more, so that nothing is laid into it; `show` brings it back. */
function hide(plan: CuttingPlan, { gone, settled }: KnifeWork): CuttingPlan {
  const draft = draftOf(plan);
  const out = (pieceId: string): boolean => gone.has(pieceId) || settled.has(pieceId);
  for (const { sideId, items, bars } of draft.sides) {
    for (const item of items) if (item.owner === null && out(item.pieceId)) item.owner = { ...nobody };
    for (const { bar, runs } of bars)
      for (const run of runs)
        if (settled.has(freeKey(sideId, bar, run.fromUm))) {
          run.freeUm = 0;
          run.freeMg = 0;
        }
  }
  for (const single of draft.singles)
    if (single.owner === null && out(single.pieceId)) single.owner = { ...nobody };
  return draft;
}

function show(laid: CuttingPlan, before: CuttingPlan, { settled }: KnifeWork): PlanDraft {
  const draft = draftOf(laid);
  const free = ({ owner }: { readonly owner: unknown }): boolean =>
    (owner as { lineId?: string } | null)?.lineId === nobody.lineId;
  for (const [nth, { sideId, items, bars }] of draft.sides.entries()) {
    for (const item of items) if (free(item)) item.owner = null;
    for (const [barNth, { bar, runs }] of bars.entries())
      for (const [runNth, run] of runs.entries()) {
        const was = before.sides[nth]?.bars[barNth]?.runs[runNth];
        if (was && settled.has(freeKey(sideId, bar, run.fromUm))) {
          run.freeUm = was.freeUm;
          run.freeMg = was.freeMg;
        }
      }
  }
  for (const single of draft.singles) if (free(single)) single.owner = null;
  return draft;
}

/** A cut piece that nobody has any more and that is just what the line asks for. */
function takeBack(
  day: CuttingDay,
  draft: PlanDraft,
  line: DemandLine,
  { gone, settled }: KnifeWork,
): boolean {
  const hands = new Map(sidesOf(day).map(({ sideId, hand }) => [sideId, hand]));
  const asked = JSON.stringify([line.cut, line.portion]);
  for (const side of draft.sides) {
    if (side.shareId !== null || (line.onlyAnimal ?? side.animalId) !== side.animalId) continue;
    if (line.onlyHand !== undefined && hands.get(side.sideId) !== line.onlyHand) continue;
    for (const { runs } of side.bars)
      for (const { pieces } of runs)
        for (const piece of pieces) {
          const isFree = piece.owner === null && !gone.has(piece.pieceId) && !settled.has(piece.pieceId);
          if (isFree && JSON.stringify([piece.cut, piece.portion]) === asked) {
            piece.owner = { lineId: line.lineId };
            return true;
          }
        }
  }
  return false;
}

function animalOf(plan: PlanDraft, lineId: string): string | undefined {
  const isOwn = ({ owner }: { readonly owner: unknown }): boolean =>
    (owner as { lineId?: string } | null)?.lineId === lineId;
  return plan.sides.find(
    ({ items, bars }) =>
      items.some(isOwn) || bars.some(({ runs }) => runs.some(({ pieces }) => pieces.some(isOwn))),
  )?.animalId;
}

/** One more piece for a line out of what is free; undefined where nothing is. */
function oneMore(day: CuttingDay, plan: PlanDraft, line: DemandLine, work: KnifeWork): PlanDraft | undefined {
  const own = line.sameAnimal ? animalOf(plan, line.lineId) : undefined;
  const wish = { ...line, ask: { pieces: 1 }, ...(own !== undefined && { onlyAnimal: own }) };
  if (takeBack(day, plan, wish, work)) return plan;
  const lines = day.lines.map((each) => (each.lineId === line.lineId ? wish : each));
  const laid = layIn({ ...day, lines }, hide(plan, work), [line.lineId]);
  return laid === null ? undefined : show(laid, plan, work);
}

/**
 * The plan without what is no more, its lines filled again from what is still free, those promised first. Nothing else
 * moves. Pure; what it gives still has to pass `checkPlan`.
 */
export function mendPlan(day: CuttingDay, plan: CuttingPlan, work: KnifeWork): CuttingPlan {
  let draft = draftOf(plan);
  const fills = draft.lines;
  dropGone(day, draft, work.gone);
  const pieceLines = day.lines
    // A pair of a left and a right piece is for the block to find again, not for one piece at a time.
    .filter((line) => askedPieces(line) > 0 && !wantsBothSides(day, line))
    .toSorted((a, b) => Number(b.rank === 'promised') - Number(a.rank === 'promised'));
  for (const line of pieceLines)
    for (let left = askedPieces(line) - piecesOfLine(draft, line.lineId).length; left > 0; left--) {
      const more = oneMore(day, draft, line, work);
      if (!more) break;
      draft = more;
    }
  draft.lines = fills.map((fill) => {
    const pieceIds = piecesOfLine(draft, fill.lineId);
    const filled = fill.bulkGrams > 0 ? fill.filled : pieceIds.length;
    const shortfall = filled < fill.asked ? (fill.shortfall ?? knifeShort(filled)) : null;
    return { ...fill, pieceIds, filled, shortfall: structuredClone(shortfall) as never };
  });
  return draft;
}

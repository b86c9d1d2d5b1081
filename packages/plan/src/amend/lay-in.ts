import { type Cut, footprint } from '@flitchbook/carcass';
import { checkPools } from '../check-plan/bulk-rules.ts';
import { entryOf, indexDay } from '../check-plan/day-index.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import { askedGrams, askedPieces, type CuttingDay, type DemandLine } from '../day.ts';
import {
  appendPiece,
  densityOf,
  draftOf,
  kerfOfRun,
  mannersOf,
  type PlanDraft,
  piecesOfLine,
  type RunDraft,
  type SideDraft,
} from './draft.ts';

interface Work {
  readonly day: CuttingDay;
  readonly plan: PlanDraft;
  readonly line: DemandLine;
  readonly cut: Cut;
  /** animals that a piece may come from */
  readonly animals: ReadonlySet<string>;
}

const handOf = (day: CuttingDay, sideId: string): string | undefined =>
  day.animals.flatMap(({ sides }) => sides).find((side) => side.sideId === sideId)?.hand;

/** Sides that nobody has whole and that the line may have pieces of. */
const openSides = ({ day, plan, line, animals }: Work): SideDraft[] =>
  plan.sides.filter(
    (side) =>
      side.shareId === null &&
      animals.has(side.animalId) &&
      (line.onlyHand === undefined || handOf(day, side.sideId) === line.onlyHand),
  );

/** Gives the line an unsold piece that leaves whole. */
function takeItem(work: Work): boolean {
  const { plan, line, cut, animals } = work;
  const fits = ({ item, owner }: { item: string; owner: unknown }): boolean =>
    owner === null && cut.sources.some(({ from, id }) => from === 'item' && id === item);
  const found =
    openSides(work)
      .flatMap(({ items }) => items)
      .find(fits) ?? plan.singles.find((single) => animals.has(single.animalId) && fits(single));
  if (!found) return false;
  found.owner = { lineId: line.lineId };
  return true;
}

interface Site {
  readonly side: SideDraft;
  readonly bar: string;
  readonly run: RunDraft;
  readonly kerfUm: number;
  readonly pieceUm: number;
  readonly leftUm: number;
}

/** What one more piece would take of a run, after the last one; undefined where it does not fit. */
function siteIn(work: Work, side: SideDraft, bar: string, run: RunDraft): Site | undefined {
  const { day, line } = work;
  const manners = mannersOf(day, line.speciesId, bar, run);
  const [manner, ...others] = manners;
  if (!manner) return undefined;
  const [stretch] = run.stretches;
  const stations = stretch && others.length === 0 ? stretch.toStation - stretch.fromStation : 0;
  const counted = stations > 0 && manner.lengthPpm === 1_000_000;
  const pitchUm = counted ? (run.toUm - run.fromUm) / stations : 0;
  const print = footprint(
    { tool: manner.tool, pitchUm, densityMgPerUm: densityOf(run) },
    line.portion,
    day.tools,
  );
  if (!print || print.pieceUm <= 0 || print.takesUm > run.freeUm) return undefined;
  if (line.portion.by === 'ribs' && (run.usableUm - run.freeUm) % pitchUm !== 0) return undefined;
  const kerfUm = kerfOfRun(manners, day.tools);
  return { side, bar, run, kerfUm, pieceUm: print.pieceUm, leftUm: run.freeUm - print.takesUm };
}

/** Lays a piece where the least is left over: long stretches stay open for what needs them. */
function takeSpan(work: Work): boolean {
  const { line, cut } = work;
  const stocks = new Set(cut.sources.filter(({ from }) => from === 'stock').map(({ id }) => id));
  const [best] = openSides(work)
    .flatMap((side) =>
      side.bars.flatMap(({ bar, runs }) =>
        runs.filter(({ stock }) => stocks.has(stock)).flatMap((run) => siteIn(work, side, bar, run) ?? []),
      ),
    )
    .toSorted((a, b) => a.leftUm - b.leftUm);
  if (!best) return false;
  const { pieceUm } = best;
  appendPiece(best, { cut: line.cut, portion: line.portion, owner: { lineId: line.lineId }, pieceUm });
  return true;
}

function takePieces(work: Work): boolean {
  const take = work.line.portion.by === 'whole' ? takeItem : takeSpan;
  for (let count = askedPieces(work.line); count > 0; count--) if (!take(work)) return false;
  return true;
}

/** Grams out of the day's pool, as far as the pool's own rule allows. */
function takeBulk({ day, plan }: Work): boolean {
  let holds = true;
  checkPools(indexDay(day), plan, () => {
    holds = false;
  });
  return holds;
}

/** A plan with the line in it, or null. */
function layLine(day: CuttingDay, plan: PlanDraft, line: DemandLine): PlanDraft | null {
  const species = entryOf(day.species, line.speciesId);
  const cut = species && entryOf(species.cuts, line.cut);
  if (!cut) return null;
  const booked = day.animals
    .filter(({ speciesId }) => speciesId === line.speciesId)
    .map(({ animalId }) => animalId)
    .filter((animalId) => line.onlyAnimal === undefined || animalId === line.onlyAnimal);
  const loose = askedGrams(line);
  const asked = loose || askedPieces(line);
  // With bulk the pool's rule knows about the animal.
  const tries = line.sameAnimal && loose === 0 ? booked.map((animalId) => [animalId]) : [booked];
  for (const animals of tries) {
    const draft = structuredClone(plan);
    const fill = {
      lineId: line.lineId,
      asked,
      filled: asked,
      pieceIds: [] as string[],
      bulkGrams: loose,
      shortfall: null,
    };
    draft.lines.push(fill);
    const work = { day, plan: draft, line, cut, animals: new Set(animals) };
    if (loose > 0 ? takeBulk(work) : takePieces(work)) {
      fill.pieceIds = piecesOfLine(draft, line.lineId);
      return draft;
    }
  }
  return null;
}

/**
 * Lays lines into what the plan leaves to the counter, as they were ordered, and moves nothing: unsold pieces, the free end
 * of a run, loose meat in the pool. All of them whole, or null; then only a new plan can say whether they fit.
 * The day has the lines already, the plan does not. Pure; what it gives still has to pass `checkPlan`.
 */
export function layIn(day: CuttingDay, plan: CuttingPlan, lineIds: readonly string[]): CuttingPlan | null {
  const lines = day.lines
    .filter(({ lineId }) => lineIds.includes(lineId))
    // Ribs are counted from the start of a run, so they come before what is sliced.
    .toSorted((a, b) => Number(b.portion.by === 'ribs') - Number(a.portion.by === 'ribs'));
  let draft: PlanDraft | null = draftOf(plan);
  for (const line of lines) {
    draft = layLine(day, draft, line);
    if (!draft) return null;
  }
  return draft;
}

import { entryOf } from '../check-plan/day-index.ts';
import type { CuttingPlan, Owner, Shortfall } from '../cutting-plan.ts';
import { askedGrams, askedPieces, type CuttingDay, type DemandLine, wantsBothSides } from '../day.ts';
import { type Draft, draftOf, type PlanDraft, piecesOfLine } from './draft.ts';

/** What the knife has done so far of a plan. */
export interface KnifeWork {
  /** sides that pieces were taken from: what the plan says of them stays */
  readonly begunSides: ReadonlySet<string>;
  /** animals that a piece of the whole animal was taken from */
  readonly begunSingles: ReadonlySet<string>;
  /** pieces that are no more: spoiled, or cut away */
  readonly gone: ReadonlySet<string>;
  /** pieces and free stretches that are packed or done: nobody else gets them */
  readonly settled: ReadonlySet<string>;
}

const isOfShare = (owner: Owner): boolean => owner !== null && 'shareId' in owner;

const isOfLine = (owner: Owner, lineId: string): boolean =>
  owner !== null && 'lineId' in owner && owner.lineId === lineId;

/** Sides that cannot be told apart from those begun: both sides of one share, or of a cut that takes one piece of each. */
export function sidesTogether(
  day: CuttingDay,
  plan: CuttingPlan,
  begun: ReadonlySet<string>,
): ReadonlySet<string> {
  const together = new Set(begun);
  const twins = (animalId: string): readonly string[] =>
    day.animals.find((animal) => animal.animalId === animalId)?.sides.map(({ sideId }) => sideId) ?? [];
  const paired = new Set(day.lines.filter((line) => wantsBothSides(day, line)).map(({ lineId }) => lineId));
  for (const { sideId, animalId, shareId, items, bars } of plan.sides) {
    if (!begun.has(sideId)) continue;
    const shared = shareId !== null && plan.sides.filter((side) => side.shareId === shareId).length > 1;
    const pieces = [...items, ...bars.flatMap(({ runs }) => runs.flatMap((run) => run.pieces))];
    const isPaired = pieces.some(
      ({ owner }) => owner !== null && 'lineId' in owner && paired.has(owner.lineId),
    );
    if (shared || isPaired) for (const twin of twins(animalId)) together.add(twin);
  }
  return together;
}

/** Loose meat that begun sides give to lines, as far as their own pools reach. */
function keptBulk(
  day: CuttingDay,
  plan: CuttingPlan,
  begun: ReadonlySet<string>,
): ReadonlyMap<string, number> {
  const pools = plan.sides
    .filter(({ sideId, shareId }) => begun.has(sideId) && shareId === null)
    .map(({ animalId, bulkMg }) => ({ animalId, left: { ...bulkMg } as Record<string, number> }));
  const kept = new Map<string, number>();
  for (const { lineId, bulkGrams } of plan.lines) {
    const line = day.lines.find((each) => each.lineId === lineId);
    if (!line || bulkGrams === 0) continue;
    const kinds = entryOf(day.species, line.speciesId)?.cuts[line.cut]?.sources.map(({ id }) => id) ?? [];
    const [one] = line.sameAnimal ? pools : [];
    const from = line.onlyAnimal ?? one?.animalId;
    let openMg = bulkGrams * 1000;
    for (const pool of pools.filter(({ animalId }) => from === undefined || animalId === from))
      for (const kind of kinds) {
        const mg = Math.min(openMg, Math.floor((pool.left[kind] ?? 0) / 1000) * 1000);
        pool.left[kind] = (pool.left[kind] ?? 0) - mg;
        openMg -= mg;
      }
    kept.set(lineId, bulkGrams - openMg / 1000);
  }
  return kept;
}

interface Kept {
  readonly count: number;
  readonly animals: ReadonlySet<string>;
}

/** Pieces that a line has for good. */
function keptPieces(plan: CuttingPlan, { begunSides, begunSingles, gone }: KnifeWork, lineId: string): Kept {
  const own = [
    ...plan.sides
      .filter(({ sideId }) => begunSides.has(sideId))
      .flatMap(({ animalId, items, bars }) =>
        [...items, ...bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces))].map((piece) => ({
          ...piece,
          animalId,
        })),
      ),
    ...plan.singles.filter(({ animalId }) => begunSingles.has(animalId)),
  ].filter(({ pieceId, owner }) => isOfLine(owner, lineId) && !gone.has(pieceId));
  return { count: own.length, animals: new Set(own.map(({ animalId }) => animalId)) };
}

/** What is still asked of a line, undefined where nothing is or nothing can come any more. */
function restOfLine(
  line: DemandLine,
  kept: Kept,
  keptGrams: number,
  open: ReadonlySet<string>,
): DemandLine[] {
  const grams = askedGrams(line);
  const left = grams > 0 ? grams - keptGrams : askedPieces(line) - kept.count;
  if (left <= 0) return [];
  const ask = grams > 0 ? { grams: left } : { pieces: left };
  const [own] = kept.animals;
  const onlyAnimal = line.sameAnimal && own !== undefined ? own : line.onlyAnimal;
  if (onlyAnimal !== undefined && !open.has(onlyAnimal)) return [];
  return [{ ...line, ask, ...(onlyAnimal !== undefined && { onlyAnimal }) }];
}

/**
 * The day that is still open once the knife has begun: sides not begun, and what is still asked for. Planning it anew and
 * `joinPlans` give a plan of the whole day that leaves every begun side as it lies.
 */
export function restOfDay(day: CuttingDay, plan: CuttingPlan, work: KnifeWork): CuttingDay {
  const { begunSides, begunSingles } = work;
  const animals = day.animals.flatMap((animal) => {
    const sides = animal.sides.filter(({ sideId }) => !begunSides.has(sideId));
    if (sides.length === 0) return [];
    const singles = entryOf(day.species, animal.speciesId)?.singles ?? [];
    const taken = begunSingles.has(animal.animalId)
      ? singles.flatMap(({ item, apart = [] }) => [item, ...apart.map((each) => each.item)])
      : [];
    return [{ ...animal, sides, lostItems: [...new Set([...animal.lostItems, ...taken])] }];
  });
  const open = new Set(animals.map(({ animalId }) => animalId));
  const served = new Set(
    plan.sides.flatMap(({ sideId, shareId }) =>
      begunSides.has(sideId) && shareId !== null ? [shareId] : [],
    ),
  );
  const bulk = keptBulk(day, plan, begunSides);
  return {
    ...day,
    animals,
    lines: day.lines.flatMap((line) =>
      restOfLine(line, keptPieces(plan, work, line.lineId), bulk.get(line.lineId) ?? 0, open),
    ),
    shares: day.shares.filter(
      ({ shareId, onlyAnimal }) => !served.has(shareId) && (onlyAnimal === undefined || open.has(onlyAnimal)),
    ),
    locks: day.locks.filter(({ sideId }) => !begunSides.has(sideId)),
  };
}

export const knifeShort = (mostPossible: number): Shortfall => ({
  kind: 'lost',
  says: 'What lies on the block does not give it any more.',
  withLines: [],
  withShares: [],
  withLocks: [],
  mostPossible,
});

type Owned = Draft<{ readonly pieceId: string; owner: Owner }>;

const piecesOfSide = ({ items, bars }: PlanDraft['sides'][number]): Owned[] => [
  ...items,
  ...bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces)),
];

/** Of a cut that takes a piece of each side of an animal, nobody keeps one without its twin (P26). */
function partPairs(day: CuttingDay, draft: PlanDraft): void {
  for (const { lineId } of day.lines.filter((line) => wantsBothSides(day, line)))
    for (const { animalId } of day.animals) {
      const sides = draft.sides
        .filter((side) => side.animalId === animalId)
        .map((side) => piecesOfSide(side).filter(({ owner }) => isOfLine(owner, lineId)));
      const pairs = sides.length < 2 ? 0 : Math.min(...sides.map(({ length }) => length));
      for (const piece of sides.flatMap((own) => own.slice(pairs))) piece.owner = null;
    }
}

/** No line has what is no more. A side that somebody has whole is theirs with its losses. */
export function dropGone(day: CuttingDay, draft: PlanDraft, gone: ReadonlySet<string>): void {
  for (const piece of [...draft.sides.flatMap(piecesOfSide), ...draft.singles])
    if (gone.has(piece.pieceId) && !isOfShare(piece.owner)) piece.owner = null;
  partPairs(day, draft);
}

/** The begun sides as they lie and the rest as it is planned now: one plan of the whole day, without a proof. */
export function joinPlans(
  day: CuttingDay,
  plan: CuttingPlan,
  rest: CuttingPlan,
  work: KnifeWork,
): CuttingPlan {
  const { begunSides, begunSingles, gone } = work;
  const draft = draftOf(plan);
  dropGone(day, draft, gone);
  const open = new Map(draftOf(rest).sides.map((side) => [side.sideId, side]));
  draft.sides = draft.sides.map((side) => open.get(side.sideId) ?? side);
  draft.singles = [
    ...draft.singles.filter(({ animalId }) => begunSingles.has(animalId)),
    ...draftOf(rest).singles.filter(({ animalId }) => !begunSingles.has(animalId)),
  ];
  const bulk = keptBulk(day, plan, begunSides);
  draft.lines = day.lines.map((line) => {
    const now = rest.lines.find(({ lineId }) => lineId === line.lineId);
    const pieceIds = piecesOfLine(draft, line.lineId);
    const grams = askedGrams(line);
    const bulkGrams = (bulk.get(line.lineId) ?? 0) + (now?.bulkGrams ?? 0);
    const [asked, filled] = grams > 0 ? [grams, bulkGrams] : [askedPieces(line), pieceIds.length];
    const shortfall = filled < asked ? (now?.shortfall ?? knifeShort(filled)) : null;
    return {
      lineId: line.lineId,
      asked,
      filled,
      pieceIds,
      bulkGrams,
      shortfall: structuredClone(shortfall) as never,
    };
  });
  draft.shares = day.shares.map(({ shareId }) => {
    const sideIds = draft.sides.filter((side) => side.shareId === shareId).map(({ sideId }) => sideId);
    const now = rest.shares.find((fill) => fill.shareId === shareId);
    const shortfall = sideIds.length > 0 ? null : (now?.shortfall ?? knifeShort(0));
    return { shareId, sideIds, shortfall: structuredClone(shortfall) as never };
  });
  return draft;
}

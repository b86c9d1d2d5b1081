import type { BarPlan, CuttingPlan, Goals, SidePlan } from './cutting-plan.ts';
import type { CuttingDay, DemandLine } from './day.ts';
import { askedPieces } from './day.ts';
import { type Nominal, nominalsOf, pieceWorth, siteKey } from './nominal.ts';

/** Share of a piece's worth that each step down the list of substitutes costs the last goal, percent. */
export const substitutePercent = 5;

interface Step {
  readonly size: number;
  readonly worthPercent: number;
}

/** Sum over falling steps: the first `size` at the first percentage, and so on. */
function worthInSteps(amount: number, worthEach: number, steps: readonly Step[]): number {
  let rest = amount;
  let worth = 0;
  for (const step of steps) {
    const here = Math.min(rest, step.size);
    worth += (here * worthEach * step.worthPercent) / 100;
    rest -= here;
  }
  return worth;
}

export const itemSteps = (day: CuttingDay): readonly Step[] =>
  day.counter.itemSteps.map(({ pieces, worthPercent }) => ({
    size: pieces ?? Number.POSITIVE_INFINITY,
    worthPercent,
  }));
export const stockSteps = (day: CuttingDay): readonly Step[] =>
  day.counter.stockSteps.map(({ grams, worthPercent }) => ({
    size: grams ?? Number.POSITIVE_INFINITY,
    worthPercent,
  }));

/** Minor units a kilogram of something unsold: the shop's figure, or the species' default. */
export function counterWorth(
  day: CuttingDay,
  speciesId: string,
  table: 'items' | 'stocks' | 'bulks',
  id: string,
): number {
  return day.counter.worthMinorPerKg[id] ?? day.species[speciesId]?.[table][id]?.worthMinorPerKg ?? 0;
}

/** Worth of one item over the counter at its expected mass, whole minor units. */
export function itemWorth(
  day: CuttingDay,
  nominal: Nominal | undefined,
  speciesId: string,
  item: string,
): number {
  return Math.round(
    ((nominal?.itemGrams.get(item) ?? 0) * counterWorth(day, speciesId, 'items', item)) / 1000,
  );
}

interface Left {
  readonly items: Map<string, number>;
  readonly stockGrams: Map<string, number>;
  readonly bulkGrams: Map<string, number>;
}

const add = (into: Map<string, number>, key: string, amount: number): void => {
  into.set(key, (into.get(key) ?? 0) + amount);
};

function collectFree(left: Left, speciesId: string, bar: BarPlan, nominal: Nominal | undefined): void {
  for (const run of bar.runs) {
    const density = nominal?.densityMgPerUm.get(siteKey(bar.bar, run.stock)) ?? 0;
    add(left.stockGrams, `${speciesId}:${run.stock}`, (run.freeUm * density) / 1000);
  }
}

function collectSide(left: Left, speciesId: string, side: SidePlan, nominal: Nominal | undefined): void {
  if (side.shareId !== null) return;
  for (const item of side.items) if (item.owner === null) add(left.items, `${speciesId}:${item.item}`, 1);
  for (const bar of side.bars) collectFree(left, speciesId, bar, nominal);
  for (const [bulk, mg] of Object.entries(side.bulkMg))
    add(left.bulkGrams, `${speciesId}:${bulk}`, mg / 1000);
}

function whatIsLeft(day: CuttingDay, plan: CuttingPlan, nominals: ReadonlyMap<string, Nominal>): Left {
  const left: Left = { items: new Map(), stockGrams: new Map(), bulkGrams: new Map() };
  const speciesOf = new Map(day.animals.map((animal) => [animal.animalId, animal.speciesId]));
  for (const side of plan.sides) {
    const speciesId = speciesOf.get(side.animalId) ?? '';
    collectSide(left, speciesId, side, nominals.get(speciesId));
  }
  for (const single of plan.singles) {
    if (single.owner === null) add(left.items, `${speciesOf.get(single.animalId) ?? ''}:${single.item}`, 1);
  }
  for (const fill of plan.lines) {
    const line = day.lines.find((candidate) => candidate.lineId === fill.lineId);
    const bulk =
      line && day.species[line.speciesId]?.cuts[line.cut]?.sources.find((source) => source.from === 'bulk');
    if (line && bulk) add(left.bulkGrams, `${line.speciesId}:${bulk.id}`, -fill.bulkGrams);
  }
  return left;
}

function worthLeft(day: CuttingDay, left: Left, nominals: ReadonlyMap<string, Nominal>): number {
  const split = (key: string): readonly [string, string] => {
    const at = key.indexOf(':');
    return [key.slice(0, at), key.slice(at + 1)];
  };
  let worth = 0;
  for (const [key, count] of left.items) {
    const [speciesId, item] = split(key);
    worth += worthInSteps(count, itemWorth(day, nominals.get(speciesId), speciesId, item), itemSteps(day));
  }
  for (const [key, grams] of left.stockGrams) {
    const [speciesId, stock] = split(key);
    worth += worthInSteps(grams, counterWorth(day, speciesId, 'stocks', stock) / 1000, stockSteps(day));
  }
  for (const [key, grams] of left.bulkGrams) {
    const [speciesId, bulk] = split(key);
    worth += (grams * counterWorth(day, speciesId, 'bulks', bulk)) / 1000;
  }
  return worth;
}

/** Which wanted cut of a line each piece stands for: 0 the cut as ordered, 1 the first substitute, and so on. */
function substituteSteps(plan: CuttingPlan, lines: ReadonlyMap<string, DemandLine>): Map<string, number[]> {
  const steps = new Map<string, number[]>();
  const note = (lineId: string, cut: string): void => {
    const line = lines.get(lineId);
    if (!line) return;
    const step = [line, ...line.substitutes].findIndex((wanted) => wanted.cut === cut);
    steps.set(lineId, [...(steps.get(lineId) ?? []), Math.max(0, step)]);
  };
  for (const side of plan.sides) {
    for (const item of side.items)
      if (item.owner && 'lineId' in item.owner)
        note(item.owner.lineId, itemCut(lines.get(item.owner.lineId), item.item));
    for (const piece of side.bars.flatMap((bar) => bar.runs).flatMap((run) => run.pieces)) {
      if (piece.owner && 'lineId' in piece.owner) note(piece.owner.lineId, piece.cut);
    }
  }
  return steps;
}

/** Items carry no cut of their own: a line that lists the item's own name took it as that. */
const itemCut = (line: DemandLine | undefined, item: string): string =>
  line ? ([line, ...line.substitutes].find((wanted) => wanted.cut === item)?.cut ?? line.cut) : item;

/**
 * The goals of a plan, in minor units: promised lines and shares filled, then wished ones, then what the rest is worth
 * over the counter less labour. Worth is counted at expected masses (see `Nominal`).
 */
export function goalsOf(day: CuttingDay, plan: CuttingPlan): Goals {
  const nominals = nominalsOf(day);
  const lines = new Map(day.lines.map((line) => [line.lineId, line]));
  const filled = { promised: 0, wished: 0 };
  let rest = worthLeft(day, whatIsLeft(day, plan, nominals), nominals);
  const steps = substituteSteps(plan, lines);
  for (const fill of plan.lines) {
    const line = lines.get(fill.lineId);
    if (!line) continue;
    const worth = pieceWorth(day, nominals.get(line.speciesId), line);
    filled[line.rank] +=
      askedPieces(line) > 0 ? fill.filled * worth : (fill.bulkGrams * line.priceMinorPerKg) / 1000;
    for (const step of steps.get(fill.lineId) ?? []) rest -= (worth * step * substitutePercent) / 100;
  }
  const massMg = new Map(plan.sides.map((side) => [side.sideId, side.massMg]));
  for (const fill of plan.shares) {
    const share = day.shares.find((candidate) => candidate.shareId === fill.shareId);
    if (!share) continue;
    for (const sideId of fill.sideIds)
      filled[share.rank] += shareSideWorth(massMg.get(sideId) ?? 0, share.priceMinorPerKg);
  }
  const minutes = plan.sides.reduce((sum, side) => sum + side.minutes, 0);
  return {
    promised: Math.round(filled.promised),
    wished: Math.round(filled.wished),
    rest: Math.round(rest - (minutes * day.counter.labourMinorPerHour) / 60),
  };
}

/** Worth of one side of a share, whole minor units. */
export const shareSideWorth = (massMg: number, priceMinorPerKg: number): number =>
  Math.round((massMg / 1_000_000) * priceMinorPerKg);

import { type CuttingDay, type CuttingPlan, type Goals, goalsOf, type SidePlan } from '@flitchbook/plan';

/** The price at which one way to break a part brings as much as another. */
export interface Tipping {
  readonly againstWay: string;
  /** items and stocks that this way gives of the side and the other does not */
  readonly kinds: readonly string[];
  /** what they weigh, pieces and what is left over */
  readonly grams: number;
  /** what they bring now on the average, orders and counter together, whole minor units a kilogram */
  readonly nowMinorPerKg: number;
  /** what they would have to bring for the two ways to come to the same; 0 where even a gift would do */
  readonly tipsAtMinorPerKg: number;
}

interface Way {
  readonly wayId: string;
  readonly side: SidePlan;
  readonly plan: CuttingPlan;
}

export const worthOfAll = ({ promised, wished, rest }: Goals): number => promised + wished + rest;

function kindsOf(side: SidePlan): ReadonlySet<string> {
  const runs = side.bars.flatMap((bar) => bar.runs);
  return new Set([...side.items.map(({ item }) => item), ...runs.map(({ stock }) => stock)]);
}

function gramsOf(side: SidePlan, kinds: ReadonlySet<string>): number {
  const items = side.items.filter(({ item }) => kinds.has(item)).map(({ massMg }) => massMg);
  const runs = side.bars.flatMap((bar) => bar.runs).filter(({ stock }) => kinds.has(stock));
  const spans = runs.flatMap(({ pieces, freeMg }) => [freeMg, ...pieces.map(({ massMg }) => massMg)]);
  return Math.round([...items, ...spans].reduce((sum, mg) => sum + mg, 0) / 1000);
}

/** The plan as it would count if these kinds of one side brought nothing. */
function withoutKinds({ plan, side }: Way, kinds: ReadonlySet<string>): CuttingPlan {
  const gone = new Set<string>();
  const items = side.items.filter(({ item, pieceId }) => !(kinds.has(item) && gone.add(pieceId)));
  const bars = side.bars.map((bar) => ({
    ...bar,
    runs: bar.runs.map((run) => {
      if (!kinds.has(run.stock)) return run;
      for (const { pieceId } of run.pieces) gone.add(pieceId);
      return { ...run, pieces: [], freeUm: 0, freeMg: 0 };
    }),
  }));
  const bare = { ...side, items, bars };
  return {
    ...plan,
    sides: plan.sides.map((old) => (old.sideId === side.sideId ? bare : old)),
    lines: plan.lines.map((fill) => {
      const pieceIds = fill.pieceIds.filter((pieceId) => !gone.has(pieceId));
      return { ...fill, pieceIds, filled: fill.filled - (fill.pieceIds.length - pieceIds.length) };
    }),
  };
}

/** @returns null where neither way gives anything that the other does not */
export function tippingOf(day: CuttingDay, way: Way, against: Way): Tipping | null {
  const others = kindsOf(against.side);
  const kinds = new Set([...kindsOf(way.side)].filter((kind) => !others.has(kind)));
  const grams = gramsOf(way.side, kinds);
  if (grams === 0) return null;
  const [whole, bare, other] = [way.plan, withoutKinds(way, kinds), against.plan].map((plan) =>
    worthOfAll(goalsOf(day, plan)),
  ) as [number, number, number];
  const perKg = (minor: number): number => (minor * 1000) / grams;
  return {
    againstWay: against.wayId,
    kinds: [...kinds],
    grams,
    nowMinorPerKg: Math.round(perKg(whole - bare)),
    tipsAtMinorPerKg: Math.max(0, Math.ceil(perKg(other - bare))),
  };
}

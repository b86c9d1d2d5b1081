import {
  askedPieces,
  type CuttingDay,
  type CuttingPlan,
  type DemandLine,
  type Owner,
  siteKey,
} from '@flitchbook/plan';
import type { BulkDemand, Demand, Outlets, Problem, UnitClass } from '../../problem.ts';

type Sums = Map<string, number>;
const add = (into: Sums, key: string, amount: number): void => {
  into.set(key, (into.get(key) ?? 0) + amount);
};

/** A step of falling worth is used up from its dearest end. */
function usedUp<T extends { readonly size: number }>(steps: readonly T[], amount: number): T[] {
  let rest = amount;
  return steps.map((step) => {
    const used = Math.min(rest, step.size);
    rest -= used;
    return { ...step, size: step.size - used };
  });
}

const lineOf = (owner: Owner): string | undefined =>
  owner !== null && 'lineId' in owner ? owner.lineId : undefined;

/** What the rest of a plan gives to lines and to the counter, with one side taken away. */
class Rest {
  readonly #day: CuttingDay;
  /** line to pieces, and to the animals they are from */
  readonly pieces: Sums = new Map();
  readonly from = new Map<string, Set<string>>();
  /** "species:item" to pieces, "species:stock" to grams at their expected mass, nobody's */
  readonly items: Sums = new Map();
  readonly stockGrams: Sums = new Map();
  /** "species:bulk" to grams, of sides that nobody has whole */
  readonly bulkGrams: Sums = new Map();

  constructor({ day, nominals }: Pick<Problem, 'day' | 'nominals'>, plan: CuttingPlan, sideId: string) {
    this.#day = day;
    for (const single of plan.singles) this.#piece(single.animalId, single.item, single.owner);
    for (const side of plan.sides) {
      if (side.sideId === sideId || side.shareId !== null) continue;
      const speciesId = this.#speciesOf(side.animalId);
      for (const { item, owner } of side.items) this.#piece(side.animalId, item, owner);
      for (const { bar, runs } of side.bars) {
        for (const { stock, freeUm, pieces } of runs) {
          const density = nominals.get(speciesId)?.densityMgPerUm.get(siteKey(bar, stock)) ?? 0;
          add(this.stockGrams, `${speciesId}:${stock}`, (freeUm * density) / 1000);
          for (const { owner } of pieces) this.#owned(side.animalId, owner);
        }
      }
      for (const [bulk, mg] of Object.entries(side.bulkMg))
        add(this.bulkGrams, `${speciesId}:${bulk}`, mg / 1000);
    }
  }

  #speciesOf(animalId: string): string {
    return this.#day.animals.find((animal) => animal.animalId === animalId)?.speciesId ?? '';
  }

  #owned(animalId: string, owner: Owner): void {
    const lineId = lineOf(owner);
    if (lineId === undefined) return;
    add(this.pieces, lineId, 1);
    this.from.set(lineId, (this.from.get(lineId) ?? new Set()).add(animalId));
  }

  #piece(animalId: string, item: string, owner: Owner): void {
    if (owner === null) add(this.items, `${this.#speciesOf(animalId)}:${item}`, 1);
    else this.#owned(animalId, owner);
  }
}

/** What one line may still get from the side: all of it is for one animal, or pairs with the other side, where it says so. */
function piecesLeft(demand: Demand, line: DemandLine, rest: Rest, animalId: string): number {
  const given = rest.pieces.get(line.lineId) ?? 0;
  if (demand.bothSides) return rest.from.get(line.lineId)?.has(animalId) ? given : 0;
  const elsewhere = [...(rest.from.get(line.lineId) ?? [])].some((other) => other !== animalId);
  return demand.oneAnimal && elsewhere ? 0 : Math.max(0, askedPieces(line) - given);
}

function demandLeft(demand: Demand, rest: Rest, { animalId, side }: UnitClass['units'][number]): Demand {
  const lines = demand.lines.flatMap((line): DemandLine[] => {
    const pieces = piecesLeft(demand, line, rest, animalId);
    return pieces === 0 ? [] : [{ ...line, ask: { pieces } }];
  });
  const options = demand.options.filter(
    (option) =>
      (option.animalId === null || option.animalId === animalId) &&
      (option.hand === null || option.hand === side?.hand),
  );
  return {
    ...demand,
    lines,
    options,
    pieces: lines.reduce((sum, line) => sum + askedPieces(line), 0),
    // The fellow of each piece is on the other side and is worth something only beside it.
    worth: demand.bothSides ? 2 * demand.worth : demand.worth,
    // Only this animal is left to take from.
    oneAnimal: false,
    bothSides: false,
  };
}

/** The best-ranked and best-paid lines are served from the pool of the other sides first. */
function bulkLeft(problem: Problem, rest: Rest): BulkDemand[] {
  const left = new Map(rest.bulkGrams);
  const order = [...problem.bulkDemands.keys()].sort((a, b) => {
    const [first, second] = [problem.bulkDemands[a] as BulkDemand, problem.bulkDemands[b] as BulkDemand];
    return (
      Number(first.tier === 'wished') - Number(second.tier === 'wished') ||
      second.worthPerGram - first.worthPerGram ||
      a - b
    );
  });
  const grams = new Map<number, number>();
  for (const at of order) {
    const demand = problem.bulkDemands[at] as BulkDemand;
    const key = problem.outlets.bulks[demand.bulk]?.key ?? '';
    const given = Math.min(demand.grams, left.get(key) ?? 0);
    left.set(key, (left.get(key) ?? 0) - given);
    grams.set(at, demand.grams - given);
  }
  return problem.bulkDemands.map((demand, at) => ({ ...demand, grams: grams.get(at) ?? 0 }));
}

function outletsLeft(problem: Problem, rest: Rest): Outlets {
  const { items, stocks, bulks } = problem.outlets;
  return {
    items: items.map(({ product, steps }) => {
      const { speciesId, from } = problem.products[product] as Problem['products'][number];
      return { product, steps: usedUp(steps, rest.items.get(`${speciesId}:${from}`) ?? 0) };
    }),
    stocks: stocks.map(({ key, steps }) => ({ key, steps: usedUp(steps, rest.stockGrams.get(key) ?? 0) })),
    bulks,
  };
}

/**
 * The day as one side sees it when every other side and the singles stay as a plan has them: what lines still want, what
 * the counter still pays.
 * @param problem with every unit a class of its own
 */
export function sideAlone(problem: Problem, plan: CuttingPlan, group: UnitClass): Problem {
  const [unit] = group.units;
  if (!unit?.side) throw new Error('only a side can be cut alone');
  const rest = new Rest(problem, plan, unit.unitId);
  return {
    ...problem,
    classes: [{ ...group, index: 0 }],
    demands: problem.demands.map((demand) => demandLeft(demand, rest, unit)),
    bulkDemands: bulkLeft(problem, rest),
    shares: [],
    outlets: outletsLeft(problem, rest),
  };
}

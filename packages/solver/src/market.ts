import { substitutePercent } from '@flitchbook/plan';
import type { Assignment, DemandOption, Problem } from './problem.ts';
import type { Entry, SparseModel } from './sparse-model.ts';

/**
 * The side of the model that takes: demand, shares and the counter. The plain model and the master of the decomposition
 * share it; they differ in how supply is made. Bulk and free stretches are counted in kilograms here, for the engine's sake.
 */
export interface Market {
  /** what uses each product, stock outlet and bulk, with the sign of a use (-1) */
  readonly productUses: readonly Entry[][];
  readonly stockUses: readonly Entry[][];
  readonly bulkUses: readonly Entry[][];
  /** one column for each share choice */
  readonly shareColumns: readonly number[];
  /** columns that are whole in any plan: pieces given, shares */
  readonly wholeColumns: readonly number[];
  readonly read: (values: ArrayLike<number>) => Assignment;
}

const infinite = Number.POSITIVE_INFINITY;

interface Uses {
  readonly product: Entry[][];
  readonly stock: Entry[][];
  readonly bulk: Entry[][];
}

function addDemands(problem: Problem, model: SparseModel, uses: Uses, wholeNumbers: boolean): number[][] {
  return problem.demands.map((demand) => {
    const columns = demand.options.map(({ product, step }) => {
      const cost = { [demand.tier]: demand.worth, rest: -(demand.worth * step * substitutePercent) / 100 };
      const column = model.column(cost, 0, demand.pieces, wholeNumbers);
      uses.product[product]?.push([column, -1]);
      return column;
    });
    model.row(
      0,
      demand.pieces,
      columns.map((column) => [column, 1]),
    );
    if (demand.oneAnimal)
      addOneAnimal(
        demand.pieces,
        demand.options.map(({ animalId }) => animalId),
        columns,
        model,
      );
    if (demand.bothSides) pairSides(demand.options, columns, model);
    return columns;
  });
}

/**
 * Pieces that need their fellow: as many from the left as from the right of each animal. What is made for such a line is
 * for no other, so the flow from whole supply stays whole.
 */
function pairSides(options: readonly DemandOption[], columns: readonly number[], model: SparseModel): void {
  for (const animal of new Set(options.map(({ animalId }) => animalId))) {
    const entries = columns.flatMap((column, at): Entry[] => {
      const option = options[at] as DemandOption;
      return option.animalId === animal ? [[column, option.hand === 'left' ? 1 : -1]] : [];
    });
    model.row(0, 0, entries);
  }
}

/** A line that wants one animal picks which, and takes from no other. */
function addOneAnimal(
  pieces: number,
  animals: readonly (string | null)[],
  columns: readonly number[],
  model: SparseModel,
): void {
  const picks = [...new Set(animals)].map((animal) => {
    const pick = model.column({}, 0, 1, true);
    const mine = columns.filter((_, at) => animals[at] === animal);
    model.row(-infinite, 0, [...mine.map((column): Entry => [column, 1]), [pick, -pieces]]);
    return pick;
  });
  model.row(
    0,
    1,
    picks.map((pick) => [pick, 1]),
  );
}

function addOutlets(problem: Problem, model: SparseModel, uses: Uses): void {
  for (const { product, steps } of problem.outlets.items) {
    for (const { size, worth } of steps)
      uses.product[product]?.push([model.column({ rest: worth }, 0, size, false), -1]);
  }
  problem.outlets.stocks.forEach(({ steps }, index) => {
    for (const { size, worthPerGram } of steps)
      uses.stock[index]?.push([model.column({ rest: worthPerGram * 1000 }, 0, size / 1000, false), -1]);
  });
  problem.outlets.bulks.forEach(({ worthPerGram }, index) => {
    uses.bulk[index]?.push([model.column({ rest: worthPerGram * 1000 }, 0, infinite, false), -1]);
  });
}

function addShares(problem: Problem, model: SparseModel): number[] {
  const perMinute = problem.day.counter.labourMinorPerHour / 60;
  const columns = problem.shares.map(({ tier, worth, minutes, animalIds, share }) => {
    const most = share.size === 'whole' ? Math.min(1, animalIds.length) : 1;
    return model.column({ [tier]: worth, rest: -minutes * perMinute }, 0, most, true);
  });
  for (const share of problem.day.shares) {
    const mine = columns.filter((_, at) => problem.shares[at]?.share === share);
    if (mine.length > 0)
      model.row(
        0,
        1,
        mine.map((column) => [column, 1]),
      );
  }
  return columns;
}

/** @param wholeNumbers pieces given are declared whole; not needed where supply is, for the flow from whole supply is whole */
export function addMarket(problem: Problem, model: SparseModel, wholeNumbers = false): Market {
  const lists = (count: number): Entry[][] => Array.from({ length: count }, () => []);
  const uses: Uses = {
    product: lists(problem.products.length),
    stock: lists(problem.outlets.stocks.length),
    bulk: lists(problem.outlets.bulks.length),
  };
  const demandColumns = addDemands(problem, model, uses, wholeNumbers);
  const bulkColumns = problem.bulkDemands.map(({ tier, bulk, grams, worthPerGram }) => {
    const column = model.column({ [tier]: worthPerGram * 1000 }, 0, grams / 1000, false);
    uses.bulk[bulk]?.push([column, -1]);
    return column;
  });
  addOutlets(problem, model, uses);
  const shareColumns = addShares(problem, model);
  return {
    productUses: uses.product,
    stockUses: uses.stock,
    bulkUses: uses.bulk,
    shareColumns,
    wholeColumns: [...demandColumns.flat(), ...shareColumns],
    read: (values) => ({
      pieces: demandColumns.flatMap((columns, demand) =>
        columns
          .map((column, option) => ({ demand, option, count: Math.round(values[column] ?? 0) }))
          .filter(({ count }) => count > 0),
      ),
      bulk: bulkColumns.map((column, demand) => ({
        demand,
        grams: Math.max(0, Math.floor((values[column] ?? 0) * 1000 + 1e-4)),
      })),
    }),
  };
}

import type { Highs, Model, ModelData } from 'highs';

type Entry = readonly [column: number, value: number];

/** A mixed-integer programme in rows. Minimises. Its user keeps magnitudes near one: kilograms, and whole money. */
export class Programme {
  readonly lower: number[] = [];
  readonly upper: number[] = [];
  readonly whole: boolean[] = [];
  readonly rowLower: number[] = [];
  readonly rowUpper: number[] = [];
  private readonly starts: number[] = [0];
  private readonly indices: number[] = [];
  private readonly values: number[] = [];

  /** @returns the column's index */
  column(lower: number, upper: number, whole = false): number {
    this.lower.push(lower);
    this.upper.push(upper);
    this.whole.push(whole);
    return this.lower.length - 1;
  }

  /** Entries name each column once. */
  row(lower: number, upper: number, entries: readonly Entry[]): void {
    for (const [column, value] of entries) {
      this.indices.push(column);
      this.values.push(value);
    }
    this.starts.push(this.indices.length);
    this.rowLower.push(lower);
    this.rowUpper.push(upper);
  }

  data(highs: Highs, cost: readonly number[]): ModelData {
    const [numCols, numRows] = [this.lower.length, this.rowLower.length];
    return {
      numCols,
      numRows,
      sense: highs.constants.objectiveSense.minimize,
      colCost: cost,
      colLower: this.lower,
      colUpper: this.upper,
      rowLower: this.rowLower,
      rowUpper: this.rowUpper,
      matrix: {
        format: 'csr',
        numRows,
        numCols,
        starts: this.starts,
        indices: this.indices,
        values: this.values,
      },
      integrality: this.whole.map((whole) => (whole ? 1 : 0)),
    };
  }
}

export interface Optimum {
  /** limit: the time was up; the values are the best that were found, or none */
  readonly status: 'optimal' | 'limit' | 'infeasible';
  readonly values: Float64Array;
  readonly objective: number;
}

let loading: Promise<Highs> | undefined;

/** HiGHS, loaded once for all programmes, and only by who plans sausage. */
export function loadEngine(): Promise<Highs> {
  loading ??= import('highs').then(({ default: load }) => load());
  return loading;
}

function read(highs: Highs, model: Model): Optimum {
  const status = model.getModelStatus();
  const { modelStatus, solutionStatus } = highs.constants;
  const found = model.info.get('primal_solution_status') === solutionStatus.feasible;
  if (status === modelStatus.infeasible || status === modelStatus.unboundedOrInfeasible)
    return { status: 'infeasible', values: new Float64Array(), objective: Number.NaN };
  return {
    status: status === modelStatus.optimal ? 'optimal' : 'limit',
    values: found ? model.getSolution().colValue : new Float64Array(),
    objective: found ? model.getObjectiveValue() : Number.NaN,
  };
}

/** Two answers that differ by less are one: a hundredth of a minor unit. */
const sameMinor = 0.01;

/** @param start an answer to begin with, which need not keep every row */
export function minimise(
  highs: Highs,
  programme: Programme,
  cost: readonly number[],
  seconds: number,
  start?: Float64Array,
): Optimum {
  const model = highs.createModel(programme.data(highs, cost));
  try {
    model.options.set({
      output_flag: false,
      random_seed: 1,
      time_limit: Math.max(0.01, seconds),
      mip_rel_gap: 0,
      mip_abs_gap: sameMinor,
    });
    if (start) model.setSolution({ colValue: start });
    model.run();
    return read(highs, model);
  } finally {
    model.dispose();
  }
}

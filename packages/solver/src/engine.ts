import loadHighs, { type Highs, type Model, type ModelData } from 'highs';
import type { SparseModel } from './sparse-model.ts';

let loading: Promise<Highs> | undefined;

/** HiGHS, loaded once. After a failure inside WebAssembly, `dropEngine` makes the next call load it afresh. */
export function engine(): Promise<Highs> {
  loading ??= loadHighs();
  return loading;
}

export function dropEngine(): void {
  loading = undefined;
}

export function modelData(
  highs: Highs,
  model: SparseModel,
  cost: readonly number[],
  relaxed: boolean,
): ModelData {
  const starts: number[] = [];
  const indices: number[] = [];
  const values: number[] = [];
  for (const row of model.rows) {
    starts.push(indices.length);
    indices.push(...row.indices);
    values.push(...row.values);
  }
  starts.push(indices.length);
  return {
    numCols: model.columns,
    numRows: model.rows.length,
    sense: highs.constants.objectiveSense.maximize,
    colCost: cost,
    colLower: model.lower,
    colUpper: model.upper,
    rowLower: model.rowLower,
    rowUpper: model.rowUpper,
    matrix: { format: 'csr', numRows: model.rows.length, numCols: model.columns, starts, indices, values },
    integrality: relaxed ? model.integer.map(() => 0) : model.integer.map((whole) => (whole ? 1 : 0)),
  };
}

export interface MipAnswer {
  readonly outcome: 'optimal' | 'limit' | 'infeasible';
  /** empty when there is no plan at all */
  readonly values: Float64Array;
  readonly objective: number;
  readonly bound: number;
}

export interface MipLimits {
  readonly seconds: number;
  readonly relativeGap: number;
  readonly absoluteGap: number;
  readonly seed: number;
  readonly start?: readonly number[] | Float64Array;
  readonly shouldStop?: () => boolean;
}

function setLimits(model: Model, limits: MipLimits): void {
  model.options.set({
    output_flag: false,
    random_seed: limits.seed,
    time_limit: Math.max(0.01, limits.seconds),
    mip_rel_gap: limits.relativeGap,
    mip_abs_gap: limits.absoluteGap,
  });
}

/** Maximises. A time limit is an answer, not an error. */
export function solveMip(
  highs: Highs,
  model: SparseModel,
  cost: readonly number[],
  limits: MipLimits,
): MipAnswer {
  const solver = highs.createModel(modelData(highs, model, cost, false));
  try {
    setLimits(solver, limits);
    if (limits.start) solver.setSolution({ colValue: limits.start });
    solver.run();
    const status = solver.getModelStatus();
    const { modelStatus } = highs.constants;
    if (status === modelStatus.infeasible || status === modelStatus.unboundedOrInfeasible) {
      return {
        outcome: 'infeasible',
        values: new Float64Array(),
        objective: Number.NEGATIVE_INFINITY,
        bound: Number.NEGATIVE_INFINITY,
      };
    }
    const solved = solver.info.get('primal_solution_status') === highs.constants.solutionStatus.feasible;
    return {
      outcome: status === modelStatus.optimal ? 'optimal' : 'limit',
      values: solved ? solver.getSolution().colValue : new Float64Array(),
      objective: solved ? solver.getObjectiveValue() : Number.NEGATIVE_INFINITY,
      bound: Number(solver.info.get('mip_dual_bound')),
    };
  } finally {
    solver.dispose();
  }
}

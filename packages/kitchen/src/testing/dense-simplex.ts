/** Minimise cost·x where every row·x is at most its bound and x is 0 or more: textbook dictionaries, Bland's rule, small sizes. */
export interface Dense {
  readonly cost: readonly number[];
  readonly rows: readonly { readonly of: readonly number[]; readonly most: number }[];
}

const tiny = 1e-9;
const at = (values: readonly number[], index: number): number => values[index] ?? Number.NaN;

/** Basic variables stand on the left of each row; row = bound - sum(of * nonbasic). */
class Dictionary {
  private readonly bounds: number[];
  private readonly table: number[][];
  private readonly basic: number[];
  private readonly free: number[];

  constructor({ cost, rows }: Dense) {
    // One more column, the last, lets rows with a bound below 0 begin feasible.
    this.bounds = rows.map(({ most }) => most);
    this.table = rows.map(({ of }) => [...of, -1]);
    this.basic = rows.map((_, row) => cost.length + 1 + row);
    this.free = [...cost.map((_, column) => column), cost.length];
  }

  private pivot(row: number, column: number): void {
    const pivotRow = this.table[row] ?? [];
    const divisor = at(pivotRow, column);
    const scaled = pivotRow.map((value, index) => (index === column ? 1 : value) / divisor);
    const bound = at(this.bounds, row) / divisor;
    for (const [other, values] of this.table.entries()) {
      if (other === row) continue;
      const times = at(values, column);
      this.table[other] = values.map(
        (value, index) => (index === column ? 0 : value) - times * at(scaled, index),
      );
      this.bounds[other] = at(this.bounds, other) - times * bound;
    }
    this.table[row] = scaled;
    this.bounds[row] = bound;
    [this.basic[row], this.free[column]] = [at(this.free, column), at(this.basic, row)];
  }

  /** What a cost comes to in the variables that are free now. */
  private reduced(cost: (variable: number) => number): number[] {
    const basics = this.table.map((values, row) => ({ values, cost: cost(at(this.basic, row)) }));
    return this.free.map((variable, column) =>
      basics.reduce((sum, basic) => sum - basic.cost * at(basic.values, column), cost(variable)),
    );
  }

  private leaving(entering: number): number {
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const [row, values] of this.table.entries()) {
      if (at(values, entering) <= tiny) continue;
      const step = at(this.bounds, row) / at(values, entering);
      const tied = step < least + tiny && (leaving < 0 || at(this.basic, row) < at(this.basic, leaving));
      if (step < least - tiny || tied) [leaving, least] = [row, Math.min(step, least)];
    }
    return leaving;
  }

  private descend(cost: (variable: number) => number): void {
    for (let turn = 0; turn < 10_000; turn++) {
      const better = this.reduced(cost).flatMap((value, column) => (value < -tiny ? [column] : []));
      const [entering] = better.sort((a, b) => at(this.free, a) - at(this.free, b));
      if (entering === undefined) return;
      const leaving = this.leaving(entering);
      if (leaving < 0) throw new Error('the programme has no least value');
      this.pivot(leaving, entering);
    }
    throw new Error('the programme went on for ever');
  }

  private value(variable: number): number {
    const row = this.basic.indexOf(variable);
    return row < 0 ? 0 : at(this.bounds, row);
  }

  solve(cost: readonly number[]): { readonly value: number; readonly x: number[] } | null {
    const spare = cost.length;
    const worst = this.bounds.indexOf(Math.min(...this.bounds));
    if (at(this.bounds, worst) < -tiny) {
      this.pivot(worst, spare);
      this.descend((variable) => (variable === spare ? 1 : 0));
      if (this.value(spare) > 1e-7) return null;
      const row = this.basic.indexOf(spare);
      const column = (this.table[row] ?? []).findIndex((value) => Math.abs(value) > tiny);
      if (column >= 0) this.pivot(row, column);
    }
    this.drop(spare);
    this.descend((variable) => cost[variable] ?? 0);
    const x = cost.map((_, variable) => this.value(variable));
    return { value: x.reduce((sum, amount, variable) => sum + amount * at(cost, variable), 0), x };
  }

  private drop(spare: number): void {
    const column = this.free.indexOf(spare);
    if (column < 0) return;
    this.free.splice(column, 1);
    for (const values of this.table) values.splice(column, 1);
  }
}

/** @returns the least value and where it lies, or null where nothing is allowed */
export function leastOf(dense: Dense): { readonly value: number; readonly x: number[] } | null {
  return new Dictionary(dense).solve(dense.cost);
}

import type { Goals } from '@flitchbook/plan';

export type Entry = readonly [column: number, value: number];

/** Goals in their order: never traded one for another. */
export const goalOrder: readonly (keyof Goals)[] = ['promised', 'wished', 'rest'];

/** Less than this between two plans is no difference: half a minor unit. */
export const sameWorth = 0.5;

/** Mixed-integer programme with a cost for each goal. Maximises. */
export class SparseModel {
  readonly costs: Record<keyof Goals, number[]> = { promised: [], wished: [], rest: [] };
  readonly lower: number[] = [];
  readonly upper: number[] = [];
  readonly integer: boolean[] = [];
  readonly rowLower: number[] = [];
  readonly rowUpper: number[] = [];
  readonly rows: { readonly indices: number[]; readonly values: number[] }[] = [];

  get columns(): number {
    return this.lower.length;
  }

  /** The columns that count on a goal. */
  goalEntries(goal: keyof Goals): Entry[] {
    return this.costs[goal].flatMap((cost, column): Entry[] => (cost === 0 ? [] : [[column, cost]]));
  }

  /** @returns the column's index */
  column(cost: Partial<Goals>, lower: number, upper: number, integer: boolean): number {
    for (const goal of goalOrder) this.costs[goal].push(cost[goal] ?? 0);
    this.lower.push(lower);
    this.upper.push(upper);
    this.integer.push(integer);
    return this.lower.length - 1;
  }

  /** Entries for one column are added up. @returns the row's index */
  row(lower: number, upper: number, entries: readonly Entry[]): number {
    const sum = new Map<number, number>();
    for (const [column, value] of entries) sum.set(column, (sum.get(column) ?? 0) + value);
    this.rows.push({ indices: [...sum.keys()], values: [...sum.values()] });
    this.rowLower.push(lower);
    this.rowUpper.push(upper);
    return this.rows.length - 1;
  }
}

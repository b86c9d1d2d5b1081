/** What is wrong with an entry: the field, the value that was given, and a sentence. */
export interface KitchenFault {
  readonly at: string;
  readonly value: unknown;
  readonly says: string;
}

/** Collects faults, so that one reading of a form names them all. */
export class FaultList {
  readonly faults: KitchenFault[] = [];

  add(at: string, value: unknown, says: string): undefined {
    this.faults.push({ at, value, says });
    return undefined;
  }

  /** @returns whether it holds */
  need(holds: boolean, at: string, value: unknown, says: string): boolean {
    if (!holds) this.add(at, value, says);
    return holds;
  }

  whole(at: string, value: number, min: number, max = Number.MAX_SAFE_INTEGER): boolean {
    const fits = Number.isSafeInteger(value) && value >= min && value <= max;
    const most = max === Number.MAX_SAFE_INTEGER ? '' : ` and at most ${max}`;
    return this.need(fits, at, value, `must be a whole number of at least ${min}${most}`);
  }
}

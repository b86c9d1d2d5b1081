/**
 * Lets claims on one day come one after another within this process: each then works on what the one before left, instead
 * of losing the race. It guards nothing. Between processes the day's version does, and the constraints.
 */
export class DayTurns {
  readonly #last = new Map<string, Promise<unknown>>();

  async inTurn<T>(dayId: string, work: () => Promise<T>): Promise<T> {
    const before = this.#last.get(dayId) ?? Promise.resolve();
    const mine = before.then(work, work);
    const settled = mine.catch(() => undefined);
    this.#last.set(dayId, settled);
    try {
      return await mine;
    } finally {
      if (this.#last.get(dayId) === settled) this.#last.delete(dayId);
    }
  }
}

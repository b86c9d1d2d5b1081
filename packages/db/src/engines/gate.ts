import type { Deadline } from './deadline.ts';

/** Lets at most `size` units in at a time, first come first served. */
export class Gate {
  #free: number;
  readonly #size: number;
  readonly #waiting: (() => void)[] = [];
  #idle: (() => void)[] = [];

  constructor(size: number) {
    this.#free = size;
    this.#size = size;
  }

  /** @throws DatabaseUnavailable when the deadline passes in the queue */
  async enter(deadline: Deadline): Promise<void> {
    if (this.#free > 0) {
      this.#free -= 1;
      return;
    }
    let admit: () => void = () => undefined;
    const turn = new Promise<void>((resolve) => {
      admit = resolve;
    });
    this.#waiting.push(admit);
    try {
      await deadline.race(turn);
    } catch (error) {
      const place = this.#waiting.indexOf(admit);
      if (place >= 0) this.#waiting.splice(place, 1);
      else this.leave(); // admitted in the same instant
      throw error;
    }
  }

  leave(): void {
    const next = this.#waiting.shift();
    if (next) {
      next(); // the place is handed on
      return;
    }
    this.#free += 1;
    if (this.#free === this.#size) for (const resolve of this.#idle.splice(0)) resolve();
  }

  /** Resolves when nobody is inside. */
  async idle(): Promise<void> {
    if (this.#free < this.#size) await new Promise<void>((resolve) => this.#idle.push(resolve));
  }
}

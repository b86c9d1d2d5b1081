import { DatabaseUnavailable } from '../faults.ts';

/** An instant after which a caller is answered, whatever the database does. */
export class Deadline {
  readonly #passed: Promise<never>;
  readonly #timer: NodeJS.Timeout;
  #fail: (error: Error) => void = () => undefined;
  readonly #ms: number;
  expired = false;

  constructor(ms: number, onPassed: () => void = () => undefined) {
    this.#ms = ms;
    this.#passed = new Promise<never>((_, reject) => {
      this.#fail = reject;
    });
    this.#passed.catch(() => undefined); // a deadline that nobody waits for any more
    this.#timer = setTimeout(() => {
      this.expired = true;
      onPassed();
      this.#fail(this.error(false));
    }, ms);
  }

  error(maybeDone: boolean): DatabaseUnavailable {
    return new DatabaseUnavailable(
      'deadline',
      `No answer from the database within ${this.#ms} ms.`,
      maybeDone,
    );
  }

  /** `work`, or the deadline's error if that comes first. */
  race<T>(work: Promise<T>): Promise<T> {
    return Promise.race([work, this.#passed]);
  }

  clear(): void {
    clearTimeout(this.#timer);
  }
}

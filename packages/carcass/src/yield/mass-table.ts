import type { Estimate } from './estimate.ts';

/** Expected masses by name, in mg. What is not there has none. */
export class MassTable implements Iterable<readonly [string, Estimate]> {
  readonly #indexOf: ReadonlyMap<string, number>;
  readonly #means: Float64Array;
  readonly #sds: Float64Array;

  /** @param shares with their squared coefficients of variation, in the order of the names */
  constructor(
    indexOf: ReadonlyMap<string, number>,
    shares: Float64Array,
    squaredCvs: Float64Array,
    side: { readonly mean: number; readonly squaredCv: number },
  ) {
    this.#indexOf = indexOf;
    this.#means = shares.map((share) => Math.round(side.mean * share));
    this.#sds = shares.map((share, at) => {
      const squared = (1 + side.squaredCv) * (1 + (squaredCvs[at] as number)) - 1;
      return Math.round(side.mean * share * Math.sqrt(squared));
    });
  }

  get(name: string): Estimate | undefined {
    const at = this.#indexOf.get(name);
    const mean = at === undefined ? 0 : (this.#means[at] as number);
    return mean > 0 ? { mean, sd: this.#sds[at as number] as number } : undefined;
  }

  *[Symbol.iterator](): Iterator<readonly [string, Estimate]> {
    for (const name of this.#indexOf.keys()) {
      const mass = this.get(name);
      if (mass) yield [name, mass];
    }
  }
}

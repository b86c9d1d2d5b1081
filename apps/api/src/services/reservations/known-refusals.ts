import type { NewHold } from '@flitchbook/contracts';
import type { OrderRecord } from '@flitchbook/db';
import type { Decision } from './decide.ts';

type Refused = Extract<Decision, { fits: false }>;
type Asked = Pick<NewHold | OrderRecord, 'lines' | 'shares'>;

/** What a claim asks for, without whose it is and what it costs. */
const shapeOf = ({ lines, shares }: Asked): string =>
  JSON.stringify([
    lines.map((line) => [
      line.speciesId,
      line.cut,
      line.portion,
      line.ask,
      line.sameAnimal,
      line.onlyAnimal,
      line.onlyHand,
      line.substitutes,
    ]),
    shares.map(({ speciesId, size, onlyAnimal, instructions }) => [
      speciesId,
      size,
      onlyAnimal,
      instructions,
    ]),
  ]);

const daysMax = 200;

/**
 * Proofs that a day at one version cannot serve a claim. Every change of the day raises its version, so a proof holds as
 * long as the version does, and two hundred people who ask for the last tenderloin cost one proof.
 */
export class KnownRefusals {
  readonly #days = new Map<string, { version: number; readonly proofs: Map<string, Refused> }>();

  /** whether anything is known of the day */
  has(dayId: string): boolean {
    return this.#days.has(dayId);
  }

  find(dayId: string, version: number, asked: Asked): Refused | undefined {
    const known = this.#days.get(dayId);
    const proof = known?.version === version ? known.proofs.get(shapeOf(asked)) : undefined;
    if (!proof) return undefined;
    // Lines of one shape may have other ids.
    const instead = proof.instead.map((line, nth) => ({
      ...line,
      lineId: asked.lines[nth]?.lineId ?? line.lineId,
    }));
    return { ...proof, instead };
  }

  note(dayId: string, version: number, asked: Asked, proof: Refused): void {
    const known = this.#days.get(dayId);
    if (known && known.version > version) return;
    const proofs = known?.version === version ? known.proofs : new Map<string, Refused>();
    proofs.set(shapeOf(asked), proof);
    this.#days.delete(dayId);
    this.#days.set(dayId, { version, proofs });
    const [oldest] = this.#days.keys();
    if (this.#days.size > daysMax && oldest !== undefined) this.#days.delete(oldest);
  }
}

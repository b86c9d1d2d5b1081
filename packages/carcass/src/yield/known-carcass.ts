import type { SpeciesFault } from '../check-species.ts';
import type { Species } from '../species.ts';
import type { Band, YieldProfile } from './yield-profile.ts';

/** What is known of an animal before it is cut. At least one weight. */
export interface KnownCarcass {
  readonly liveGrams?: number;
  readonly liveBy?: 'scale' | 'tape';
  readonly hotGrams?: number;
  readonly coldGrams?: number;
  /** id of each dressing element of the species: whether it hangs with the carcass */
  readonly dressing: Readonly<Record<string, boolean>>;
  readonly lastRibFatMm?: number;
  /** fat-free lean, percent of the carcass */
  readonly leanPercent?: number;
  readonly ribs?: number;
}

export interface KnownFault extends SpeciesFault {
  readonly value: unknown;
}

export interface KnownVerdict {
  /** with any of these nothing is predicted and nothing learned */
  readonly faults: readonly KnownFault[];
  /** odd, and worth a second look */
  readonly warnings: readonly KnownFault[];
}

const gramsPerPound = 453.59237;
const within = (value: number, { min, max }: { min: number; max: number }): boolean =>
  value >= min && value <= max;
const kg = (grams: number): string => `${(grams / 1000).toFixed(1)} kg`;
const percent = (value: number): string => `${value.toFixed(1)} %`;

/** " Perhaps pounds were meant", when the weight would be an ordinary one in the other unit. */
function otherUnit(grams: number, usual: { min: number; max: number }): string {
  if (grams > usual.max && within((grams / 1000) * gramsPerPound, usual)) return '. Were these pounds?';
  if (grams < usual.min && within((grams / gramsPerPound) * 1000, usual)) return '. Were these kilograms?';
  return '';
}

const weightFields = ['liveGrams', 'hotGrams', 'coldGrams'] as const;
type WeightField = (typeof weightFields)[number];
const weightNames: Readonly<Record<WeightField, string>> = {
  liveGrams: 'live weight',
  hotGrams: 'hot weight',
  coldGrams: 'cold weight',
};

class Verdict implements KnownVerdict {
  readonly faults: KnownFault[] = [];
  readonly warnings: KnownFault[] = [];
  readonly #species: Species;
  readonly #profile: YieldProfile;
  readonly #known: KnownCarcass;

  constructor(species: Species, profile: YieldProfile, known: KnownCarcass) {
    this.#species = species;
    this.#profile = profile;
    this.#known = known;
  }

  #refuse(at: string, value: unknown, says: string): void {
    this.faults.push({ at, value, says });
  }

  #checkBand(at: string, value: number | undefined, band: Band | undefined): void {
    if (value === undefined) return;
    if (!band) this.#refuse(at, value, `is not known to say anything of a ${this.#species.name}`);
    else if (!within(value, band)) this.#refuse(at, value, `must lie between ${band.min} and ${band.max}`);
  }

  checkWeight(field: WeightField): void {
    const value = this.#known[field];
    if (value === undefined) return;
    const live = field === 'liveGrams';
    const upTo = live ? this.#profile.dressingPercent.mean / 100 : 1;
    const scaleBand = ({ min, max }: { min: number; max: number }) => ({ min: min / upTo, max: max / upTo });
    const possible = scaleBand(this.#species.hangingGrams);
    const usual = scaleBand(this.#profile.usualHangingGrams);
    const name = weightNames[field];
    if (!Number.isSafeInteger(value)) this.#refuse(field, value, `${name} must be a whole number of grams`);
    else if (!within(value, possible))
      this.#refuse(
        field,
        value,
        `a ${name} of ${kg(value)} is none of a ${this.#species.name} (${kg(possible.min)} to ${kg(possible.max)})${otherUnit(value, usual)}`,
      );
    else if (!within(value, usual))
      this.warnings.push({
        at: field,
        value,
        says: `a ${name} of ${kg(value)} is seldom met${otherUnit(value, usual)}`,
      });
  }

  checkDressing(): void {
    const known = new Set(this.#profile.dressing.map(({ id }) => id));
    for (const { id, name } of this.#profile.dressing) {
      if (typeof this.#known.dressing[id] !== 'boolean')
        this.#refuse(
          `dressing.${id}`,
          this.#known.dressing[id],
          `say whether ${name} hangs with the carcass`,
        );
    }
    for (const id of Object.keys(this.#known.dressing))
      if (!known.has(id))
        this.#refuse(`dressing.${id}`, id, `the dressing of a ${this.#species.name} knows no ${id}`);
  }

  checkChain(): void {
    const { liveGrams, hotGrams, coldGrams, liveBy } = this.#known;
    if (liveGrams === undefined && hotGrams === undefined && coldGrams === undefined)
      this.#refuse('coldGrams', undefined, 'a weight is needed: live, hot or cold');
    if (hotGrams !== undefined && coldGrams !== undefined) {
      const lost = 100 * (1 - coldGrams / hotGrams);
      if (lost < 0)
        this.#refuse('hotGrams', hotGrams, `the hot weight is below the cold one (${kg(coldGrams)})`);
      else if (!within(lost, this.#profile.coolerBand))
        this.#refuse(
          'coldGrams',
          coldGrams,
          `the cooler would have taken ${percent(lost)} of the hot weight`,
        );
    }
    const hanging = hotGrams ?? coldGrams;
    if (liveGrams !== undefined && hanging !== undefined && liveBy !== 'tape') {
      const dressed = (100 * hanging) / liveGrams;
      if (!within(dressed, this.#profile.dressingBand))
        this.#refuse(
          'liveGrams',
          liveGrams,
          `live and hanging weight contradict each other: dressing would be ${percent(dressed)}`,
        );
    }
  }

  checkMeasures(): void {
    const { lastRibFatMm, leanPercent, ribs } = this.#known;
    this.#checkBand('lastRibFatMm', lastRibFatMm, this.#profile.lastRibFatMm?.band);
    this.#checkBand('leanPercent', leanPercent, this.#profile.leanPercent?.band);
    const { min, max } = this.#species.ribs;
    if (ribs !== undefined && (!Number.isInteger(ribs) || !within(ribs, { min, max })))
      this.#refuse('ribs', ribs, `ribs must be a whole number from ${min} to ${max}`);
  }

  /** Lean that the fat depth lets expect, by the printed slope of the unribbed equation: 21.3 lb of lean an inch. */
  checkAgainstEachOther(): void {
    const { lastRibFatMm, leanPercent } = this.#known;
    const fat = this.#profile.lastRibFatMm;
    const lean = this.#profile.leanPercent;
    const grams = this.#known.hotGrams ?? this.#known.coldGrams;
    if (!fat || !lean || lastRibFatMm === undefined || leanPercent === undefined || grams === undefined)
      return;
    const perMm = (100 * 21.3 * gramsPerPound) / 25.4 / grams;
    const expected = lean.reference.value - perMm * (lastRibFatMm - fat.reference.value);
    if (Math.abs(leanPercent - expected) > 10)
      this.#refuse(
        'leanPercent',
        leanPercent,
        `${percent(leanPercent)} lean contradicts ${lastRibFatMm} mm of fat, with which about ${percent(expected)} would be expected`,
      );
  }
}

/** What is wrong or odd with what is known of an animal. Pure. */
export function checkKnown(species: Species, profile: YieldProfile, known: KnownCarcass): KnownVerdict {
  const verdict = new Verdict(species, profile, known);
  for (const field of weightFields) verdict.checkWeight(field);
  verdict.checkDressing();
  verdict.checkChain();
  verdict.checkMeasures();
  if (verdict.faults.length === 0) verdict.checkAgainstEachOther();
  return { faults: verdict.faults, warnings: verdict.warnings };
}

import { show } from '../check-plan/plan-shape.ts';

/** Something wrong with a day, before anything is planned. */
export interface DayFault {
  /** path of the field: `lines[3].portion.um` */
  readonly at: string;
  readonly value: unknown;
  /** a sentence; sometimes a second one that starts with "Maybe" */
  readonly says: string;
  /** an error stops planning; a warning says what will come out other than expected */
  readonly level: 'error' | 'warning';
}

/** More than any shop needs in a day; beyond it something was keyed wrong, or somebody is trying the door. */
export const dayLimits = {
  animals: 1000,
  lines: 10_000,
  shares: 2000,
  locks: 20_000,
  substitutes: 20,
  pieces: 10_000,
  grams: 10_000_000,
  textLength: 200,
  priceMinorPerKg: 100_000_000,
  kerfUm: 5000,
  counterSteps: 50,
} as const;

/** Collects faults of a day; `at` is the place that each check is given. */
export class DayNotes {
  readonly faults: DayFault[] = [];

  error(at: string, value: unknown, says: string, maybe?: string): void {
    this.faults.push({ at, value, says: maybe ? `${says} Maybe ${maybe}` : says, level: 'error' });
  }

  warn(at: string, value: unknown, says: string, maybe?: string): void {
    this.faults.push({ at, value, says: maybe ? `${says} Maybe ${maybe}` : says, level: 'warning' });
  }

  text(at: string, value: unknown): void {
    const fits = typeof value === 'string' && value.trim().length > 0 && value.length <= dayLimits.textLength;
    if (!fits)
      this.error(at, value, `Must be text of 1 to ${dayLimits.textLength} characters, got ${show(value)}.`);
  }

  /** @returns whether it is a whole number within the limits, ends included */
  whole(at: string, value: unknown, min: number, max: number, maybe?: string): boolean {
    const fits = Number.isSafeInteger(value) && (value as number) >= min && (value as number) <= max;
    if (!fits)
      this.error(at, value, `Must be a whole number from ${min} to ${max}, got ${show(value)}.`, maybe);
    return fits;
  }

  oneOf(at: string, value: unknown, allowed: readonly string[]): boolean {
    const fits = typeof value === 'string' && allowed.includes(value);
    if (!fits) this.error(at, value, `Must be one of ${allowed.join(', ')}, got ${show(value)}.`);
    return fits;
  }

  trueOrFalse(at: string, value: unknown): void {
    if (typeof value !== 'boolean') this.error(at, value, `Must be true or false, got ${show(value)}.`);
  }

  /** @returns whether the name is an own key of the table */
  known(at: string, value: unknown, table: Readonly<Record<string, unknown>>, what: string): value is string {
    const fits = typeof value === 'string' && Object.hasOwn(table, value);
    if (!fits)
      this.error(at, value, `There is no ${what} called ${show(value)}.`, nearest(value, Object.keys(table)));
    return fits;
  }

  atMost(at: string, list: readonly unknown[], most: number): void {
    if (list.length > most) this.error(at, list.length, `At most ${most} are allowed, got ${list.length}.`);
  }

  /** Notes each id that an earlier entry of the list already has. */
  unique(ids: readonly { readonly at: string; readonly id: string }[], what: string): void {
    const first = new Map<string, string>();
    for (const { at, id } of ids) {
      const earlier = first.get(id);
      if (earlier === undefined) first.set(id, at);
      else this.error(at, id, `The ${what} ${show(id)} is already at ${earlier}.`);
    }
  }
}

const lettersOf = (text: string): string => text.toLowerCase().replaceAll(/[^a-z0-9]/g, '');

/** A name that differs in case, hyphens, a plural s, or is a part of what was given. */
function nearest(value: unknown, names: readonly string[]): string | undefined {
  if (typeof value !== 'string' || value.length < 3 || value.length > 60) return undefined;
  const wanted = lettersOf(value);
  const match =
    names.find((name) => lettersOf(name) === wanted) ??
    names.find((name) => lettersOf(name).replace(/s$/, '') === wanted.replace(/s$/, '')) ??
    names.find((name) => wanted.length > 3 && lettersOf(name).includes(wanted));
  return match === undefined ? undefined : `"${match}" was meant.`;
}

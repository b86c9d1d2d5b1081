import { Temporal } from 'temporal-polyfill';
import { type Ppm, partOf } from '../bill/money-rules.ts';

/** What happens when nobody comes, as the shop has set it. Hours and days count from the end of the window. */
export interface NoShowPolicy {
  readonly remindAfterHours: number;
  /** days of grace before fresh goods are frozen */
  readonly freezeAfterDays: number;
  /** days before the goods are for sale again */
  readonly releaseAfterDays: number;
  /** what the shop keeps of the deposit then */
  readonly keepDepositPpm: Ppm;
}

export type NoShowStep = 'remind' | 'freeze' | 'release';

export interface DueStep {
  readonly step: NoShowStep;
  /** ISO instant */
  readonly dueAt: string;
  readonly isDue: boolean;
}

/** The steps that are left, in order. Days are days of the shop's calendar, not 24 hours. */
export function noShowSteps(
  policy: NoShowPolicy,
  missed: {
    readonly endsAt: string;
    readonly now: string;
    readonly timeZone: string;
    readonly done: readonly NoShowStep[];
  },
): DueStep[] {
  const end = Temporal.Instant.from(missed.endsAt).toZonedDateTimeISO(missed.timeZone);
  const now = Temporal.Instant.from(missed.now);
  const all: readonly (readonly [NoShowStep, Temporal.ZonedDateTime])[] = [
    ['remind', end.add({ hours: policy.remindAfterHours })],
    ['freeze', end.add({ days: policy.freezeAfterDays })],
    ['release', end.add({ days: policy.releaseAfterDays })],
  ];
  return all
    .filter(([step]) => !missed.done.includes(step))
    .map(([step, at]) => {
      const due = at.toInstant();
      return { step, dueAt: due.toString(), isDue: Temporal.Instant.compare(due, now) <= 0 };
    });
}

/** What the shop keeps and gives back of a deposit when the goods are released. */
export function depositAfterRelease(
  policy: NoShowPolicy,
  depositMinor: number,
): { readonly keepMinor: number; readonly backMinor: number } {
  const keepMinor = partOf(depositMinor, policy.keepDepositPpm);
  return { keepMinor, backMinor: depositMinor - keepMinor };
}

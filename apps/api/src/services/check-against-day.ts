import { knownSpecies } from '@flitchbook/contracts';
import { checkDay } from '@flitchbook/plan';
import type { FieldFault } from '../refusals.ts';
import type { TravellingDay } from '../solve/day-solver.ts';

/** Where the part of a day that a request brings begins, as `checkDay` and the request call it. */
export interface Brought {
  /** prefix of the day's own path: "lines[3]" */
  readonly inDay: string;
  /** the same place in the request: "lines[0]"; empty for the request as a whole */
  readonly inRequest: string;
}

const errorsOf = (day: TravellingDay) =>
  checkDay({ ...day, species: knownSpecies }).filter(({ level }) => level === 'error');

/**
 * What `checkDay` finds in what a request brings, in the request's own words. What was wrong before is not the
 * caller's, and what will only come out short is no fault: neither is here.
 */
export function checkAgainstDay(
  before: TravellingDay,
  after: TravellingDay,
  brought: readonly Brought[],
): readonly FieldFault[] {
  const known = new Set(errorsOf(before).map(({ at, says }) => `${at} ${says}`));
  return errorsOf(after).flatMap(({ at, value, says }) => {
    const place = brought.find(
      ({ inDay }) => at === inDay || at.startsWith(`${inDay}.`) || at.startsWith(`${inDay}[`),
    );
    if (place)
      return [{ at: `${place.inRequest}${at.slice(place.inDay.length)}`.replace(/^\./, ''), value, says }];
    return known.has(`${at} ${says}`) ? [] : [{ at, value, says }];
  });
}

import { checkAnimals } from './check-day/animal-checks.ts';
import { checkLocks } from './check-day/choice-checks.ts';
import { type DayFault, DayNotes } from './check-day/day-faults.ts';
import { checkLines, checkShares } from './check-day/order-checks.ts';
import { checkShop } from './check-day/shop-checks.ts';
import type { CuttingDay } from './day.ts';

/**
 * Everything wrong with a day before it is planned, each with its field, its value and a sentence. Errors stop planning;
 * warnings do not: a line that no animal of the day can fill comes out short. An empty day is right.
 */
export function checkDay(day: CuttingDay): DayFault[] {
  const notes = new DayNotes();
  checkShop(notes, day);
  checkAnimals(notes, day);
  checkLines(notes, day);
  checkShares(notes, day);
  checkLocks(notes, day);
  return notes.faults;
}

import { checkBars } from './check-plan/bar-rules.ts';
import { checkPools } from './check-plan/bulk-rules.ts';
import { type DayIndex, indexDay } from './check-plan/day-index.ts';
import { holdingsOf } from './check-plan/holdings.ts';
import { checkIds, checkLines, checkMatches } from './check-plan/line-rules.ts';
import { checkLocks } from './check-plan/lock-rules.ts';
import {
  addReleases,
  checkBulk,
  checkItems,
  checkMinutes,
  checkRunMasses,
  checkSum,
} from './check-plan/mass-rules.ts';
import { checkPieces } from './check-plan/piece-rules.ts';
import type { Note, PlanFault } from './check-plan/plan-rules.ts';
import { planShapeFaults } from './check-plan/plan-shape.ts';
import { checkProof } from './check-plan/proof-rules.ts';
import { checkInstructions, checkShareOwns, checkShares } from './check-plan/share-rules.ts';
import { checkSingles } from './check-plan/single-rules.ts';
import { walkOperations } from './check-plan/walk-operations.ts';
import type { CuttingPlan, SidePlan } from './cutting-plan.ts';
import { type CuttingDay, sidesOf } from './day.ts';

/** The plan's sides by id, once it is sure that they are the day's. */
function matchSides(index: DayIndex, plan: CuttingPlan, note: Note): ReadonlyMap<string, SidePlan> {
  const found = new Map<string, SidePlan>();
  if (plan.dayId !== index.day.dayId)
    note('P1', 'dayId', `is "${plan.dayId}", the day is "${index.day.dayId}"`);
  for (const planned of plan.sides) {
    const at = `sides[${planned.sideId}]`;
    const known = index.sides.get(planned.sideId);
    if (!known) note('P1', at, 'is not a side of the day');
    else if (found.has(planned.sideId)) note('P1', at, 'is planned twice');
    else {
      found.set(planned.sideId, planned);
      if (planned.animalId !== known.animal.animalId)
        note('P1', `${at}.animalId`, `is "${planned.animalId}", the side is of "${known.animal.animalId}"`);
      if (planned.massMg !== known.side.massMg)
        note('P1', `${at}.massMg`, `is ${planned.massMg} mg, the side weighs ${known.side.massMg} mg`);
    }
  }
  for (const { sideId } of sidesOf(index.day))
    if (!found.has(sideId)) note('P1', `sides[${sideId}]`, 'is not planned');
  return found;
}

function checkSide(index: DayIndex, planned: SidePlan, note: Note): void {
  const known = index.sides.get(planned.sideId);
  if (!known) return;
  const { tools } = index.day;
  const at = `sides[${planned.sideId}]`;
  const expected = walkOperations(planned, known, at, note);
  const runs = checkBars(planned, known, expected, at, note);
  for (const run of runs) {
    addReleases(run, expected);
    checkPieces(run, known.species, tools, note);
    checkRunMasses(run, tools, expected, note);
  }
  checkSum(planned, at, note);
  checkInstructions(index, planned, runs, note);
  // A choice that is missing or wrong makes every sum after it wrong: one fault is enough.
  if (!expected.complete) return;
  checkItems(planned, expected, at, note);
  checkBulk(planned, expected, at, note);
  checkMinutes(planned, expected, at, note);
}

/**
 * Every rule that a plan breaks, in the order of its sides; none when it may be stored and printed.
 * Pure, and independent of how the plan was made. Any value may be given as the plan; the day has passed `checkDay`.
 */
export function checkPlan(day: CuttingDay, plan: CuttingPlan): PlanFault[] {
  const faults: PlanFault[] = planShapeFaults(plan);
  if (faults.length > 0) return faults;
  const note: Note = (rule, at, says) => faults.push({ rule, at, says });
  const index = indexDay(day);
  const sides = matchSides(index, plan, note);
  for (const planned of sides.values()) checkSide(index, planned, note);
  const holdings = holdingsOf(plan);
  checkSingles(index, plan, note);
  checkIds(holdings, note);
  checkMatches(index, holdings, note);
  checkLines(index, plan, holdings, note);
  checkPools(index, plan, note);
  checkShares(index, plan, note);
  checkShareOwns(index, plan, holdings, note);
  checkLocks(index, sides, note);
  // A broken plan is worth nothing certain.
  if (faults.length === 0) checkProof(day, plan, note);
  return faults;
}

import { z } from 'zod';
import { locksShape, travellingDayShape } from './cutting-day.ts';
import { cuttingPlanShape } from './cutting-plan.ts';
import { anyId, count, instant, listOf, localDate, storedId } from './parts.ts';
import { shopShape } from './sessions.ts';

export const dayStateShape = z.enum(['open', 'closed']);

const plannedVersion = count.nullable().meta({
  description: 'The version that the plan was made for; older than `version` when the plan is stale.',
});

/** POST /api/days */
export const newDayShape = z.strictObject({ date: localDate });
export type NewDay = z.infer<typeof newDayShape>;

export const daySummaryShape = z.strictObject({
  dayId: storedId,
  date: localDate,
  state: dayStateShape,
  version: count,
  plannedVersion,
  animals: count,
  orders: count,
  shortLines: count
    .nullable()
    .meta({ description: 'Lines that the plan leaves short; null without a plan.' }),
});
export type DaySummary = z.infer<typeof daySummaryShape>;

/** GET /api/days */
export const daysShape = z.strictObject({ days: listOf(daySummaryShape, 100_000) });
export type Days = z.infer<typeof daysShape>;

export const boardOrderShape = z.strictObject({
  orderId: storedId,
  number: count,
  owner: z.string(),
  note: z.string(),
  lineIds: listOf(anyId, 100_000),
  shareIds: listOf(anyId, 100_000),
});
export type BoardOrder = z.infer<typeof boardOrderShape>;

/** GET /api/days/:dayId/board, PUT .../locks, POST .../plan */
export const boardShape = z.strictObject({
  shop: shopShape,
  day: z.strictObject({
    dayId: storedId,
    date: localDate,
    state: dayStateShape,
    version: count,
    plannedVersion,
    plannedAt: instant.nullable(),
  }),
  cuttingDay: travellingDayShape,
  orders: listOf(boardOrderShape, 100_000),
  plan: cuttingPlanShape.nullable(),
});
export type Board = z.infer<typeof boardShape>;

/** PUT /api/days/:dayId/locks and POST /api/days/:dayId/what-if: every lock of the day from now on. */
export const settledLocksShape = z.strictObject({ locks: locksShape });
export type SettledLocks = z.infer<typeof settledLocksShape>;

/** Answer of POST /api/days/:dayId/what-if: nothing is stored. */
export const whatIfShape = z.strictObject({ plan: cuttingPlanShape });
export type WhatIf = z.infer<typeof whatIfShape>;

export * from './wire/animals.ts';
export { portionShape, readingShape } from './wire/carcass.ts';
export { lockShape, type TravellingDay, travellingDayShape } from './wire/cutting-day.ts';
export { cuttingPlanShape } from './wire/cutting-plan.ts';
export * from './wire/days.ts';
export * from './wire/orders.ts';
export * from './wire/problems.ts';
export * from './wire/sessions.ts';

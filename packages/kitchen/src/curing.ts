// Curing alone, for who does not need the solver of the sausage planner: the page in the browser.
export { type Caution, cautions } from './cautions.ts';
export * from './cure/cure-batch.ts';
export * from './cure/cure-calendar.ts';
export type { Bag, CureRequest } from './cure/cure-request.ts';
export * from './cure/cure-rules.ts';
export * from './cure/cured-weight.ts';
export * from './cure/reckon-cure.ts';
export { convert, type Substance, substanceNames } from './cure/substances.ts';
export { usualCureRules } from './cure/usual-cure-rules.ts';
export type { KitchenFault } from './faults.ts';

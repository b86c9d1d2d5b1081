export * from './cutting-plan.ts';
export * from './day.ts';
export * from './goals.ts';
export * from './nominal.ts';

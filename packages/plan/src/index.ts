export * from './cutting-plan.ts';
export * from './day.ts';

export * from './customers.ts';
export * from './day.ts';
export * from './orders.ts';
export * from './plan.ts';
export * from './record.ts';
export * from './shop.ts';

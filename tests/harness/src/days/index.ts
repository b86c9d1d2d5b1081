export { type DayWish, madeDay } from './made-day.ts';
export { writtenDay } from './written-day.ts';

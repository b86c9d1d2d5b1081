import { expect, it } from 'vitest';
import { routeOf } from './route.ts';

it.each([
  ['/', { page: 'days' }],
  ['/yields', { page: 'yields' }],
  ['/curing', { page: 'curing' }],
  ['/yields/hog', { page: 'unknown' }],
  ['/days/d1', { page: 'board', dayId: 'd1' }],
  ['/days/d1/', { page: 'board', dayId: 'd1' }],
  ['/days/d1/new-order', { page: 'new-order', dayId: 'd1' }],
  ['/days/d1/other', { page: 'unknown' }],
  ['/days', { page: 'unknown' }],
  ['/elsewhere', { page: 'unknown' }],
  ['/days/d1/new-order/more', { page: 'unknown' }],
  ['/days/%E0%A4%A', { page: 'unknown' }],
])('%s', (path, route) => {
  expect(routeOf(path)).toEqual(route);
});

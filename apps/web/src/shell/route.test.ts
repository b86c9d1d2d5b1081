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
  ['/days/d1/watch', { page: 'watch', dayId: 'd1' }],
  ['/days/d1/other', { page: 'unknown' }],
  ['/days', { page: 'unknown' }],
  ['/elsewhere', { page: 'unknown' }],
  ['/days/d1/new-order/more', { page: 'unknown' }],
  ['/days/%E0%A4%A', { page: 'unknown' }],
  ['/yours', { page: 'coming' }],
  ['/yours/way-in', { page: 'way-in' }],
  ['/yours/orders', { page: 'own-orders' }],
  ['/yours/orders/o1', { page: 'own-order', orderId: 'o1' }],
  ['/yours/days/d1/cuts/hog/rib-chop', { page: 'order-cut', dayId: 'd1', speciesId: 'hog', cut: 'rib-chop' }],
  ['/yours/days/d1/half-or-whole', { page: 'half-or-whole', dayId: 'd1' }],
  ['/yours/days/d1', { page: 'unknown' }],
  ['/yours/days/d1/cuts/hog', { page: 'unknown' }],
  ['/yours/days/d1/cuts/hog/rib-chop/more', { page: 'unknown' }],
  ['/yours/orders/%E0%A4%A', { page: 'unknown' }],
])('%s', (path, route) => {
  expect(routeOf(path)).toEqual(route);
});

it('takes the token of a mail from behind the hash sign, and nothing that cannot be one', () => {
  expect(routeOf('/', '#/link/abc_-9')).toEqual({ page: 'by-link', token: 'abc_-9' });
  expect(routeOf('/', '#/link/<b>')).toEqual({ page: 'days' });
  expect(routeOf('/yours', '#content')).toEqual({ page: 'coming' });
});

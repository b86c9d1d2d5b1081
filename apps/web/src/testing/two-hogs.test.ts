import { checkDay, checkPlan } from '@flitchbook/plan';
import { expect, it } from 'vitest';
import { day, plan } from './two-hogs.ts';

it('the day that the views are tested on keeps every rule of a plan', () => {
  expect(checkDay(day)).toEqual([]);
  expect(checkPlan(day, plan)).toEqual([]);
});

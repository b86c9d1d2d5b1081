import { listDaysOpenToCustomers } from '@flitchbook/db';
import { done } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** Days that customers may ask for something of, by date. */
export const listOfferedDays = async (ctx: Ctx) =>
  authorise(ctx, 'days.offered') ??
  look(ctx.db, async (tx) => done(await listDaysOpenToCustomers(tx, ctx.actor.shopId)));

import type { NewHold } from '@flitchbook/contracts';
import { done, type Instead, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { checkOrder } from '../orders/take.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';
import { asDemand } from './decide.ts';
import { decideClaim, orderFrom } from './hold.ts';
import { mayAsk, readDayIn } from './read-day.ts';
import { depositOf, expectedMinor } from './shop-rules.ts';

/** What holding an order would come to at this moment. It promises nothing. */
export interface Quote {
  readonly fits: boolean;
  /** where it fits: without moving anything, or by planning the day anew */
  readonly how: 'laid-in' | 'planned-anew' | null;
  /** at expected weights and the shop's prices */
  readonly expectedMinor: number;
  readonly depositMinor: number;
  readonly holdSeconds: number;
  /** where it does not fit: what would */
  readonly instead: readonly Instead[];
  readonly says: string | null;
}

/** Says what an order would come to and whether the day has room for it. Stores nothing. */
export async function quoteOrder(ctx: Ctx, dayId: string, input: NewHold): Promise<Outcome<Quote>> {
  const refusal = authorise(ctx, 'reservations.quote');
  if (refusal) return refusal;
  const view = await look(ctx.db, (tx) => readDayIn(tx, ctx, dayId));
  if (!view.ok) return view;
  const may = mayAsk(ctx, view.value);
  if (!may.ok) return may;
  const { stored, rules } = view.value;
  const order = orderFrom(ctx, view.value, input, input.orderId ?? ctx.ids.newId());
  const checked = checkOrder(stored.cuttingDay, order);
  if (!checked.ok) return checked;
  const decided = await decideClaim(ctx, view.value, { order, input });
  if (!decided.ok) return decided;
  const expected = expectedMinor(stored.cuttingDay, asDemand(order));
  const terms = {
    expectedMinor: expected,
    depositMinor: depositOf(rules, expected),
    holdSeconds: rules.holdSeconds,
  };
  const { value } = decided;
  if (value.fits) return done({ ...terms, fits: true, how: value.how, instead: [], says: null });
  return done({ ...terms, fits: false, how: null, instead: value.instead, says: value.says });
}

import type { NewHold } from '@flitchbook/contracts';
import { findShop } from '@flitchbook/db';
import type { Shortfall } from '@flitchbook/plan';
import { done, type Instead, type Outcome } from '../../refusals.ts';
import { bookSettingsIn } from '../book-settings/read.ts';
import type { Ctx } from '../ctx.ts';
import { checkOrder } from '../orders/take.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, look } from '../transact.ts';
import { asDemand } from './decide.ts';
import { forWhoAsks } from './for-customers.ts';
import { decideClaim, orderFrom } from './hold.ts';
import { likelyOf, wholeOf } from './likely.ts';
import { mayAsk, readDayIn } from './read-day.ts';
import { depositOf, expectedMinor } from './shop-rules.ts';

/** What holding an order would come to at this moment. It promises nothing. */
export interface Quote {
  readonly fits: boolean;
  /** where it fits: without moving anything, or by planning the day anew */
  readonly how: 'laid-in' | 'planned-anew' | null;
  /** at expected weights and the shop's prices */
  readonly expectedMinor: number;
  /** the range that the shop says before the scale has spoken */
  readonly fromMinor: number;
  readonly toMinor: number;
  readonly fromGrams: number;
  readonly toGrams: number;
  readonly depositMinor: number;
  readonly holdSeconds: number;
  /** where it does not fit: what would */
  readonly instead: readonly Instead[];
  readonly says: string | null;
  readonly why: Shortfall['kind'] | null;
}

/** Says what an order would come to and whether the day has room for it. Stores nothing. */
export async function quoteOrder(ctx: Ctx, dayId: string, input: NewHold): Promise<Outcome<Quote>> {
  const refusal = authorise(ctx, 'reservations.quote');
  if (refusal) return refusal;
  const view = await look(ctx.db, async (tx) => {
    const day = await readDayIn(tx, ctx, dayId);
    const shop = await findShop(tx, ctx.actor.shopId);
    if (!day.ok || !shop) return day.ok ? dayUnknown(dayId) : day;
    const { settings } = await bookSettingsIn(tx, shop);
    return done({ ...day.value, swingPpm: settings.money.estimateSwingPpm });
  });
  if (!view.ok) return view;
  const may = mayAsk(ctx, view.value);
  if (!may.ok) return may;
  const { stored, rules, swingPpm } = view.value;
  const order = orderFrom(ctx, view.value, input, input.orderId ?? ctx.ids.newId());
  const checked = checkOrder(stored.cuttingDay, order);
  if (!checked.ok) return checked;
  const decided = await decideClaim(ctx, view.value, { order, input });
  if (!decided.ok) return decided;
  const asked = asDemand(order);
  const expected = expectedMinor(stored.cuttingDay, asked);
  const sharesMinor = expectedMinor(stored.cuttingDay, { lines: [], shares: asked.shares });
  const terms = {
    expectedMinor: expected,
    ...wholeOf(likelyOf(stored.cuttingDay, asked, swingPpm), sharesMinor, swingPpm),
    depositMinor: depositOf(rules, expected),
    holdSeconds: rules.holdSeconds,
  };
  const { value } = decided;
  if (value.fits) return done({ ...terms, fits: true, how: value.how, instead: [], says: null, why: null });
  const { instead, says, why } = forWhoAsks(ctx.actor, value);
  return done({ ...terms, fits: false, how: null, instead, says, why });
}

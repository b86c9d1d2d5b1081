import { type BookSettings, localDateAt, spanOf, windowsFrom } from '@flitchbook/books';
import type { OrderPromise } from '@flitchbook/contracts';
import { listPickUps, type Shop, type Tx } from '@flitchbook/db';
import type { Ctx } from '../ctx.ts';

const daysAhead = 14;
const pickUpsMax = 2000;

interface Asked {
  readonly shop: Shop;
  readonly settings: BookSettings;
  /** local date of the cutting: nothing is ready before */
  readonly date: string;
  /** its own pick-up takes no room from it */
  readonly orderId: string;
}

/** The shop's windows from the cutting or today on, whichever is later, that have room and have not begun. */
export async function freeWindows(
  tx: Tx,
  ctx: Ctx,
  { shop, settings, date, orderId }: Asked,
): Promise<OrderPromise['windows']> {
  const now = ctx.clock().toISOString();
  const { timeZone } = shop;
  const today = localDateAt(now, timeZone);
  const from = date > today ? date : today;
  const taken = await listPickUps(tx, shop.shopId, now, pickUpsMax);
  return windowsFrom(settings.pickUp.weekly, { date: from, days: daysAhead, timeZone }).flatMap((window) => {
    const span = spanOf(window, timeZone);
    const isThere = (other: (typeof taken)[number]): boolean =>
      other.orderId !== orderId &&
      other.date === window.date &&
      other.fromTime === window.from &&
      other.toTime === window.to;
    const free = window.most - taken.filter(isThere).length;
    const { date: day, from: begins, to } = window;
    return span.ok && span.value.startsAt > now && free > 0 ? [{ date: day, from: begins, to, free }] : [];
  });
}

import { createHash } from 'node:crypto';
import { calendarFeed } from '@flitchbook/books';
import {
  addCalendarFeed,
  findCalendarFeed,
  findOrder,
  findShop,
  listPickUps,
  revokeCalendarFeeds,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import { actAs, type Ctx, type Services } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look, transact } from '../transact.ts';

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');
const pickUpsMax = 2000;

/** Makes an address that shows the shop's pick-ups to whoever knows it, until it is taken back. */
export async function makeFeed(ctx: Ctx, name: string): Promise<Outcome<{ readonly address: string }>> {
  const refusal = authorise(ctx, 'feeds.make');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  const token = ctx.ids.newToken();
  return transact(ctx.db, async (tx) => {
    await addCalendarFeed(tx, { shopId, tokenHash: hashOf(token), name, madeBy: personId });
    return done({ address: `/api/calendar/${shopId}/${token}.ics` });
  });
}

export async function revokeFeeds(ctx: Ctx): Promise<Outcome<{ readonly revoked: number }>> {
  const refusal = authorise(ctx, 'feeds.make');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  if (personId === null) return done({ revoked: 0 });
  return transact(ctx.db, async (tx) => done({ revoked: await revokeCalendarFeeds(tx, shopId, personId) }));
}

/** The feed itself: pick-ups of the last month and all to come. An unknown and a revoked address look alike. */
export async function readFeed(services: Services, shopId: string, token: string): Promise<Outcome<string>> {
  const ctx = actAs(services, { shopId, personId: null, role: 'counter' });
  return look(ctx.db, async (tx) => {
    const name = await findCalendarFeed(tx, shopId, hashOf(token));
    const shop = await findShop(tx, shopId);
    if (name === undefined || !shop) return refused('request.not-found', 'There is no such calendar.');
    const from = new Date(services.clock().getTime() - 31 * 86_400_000).toISOString();
    const pickUps = await listPickUps(tx, shopId, from, pickUpsMax);
    const entries = [];
    for (const { orderId, startsAt, endsAt, place, changedAt } of pickUps) {
      const order = await findOrder(tx, shopId, orderId);
      // A number, not a name: whoever finds the address learns little.
      entries.push({
        id: `${orderId}@${shopId}`,
        title: `Order ${order?.number ?? ''}`,
        place,
        startsAt,
        endsAt,
        changedAt,
      });
    }
    return done(calendarFeed(`${shop.name}: ${name}`, entries));
  });
}

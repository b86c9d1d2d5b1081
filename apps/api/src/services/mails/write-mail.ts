import {
  addMail,
  createSignInLink,
  findPerson,
  findShop,
  type OrderRecord,
  type Shop,
  type Tx,
} from '@flitchbook/db';
import type { Ctx } from '../ctx.ts';
import { tokenHash } from '../sessions/token.ts';

/** Links in mails are good for so long: orders are weeks ahead of their day. */
const linkSeconds = 60 * 86_400;

export type MailKind =
  | 'order.queued'
  | 'order.held'
  | 'order.reserved'
  | 'order.promoted'
  | 'order.lapsed'
  | 'order.released'
  | 'order.cancelled'
  | 'order.short'
  | 'order.link'
  | 'account.link';

interface Told {
  readonly shop: Shop;
  readonly number: number | null;
  /** in the shop's own time; null where nothing is held */
  readonly until: string | null;
}

const words: Readonly<Record<MailKind, (told: Told) => readonly [subject: string, text: string]>> = {
  'order.queued': ({ number }) => [
    `Order ${number}: in the queue`,
    'The day has no room for your order now. It waits in the queue in the order in which orders came; you get a mail when there is room.',
  ],
  'order.held': ({ number, until }) => [
    `Order ${number}: held until ${until}`,
    `What you asked for is held for you until ${until}. Reserve it before then, or it goes back to the shop.`,
  ],
  'order.reserved': ({ number }) => [
    `Order ${number}: reserved`,
    'Your order is reserved: every piece of it is in the cutting plan of the day. Weights are estimates until the scale has spoken.',
  ],
  'order.promoted': ({ number, until }) => [
    `Order ${number}: there is room, held until ${until}`,
    `There is room for your order. It is held for you until ${until}. Reserve it before then, or the next in the queue gets it.`,
  ],
  'order.lapsed': ({ number }) => [
    `Order ${number}: the hold has lapsed`,
    'The time to reserve has passed, and what was held has gone back to the shop. You may ask for it again.',
  ],
  'order.released': ({ number }) => [`Order ${number}: released`, 'Your order is released, as you asked.'],
  'order.cancelled': ({ number }) => [
    `Order ${number}: cancelled`,
    'The shop has cancelled your order. Nothing of it will be cut. Ask the shop if you did not expect this.',
  ],
  'order.short': ({ number }) => [
    `Order ${number}: we cannot keep all of it`,
    'The carcasses gave less than was planned, and a part of your order cannot be cut. The shop will talk to you about it.',
  ],
  'order.link': ({ number }) => [
    `Order ${number}: your link`,
    'With the link below you see and change your order.',
  ],
  'account.link': ({ shop }) => [
    `Your way in at ${shop.name}`,
    'With the link below you come in without a password.',
  ],
};

/** An instant as the shop's clock shows it. */
const inShopTime = (instant: string, { timeZone }: Shop): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, dateStyle: 'medium', timeStyle: 'short' }).format(
    new Date(instant),
  );

interface Addressee {
  readonly personId: string;
  readonly order: Pick<OrderRecord, 'orderId' | 'number' | 'heldUntil'> | null;
}

/** Puts a mail with a fresh link into the outbox, in the transaction of what it tells. Staff come in by password only. */
export async function writeMail(tx: Tx, ctx: Ctx, kind: MailKind, to: Addressee): Promise<void> {
  const { shopId } = ctx.actor;
  const shop = await findShop(tx, shopId);
  const person = await findPerson(tx, shopId, to.personId);
  if (!shop || person?.role !== 'customer') return;
  const token = ctx.ids.newToken();
  const orderId = to.order?.orderId ?? null;
  await createSignInLink(tx, {
    shopId,
    linkId: ctx.ids.newId(),
    tokenHash: tokenHash(token),
    personId: to.personId,
    orderId,
    lifetimeSeconds: linkSeconds,
  });
  const heldUntil = to.order?.heldUntil ?? null;
  const until = heldUntil === null ? null : inShopTime(heldUntil, shop);
  const [subject, text] = words[kind]({ shop, number: to.order?.number ?? null, until });
  // The token stands behind the hash sign: a browser sends it to nobody, and no log of a server holds it.
  const link = `${ctx.shopAddress}/#/link/${token}`;
  const body = `${person.name},\n\n${text}\n\n${link}\n\n${shop.name}\n`;
  await addMail(tx, shopId, { mailId: ctx.ids.newId(), kind, orderId, toEmail: person.email, subject, body });
}

/** Tells an order's own customer, where the order has one. */
export async function tellOwner(tx: Tx, ctx: Ctx, kind: MailKind, order: OrderRecord): Promise<void> {
  if (order.personId !== null) await writeMail(tx, ctx, kind, { personId: order.personId, order });
}

import {
  addMail,
  createSignInLink,
  findDay,
  findPerson,
  findShop,
  languageOf,
  type OrderRecord,
  type Shop,
  type Tx,
} from '@flitchbook/db';
import type { Ctx } from '../ctx.ts';
import { tokenHash } from '../sessions/token.ts';
import { type MailContent, type MailList, mailHtml, mailText } from './lay-mail.ts';
import { askedList, type MailVoice } from './mail-lists.ts';
import { english, type MailKind, type MailWords, spanish } from './mail-words.ts';

/** Links in mails are good for so long: orders are weeks ahead of their day. */
const linkSeconds = 60 * 86_400;

/** An instant as the shop's clock shows it. */
const inShopTime = (instant: string, { timeZone }: Shop, { tag }: MailWords): string =>
  new Intl.DateTimeFormat(tag === 'en' ? 'en-GB' : tag, {
    timeZone,
    dateStyle: 'medium',
    timeStyle: 'short',
  }).format(new Date(instant));

const dateSaid = (date: string, { tag }: MailWords): string =>
  new Intl.DateTimeFormat(tag, { timeZone: 'UTC', dateStyle: 'full' }).format(new Date(`${date}T12:00:00Z`));

/** Mails with raw meat in them, or about to be: they say how it is kept and cooked. */
const cautious: ReadonlySet<MailKind> = new Set(['order.reserved', 'order.ready', 'order.receipt']);
/** Mails that say what the order asks for. */
const listsOrder: ReadonlySet<MailKind> = new Set([
  'order.queued',
  'order.held',
  'order.reserved',
  'order.promoted',
]);

function cautionsIn(kind: MailKind, words: MailWords): MailContent['cautions'] {
  if (!cautious.has(kind)) return null;
  return {
    title: words.cautions,
    items: [
      { says: words.cook, source: 'USDA, 2011' },
      { says: words.cold, source: 'FoodSafety.gov' },
      { says: words.localRules, source: 'FDA Food Code' },
    ],
  };
}

interface Addressee {
  readonly personId: string;
  readonly order: OrderRecord | null;
  /** what else is to be told */
  readonly lists?: (voice: MailVoice) => readonly MailList[];
}

/** Puts a mail with a fresh link into the outbox, in the transaction of what it tells. Staff come in by password only. */
export async function writeMail(tx: Tx, ctx: Ctx, kind: MailKind, to: Addressee): Promise<void> {
  const { shopId } = ctx.actor;
  const { personId, order, lists = () => [] } = to;
  const shop = await findShop(tx, shopId);
  const person = await findPerson(tx, shopId, personId);
  if (!shop || person?.role !== 'customer') return;
  const words = (await languageOf(tx, shopId, personId)) === 'es' ? spanish : english;
  const token = ctx.ids.newToken();
  const orderId = order?.orderId ?? null;
  await createSignInLink(tx, {
    shopId,
    linkId: ctx.ids.newId(),
    tokenHash: tokenHash(token),
    personId,
    orderId,
    lifetimeSeconds: linkSeconds,
  });
  const day = order ? await findDay(tx, shopId, order.dayId) : undefined;
  const voice = { words, shop };
  const [subject, text] = words.kinds[kind]({
    shopName: shop.name,
    number: order?.number ?? null,
    day: day ? dateSaid(day.date, words) : '',
    until: order?.heldUntil ? inShopTime(order.heldUntil, shop, words) : null,
  });
  const content: MailContent = {
    language: words.tag,
    subject,
    greeting: words.greeting(person.name),
    text,
    lists: [...(order && listsOrder.has(kind) ? [askedList(voice, order)] : []), ...lists(voice)],
    // The token stands behind the hash sign: a browser sends it to nobody, and no log of a server holds it.
    link: { says: order ? words.openOrder : words.openShop, url: `${ctx.shopAddress}/#/link/${token}` },
    cautions: cautionsIn(kind, words),
    signature: shop.name,
  };
  await addMail(tx, shopId, {
    mailId: ctx.ids.newId(),
    kind,
    orderId,
    toEmail: person.email,
    subject,
    body: mailText(content),
    html: mailHtml(content),
  });
}

/** Tells an order's own customer, where the order has one. */
export async function tellOwner(
  tx: Tx,
  ctx: Ctx,
  kind: MailKind,
  order: OrderRecord,
  lists?: Addressee['lists'],
): Promise<void> {
  const { personId } = order;
  if (personId !== null) await writeMail(tx, ctx, kind, { personId, order, ...(lists && { lists }) });
}

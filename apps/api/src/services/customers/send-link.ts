import { createPerson, findSignIn, forShop, setLanguage } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import { actAs, type Ctx, type Services } from '../ctx.ts';
import { tellOwner, writeMail } from '../mails/write-mail.ts';
import { note } from '../reservations/commit.ts';
import { ownOrder } from '../reservations/own-order.ts';
import { authorise } from '../roles.ts';
import { theShop } from '../shops/the-shop.ts';
import { look, transact } from '../transact.ts';

/** Sends an order's customer a fresh link to it. */
export async function sendOrderLink(ctx: Ctx, orderId: string): Promise<Outcome<null>> {
  const refusal = authorise(ctx, 'links.send');
  if (refusal) return refusal;
  return transact(ctx.db, async (tx) => {
    const order = await ownOrder(tx, ctx, orderId);
    if (!order.ok) return order;
    const { dayId, personId } = order.value;
    if (personId === null)
      return refused('order.unknown', 'The order belongs to no customer with an address.');
    await tellOwner(tx, ctx, 'order.link', order.value);
    await note(tx, ctx, { dayId, orderId, kind: 'link.sent', action: 'link.send', facts: {} });
    return done(null);
  });
}

export interface Newcomer {
  readonly email: string;
  readonly name: string;
  /** of the mails, for somebody who is new */
  readonly language?: 'en' | 'es';
}

/**
 * Lets somebody in who has nothing but an address: the link goes there. The answer is the same whether or not the address
 * is known; to an address of the shop's own people nothing is sent.
 */
export async function welcome(
  services: Services,
  { email, name, language }: Newcomer,
): Promise<Outcome<null>> {
  const shop = await theShop(services);
  if (!shop.ok) return shop;
  if (!shop.value) return done(null);
  const { shopId } = shop.value;
  const ctx = actAs(services, { shopId, personId: null, role: 'counter' });
  const address = email.trim().toLowerCase();
  const known = await look(forShop(services.db, shopId), async (tx) =>
    done(await findSignIn(tx, shopId, address)),
  );
  if (!known.ok) return known;
  const welcomed = await transact(ctx.db, async (tx) => {
    const personId = known.value?.person.personId ?? ctx.ids.newId();
    if (!known.value) {
      await createPerson(tx, {
        shopId,
        personId,
        email: address,
        name,
        role: 'customer',
        passwordHash: null,
      });
      if (language) await setLanguage(tx, shopId, personId, language);
    }
    await writeMail(tx, ctx, 'account.link', { personId, order: null });
    return done(null);
  });
  // The same address twice in one moment: the other request sends the mail.
  return !welcomed.ok && welcomed.type === 'person.already-there' ? done(null) : welcomed;
}

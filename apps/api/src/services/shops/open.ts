import {
  appendAudit,
  appendLedger,
  createPerson,
  createShop,
  forShop,
  listShops,
  type Shop,
  type Tx,
} from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Services } from '../ctx.ts';
import { transact } from '../transact.ts';

/** Who may do everything in a new shop, and so let the others in. */
export interface FirstOwner {
  readonly name: string;
  readonly email: string;
  readonly password: string;
}

type Opened = Pick<Services, 'db' | 'ids' | 'passwords'>;

async function letIn(
  tx: Tx,
  shopId: string,
  person: { personId: string; name: string; email: string; passwordHash: string },
): Promise<void> {
  const { personId } = person;
  await createPerson(tx, { ...person, shopId, role: 'owner' });
  const facts = { role: 'owner' };
  await appendAudit(tx, { shopId, personId: null, action: 'person.add', subject: personId, facts });
}

/**
 * Opens the shop of an empty database, with its first owner or nobody yet. Not for callers from outside: nobody can be
 * signed in before it.
 */
export async function openShop(
  { db, ids, passwords }: Opened,
  input: Omit<Shop, 'shopId'>,
  owner?: FirstOwner,
): Promise<Outcome<Shop>> {
  const shop = { ...input, shopId: ids.newId() };
  const { shopId } = shop;
  const person = owner && {
    personId: ids.newId(),
    name: owner.name,
    email: owner.email,
    passwordHash: await passwords.hash(owner.password),
  };
  return transact(forShop(db, shopId), async (tx) => {
    const [first] = await listShops(tx);
    if (first) return refused('shop.already-open', `There is a shop already: ${first.name}.`);
    await createShop(tx, shop);
    await appendLedger(tx, {
      shopId,
      kind: 'shop.opened',
      dayId: null,
      orderId: null,
      personId: null,
      facts: {},
    });
    await appendAudit(tx, { shopId, personId: null, action: 'shop.open', subject: shopId, facts: {} });
    if (person) await letIn(tx, shopId, person);
    return done(shop);
  });
}

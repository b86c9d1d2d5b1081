// A process of its own for the folder tests: takes orders for ever and says each one when it is acknowledged.

import { asOwner } from '../engines/engine.ts';
import { migrate } from '../migrate.ts';
import { openDatabase } from '../open.ts';
import { addOrder } from '../queries/orders.ts';
import { inTransaction } from '../transaction.ts';
import { inventShop, newId, order, touched } from './invented-shop.ts';

const folder = process.argv[2];
if (folder === undefined) throw new Error('which folder?');
const db = asOwner(await openDatabase({ engine: 'folder', folder, clock: { now: () => new Date() } }));
await migrate(db);
const shop = await inventShop(db);
process.stdout.write(`${shop.shopId}\n`);
for (;;) {
  const orderId = newId();
  await inTransaction(db, async (tx) => addOrder(tx, await touched(tx, shop), order(orderId)));
  process.stdout.write(`${orderId}\n`);
}

import type { Database } from '@flitchbook/db';
import { rowsOfShop } from '@flitchbook/db/testing';
import { bookAnimal } from '../../apps/api/src/services/animals/book.ts';
import { takePayment } from '../../apps/api/src/services/bills/take-payment.ts';
import { actAs, type Services } from '../../apps/api/src/services/ctx.ts';
import { openDay } from '../../apps/api/src/services/days/open.ts';
import { makeFeed } from '../../apps/api/src/services/exports/feeds.ts';
import { startRun } from '../../apps/api/src/services/labels/runs.ts';
import { listDayPacks } from '../../apps/api/src/services/packs/list.ts';
import { weighPack } from '../../apps/api/src/services/packs/weigh.ts';
import { addPerson } from '../../apps/api/src/services/people/add.ts';
import { keepPlanned } from '../../apps/api/src/services/plans/keep.ts';
import { holdOrder } from '../../apps/api/src/services/reservations/hold.ts';
import { reserveOrder } from '../../apps/api/src/services/reservations/reserve.ts';
import { animal } from '../../apps/api/src/testing/bodies.ts';
import { must } from '../../apps/api/src/testing/test-shop.ts';

/** Stands in every text of whoever is not to be seen. */
export interface Marked {
  readonly mark: string;
  readonly shopId: string;
}

const onceOnly = (services: Services) => ({
  key: services.ids.newId(),
  route: 'test',
  request: null,
  status: 201 as const,
});

/** A customer of a shop whose every word carries the mark. */
export async function markedCustomer(services: Services, { mark, shopId }: Marked): Promise<string> {
  const owner = actAs(services, { shopId, personId: null, role: 'owner' });
  const email = `${mark.toLowerCase()}@guest.example`;
  const person = { name: `${mark} Vord`, role: 'customer' as const, password: 'fourteen hooks in a row' };
  return must(await addPerson(owner, { ...person, email })).personId;
}

/** An order of that customer, reserved, on a day. */
export async function markedOrder(
  services: Services,
  { mark, shopId }: Marked,
  { personId, dayId }: { readonly personId: string; readonly dayId: string },
): Promise<string> {
  const ctx = actAs(services, { shopId, personId, role: 'customer' });
  const lines = [{ cut: 'tenderloin', portion: { by: 'whole' as const }, ask: { pieces: 1 } }];
  const input = { owner: `${mark} Vord`, note: `${mark}: tied twice`, lines, shares: [] };
  const held = must(await holdOrder(ctx, { dayId, input, key: onceOnly(services) })).body;
  must(await reserveOrder(ctx, held.orderId, onceOnly(services)));
  return held.orderId;
}

/** A shop with something of everything: two days, a weighed pack, a label run, money, a feed of pick-ups. */
export async function fillWithMarks(services: Services, marked: Marked): Promise<void> {
  const { shopId, mark } = marked;
  const owner = actAs(services, { shopId, personId: null, role: 'owner' });
  const personId = await markedCustomer(services, marked);
  const { dayId } = must(await openDay(owner, { date: '2027-02-02' }, onceOnly(services))).body;
  must(await bookAnimal(owner, dayId, animal({ name: `${mark} hog` }), onceOnly(services)));
  const orderId = await markedOrder(services, marked, { personId, dayId });
  must(await keepPlanned(owner, dayId));
  const [toMake] = must(await listDayPacks(owner, dayId)).toMake;
  if (!toMake) throw new Error('nothing is to be packed');
  const weight = { text: (toMake.expectedMg / 453_592.37).toFixed(2), unit: 'lb' as const };
  const scale = { key: toMake.key, gross: weight, tare: { text: '0.00', unit: 'lb' as const } };
  const pack = must(await weighPack(owner, dayId, scale, onceOnly(services))).body;
  must(await startRun(owner, { packIds: [pack.packId] }, onceOnly(services)));
  const deposit = { kind: 'deposit' as const, method: 'cash' as const, amountMinor: 500 };
  must(await takePayment(owner, orderId, deposit, onceOnly(services)));
  must(await makeFeed(actAs(services, { shopId, personId, role: 'owner' }), `${mark} calendar`));
}

/** Ids of a shop by the name that a route gives them: dayId, packId, ... */
export async function idsOfShop(
  db: Database,
  shopId: string,
): Promise<ReadonlyMap<string, readonly string[]>> {
  const ids = new Map<string, Set<string>>();
  for (const text of (await rowsOfShop(db, shopId)).values()) {
    for (const row of JSON.parse(text) as Record<string, unknown>[]) {
      for (const [column, value] of Object.entries(row)) {
        if (!column.endsWith('_id') || typeof value !== 'string') continue;
        const name = column.replaceAll(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
        ids.set(name, (ids.get(name) ?? new Set()).add(value));
      }
    }
  }
  return new Map([...ids].map(([name, values]) => [name, [...values]]));
}

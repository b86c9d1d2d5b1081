import { knownSpecies } from '@flitchbook/contracts';
import {
  closeDay,
  createPerson,
  type Database,
  forShop,
  inTransaction,
  type OrderRecord,
  setCustomersUntil,
  setShopRules,
  type TouchedDay,
  type Tx,
  touchDay,
} from '@flitchbook/db';
import { asOpened, asOwner, endHolds, marksOf } from '@flitchbook/db/testing';
import { checkPlan } from '@flitchbook/plan';
import type { Outcome } from '../../../apps/api/src/refusals.ts';
import { actAs, type Ctx, type Services } from '../../../apps/api/src/services/ctx.ts';
import type { OnceAnswer } from '../../../apps/api/src/services/once.ts';
import { ownThread } from '../../../apps/api/src/testing/own-thread.ts';
import { newId, openDayOn, openProcess, openShopOn, readDay } from '../shop-on-postgres.ts';
import { type Asker, capOrders, capPieces, type Promised, type PromiseModel } from './promise-model.ts';

export interface RealShop {
  readonly shopId: string;
  /** as its owner sees it */
  readonly db: Database;
  /** two processes of the service */
  readonly processes: readonly [Services, Services];
  readonly people: Readonly<Record<Asker, string | null>>;
  readonly errors: unknown[];
}

async function addCustomer(db: Database, shopId: string, name: string): Promise<string> {
  const personId = newId();
  const person = { shopId, personId, name, email: `${name}@guest.example`, role: 'customer' as const };
  await inTransaction(forShop(db, shopId), (tx) => createPerson(tx, { ...person, passwordHash: null }));
  return personId;
}

export async function openRealShop(opened: Database): Promise<RealShop> {
  const db = asOpened(opened);
  const errors: unknown[] = [];
  const shopId = await openShopOn(db);
  const rules = { holdSeconds: 900, promotedHoldSeconds: 86_400, depositPercent: 25, depositFromMinor: 0 };
  const caps = { ordersPerPerson: capOrders, piecesPerPerson: capPieces, sharesPerPerson: 1 };
  await inTransaction(forShop(db, shopId), (tx) => setShopRules(tx, shopId, { ...rules, ...caps }));
  const [ann, bea] = [await addCustomer(db, shopId, 'Ann'), await addCustomer(db, shopId, 'Bea')];
  return {
    shopId,
    db: asOwner(opened),
    processes: [openProcess(db, ownThread, errors), openProcess(db, ownThread, errors)],
    people: { counter: null, Ann: ann, Bea: bea },
    errors,
  };
}

/** Sent again, with its key, it must be answered alike. */
export interface Sent {
  readonly again: () => Promise<Outcome<OnceAnswer<OrderRecord>>>;
  readonly otherwise: () => Promise<Outcome<OnceAnswer<OrderRecord>>>;
  readonly body: OrderRecord;
}

/** One day of the shop, with hogs of which nothing is sound but what they give once. */
export class RealDay {
  readonly shop: RealShop;
  readonly dayId: string;
  readonly sent: Sent[] = [];

  private constructor(shop: RealShop, dayId: string) {
    this.shop = shop;
    this.dayId = dayId;
  }

  static async open(shop: RealShop, hogs: number): Promise<RealDay> {
    const hog = { grams: 80_000, lostParts: ['side'] };
    const dayId = await openDayOn(
      asOpened(shop.db),
      shop.shopId,
      Array.from({ length: hogs }, () => hog),
    );
    return new RealDay(shop, dayId);
  }

  as(who: Asker | 'owner', process: 0 | 1 = 0): Ctx {
    const { shopId, people, processes } = this.shop;
    const personId = who === 'owner' ? null : people[who];
    const role = who === 'owner' || who === 'counter' ? who : 'customer';
    return actAs(processes[process], { shopId, personId, role });
  }

  endHolds(): Promise<void> {
    return endHolds(this.shop.db, this.dayId);
  }

  /** Something of the day changes, at whatever version it is. */
  async #change(work: (tx: Tx, day: TouchedDay) => Promise<unknown>): Promise<void> {
    const { shopId } = this.shop;
    await inTransaction(forShop(asOpened(this.shop.db), shopId), async (tx) => {
      const touched = await touchDay(tx, { shopId, dayId: this.dayId });
      if (touched.outcome !== 'touched') throw new Error(`the day is ${touched.outcome}`);
      await work(tx, touched.day);
    });
  }

  close = (): Promise<void> => this.#change((tx, day) => closeDay(tx, day));
  lastCall = (): Promise<void> => this.#change((tx, day) => setCustomersUntil(tx, day, new Date(0)));

  /** Everything in which the database and the model differ, and every rule of a plan that is broken. */
  async faults(model: PromiseModel): Promise<readonly string[]> {
    const { stored, plan } = await readDay(asOpened(this.shop.db), this.shop.shopId, this.dayId);
    const faults = stored.orders.length === model.orders.length ? [] : ['R6: another number of orders'];
    const byId = new Map(stored.orders.map((order) => [order.orderId, order]));
    const marks = new Map((await marksOf(this.shop.db, this.dayId)).map((mark) => [mark.orderId, mark]));
    const full = new Set(
      plan?.plan.lines.filter(({ asked, filled }) => asked === filled).map(({ lineId }) => lineId),
    );
    for (const order of model.orders) {
      const found = byId.get(order.orderId);
      if (!found) {
        faults.push(`R4: order ${order.orderId} is gone`);
        continue;
      }
      const { state, version, assured, lines, number } = found;
      if (state !== order.state) faults.push(`R4: order ${number} is ${state}, not ${order.state}`);
      if (version !== order.version)
        faults.push(`R4: order ${number} is at version ${version}, not ${order.version}`);
      const isKept = state === 'held' || state === 'standing';
      if (isKept && !lines.every(({ lineId }) => full.has(lineId)))
        faults.push(`R1: order ${number} is not whole in the plan`);
      if (isKept !== assured) faults.push(`R1: order ${number} is ${state}, assured is ${assured}`);
      faults.push(...markFaults(order, marks.get(order.orderId), byId));
    }
    const isCurrent = stored.day.plannedVersion === stored.day.version;
    if (plan && isCurrent) {
      const broken = checkPlan({ ...stored.cuttingDay, species: knownSpecies }, plan.plan);
      faults.push(...broken.map(({ rule, at, says }) => `${rule}: ${at} ${says}`));
    }
    if (!model.fits([])) faults.push('R1: more is promised than the hogs have');
    return [...faults, ...this.shop.errors.splice(0).map((entry) => JSON.stringify(entry))];
  }
}

type Marks = Awaited<ReturnType<typeof marksOf>>[number];

/** R7, R11: one entry, one line of audit and one mail for each step, and who was passed over. */
function markFaults(
  order: Promised,
  marks: Marks | undefined,
  byId: ReadonlyMap<string, OrderRecord>,
): readonly string[] {
  const numberOf = (orderId: string) => byId.get(orderId)?.number;
  const due = order.steps.map(({ kind }) => kind);
  const actions: Readonly<Record<string, string>> = {
    'order.held': 'order.hold',
    'order.queued': 'order.queue',
    'order.promoted': 'order.promote',
    'order.reserved': 'order.reserve',
    'order.released': 'order.release',
    'order.lapsed': 'order.lapse',
    'order.cancelled': 'order.cancel',
  };
  const same = (name: string, found: readonly unknown[] | undefined, wanted: readonly unknown[]) =>
    JSON.stringify(found) === JSON.stringify(wanted)
      ? []
      : [`${name} of ${numberOf(order.orderId)}: ${JSON.stringify(found)}, not ${JSON.stringify(wanted)}`];
  const passedOver = order.steps.map(({ overtakes }) => overtakes?.map(numberOf) ?? null);
  return [
    ...same(
      'R11: ledger',
      marks?.entered.map(({ kind }) => kind),
      due,
    ),
    ...same(
      'R7: overtaken',
      marks?.entered.map(({ facts }) => facts['overtakes'] ?? null),
      passedOver,
    ),
    ...same('R11: audit', marks?.audited.toSorted(), due.map((kind) => actions[kind]).toSorted()),
    ...same('R11: mails', marks?.mailed, order.who === 'counter' ? [] : due),
  ];
}

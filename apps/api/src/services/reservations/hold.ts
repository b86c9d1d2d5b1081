import type { NewHold } from '@flitchbook/contracts';
import {
  addOrder,
  findDay,
  findOrder,
  isOpenToCustomers,
  keepPlan,
  listLapsed,
  type NewOrder,
  type OrderRecord,
  type TouchedDay,
  type Tx,
} from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { tellOwner } from '../mails/write-mail.ts';
import { givenBefore, type OnceAnswer, type OnceKey, once } from '../once.ts';
import { fillIn } from '../orders/fill-in.ts';
import { checkOrder } from '../orders/take.ts';
import { authorise } from '../roles.ts';
import { look, touch, transact } from '../transact.ts';
import { note, storeWith } from './commit.ts';
import { asDemand, type Decision, decide, withOrder } from './decide.ts';
import { assuredOf, demandOfAll } from './demand.ts';
import { forWhoAsks } from './for-customers.ts';
import { lapseDay } from './lapse.ts';
import { promoteQueue } from './promote.ts';
import { type DayInView, mayAsk, readDayIn } from './read-day.ts';
import { depositOf, expectedMinor, withinCaps } from './shop-rules.ts';

const triesMax = 8;

export interface Holding {
  readonly dayId: string;
  readonly input: NewHold;
  readonly key: OnceKey;
}

type View = DayInView & { readonly before: OnceAnswer<OrderRecord> | undefined };

const readView = (ctx: Ctx, dayId: string, key: OnceKey): Promise<Outcome<View>> =>
  look(ctx.db, async (tx) => {
    const before = await givenBefore<OrderRecord>(tx, ctx.actor, key);
    if (!before.ok) return before;
    const view = await readDayIn(tx, ctx, dayId);
    return view.ok ? done({ ...view.value, before: before.value }) : view;
  });

/** The order as it would stand: always promised, at the shop's own prices. */
export function orderFrom(
  ctx: Ctx,
  { stored, person }: DayInView,
  input: NewHold,
  orderId: string,
): NewOrder {
  const isOwn = ctx.actor.role === 'customer';
  const owner = isOwn ? (person?.name ?? '') : input.owner;
  const promised = { rank: 'promised' as const };
  const asked = {
    owner,
    note: input.note ?? '',
    lines: input.lines.map((line) => ({ ...line, ...promised })),
    shares: input.shares.map((share) => ({ ...share, ...promised })),
  };
  const order = fillIn(stored.cuttingDay, asked, { orderId, newId: ctx.ids.newId });
  return { ...order, personId: isOwn ? ctx.actor.personId : null };
}

/** What a claim comes to on the day as it was read. A proof once found serves all who ask the same of this version. */
export async function decideClaim(
  ctx: Ctx,
  view: DayInView,
  { order, input }: { readonly order: NewOrder; readonly input: NewHold },
): Promise<Outcome<Decision>> {
  const { stored, plan } = view;
  const { dayId, version } = stored.day;
  const known = ctx.promises.refusals.find(dayId, version, input);
  if (known) return done(known);
  const asked = asDemand(order);
  const day = withOrder(stored.cuttingDay, asked);
  const decided = await decide(ctx, day, { plan, assured: assuredOf(stored.orders) }, demandOfAll([asked]));
  if (decided.ok && !decided.value.fits) ctx.promises.refusals.note(dayId, version, input, decided.value);
  return decided;
}

const queuedOn = ({ stored }: DayInView): readonly number[] =>
  stored.orders.filter(({ state }) => state === 'queued').map(({ number }) => number);

interface Writing {
  readonly ctx: Ctx;
  readonly view: DayInView;
  readonly order: NewOrder;
}

async function written(tx: Tx, ctx: Ctx, orderId: string): Promise<OrderRecord> {
  const order = await findOrder(tx, ctx.actor.shopId, orderId);
  if (!order) throw new Error(`order ${orderId} is gone inside its own transaction`);
  return order;
}

async function writeHold(
  tx: Tx,
  { ctx, view, order }: Writing,
  day: TouchedDay,
  decision: { readonly plan: CuttingPlan; readonly how: string },
): Promise<OrderRecord> {
  const { dayId } = day;
  const { orderId } = order;
  const depositMinor = depositOf(view.rules, expectedMinor(view.stored.cuttingDay, asDemand(order)));
  const { holdSeconds } = view.rules;
  await addOrder(tx, day, order, { state: 'held', holdSeconds, depositMinor });
  await storeWith(tx, ctx, day, decision.plan);
  const held = await written(tx, ctx, orderId);
  const overtakes = queuedOn(view);
  const facts = { number: held.number, how: decision.how, until: held.heldUntil, depositMinor, overtakes };
  await note(tx, ctx, { dayId, orderId, kind: 'order.held', action: 'order.hold', facts });
  await tellOwner(tx, ctx, 'order.held', held);
  return held;
}

async function writeQueued(tx: Tx, { ctx, order }: Writing, day: TouchedDay): Promise<OrderRecord> {
  const { dayId } = day;
  const { orderId } = order;
  await addOrder(tx, day, order, { state: 'queued' });
  await keepPlan(tx, day);
  const queued = await written(tx, ctx, orderId);
  const facts = { number: queued.number };
  await note(tx, ctx, { dayId, orderId, kind: 'order.queued', action: 'order.queue', facts });
  await tellOwner(tx, ctx, 'order.queued', queued);
  return queued;
}

function refuseDecision(ctx: Ctx, decision: Extract<Decision, { fits: false }>): Refusal {
  const { says, instead } = forWhoAsks(ctx.actor, decision);
  return refused('reservation.not-possible', says, { instead });
}

async function write(
  writing: Writing,
  key: OnceKey,
  decision: Decision,
): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const { ctx, view, order } = writing;
  const { shopId, personId, role } = ctx.actor;
  const { dayId, version } = view.stored.day;
  return transact(ctx.db, (tx) =>
    once(tx, ctx.actor, key, async () => {
      const touched = await touch(tx, { shopId, dayId, ifVersion: version });
      if (!touched.ok) return touched;
      // The clock may have passed the last call since the day was read.
      const openToCustomers = await isOpenToCustomers(tx, shopId, dayId);
      const may = mayAsk(ctx, { ...view, openToCustomers });
      if (!may.ok) return may;
      if (role === 'customer' && personId !== null) {
        const within = withinCaps(view.rules, view.stored.orders, personId, asDemand(order));
        if (!within.ok) return within;
      }
      const day = touched.value;
      return done(
        await (decision.fits ? writeHold(tx, writing, day, decision) : writeQueued(tx, writing, day)),
      );
    }),
  );
}

/** The answer to who asks in vain for what others have asked in vain: one look at the day's version is enough. */
async function refuseAtOnce(ctx: Ctx, { dayId, input, key }: Holding): Promise<Refusal | undefined> {
  if (input.orQueue || !ctx.promises.refusals.has(dayId)) return undefined;
  const { shopId } = ctx.actor;
  const seen = await look(ctx.db, async (tx) => {
    const before = await givenBefore(tx, ctx.actor, key);
    const fresh = before.ok && before.value === undefined;
    const day = fresh ? await findDay(tx, shopId, dayId) : undefined;
    const lapsed = day ? await listLapsed(tx, shopId, dayId) : [];
    return done(day?.state === 'open' && lapsed.length === 0 ? day.version : undefined);
  });
  if (!seen.ok || seen.value === undefined) return undefined;
  const known = ctx.promises.refusals.find(dayId, seen.value, input);
  return known && refuseDecision(ctx, known);
}

async function attempt(ctx: Ctx, holding: Holding): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const { dayId, input, key } = holding;
  const inVain = await refuseAtOnce(ctx, holding);
  if (inVain) return inVain;
  let view = await readView(ctx, dayId, key);
  if (!view.ok) return view;
  if (view.value.before) return done(view.value.before);
  // Room that holds have given back goes to the queue first, then to whoever asks now.
  const lapsed = view.value.lapsed.length > 0;
  if (lapsed || queuedOn(view.value).length > 0) {
    if (lapsed) await lapseDay(ctx, dayId);
    await promoteQueue(ctx, dayId);
    view = await readView(ctx, dayId, key);
    if (!view.ok) return view;
  }
  const may = mayAsk(ctx, view.value);
  if (!may.ok) return may;
  const orderId = input.orderId ?? ctx.ids.newId();
  if (view.value.stored.orders.some((other) => other.orderId === orderId))
    return refused('order.already-taken', 'There is an order with this orderId already.');
  const order = orderFrom(ctx, view.value, input, orderId);
  const checked = checkOrder(view.value.stored.cuttingDay, order);
  if (!checked.ok) return checked;
  const { personId, role } = ctx.actor;
  if (role === 'customer' && personId !== null) {
    const within = withinCaps(view.value.rules, view.value.stored.orders, personId, asDemand(order));
    if (!within.ok) return within;
  }
  const decided = await decideClaim(ctx, view.value, { order, input });
  if (!decided.ok) return decided;
  if (!decided.value.fits && !input.orQueue) return refuseDecision(ctx, decided.value);
  return write({ ctx, view: view.value, order }, key, decided.value);
}

const tooMany = refused(
  'reservation.contended',
  `The day changed under this request ${triesMax} times running. Nothing was held; send it again.`,
  { retryAfterSeconds: 1 },
);

/** Runs what depends on the version that it read until nobody was faster, a few times at most. */
export async function untilNotOvertaken<T>(work: () => Promise<Outcome<T>>): Promise<Outcome<T>> {
  for (let tries = 0; tries < triesMax; tries++) {
    const outcome = await work();
    if (outcome.ok || outcome.type !== 'edit.version-stale') return outcome;
  }
  return tooMany;
}

/**
 * Holds a whole order on a day for a while, so that its owner can make up his mind: every line and share of it stands in
 * the stored plan, or nothing is held. What does not fit is refused with what would, or waits in the queue if wished.
 */
export async function holdOrder(ctx: Ctx, holding: Holding): Promise<Outcome<OnceAnswer<OrderRecord>>> {
  const refusal = authorise(ctx, 'reservations.hold');
  if (refusal) return refusal;
  return ctx.promises.turns.inTurn(holding.dayId, () => untilNotOvertaken(() => attempt(ctx, holding)));
}

import {
  type Account,
  accountOf,
  type Bill,
  drawBill,
  estimate,
  type HangingOnBill,
  type Made,
  type PackOnBill,
  shownPrice,
  type ToBill,
} from '@flitchbook/books';
import type { ScaleReading } from '@flitchbook/carcass';
import type { OrderAccount } from '@flitchbook/contracts';
import {
  type BillRecord,
  findBill,
  findOrder,
  listPayments,
  type OrderRecord,
  type PaymentRecord,
  type Tx,
} from '@flitchbook/db';
import { addMinor, weightTimesPrice } from '@flitchbook/plan';
import { done, type Outcome, type Refusal, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { animalOf, type Bench, readBench } from '../packs/bench.ts';

export const orderUnknown = (orderId: string): Refusal =>
  refused('order.unknown', `The shop has no order ${orderId}.`);

/** Everything that the till knows of an order. */
export interface AtTill {
  readonly order: OrderRecord;
  readonly bench: Bench;
  readonly bill: BillRecord | undefined;
  readonly payments: readonly PaymentRecord[];
  readonly account: Account;
  /** most that each line was said to cost */
  readonly estimates: Readonly<Record<string, { readonly fromMinor: number; readonly toMinor: number }>>;
  readonly hanging: readonly HangingOnBill[];
  /** foreseen packs of the order that are not made */
  readonly unpacked: number;
}

const kilograms = (mg: number): ScaleReading => ({
  text: (Math.round(mg / 1000) / 1000).toFixed(3),
  unit: 'kg',
});

/** The sides of a share as one weight: the scale's own reading where the animal or the side was weighed as a whole. */
function hangingOf(
  bench: Bench,
  { shareId, size, priceMinorPerKg }: OrderRecord['shares'][number],
): HangingOnBill[] {
  const { settings, shop, plan } = bench;
  const sideIds = plan.shares.find((fill) => fill.shareId === shareId)?.sideIds ?? [];
  const [first] = sideIds;
  const found = plan.sides.find(({ sideId }) => sideId === first);
  if (!found) return [];
  const animal = animalOf(bench, found.animalId);
  // Whoever had the animal cut owns it already and pays for the work.
  if (animal.legalMode === 'for-owner') return [];
  const own = animal.sides.filter(({ sideId }) => sideIds.includes(sideId));
  const alone = own.length === 1 ? (own[0]?.weight ?? null) : null;
  const both = size === 'whole' ? { text: animal.hanging.text, unit: animal.hanging.unit } : null;
  const weight = alone ?? both ?? kilograms(own.reduce((sum, { massMg }) => sum + massMg, 0));
  const price = { ...shownPrice(priceMinorPerKg, shop.weightUnit), on: settings.money.hangingOn };
  const name = size === 'whole' ? `Whole ${animal.name}` : `Half of ${animal.name}`;
  return [{ shareId, name, weight, weighed: animal.hotOrCold, price, taxClass: settings.money.meatTaxClass }];
}

function estimatesOf(bench: Bench, order: OrderRecord): AtTill['estimates'] {
  const swing = bench.settings.money.estimateSwingPpm;
  return Object.fromEntries(
    order.lines.map(({ lineId, priceMinorPerKg }) => {
      const mine = bench.foreseen.filter(
        ({ owner }) => owner && 'lineId' in owner && owner.lineId === lineId,
      );
      const grams = Math.round(mine.reduce((sum, { expectedMg }) => sum + expectedMg, 0) / 1000);
      return [lineId, estimate(grams, priceMinorPerKg, swing)];
    }),
  );
}

const belongsTo = (order: OrderRecord, owner: Bench['foreseen'][number]['owner']): boolean =>
  owner !== null &&
  ('lineId' in owner
    ? order.lines.some(({ lineId }) => lineId === owner.lineId)
    : order.shares.some(({ shareId }) => shareId === owner.shareId));

export async function readAtTill(tx: Tx, ctx: Ctx, orderId: string): Promise<Outcome<AtTill>> {
  const { shopId } = ctx.actor;
  const order = await findOrder(tx, shopId, orderId);
  if (!order) return orderUnknown(orderId);
  const bench = await readBench(tx, ctx, order.dayId);
  if (!bench.ok) return bench;
  const bill = await findBill(tx, shopId, orderId);
  const payments = await listPayments(tx, shopId, orderId);
  return done({
    order,
    bench: bench.value,
    bill,
    payments,
    account: accountOf(bill?.totalMinor ?? null, payments),
    estimates: estimatesOf(bench.value, order),
    hanging: order.shares.flatMap((share) => hangingOf(bench.value, share)),
    unpacked: bench.value.toMake.filter(({ owner }) => belongsTo(order, owner)).length,
  });
}

function packsOnBill({ order, bench }: AtTill): PackOnBill[] {
  return bench.packs
    .filter(({ orderId }) => orderId === order.orderId)
    .flatMap(({ packId, owner, name, pieces, net, price, amountMinor, taxClass }) =>
      owner && 'lineId' in owner && price && amountMinor !== null
        ? [{ packId, lineId: owner.lineId, name, pieces, net, price, amountMinor, taxClass }]
        : [],
    );
}

/** All that hangs for the order as one weight, for work that is charged by it. */
function hangingWeight({ hanging, order, bench }: AtTill): ScaleReading | null {
  const [only, ...more] = hanging;
  if (only && more.length === 0) return only.weight;
  const sideIds = order.shares.flatMap(
    ({ shareId }) => bench.plan.shares.find((fill) => fill.shareId === shareId)?.sideIds ?? [],
  );
  const mg = bench.plan.sides
    .filter(({ sideId }) => sideIds.includes(sideId))
    .reduce((sum, { massMg }) => sum + massMg, 0);
  return mg === 0 ? null : kilograms(mg);
}

/** The bill on the packs made so far. */
export function draftBill(
  till: AtTill,
  wish: {
    readonly fees: readonly { readonly id: string; readonly count: number }[];
    readonly hasConsent: boolean;
  },
): Made<Bill> {
  const { money } = till.bench.settings;
  const fees: ToBill['fees'][number][] = [];
  for (const { id, count } of wish.fees) {
    const fee = money.fees.find((each) => each.id === id);
    if (!fee) return { ok: false, slips: [{ at: 'fees', value: id, says: 'is not a fee of this shop' }] };
    fees.push({ fee, count, hanging: hangingWeight(till) });
  }
  return drawBill({
    packs: packsOnBill(till),
    hanging: till.hanging,
    fees,
    taxClasses: money.taxClasses,
    tolerance: money.tolerance,
    estimatedToMinor: Object.fromEntries(
      Object.entries(till.estimates).map(([lineId, { toMinor }]) => [lineId, toMinor]),
    ),
    hasConsent: wish.hasConsent,
  });
}

/** Lines are a range until they are weighed; a carcass that hangs is weighed. */
function wholeEstimate({ estimates, hanging }: AtTill): OrderAccount['estimate'] {
  const lines = Object.values(estimates);
  const hung = hanging.map(({ weight, price }) => weightTimesPrice(weight, price));
  return {
    fromMinor: addMinor([...hung, ...lines.map(({ fromMinor }) => fromMinor)]),
    toMinor: addMinor([...hung, ...lines.map(({ toMinor }) => toMinor)]),
  };
}

export function accountOnWire(till: AtTill): OrderAccount {
  const { order, bill, payments, account } = till;
  const drawn = bill ? null : draftBill(till, { fees: [], hasConsent: false });
  return {
    orderId: order.orderId,
    number: order.number,
    owner: order.owner,
    estimate: wholeEstimate(till),
    bill: bill ? billOnWire(bill) : null,
    draft: drawn?.ok ? drawn.value : null,
    unpacked: till.unpacked,
    movements: payments.map(({ paymentId, kind, method, amountMinor, note, at }) => ({
      paymentId,
      kind,
      method,
      amountMinor,
      note,
      at,
    })),
    paidMinor: account.paidMinor,
    creditedMinor: account.creditedMinor,
    dueMinor: account.dueMinor,
  };
}

const billOnWire = ({
  billId,
  number,
  issuedOn,
  lines,
  taxes,
  netMinor,
  taxMinor,
  totalMinor,
  depositMinor,
}: BillRecord) => ({
  billId,
  number,
  issuedOn,
  lines,
  taxes,
  netMinor,
  taxMinor,
  totalMinor,
  depositMinor,
});

import { knownSpecies } from '@flitchbook/contracts';
import {
  type Database,
  forShop,
  inTransaction,
  type LedgerRecord,
  listDays,
  listLedger,
  listShops,
  loadCuttingDay,
  loadPlan,
  type OrderRecord,
  type StoredDay,
  type StoredPlan,
  type Tx,
} from '@flitchbook/db';
import { checkPlan } from '@flitchbook/plan';

interface StoredReport {
  readonly shops: number;
  readonly days: number;
  readonly orders: number;
  readonly entries: number;
  /** rules that what is stored breaks, by the number of docs/invariants.md */
  readonly faults: readonly string[];
}

const entriesAtOnce = 1000;

async function* entriesOf(tx: Tx, shopId: string): AsyncGenerator<LedgerRecord> {
  for (let after = 0; ; ) {
    const page = await listLedger(tx, shopId, { after, limit: entriesAtOnce });
    yield* page;
    const last = page.at(-1);
    if (!last) return;
    after = last.seq;
  }
}

/** What an order must be after an entry; entries that leave it where it was are not here. */
const after: Readonly<Record<string, OrderRecord['state']>> = {
  'order.taken': 'standing',
  'order.held': 'held',
  'order.queued': 'queued',
  'order.promoted': 'held',
  'order.reserved': 'standing',
  'order.lapsed': 'lapsed',
  'order.released': 'released',
  'order.dismissed': 'released',
  'order.cancelled': 'cancelled',
};

/** R11, W3: numbers without a gap; the states that the entries, read from the first on, lead to. */
async function foldLedger(tx: Tx, shopId: string, faults: string[]) {
  const states = new Map<string, OrderRecord['state']>();
  let entries = 0;
  for await (const { seq, kind, orderId, facts } of entriesOf(tx, shopId)) {
    entries += 1;
    if (seq !== entries) faults.push(`W3: entry ${entries} of the ledger has number ${seq}`);
    if (orderId === null) continue;
    const state = kind === 'shortage.listed' && facts['was'] === 'held' ? 'queued' : after[kind];
    if (state) states.set(orderId, state);
  }
  return { states, entries };
}

/** P1 to P26 of a plan that is of the day as it stands, and R1. */
function planFaults({ day, cuttingDay, orders }: StoredDay, stored: StoredPlan | undefined): string[] {
  const full = new Set(
    stored?.plan.lines.filter(({ filled, asked }) => filled === asked).map(({ lineId }) => lineId),
  );
  const given = new Set(
    stored?.plan.shares.filter(({ sideIds }) => sideIds.length > 0).map(({ shareId }) => shareId),
  );
  const uncovered = orders.filter(
    ({ assured, lines, shares }) =>
      assured &&
      !(lines.every(({ lineId }) => full.has(lineId)) && shares.every(({ shareId }) => given.has(shareId))),
  );
  const faults = uncovered.map(({ number }) => `R1: order ${number} is assured and not whole in the plan`);
  if (!stored || day.plannedVersion !== day.version) return faults;
  const broken = checkPlan({ ...cuttingDay, species: knownSpecies }, stored.plan);
  return [...faults, ...broken.map(({ rule, at, says }) => `${rule}: ${at} ${says}`)];
}

/** R4: an order is where its entries have brought it. */
const orderFaults = (
  orders: readonly OrderRecord[],
  states: ReadonlyMap<string, OrderRecord['state']>,
): string[] =>
  orders
    .filter(({ orderId, state }) => states.get(orderId) !== state)
    .map(
      ({ orderId, number, state }) =>
        `R4: order ${number} is ${state}; its entries say ${states.get(orderId) ?? 'nothing'}`,
    );

/**
 * Reads everything that is stored, each shop in one view, and says which rules it breaks. Writes nothing: made for a copy
 * that was restored, and good for the original as well.
 */
export async function checkStored(db: Database): Promise<StoredReport> {
  const shops = await inTransaction(db, listShops, { reading: true });
  const faults: string[] = [];
  let [days, orders, entries] = [0, 0, 0];
  for (const { shopId } of shops) {
    const checkShop = async (tx: Tx): Promise<void> => {
      const folded = await foldLedger(tx, shopId, faults);
      entries += folded.entries;
      for (const { dayId, date } of await listDays(tx, shopId)) {
        const stored = await loadCuttingDay(tx, shopId, dayId);
        if (!stored) continue;
        days += 1;
        orders += stored.orders.length;
        const found = [
          ...planFaults(stored, await loadPlan(tx, shopId, dayId)),
          ...orderFaults(stored.orders, folded.states),
        ];
        faults.push(...found.map((says) => `${date} ${says}`));
      }
    };
    await inTransaction(forShop(db, shopId), checkShop, { reading: true });
  }
  return { shops: shops.length, days, orders, entries, faults };
}

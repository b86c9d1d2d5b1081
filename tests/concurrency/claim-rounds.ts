import type { NewHold } from '@flitchbook/contracts';
import { knownSpecies } from '@flitchbook/contracts';
import type { Database } from '@flitchbook/db';
import { checkPlan } from '@flitchbook/plan';
import type { Ctx, Services } from '../../apps/api/src/services/ctx.ts';
import { holdOrder } from '../../apps/api/src/services/reservations/hold.ts';
import { shuffled } from './seeded.ts';
import { atCounter, type HogWish, holdOf, newId, openDayOn, readDay } from './shop-on-postgres.ts';

export type Below = (count: number) => number;

export interface Shop {
  readonly shopId: string;
  readonly db: Database;
  /** processes of the service that share the database */
  readonly processes: readonly Services[];
}

export interface Tally {
  readonly accepted: number;
  readonly refused: number;
  /** neither a plan nor a proof in time, after every retry */
  readonly undecided: number;
  /** answers 503 that were sent again with the same key */
  readonly retries: number;
}

const retriesMax = 60;

/** One buyer: sends again with the same key as long as the service says that it is busy. */
async function buy(ctx: Ctx, dayId: string, input: NewHold) {
  const key = { key: newId(), route: 'POST holds', request: input, status: 201 as const };
  let retries = 0;
  for (;;) {
    const outcome = await holdOrder(ctx, { dayId, input, key });
    const again = !outcome.ok && [
      'reservation.contended',
      'server.busy',
      'idempotency.still-running',
      'plan.queue-full',
    ];
    if (!again || outcome.ok || !again.includes(outcome.type) || retries === retriesMax)
      return { outcome, retries };
    retries += 1;
  }
}

/** Everybody at once, each through one of the processes. */
export async function sell(shop: Shop, dayId: string, wishes: readonly NewHold[], below: Below) {
  const answers = await Promise.all(
    shuffled(wishes, below).map(async (input) => {
      const process = shop.processes[below(shop.processes.length)] as Services;
      return { input, ...(await buy(atCounter(process, shop.shopId), dayId, input)) };
    }),
  );
  const typed = (type: string) => answers.filter(({ outcome }) => !outcome.ok && outcome.type === type);
  const tally: Tally = {
    accepted: answers.filter(({ outcome }) => outcome.ok).length,
    refused: typed('reservation.not-possible').length,
    undecided: typed('plan.undecided').length,
    retries: answers.reduce((sum, { retries }) => sum + retries, 0),
  };
  return { answers, tally };
}

/** What is wrong with the day as it is stored: a rule that its plan breaks, or a held order that is not whole in it. */
export async function faultsOf({ db, shopId }: Shop, dayId: string): Promise<string[]> {
  const { stored, plan } = await readDay(db, shopId, dayId);
  const { cuttingDay, day, orders } = stored;
  if (!plan) return orders.length === 0 ? [] : ['no plan of the day'];
  const faults = checkPlan({ ...cuttingDay, species: knownSpecies }, plan.plan).map(
    ({ rule, at, says }) => `${rule} ${at} ${says}`,
  );
  if (day.plannedVersion !== day.version) faults.push('the plan is not of this version');
  const served = new Set(
    plan.plan.lines.filter(({ filled, asked }) => filled === asked).map(({ lineId }) => lineId),
  );
  for (const { state, assured, lines, number } of orders) {
    if (state !== 'held' && state !== 'standing') continue;
    if (!assured) faults.push(`order ${number} is ${state} and not assured`);
    if (!lines.every(({ lineId }) => served.has(lineId)))
      faults.push(`order ${number} is not whole in the plan`);
  }
  return faults;
}

export interface RoundWish {
  readonly hogs: readonly HogWish[];
  readonly buyers: number;
  readonly line: NewHold['lines'][number];
}

/** One round of the same line for everybody. @returns the tally, and faults of the stored day */
export async function oneRound(shop: Shop, { hogs, buyers, line }: RoundWish, below: Below) {
  const dayId = await openDayOn(shop.db, shop.shopId, hogs);
  const wishes = Array.from({ length: buyers }, () => holdOf([line]));
  const { tally, answers } = await sell(shop, dayId, wishes, below);
  const strange = answers.flatMap(({ outcome }) =>
    outcome.ok || outcome.type === 'reservation.not-possible' ? [] : [outcome.type],
  );
  return { dayId, tally, faults: [...(await faultsOf(shop, dayId)), ...strange] };
}

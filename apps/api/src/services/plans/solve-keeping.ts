import { knownSpecies } from '@flitchbook/contracts';
import type { OrderRecord } from '@flitchbook/db';
import { type CuttingPlan, goalsOf } from '@flitchbook/plan';
import { gapOf } from '@flitchbook/solver';
import { done, type Outcome } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import type { Services } from '../ctx.ts';
import { answerAsPlan, claimDayOf, type Demand, isAllServed } from '../reservations/claim-day.ts';
import { demandOfAll } from '../reservations/demand.ts';
import { solveChecked, solveWithin } from './solve-checked.ts';

/** A plan of a day, and the orders that were assured before and that it cannot serve in full. */
export interface KeepingPlan {
  readonly plan: CuttingPlan;
  /** in the order in which they were given up */
  readonly short: readonly OrderRecord[];
}

const serves = (plan: CuttingPlan, { lineIds, shareIds }: Demand): boolean =>
  plan.lines.every(({ lineId, filled, asked }) => !lineIds.has(lineId) || filled === asked) &&
  plan.shares.every(({ shareId, sideIds }) => !shareIds.has(shareId) || sideIds.length > 0);

/** The day with everything but `kept` merely wished for. */
const keptFirst = (day: TravellingDay, { lineIds, shareIds }: Demand): TravellingDay => ({
  ...day,
  lines: day.lines.map((line) => ({ ...line, rank: lineIds.has(line.lineId) ? 'promised' : 'wished' })),
  shares: day.shares.map((share) => ({
    ...share,
    rank: shareIds.has(share.shareId) ? 'promised' : 'wished',
  })),
});

const nothing: Demand = { lineIds: new Set(), shareIds: new Set() };

/** The proof of the day itself: its own bound, and what this plan comes to by the ranks that the orders really have. */
function ownProof(day: TravellingDay, plan: CuttingPlan, free: CuttingPlan): CuttingPlan {
  if (plan.proof === null || free.proof === null) return { ...plan, proof: null };
  const goals = goalsOf({ ...day, species: knownSpecies }, plan);
  const { bound } = free.proof;
  return { ...plan, proof: { ...plan.proof, goals, bound, gap: gapOf(goals, bound), status: 'deadline' } };
}

/** Seconds for one look at whether a part of the promises still fits. */
const lookSeconds = 2;

class Shrinking {
  readonly #services: Services;
  readonly #day: TravellingDay;
  /** the last whole answer, of whatever was asked */
  answer: CuttingPlan | undefined;

  constructor(services: Services, day: TravellingDay) {
    this.#services = services;
    this.#day = day;
  }

  async fits(orders: readonly OrderRecord[]): Promise<boolean> {
    if (orders.length === 0) return true;
    const question = claimDayOf(this.#day, null, demandOfAll(orders), nothing);
    const limits = { deadlineSeconds: lookSeconds, gap: 0, seed: 1 };
    const answer = await solveWithin(this.#services, question.day, limits);
    if (!answer.ok || !isAllServed(answer.value)) return false;
    this.answer = answer.value;
    return true;
  }

  /** How many of `orders`, from the first on, still fit beside `kept`. */
  async #longest(kept: readonly OrderRecord[], orders: readonly OrderRecord[]): Promise<number> {
    let [fit, not] = [0, orders.length];
    while (fit < not) {
      const middle = Math.ceil((fit + not) / 2);
      if (await this.fits([...kept, ...orders.slice(0, middle)])) fit = middle;
      else not = middle - 1;
    }
    return fit;
  }

  /** Keeps orders from the first on and gives up only those that do not fit beside the ones before. */
  async keep(orders: readonly OrderRecord[]): Promise<{ kept: OrderRecord[]; short: OrderRecord[] }> {
    const kept: OrderRecord[] = [];
    const short: OrderRecord[] = [];
    let rest = orders;
    while (rest.length > 0) {
      const fit = await this.#longest(kept, rest);
      kept.push(...rest.slice(0, fit));
      short.push(...rest.slice(fit, fit + 1));
      rest = rest.slice(fit + 1);
    }
    return { kept, short };
  }
}

/** Who keeps his pieces longest: what is reserved before what is only held, then whoever came first. */
const byClaim = (a: OrderRecord, b: OrderRecord): number =>
  Number(a.state === 'held') - Number(b.state === 'held') || a.number - b.number;

async function shrink(
  services: Services,
  day: TravellingDay,
  assured: readonly OrderRecord[],
  free: CuttingPlan,
): Promise<Outcome<KeepingPlan>> {
  const shrinking = new Shrinking(services, day);
  const { kept, short } = await shrinking.keep(assured.toSorted(byClaim));
  const demand = demandOfAll(kept);
  const first = await solveChecked(services, keptFirst(day, demand));
  const latestFirst = short.toReversed();
  if (first.ok && serves(first.value, demand))
    return done({ plan: ownProof(day, first.value, free), short: latestFirst });
  if (await shrinking.fits(kept)) {
    const plan = shrinking.answer ? answerAsPlan(day, shrinking.answer) : free;
    return done({ plan, short: latestFirst });
  }
  return done({ plan: free, short: assured.filter((order) => !serves(free, demandOfAll([order]))) });
}

/**
 * Plans a day for value, and serves every assured order in full before anything else. Where the carcasses do not give
 * that any more, it says who is left short: holds before reserved orders, and of each the latest first.
 */
export async function solveKeeping(
  services: Services,
  day: TravellingDay,
  orders: readonly OrderRecord[],
): Promise<Outcome<KeepingPlan>> {
  const assured = orders.filter((order) => order.assured);
  const demand = demandOfAll(assured);
  const free = await solveChecked(services, day);
  if (!free.ok || serves(free.value, demand)) return free.ok ? done({ plan: free.value, short: [] }) : free;
  const keeping = await solveChecked(services, keptFirst(day, demand));
  if (keeping.ok && serves(keeping.value, demand))
    return done({ plan: ownProof(day, keeping.value, free.value), short: [] });
  return shrink(services, day, assured, free.value);
}

/** Standing orders of promised lines and shares that a plan serves in full. */
export const servedOf = (plan: CuttingPlan, orders: readonly OrderRecord[]): readonly OrderRecord[] =>
  orders.filter(
    (order) =>
      order.state === 'standing' &&
      [...order.lines, ...order.shares].every(({ rank }) => rank === 'promised') &&
      serves(plan, demandOfAll([order])),
  );

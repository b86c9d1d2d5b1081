import {
  findShop,
  isServed,
  loadCuttingDay,
  loadPlan,
  type OrderRecord,
  type Shop,
  type Tx,
} from '@flitchbook/db';
import type { CuttingPlan } from '@flitchbook/plan';
import { done, type Outcome } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { dayUnknown, look } from '../transact.ts';

interface BoardOrder {
  readonly orderId: string;
  readonly number: number;
  readonly owner: string;
  readonly note: string;
  readonly lineIds: readonly string[];
  readonly shareIds: readonly string[];
}

/** Everything the day board shows. The plan is stale when `plannedVersion` is not `version`. */
export interface Board {
  readonly shop: Shop;
  readonly day: {
    readonly dayId: string;
    readonly date: string;
    readonly state: 'open' | 'closed';
    readonly version: number;
    readonly plannedVersion: number | null;
    readonly plannedAt: string | null;
  };
  readonly cuttingDay: TravellingDay;
  readonly orders: readonly BoardOrder[];
  readonly plan: CuttingPlan | null;
}

const onBoard = ({ orderId, number, owner, note, lines, shares }: OrderRecord): BoardOrder => ({
  orderId,
  number,
  owner,
  note,
  lineIds: lines.map(({ lineId }) => lineId),
  shareIds: shares.map(({ shareId }) => shareId),
});

export async function readBoardIn(tx: Tx, ctx: Ctx, dayId: string): Promise<Outcome<Board>> {
  const { shopId } = ctx.actor;
  const shop = await findShop(tx, shopId);
  const stored = await loadCuttingDay(tx, shopId, dayId);
  if (!shop || !stored) return dayUnknown(dayId);
  const plan = await loadPlan(tx, shopId, dayId);
  const { date, state, version, plannedVersion, plannedAt } = stored.day;
  return done({
    shop,
    day: { dayId, date, state, version, plannedVersion, plannedAt },
    cuttingDay: stored.cuttingDay,
    orders: stored.orders.filter(isServed).map(onBoard),
    plan: plan?.plan ?? null,
  });
}

/** The day with its orders and its plan, in one view of the database. */
export async function readBoard(ctx: Ctx, dayId: string): Promise<Outcome<Board>> {
  const refusal = authorise(ctx, 'boards.read');
  if (refusal) return refusal;
  return look(ctx.db, (tx) => readBoardIn(tx, ctx, dayId));
}

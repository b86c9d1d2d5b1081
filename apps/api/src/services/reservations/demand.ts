import type { OrderRecord } from '@flitchbook/db';
import type { Demand } from './claim-day.ts';

type Asking = Pick<OrderRecord, 'lines' | 'shares'>;

/** Everything that orders ask for, by id. */
export const demandOfAll = (orders: readonly Asking[]): Demand => ({
  lineIds: new Set(orders.flatMap(({ lines }) => lines.map(({ lineId }) => lineId))),
  shareIds: new Set(orders.flatMap(({ shares }) => shares.map(({ shareId }) => shareId))),
});

export const assuredOf = (orders: readonly OrderRecord[]): Demand =>
  demandOfAll(orders.filter(({ assured }) => assured));

import { type CuttingDay, type CuttingPlan, comparePlans, type PlanDifference } from '@flitchbook/plan';

/** A line or share that another plan serves better or worse. Pieces, grams of loose meat, or sides of a share. */
export interface Change {
  readonly orderId: string;
  readonly lineId: string | null;
  readonly shareId: string | null;
  readonly before: number;
  readonly after: number;
}

/** Loose meat or fat of one kind, grams over the whole day. */
interface BulkChange {
  readonly speciesId: string;
  readonly bulkId: string;
  readonly grams: number;
}

export interface Changes {
  readonly gained: readonly Change[];
  readonly lost: readonly Change[];
  readonly bulks: readonly BulkChange[];
  /** sides on which a part is broken down or a zone is cut otherwise */
  readonly sideIds: readonly string[];
  /** minutes of bench work more, below 0 less */
  readonly minutes: number;
}

const sidesIn = (ids: string | number | null): number =>
  typeof ids === 'string' ? ids.split(', ').length : 0;

function changeOf(day: CuttingDay, difference: PlanDifference): Change[] {
  const { kind, id, before, after } = difference;
  if (kind === 'line') {
    const line = day.lines.find(({ lineId }) => lineId === id);
    return line
      ? [{ orderId: line.orderId, lineId: id, shareId: null, before: Number(before), after: Number(after) }]
      : [];
  }
  const share = day.shares.find(({ shareId }) => shareId === id);
  if (kind !== 'share' || !share) return [];
  return [
    { orderId: share.orderId, lineId: null, shareId: id, before: sidesIn(before), after: sidesIn(after) },
  ];
}

function bulkChangeOf({ kind, id, before, after }: PlanDifference): BulkChange[] {
  if (kind !== 'bulk') return [];
  const [speciesId = '', bulkId = ''] = id.split('/');
  return [{ speciesId, bulkId, grams: Number(after) - Number(before) }];
}

const minutesOf = (plan: CuttingPlan): number => plan.sides.reduce((sum, side) => sum + side.minutes, 0);

/** Who gains and who loses when `after` takes the place of `before`, and what it does to trim and time. */
export function changesBetween(day: CuttingDay, before: CuttingPlan | null, after: CuttingPlan): Changes {
  const empty: CuttingPlan = { ...after, sides: [], singles: [], lines: [], shares: [] };
  const differences = comparePlans(day, before ?? empty, after);
  const changes = differences.flatMap((difference) => changeOf(day, difference));
  const choices = differences.filter(({ kind }) => kind === 'operation' || kind === 'manner');
  return {
    gained: changes.filter((change) => change.after > change.before),
    lost: changes.filter((change) => change.after < change.before),
    bulks: differences.flatMap(bulkChangeOf),
    sideIds: [...new Set(choices.flatMap(({ sideId }) => sideId ?? []))],
    minutes: Math.round(minutesOf(after) - minutesOf(before ?? empty)),
  };
}

import { type Made, made, type Slip } from '../slips.ts';

/** A line of an order as the counter sees it. */
export interface LineToGive {
  readonly lineId: string;
  /** pieces, or grams of loose meat */
  readonly asked: number;
  /** what the plan gives of it */
  readonly filled: number;
  /** packs that the plan foresees for it and that are not made */
  readonly unpacked: number;
  /** smoked or cured: not before this date, yyyy-mm-dd */
  readonly readyOn: string | null;
}

export interface PackToGive {
  readonly packId: string;
  readonly serial: number;
  readonly orderId: string | null;
  readonly lineId: string | null;
  /** pieces, or grams of loose meat */
  readonly holds: number;
  readonly isGone: boolean;
}

/** gone: handed over; later: waits for its date; short: everything there is, and less than was asked */
export type Readiness = 'gone' | 'ready' | 'short' | 'partly' | 'later' | 'waiting';

export interface CheckedLine {
  readonly lineId: string;
  readonly asked: number;
  readonly packed: number;
  readonly given: number;
  readonly state: Readiness;
}

// Loose meat never weighs what was planned: a line is packed when no foreseen pack of it is open.
function stateOf(line: LineToGive, packed: number, given: number, today: string): Readiness {
  if (packed > 0 && given >= packed && line.unpacked === 0) return 'gone';
  if (line.readyOn !== null && line.readyOn > today) return 'later';
  if (line.unpacked > 0) return packed === 0 ? 'waiting' : 'partly';
  return packed === 0 || line.filled < line.asked ? 'short' : 'ready';
}

/** The order against what is packed for it: what is there, what is missing, what comes later. @param today of the shop */
export function checklist(
  lines: readonly LineToGive[],
  packs: readonly PackToGive[],
  today: string,
): CheckedLine[] {
  return lines.map((line) => {
    const mine = packs.filter(({ lineId }) => lineId === line.lineId);
    const sum = (list: readonly PackToGive[]): number => list.reduce((total, { holds }) => total + holds, 0);
    const [packed, given] = [sum(mine), sum(mine.filter(({ isGone }) => isGone))];
    return {
      lineId: line.lineId,
      asked: line.asked,
      packed,
      given,
      state: stateOf(line, packed, given, today),
    };
  });
}

/** Packs that are to leave with an order: each is the order's own, still here, and named once. */
export function checkLeaving(
  orderId: string,
  packIds: readonly string[],
  known: readonly PackToGive[],
): Made<readonly PackToGive[]> {
  const slips: Slip[] = [];
  const leaving: PackToGive[] = [];
  packIds.forEach((packId, place) => {
    const pack = known.find((each) => each.packId === packId);
    const wrong = (says: string): void => void slips.push({ at: `packIds[${place}]`, value: packId, says });
    if (!pack) wrong('is not a pack of this shop');
    else if (packIds.indexOf(packId) !== place) wrong(`pack ${pack.serial} was scanned twice`);
    else if (pack.orderId !== orderId)
      wrong(`pack ${pack.serial} is ${pack.orderId === null ? 'for the counter' : 'for another order'}`);
    else if (pack.isGone) wrong(`pack ${pack.serial} was handed over already`);
    else leaving.push(pack);
  });
  return slips.length > 0 ? { ok: false, slips } : made(leaving);
}

import { addDays } from '../dates.ts';

/** One thing of an order, and when it is there. Raw, cured and smoked things of one animal come weeks apart. */
export interface ReadyLine {
  readonly lineId: string;
  readonly name: string;
  readonly ready: string;
  readonly state: 'fresh' | 'frozen' | 'cured';
  /** days from ready for which it may wait as it is */
  readonly keepsDays: number;
}

export interface PickUp {
  readonly date: string;
  readonly lineIds: readonly string[];
  /** fresh things that would not keep, and so are frozen to wait */
  readonly frozen: readonly string[];
}

/** Everything on one day, the last; or each thing with those that are there when it is. */
export function pickUps(lines: readonly ReadyLine[], choice: 'one' | 'as-ready'): PickUp[] {
  const dates = [...new Set(lines.map(({ ready }) => ready))].sort();
  const chosen = choice === 'one' ? dates.slice(-1) : dates;
  return chosen.map((date) => {
    const due = lines.filter(({ ready }) => choice === 'one' || ready === date);
    const spoils = due.filter(
      ({ state, ready, keepsDays }) => state === 'fresh' && addDays(ready, keepsDays) < date,
    );
    return { date, lineIds: due.map(({ lineId }) => lineId), frozen: spoils.map(({ lineId }) => lineId) };
  });
}

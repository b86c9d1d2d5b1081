import type { CutList } from '../cut-list.ts';
import type { ShownIn } from '../measures.ts';
import { type PackRow, packRows } from './pack-rows.ts';
import type { CutStep } from './side-steps.ts';

/** A step and the side that it is done on. */
export interface PlacedStep {
  readonly animal: string;
  /** null: a piece of the whole animal */
  readonly hand: 'left' | 'right' | null;
  readonly step: CutStep;
}

/** One place at the bench: the same task on one side after the other. */
export interface Station {
  readonly action: string;
  readonly steps: readonly PlacedStep[];
}

interface PersonRow extends PackRow {
  readonly animal: string;
  readonly hand: 'left' | 'right' | null;
}

/** What one customer has of the day. */
export interface PersonList {
  /** null: nobody yet, the counter */
  readonly owner: string | null;
  readonly rows: readonly PersonRow[];
}

const placedSteps = ({ animals }: CutList): PlacedStep[] =>
  animals.flatMap(({ name, sides, singles }) => [
    ...sides.flatMap(({ hand, steps }) => steps.map((step) => ({ animal: name, hand, step }))),
    ...(singles ? [{ animal: name, hand: null, step: singles }] : []),
  ]);

/** The work of a day by task, for benches at which each person does one: every step once, tasks in bench order. */
export function byStation(list: CutList): readonly Station[] {
  const stations = new Map<string, { first: number; steps: PlacedStep[] }>();
  for (const placed of placedSteps(list)) {
    const { action, order } = placed.step;
    // Pieces of the whole animal were taken before it was split.
    const turn = placed.hand === null ? 0 : order;
    const station = stations.get(action) ?? { first: turn, steps: [] };
    station.first = Math.min(station.first, turn);
    station.steps.push(placed);
    stations.set(action, station);
  }
  return [...stations]
    .toSorted(([, a], [, b]) => a.first - b.first)
    .map(([action, { steps }]) => ({ action, steps }));
}

/** The packs of a day by customer, for whoever lays out and wraps: every pack once, the counter last. */
export function byPerson(list: CutList, shown: ShownIn = {}): readonly PersonList[] {
  const people = new Map<string | null, PersonRow[]>();
  for (const { animal, hand, step } of placedSteps(list))
    for (const row of packRows(step, shown))
      people.set(row.owner, [...(people.get(row.owner) ?? []), { ...row, animal, hand }]);
  return [...people]
    .map(([owner, rows]) => ({ owner, rows }))
    .toSorted((a, b) => Number(a.owner === null) - Number(b.owner === null));
}

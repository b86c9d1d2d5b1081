import {
  allowedOperations,
  type Bar,
  isPartLost,
  lostRegions,
  type Manner,
  type Primal,
  type SideFacts,
  type Species,
  type Zone,
} from '@flitchbook/carcass';
import type { BarPlan, Lock, SidePlan } from '@flitchbook/plan';

/** One way out of those the tree allows. */
export interface Option {
  readonly id: string;
  readonly name: string;
  /** one sentence of the bench, where the data has one */
  readonly says: string;
  readonly minutes: number;
  /** the choice settled on this option */
  readonly lock: Lock;
}

/** How one primal is broken down. */
export interface PartChoice {
  readonly kind: 'part';
  readonly key: string;
  readonly name: string;
  readonly options: readonly Option[];
  readonly chosen: string | null;
  readonly locked: boolean;
}

/** How one zone of a bar is cut. More than one chosen manner: the zone is parted between two bones. */
export interface ZoneChoice {
  readonly zoneId: string;
  readonly name: string;
  readonly options: readonly Option[];
  readonly chosen: readonly { readonly manner: string; readonly name: string; readonly stations: number }[];
  readonly locked: boolean;
}

/** How a bar is cut zone by zone, and the manners that can run all along it. */
export interface BarChoice {
  readonly kind: 'bar';
  readonly key: string;
  readonly name: string;
  readonly zones: readonly ZoneChoice[];
  readonly allAlong: readonly {
    readonly manner: string;
    readonly locks: readonly Lock[];
    readonly isNow: boolean;
  }[];
}

export type Choice = PartChoice | BarChoice;

const isLocked = (locks: readonly Lock[], lock: Lock): boolean =>
  locks.some((other) => lockKey(other) === lockKey(lock));

/** What a lock settles: two locks with one key contradict each other. */
export const lockKey = (lock: Lock): string =>
  lock.lock === 'operation' ? `${lock.sideId}/part/${lock.part}` : `${lock.sideId}/zone/${lock.zone}`;

function partChoice(part: Primal, side: SideFacts, plan: SidePlan, locks: readonly Lock[]): PartChoice {
  const options = allowedOperations(part, side).map(
    ({ id, name, says, minutes }): Option => ({
      id,
      name,
      says,
      minutes,
      lock: { lock: 'operation', sideId: side.sideId, part: part.id, operation: id },
    }),
  );
  const [first] = options;
  return {
    kind: 'part',
    key: part.id,
    name: part.name,
    options,
    chosen: plan.operations[part.id] ?? null,
    locked: first !== undefined && isLocked(locks, first.lock),
  };
}

function chosenManners(zone: Zone, bar: BarPlan | undefined): ZoneChoice['chosen'] {
  const stretches = (bar?.runs ?? [])
    .flatMap((run) => run.stretches)
    .filter((stretch) => stretch.zone === zone.id);
  return stretches.map(({ manner, fromStation, toStation }) => ({
    manner,
    name: zone.manners.find((candidate) => candidate.id === manner)?.name ?? manner,
    stations: toStation - fromStation,
  }));
}

function zoneChoice(
  zone: Zone,
  sideId: string,
  bar: BarPlan | undefined,
  locks: readonly Lock[],
): ZoneChoice {
  const lock = (manner: Manner): Lock => ({ lock: 'manner', sideId, zone: zone.id, manner: manner.id });
  const options = zone.manners.map(
    (manner): Option => ({
      id: manner.id,
      name: manner.name,
      says: '',
      minutes: manner.minutes,
      lock: lock(manner),
    }),
  );
  const [first] = options;
  return {
    zoneId: zone.id,
    name: zone.name,
    options,
    chosen: chosenManners(zone, bar),
    locked: first !== undefined && isLocked(locks, first.lock),
  };
}

function barChoice(bar: Bar, side: SideFacts, plan: SidePlan, locks: readonly Lock[]): BarChoice {
  const barPlan = plan.bars.find((candidate) => candidate.bar === bar.id);
  const zones = bar.zones
    .filter((zone) => zone.manners.length > 1)
    .map((zone) => zoneChoice(zone, side.sideId, barPlan, locks));
  const [first, ...others] = zones;
  const shared = (first?.options ?? []).filter(({ id }) =>
    others.every((zone) => zone.options.some((option) => option.id === id)),
  );
  const allAlong = (others.length > 0 ? shared : []).map(({ id }) => ({
    manner: id,
    locks: zones.flatMap((zone) =>
      zone.options.filter((option) => option.id === id).map((option) => option.lock),
    ),
    isNow: zones.every((zone) => zone.chosen.every((chosen) => chosen.manner === id)),
  }));
  return { kind: 'bar', key: bar.id, name: bar.name, zones, allAlong };
}

/**
 * The open questions of a side as it is planned now, from the whole side down: every part that the tree lets the butcher
 * break down in more than one way, every bar with a zone that can be cut in more than one manner.
 */
export function choicesOf(
  species: Species,
  side: SideFacts,
  plan: SidePlan,
  locks: readonly Lock[],
): Choice[] {
  const choices: Choice[] = [];
  const lost = lostRegions(species, side.lostParts);
  const visit = (partId: string): void => {
    const part = species.parts[partId];
    if (!part || isPartLost(part, lost)) return;
    if (part.kind === 'bar') {
      const choice = barChoice(part, side, plan, locks);
      if (choice.zones.length > 0) choices.push(choice);
      return;
    }
    const choice = partChoice(part, side, plan, locks);
    if (choice.options.length > 1) choices.push(choice);
    const chosen = part.operations.find((operation) => operation.id === choice.chosen);
    for (const output of chosen?.outputs ?? []) if (output.to === 'part') visit(output.id);
  };
  visit(species.sideRoot);
  return choices;
}

import { entryOf } from './check-plan/day-index.ts';
import type { CuttingPlan, SidePlan } from './cutting-plan.ts';
import type { CuttingDay } from './day.ts';
import { portionText, weightText } from './measures.ts';

/** One thing that is otherwise in the second plan. */
export interface PlanDifference {
  readonly kind: 'line' | 'share' | 'operation' | 'manner' | 'bulk';
  readonly sideId: string | null;
  /** line, share, part, "bar/zone" or "species/bulk" */
  readonly id: string;
  /** pieces, grams, or ids; null where there was nothing */
  readonly before: string | number | null;
  readonly after: string | number | null;
  readonly says: string;
}

/** Changes of bulk below this are the rounding of saw dust and trim. */
const leastGrams = 10;

function lineDifferences(day: CuttingDay, before: CuttingPlan, after: CuttingPlan): PlanDifference[] {
  const filledIn = (plan: CuttingPlan) => new Map(plan.lines.map(({ lineId, filled }) => [lineId, filled]));
  const [was, is] = [filledIn(before), filledIn(after)];
  return day.lines.flatMap((line): PlanDifference[] => {
    const [from, to] = [was.get(line.lineId) ?? 0, is.get(line.lineId) ?? 0];
    if (from === to) return [];
    const cut = entryOf(day.species, line.speciesId)?.cuts[line.cut]?.name ?? line.cut;
    const loose = 'grams' in line.ask;
    const amount = (value: number): string => (loose ? weightText(value * 1000) : String(value));
    const change = `${to > from ? 'gains' : 'loses'} ${amount(Math.abs(to - from))}`;
    const says = `${line.owner} ${change}: ${cut}, ${portionText(line.portion)} (${amount(to)} instead of ${amount(from)}).`;
    return [{ kind: 'line', sideId: null, id: line.lineId, before: from, after: to, says }];
  });
}

function shareDifferences(day: CuttingDay, before: CuttingPlan, after: CuttingPlan): PlanDifference[] {
  const sidesIn = (plan: CuttingPlan) =>
    new Map(plan.shares.map(({ shareId, sideIds }) => [shareId, [...sideIds].sort().join(', ')]));
  const [was, is] = [sidesIn(before), sidesIn(after)];
  return day.shares.flatMap(({ shareId, owner }): PlanDifference[] => {
    const [from, to] = [was.get(shareId) || null, is.get(shareId) || null];
    if (from === to) return [];
    const says =
      to === null
        ? `${owner} loses ${from}.`
        : from === null
          ? `${owner} gains ${to}.`
          : `${owner} gets ${to} instead of ${from}.`;
    return [{ kind: 'share', sideId: null, id: shareId, before: from, after: to, says }];
  });
}

interface SidePair {
  readonly day: CuttingDay;
  readonly sideId: string;
  readonly before: SidePlan | undefined;
  readonly after: SidePlan | undefined;
}

function sideName({ day, sideId }: SidePair): string {
  const animal = day.animals.find(({ sides }) => sides.some((side) => side.sideId === sideId));
  return `${animal?.name ?? sideId}, ${animal?.sides.find((side) => side.sideId === sideId)?.hand ?? ''} side`;
}

function changesOf(
  pair: SidePair,
  kind: 'operation' | 'manner',
  was: ReadonlyMap<string, string>,
  is: ReadonlyMap<string, string>,
  name: (id: string) => string,
): PlanDifference[] {
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((id): PlanDifference[] => {
    const [from, to] = [was.get(id) ?? null, is.get(id) ?? null];
    if (from === to) return [];
    const change =
      to === null
        ? `is no longer made (it was ${from})`
        : from === null
          ? `is new: ${to}`
          : `is ${to} instead of ${from}`;
    return [
      {
        kind,
        sideId: pair.sideId,
        id,
        before: from,
        after: to,
        says: `${sideName(pair)}: ${name(id)} ${change}.`,
      },
    ];
  });
}

/** "bone-in", or "bone-in 0 to 5, boned 5 to 9" for a zone that is parted. */
function mannersOf(side: SidePlan | undefined): ReadonlyMap<string, string> {
  const stretches = new Map<string, { manner: string; span: string }[]>();
  for (const bar of side?.bars ?? []) {
    for (const { zone, manner, fromStation, toStation } of bar.runs.flatMap((run) => run.stretches)) {
      const id = `${bar.bar}/${zone}`;
      stretches.set(id, [
        ...(stretches.get(id) ?? []),
        { manner, span: `${manner} ${fromStation} to ${toStation}` },
      ]);
    }
  }
  return new Map(
    [...stretches].map(([id, list]) => [
      id,
      list.length === 1 ? (list[0]?.manner ?? '') : list.map(({ span }) => span).join(', '),
    ]),
  );
}

function sideDifferences(pair: SidePair): PlanDifference[] {
  const { day, before, after, sideId } = pair;
  const animal = day.animals.find(({ sides }) => sides.some((side) => side.sideId === sideId));
  const parts = entryOf(day.species, animal?.speciesId ?? '')?.parts ?? {};
  const zoneName = (id: string): string => {
    const [bar = '', zone = ''] = id.split('/');
    const part = parts[bar];
    return `${part?.name ?? bar}, ${(part?.kind === 'bar' ? part.zones.find((entry) => entry.id === zone)?.name : undefined) ?? zone}`;
  };
  const operations = (side: SidePlan | undefined) => new Map(Object.entries(side?.operations ?? {}));
  return [
    ...changesOf(pair, 'operation', operations(before), operations(after), (id) => parts[id]?.name ?? id),
    ...changesOf(pair, 'manner', mannersOf(before), mannersOf(after), zoneName),
  ];
}

function bulkIn(day: CuttingDay, plan: CuttingPlan): ReadonlyMap<string, number> {
  const speciesOf = new Map(day.animals.map(({ animalId, speciesId }) => [animalId, speciesId]));
  const sums = new Map<string, number>();
  for (const side of plan.sides) {
    for (const [bulk, mg] of Object.entries(side.bulkMg)) {
      const id = `${speciesOf.get(side.animalId) ?? ''}/${bulk}`;
      sums.set(id, (sums.get(id) ?? 0) + mg);
    }
  }
  return sums;
}

function bulkDifferences(day: CuttingDay, before: CuttingPlan, after: CuttingPlan): PlanDifference[] {
  const [was, is] = [bulkIn(day, before), bulkIn(day, after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((id): PlanDifference[] => {
    const [from, to] = [was, is].map((sums) => Math.round((sums.get(id) ?? 0) / 1000)) as [number, number];
    if (Math.abs(to - from) < leastGrams) return [];
    const [speciesId = '', bulk = ''] = id.split('/');
    const name = entryOf(day.species, speciesId)?.bulks[bulk]?.name ?? bulk;
    const says = `${name}: ${weightText(Math.abs(to - from) * 1000)} ${to > from ? 'more' : 'less'} (${weightText(to * 1000)}).`;
    return [{ kind: 'bulk', sideId: null, id, before: from, after: to, says }];
  });
}

/** What the second plan of a day does otherwise: who gains or loses, which choices changed on which side, and what that does to the trim. */
export function comparePlans(day: CuttingDay, before: CuttingPlan, after: CuttingPlan): PlanDifference[] {
  const sidesIn = (plan: CuttingPlan) => new Map(plan.sides.map((side) => [side.sideId, side]));
  const [was, is] = [sidesIn(before), sidesIn(after)];
  const sideIds = [...new Set([...was.keys(), ...is.keys()])];
  return [
    ...lineDifferences(day, before, after),
    ...shareDifferences(day, before, after),
    ...sideIds.flatMap((sideId) =>
      sideDifferences({ day, sideId, before: was.get(sideId), after: is.get(sideId) }),
    ),
    ...bulkDifferences(day, before, after),
  ];
}

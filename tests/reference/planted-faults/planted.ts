import type { CuttingDay, CuttingPlan, PlanRule, RunPlan, SidePlan, SpanPiece } from '@flitchbook/plan';
import { changed, type Mutable } from '../../../packages/plan/src/test-days/busy-day.ts';

/** A good plan of a day. */
export interface Planned {
  readonly day: CuttingDay;
  readonly plan: CuttingPlan;
}

/** One kind of fault, the rule that must speak, and every place of a good plan where it can be planted. */
export interface PlantedFault {
  readonly says: string;
  readonly rule: PlanRule;
  readonly plant: (good: Planned) => readonly Planned[];
}

export const speciesOf = (day: CuttingDay, animalId: string) => {
  const speciesId = day.animals.find((animal) => animal.animalId === animalId)?.speciesId ?? '';
  const species = day.species[speciesId];
  if (!species) throw new Error(`no species of ${animalId}`);
  return species;
};

type MutableSide = Mutable<SidePlan>;
type MutableRun = Mutable<RunPlan>;

/** Whether the fault could be planted: false leaves the place out. */
type Change<Of> = (of: Of, planned: Planned, copy: Mutable<CuttingPlan>) => boolean;

function plantAt<Of>(good: Planned, count: number, pick: (copy: Mutable<CuttingPlan>, at: number) => Of) {
  return (change: Change<Of>): Planned[] =>
    Array.from({ length: count }).flatMap((_, at) => {
      let could = false;
      const plan = changed(good.plan, (copy) => {
        could = change(pick(copy, at), good, copy);
      });
      return could ? [{ ...good, plan }] : [];
    });
}

/** Plants a fault in the plan as a whole. */
export const inPlan =
  (change: (copy: Mutable<CuttingPlan>, planned: Planned) => boolean): PlantedFault['plant'] =>
  (good) =>
    plantAt(good, 1, (copy) => copy)((copy, planned) => change(copy, planned));

export const inEachSide =
  (change: Change<MutableSide>): PlantedFault['plant'] =>
  (good) =>
    plantAt(good, good.plan.sides.length, (copy, at) => copy.sides[at] as MutableSide)(change);

export interface RunPlace {
  readonly side: MutableSide;
  readonly bar: MutableSide['bars'][number];
  readonly run: MutableRun;
}

const runsOf = (plan: Mutable<CuttingPlan>): RunPlace[] =>
  plan.sides.flatMap((side) => side.bars.flatMap((bar) => bar.runs.map((run) => ({ side, bar, run }))));

export const inEachRun =
  (change: Change<RunPlace>): PlantedFault['plant'] =>
  (good) => {
    const count = runsOf(good.plan as Mutable<CuttingPlan>).length;
    return plantAt(good, count, (copy, at) => runsOf(copy)[at] as RunPlace)(change);
  };

export interface PiecePlace extends RunPlace {
  readonly piece: Mutable<SpanPiece>;
  readonly index: number;
}

const piecesOf = (plan: Mutable<CuttingPlan>): PiecePlace[] =>
  runsOf(plan).flatMap((place) => place.run.pieces.map((piece, index) => ({ ...place, piece, index })));

export const inEachPiece =
  (change: Change<PiecePlace>): PlantedFault['plant'] =>
  (good) => {
    const count = piecesOf(good.plan as Mutable<CuttingPlan>).length;
    return plantAt(good, count, (copy, at) => piecesOf(copy)[at] as PiecePlace)(change);
  };

export const inEachLine =
  (change: Change<Mutable<CuttingPlan>['lines'][number]>): PlantedFault['plant'] =>
  (good) =>
    plantAt(
      good,
      good.plan.lines.length,
      (copy, at) => copy.lines[at] as Mutable<CuttingPlan>['lines'][number],
    )(change);

/** Plants a fault by asking something else of the day that the plan is for. */
export const inDay =
  (changes: (good: Planned) => readonly Partial<CuttingDay>[]): PlantedFault['plant'] =>
  (good) =>
    changes(good).map((change) => ({ ...good, day: { ...good.day, ...change } }));

/** Anything that can have an owner, wherever it lies. */
export type Owned = { pieceId: string; owner: { lineId: string } | { shareId: string } | null };

export const ownedIn = (copy: Mutable<CuttingPlan>): Owned[] => [
  ...copy.sides.flatMap(({ items }) => items),
  ...piecesOf(copy).map(({ piece }) => piece),
  ...copy.singles,
];

export const inEachOwned =
  (change: Change<Owned>): PlantedFault['plant'] =>
  (good) => {
    const count = ownedIn(good.plan as Mutable<CuttingPlan>).length;
    return plantAt(good, count, (copy, at) => ownedIn(copy)[at] as Owned)(change);
  };

import { hog, type SideFacts, type Species, shapeSide } from '@flitchbook/carcass';
import type { CuttingDay, CuttingPlan, DayAnimal, SidePlan } from '@flitchbook/plan';
import { markOrders, type OrderMark } from '../marks/order-marks.ts';
import type { Board } from '../wire/board.ts';
import { type Choice, choicesOf } from './choices-model.ts';
import type { SpeciesSide } from './edits-model.ts';
import { type OrderView, type Tally, tallyOrders, viewOrders } from './orders-model.ts';
import { Holders, type Piece, piecesOf } from './pieces-model.ts';
import { type Assurance, assuranceOf } from './proof-model.ts';
import { layBar, type RulerBar } from './ruler-model.ts';
import { type Totals, totalsOf } from './totals-model.ts';

export const allSpecies: Readonly<Record<string, Species>> = { [hog.id]: hog };

export interface SideView {
  readonly sideId: string;
  readonly hand: SideFacts['hand'];
  readonly massMg: number;
  /** the order that has the whole side */
  readonly stampedFor: string | null;
  readonly bars: readonly RulerBar[];
  readonly items: readonly Piece[];
  readonly choices: readonly Choice[];
  readonly bulkMg: Readonly<Record<string, number>>;
  readonly lostParts: readonly string[];
}

export interface AnimalView {
  readonly animalId: string;
  readonly name: string;
  readonly speciesName: string;
  readonly carcassGrams: number;
  readonly ribs: number;
  readonly singles: readonly Piece[];
  readonly sides: readonly SideView[];
}

/** A day as it is looked at: one plan of it, laid out. */
export interface BoardView {
  readonly board: Board;
  readonly plan: CuttingPlan | null;
  readonly animals: readonly AnimalView[];
  readonly orders: readonly OrderView[];
  readonly orderById: ReadonlyMap<string, OrderView>;
  readonly marks: ReadonlyMap<string, OrderMark>;
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly tally: Tally;
  readonly totals: Totals | null;
  readonly assurance: Assurance;
  /** longest bar of the day: the rule that all are drawn against */
  readonly longestUm: number;
  /** the plan is of an earlier state of the day: orders or animals have changed since */
  readonly isStale: boolean;
}

const speciesOfAnimal = (animals: readonly DayAnimal[], animalId: string): Species | undefined =>
  allSpecies[animals.find((animal) => animal.animalId === animalId)?.speciesId ?? ''];

/** Name of a cut or an item. A cut and an item of one id are the same thing. */
export const nameIn = (species: Species | undefined, id: string): string =>
  species?.cuts[id]?.name ?? species?.items[id]?.name ?? id;

/** The day with the species it names, as planning and comparing take it. */
export const withSpecies = (board: Board): CuttingDay => ({ ...board.cuttingDay, species: allSpecies });

/** The plan is of an earlier state of the day: orders or animals have changed since. */
export const isStale = ({ plan, day }: Board): boolean => plan !== null && day.plannedVersion !== day.version;

/** The sides of a day with their species, for applying edits. */
export const speciesSides = (board: Board): SpeciesSide[] =>
  board.cuttingDay.animals.flatMap((animal) => {
    const species = allSpecies[animal.speciesId];
    return species ? animal.sides.map((side) => ({ species, side })) : [];
  });

interface Laid {
  readonly board: Board;
  readonly species: Species;
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly holders: Holders;
}

function viewSide({ board, species, pieces, holders }: Laid, facts: SideFacts, plan: SidePlan): SideView {
  const shape = shapeSide(species, facts);
  const bars = plan.bars.flatMap((barPlan) => {
    const bar = shape.bars.get(barPlan.bar);
    return bar ? [layBar({ sideId: plan.sideId, species, shape: bar, plan: barPlan })] : [];
  });
  const items = plan.items.flatMap((item) => pieces.get(item.pieceId) ?? []);
  return {
    sideId: plan.sideId,
    hand: facts.hand,
    massMg: plan.massMg,
    stampedFor: plan.shareId === null ? null : (holders.ofShare(plan.shareId)?.orderId ?? null),
    bars: [...bars].sort((one, other) => other.lengthUm - one.lengthUm),
    items: [...items].sort((one, other) => Number(one.holder === null) - Number(other.holder === null)),
    choices: choicesOf(species, facts, plan, board.cuttingDay.locks),
    bulkMg: plan.bulkMg,
    lostParts: facts.lostParts.map((part) => species.parts[part]?.name ?? species.regions[part] ?? part),
  };
}

function viewAnimal(laid: Laid, plan: CuttingPlan | null, animal: DayAnimal): AnimalView {
  const sides = animal.sides.flatMap((facts) => {
    const sidePlan = plan?.sides.find((candidate) => candidate.sideId === facts.sideId);
    return sidePlan ? [viewSide(laid, facts, sidePlan)] : [];
  });
  const [first] = animal.sides;
  return {
    animalId: animal.animalId,
    name: animal.name,
    speciesName: laid.species.name,
    carcassGrams: first?.carcassGrams ?? 0,
    ribs: first?.ribs ?? 0,
    singles: [...laid.pieces.values()].filter(
      (piece) => piece.animalId === animal.animalId && piece.sideId === null,
    ),
    sides: [...sides].sort((one, other) => one.hand.localeCompare(other.hand)),
  };
}

/** Lays out a day. `plan` is the stored one, or one that is being tried out with `locks`. */
export function viewBoard(
  stored: Board,
  plan: CuttingPlan | null,
  locks = stored.cuttingDay.locks,
): BoardView {
  const board: Board = { ...stored, cuttingDay: { ...stored.cuttingDay, locks } };
  const { animals, lines } = board.cuttingDay;
  const holders = new Holders(board);
  const speciesOf = (animalId: string): Species | undefined => speciesOfAnimal(animals, animalId);
  const pieces = plan
    ? piecesOf(plan, holders, (animalId) => ({
        cutOrItem: (id) => nameIn(speciesOf(animalId), id),
        stock: (id) => speciesOf(animalId)?.stocks[id]?.name ?? id,
      }))
    : new Map<string, Piece>();
  const animalViews = animals.flatMap((animal) => {
    const species = allSpecies[animal.speciesId];
    return species ? [viewAnimal({ board, species, pieces, holders }, plan, animal)] : [];
  });
  const orders = viewOrders(board, plan, holders);
  const bars = animalViews.flatMap((animal) => animal.sides).flatMap((side) => side.bars);
  return {
    board,
    plan,
    animals: animalViews,
    orders,
    orderById: new Map(orders.map((order) => [order.orderId, order])),
    marks: markOrders(board.orders),
    pieces,
    tally: tallyOrders(orders),
    totals: plan ? totalsOf({ plan, lines, species: allSpecies, speciesOf }) : null,
    assurance: assuranceOf(plan?.proof ?? null),
    longestUm: Math.max(...bars.map((bar) => bar.lengthUm), 0),
    isStale: isStale(stored),
  };
}

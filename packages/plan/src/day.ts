import type { CutSheet, Portion, SideFacts, Species, Tools } from '@flitchbook/carcass';

/** An animal of the day. Its singles (head, liver ...) belong to it and to no side. */
export interface DayAnimal {
  readonly animalId: string;
  /** what the shop calls it: a tag or a name */
  readonly name: string;
  readonly speciesId: string;
  /** items refused at inspection or asked for too late */
  readonly lostItems: readonly string[];
  readonly sides: readonly SideFacts[];
}

/** Promised lines are kept before wished ones are looked at. */
export type Rank = 'promised' | 'wished';

export interface Wanted {
  readonly cut: string;
  readonly portion: Portion;
}

/** One line of an order: a cut, how it is portioned, and how much of it. */
export interface DemandLine extends Wanted {
  readonly lineId: string;
  readonly orderId: string;
  /** whose order it is, as shown on lists */
  readonly owner: string;
  readonly speciesId: string;
  /** pieces, or grams of a bulk cut */
  readonly ask: { readonly pieces: number } | { readonly grams: number };
  readonly rank: Rank;
  readonly priceMinorPerKg: number;
  /** every piece from one animal */
  readonly sameAnimal: boolean;
  readonly onlyAnimal?: string;
  readonly onlyHand?: 'left' | 'right';
  /** taken in this order where the cut itself falls short */
  readonly substitutes: readonly Wanted[];
}

/** How a customer wants his side broken down. What is not said falls to the shop's usual way. */
export interface Instructions extends CutSheet {
  /** the right side of a whole animal, where it is cut otherwise than the left */
  readonly right?: CutSheet;
  /** items and bulk that he does not take home */
  readonly leaves?: readonly string[];
  /** the second name, where two deal the pieces between them */
  readonly sharedWith?: string;
}

/** A side or a whole animal reserved by one customer. */
export interface CarcassShare {
  readonly shareId: string;
  readonly orderId: string;
  readonly owner: string;
  readonly speciesId: string;
  readonly size: 'half' | 'whole';
  readonly rank: Rank;
  readonly priceMinorPerKg: number;
  readonly onlyAnimal?: string;
  readonly instructions: Instructions;
}

/** A choice the butcher has settled. */
export type Lock =
  | { readonly lock: 'operation'; readonly sideId: string; readonly part: string; readonly operation: string }
  | { readonly lock: 'manner'; readonly sideId: string; readonly zone: string; readonly manner: string };

/** What unsold pieces are worth: the first few at full price, later ones at less. The last step has no end. */
export interface Counter {
  readonly itemSteps: readonly { readonly pieces: number | null; readonly worthPercent: number }[];
  readonly stockSteps: readonly { readonly grams: number | null; readonly worthPercent: number }[];
  /** minor units a kilogram that replace the species' defaults: item, stock or bulk id */
  readonly worthMinorPerKg: Readonly<Record<string, number>>;
  readonly labourMinorPerHour: number;
}

/** Everything one plan is made from. */
export interface CuttingDay {
  readonly dayId: string;
  /** local date of the shop, yyyy-mm-dd */
  readonly date: string;
  readonly species: Readonly<Record<string, Species>>;
  readonly animals: readonly DayAnimal[];
  readonly lines: readonly DemandLine[];
  readonly shares: readonly CarcassShare[];
  readonly locks: readonly Lock[];
  readonly tools: Tools;
  readonly counter: Counter;
}

/** How a side of a share is cut: the left one as said, the right one as well unless it has instructions of its own. */
export const sheetFor = ({ instructions }: CarcassShare, hand: SideFacts['hand'] | undefined): CutSheet =>
  (hand === 'right' ? instructions.right : undefined) ?? instructions;

export const sidesOf = (day: CuttingDay): readonly SideFacts[] =>
  day.animals.flatMap((animal) => animal.sides);

export const askedPieces = (line: DemandLine): number => ('pieces' in line.ask ? line.ask.pieces : 0);
/** Made of a piece from each side of one animal. */
export const wantsBothSides = (day: CuttingDay, { speciesId, cut }: DemandLine): boolean =>
  day.species[speciesId]?.cuts[cut]?.bothSides === true;

export const askedGrams = (line: DemandLine): number => ('grams' in line.ask ? line.ask.grams : 0);

/** The cut as ordered, then what the customer would take instead, in order. */
export const acceptable = (line: DemandLine): readonly Wanted[] => [line, ...line.substitutes];

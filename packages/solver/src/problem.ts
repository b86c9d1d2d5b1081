import type { Footprint, Operation, Run, SideFacts, ZoneWay } from '@flitchbook/carcass';
import type { CarcassShare, CuttingDay, DemandLine, Nominal } from '@flitchbook/plan';

/**
 * A cutting day compiled into what the solvers work on. Indices replace ids; every list is in a fixed order, so the same
 * day compiles to the same problem. Lengths um, bulk and free stretches in grams, worth in minor units.
 */
export interface Problem {
  readonly day: CuttingDay;
  readonly nominals: ReadonlyMap<string, Nominal>;
  readonly products: readonly Product[];
  readonly classes: readonly UnitClass[];
  readonly demands: readonly Demand[];
  readonly bulkDemands: readonly BulkDemand[];
  readonly shares: readonly ShareChoice[];
  readonly outlets: Outlets;
}

/** Something a unit yields in whole pieces that a line may ask for: an item, or a portion of a stock. */
export interface Product {
  readonly key: string;
  readonly speciesId: string;
  /** item or stock id */
  readonly from: string;
  readonly isItem: boolean;
  /** kept for one line, on one animal or hand only */
  readonly privateTo: string | null;
}

/** What a piece that nobody asked for is worth, in steps that fall. */
export interface Outlets {
  /** product index of each item to its steps */
  readonly items: readonly {
    readonly product: number;
    readonly steps: readonly { readonly size: number; readonly worth: number }[];
  }[];
  readonly stocks: readonly {
    readonly key: string;
    readonly steps: readonly { readonly size: number; readonly worthPerGram: number }[];
  }[];
  readonly bulks: readonly { readonly key: string; readonly worthPerGram: number }[];
}

export interface Amount {
  readonly index: number;
  readonly grams: number;
}

/** An item that a choice makes, and the products it may be counted as. */
export interface ItemOut {
  readonly item: string;
  readonly products: readonly number[];
}

export interface OperationChoice {
  readonly operation: Operation;
  /** nodes that it opens */
  readonly opens: readonly number[];
  readonly items: readonly ItemOut[];
  readonly bulks: readonly Amount[];
}

export interface RunOption extends Footprint {
  readonly product: number;
}

/** A run that a bar can be given, with the portions that fit it. */
export interface RunChoice {
  readonly run: Run;
  /** index of the stock's outlet */
  readonly outlet: number;
  /** expected grams for each um left free */
  readonly freeGramsPerUm: number;
  readonly options: readonly RunOption[];
  /** runs of one table differ in length only */
  readonly tableKey: string;
}

/** One way to cut a bar from end to end. */
export interface Layout {
  readonly ways: readonly ZoneWay[];
  readonly runs: readonly number[];
  readonly items: readonly ItemOut[];
  readonly bulks: readonly Amount[];
  readonly minutes: number;
}

export interface PrimalNode {
  readonly kind: 'primal';
  readonly partId: string;
  readonly choices: readonly OperationChoice[];
}
export interface BarNode {
  readonly kind: 'bar';
  readonly partId: string;
  /** zone ids in order; `Layout.ways` runs beside them */
  readonly zones: readonly string[];
  readonly runs: readonly RunChoice[];
  readonly layouts: readonly Layout[];
}
/** A part that is set aside whole. */
interface LostNode {
  readonly kind: 'lost';
  readonly partId: string;
}
/** The singles of an animal: those that leave whole anyway, and a choice for each that may be taken apart. */
interface SinglesNode {
  readonly kind: 'singles';
  readonly items: readonly ItemOut[];
  readonly opens: readonly number[];
}
export type Node = PrimalNode | BarNode | LostNode | SinglesNode;

export interface Unit {
  readonly unitId: string;
  readonly animalId: string;
  readonly side: SideFacts | null;
}

/** Units that can be cut in just the same ways. Node 0 is the root. */
export interface UnitClass {
  readonly index: number;
  readonly speciesId: string;
  readonly isSide: boolean;
  readonly units: readonly Unit[];
  readonly nodes: readonly Node[];
  /** node indices, what a choice opens before the choice */
  readonly order: readonly number[];
}

type Tier = 'promised' | 'wished';

export interface DemandOption {
  readonly product: number;
  /** place in the customer's list: 0 the cut as ordered */
  readonly step: number;
  /** set where the whole line must come from one animal, or from both sides of each */
  readonly animalId: string | null;
  /** set where each piece needs its fellow from the other side */
  readonly hand: 'left' | 'right' | null;
}

/** Lines that ask for the same thing at the same worth. */
export interface Demand {
  readonly lines: readonly DemandLine[];
  readonly tier: Tier;
  readonly pieces: number;
  /** minor units for each piece filled */
  readonly worth: number;
  readonly options: readonly DemandOption[];
  readonly oneAnimal: boolean;
  /** as many pieces from the left as from the right side of each animal */
  readonly bothSides: boolean;
}

export interface BulkDemand {
  readonly line: DemandLine;
  readonly tier: Tier;
  /** index in `outlets.bulks` */
  readonly bulk: number;
  readonly grams: number;
  readonly worthPerGram: number;
}

/** Where a share could be cut: a side of a class, or the two sides and the singles of an animal. */
export interface ShareChoice {
  readonly share: CarcassShare;
  readonly tier: Tier;
  /** class indices, one entry for each unit taken */
  readonly takes: readonly number[];
  /** animals that could serve; for a half, any side of the class */
  readonly animalIds: readonly string[];
  readonly worth: number;
  readonly minutes: number;
}

/** How one bar of a class is cut. */
export interface BarWay {
  readonly classIndex: number;
  readonly node: number;
  /** index of the layout */
  readonly layout: number;
  /** run index to pieces of each product */
  readonly pieces: ReadonlyMap<number, ReadonlyMap<number, number>>;
  /** product for each item released, by "node/item" */
  readonly labels: ReadonlyMap<string, number>;
}

/** What a solver decides for one unit. */
export interface UnitDecision {
  readonly unit: Unit;
  readonly classIndex: number;
  readonly share: CarcassShare | null;
  /** node index to choice or layout index, for the nodes that exist */
  readonly choices: ReadonlyMap<number, number>;
  /** node index to run index to pieces of each product */
  readonly pieces: ReadonlyMap<number, ReadonlyMap<number, ReadonlyMap<number, number>>>;
  /** product for each item made, by "node/item" */
  readonly labels: ReadonlyMap<string, number>;
}

/** Pieces of a product given to a demand, and grams of bulk given to a bulk demand. */
export interface Assignment {
  readonly pieces: readonly { readonly demand: number; readonly option: number; readonly count: number }[];
  readonly bulk: readonly { readonly demand: number; readonly grams: number }[];
}

export interface Decision {
  readonly units: readonly UnitDecision[];
  readonly assignment: Assignment;
}

/**
 * The carcass as data. A part is broken down by exactly one of the operations it allows; an operation turns it into
 * parts, items (a piece that leaves whole) and bulk (trim, fat, bone). A bar is a part portioned along its length: zones
 * of stations, each zone cut in one manner, or in two manners parted between two stations where the zone may split.
 * What excludes what is never listed: it follows from this tree.
 */

/** Key of an entry in `sources`. Every figure carries one. */
export type SourceKey = string;

/** A measured or estimated share of a mass, in any one unit inside its list; lists are normalised to 1 000 000. */
export interface Share {
  /** parts by mass, in the unit the source uses */
  readonly parts: number;
  readonly source: SourceKey;
  /** coefficient of variation in percent, where one is published */
  readonly cvPercent?: number;
}

/** Facts fixed at slaughter that an operation or item cannot do without. */
export type SlaughterFact = 'skin-on' | 'head' | 'feet' | 'organs' | 'unsplit';

export interface Output extends Share {
  readonly to: 'part' | 'item' | 'bulk';
  readonly id: string;
  /** not there on a side that lacks one of these; its share is then counted as the bulk `otherwise` */
  readonly needs?: readonly SlaughterFact[];
  readonly otherwise?: string;
  /** where an item or bulk lies; see `Part.regions`. Not said: what the parts beside it leave of the part broken down */
  readonly regions?: readonly string[];
}

export interface Operation {
  readonly id: string;
  readonly name: string;
  /** one sentence a butcher would say */
  readonly says: string;
  readonly outputs: readonly Output[];
  /** hands-on minutes for one side */
  readonly minutes: number;
  readonly minutesSource: SourceKey;
  readonly needs?: readonly SlaughterFact[];
  /** done only where someone asks for what it alone gives (or settles it): planned for nobody, it costs time and brings nothing */
  readonly onRequest?: true;
}

interface InPlace {
  readonly id: string;
  readonly name: string;
  /** regions of the animal that it holds, for damage; not said: one of its own, with its name */
  readonly regions?: readonly string[];
}

export interface Primal extends InPlace {
  readonly kind: 'primal';
  readonly operations: readonly Operation[];
}

/** What boning or trimming a zone in a manner sets free, as a share of the zone's mass. */
export interface Release extends Share {
  readonly to: 'item' | 'bulk';
  readonly id: string;
  /** released as the item only from a run of at least this many stations; from fewer it goes to `otherwise` */
  readonly stationsMin?: number;
  /** where `stationsMin` comes from */
  readonly stationsSource?: SourceKey;
  readonly otherwise?: string;
}

export interface Manner {
  readonly id: string;
  readonly name: string;
  /** the stretch it makes: what cuts are portioned from */
  readonly stock: string;
  readonly tool: 'saw' | 'knife';
  /** a piece may straddle the joint to the next zone when that is cut in the same manner */
  readonly joins: boolean;
  /** usable length over length in place, in millionths: a boned muscle draws up */
  readonly lengthPpm: number;
  readonly lengthSource: SourceKey;
  /** the mass that stays in the stretch; the rest is in `releases` */
  readonly keeps: Share;
  readonly releases: readonly Release[];
  readonly minutes: number;
  readonly minutesSource: SourceKey;
  /** as with an operation: only where someone asks for what it alone gives */
  readonly onRequest?: true;
}

export interface Zone {
  readonly id: string;
  readonly name: string;
  /** bones in the zone: a fixed number of vertebrae or blocks, or ribs by their number from the neck, to the last where none is said */
  readonly stations: { readonly fixed: number } | { readonly fromRib: number; readonly toRib?: number };
  /** length at the reference carcass, before scaling */
  readonly lengthMm: number;
  readonly lengthSource: SourceKey;
  readonly mass: Share;
  readonly manners: readonly Manner[];
  /** two manners may share the zone, parted between two stations */
  readonly maySplit: boolean;
}

export interface Bar extends InPlace {
  readonly kind: 'bar';
  readonly zones: readonly Zone[];
}

export type Part = Primal | Bar;

/** A piece that leaves whole. */
export interface Item {
  readonly id: string;
  readonly name: string;
  /** what one is worth over the counter, minor units a kilogram; invented default, the shop sets its own */
  readonly worthMinorPerKg: number;
  /** number in the Institutional Meat Purchase Specifications, where one was seen in print */
  readonly imps?: string;
}

/** A stretch of a bar in one manner. */
export interface Stock {
  readonly id: string;
  readonly name: string;
  /** what an unsold stretch is worth, minor units a kilogram; invented default, the shop sets its own */
  readonly worthMinorPerKg: number;
  /** number in the Institutional Meat Purchase Specifications, where one was seen in print */
  readonly imps?: string;
}

/** Loose meat, fat, bone or skin, pooled by kind and never mixed with another kind. */
export interface Bulk {
  readonly id: string;
  readonly name: string;
  readonly worthMinorPerKg: number;
  /** what to mind when it is gathered */
  readonly says?: string;
}

interface SinglePart {
  readonly item: string;
  readonly meanGrams: number;
  readonly source: SourceKey;
}

/** A piece that belongs to the animal and not to a side. Its mass is not part of a side's. */
export interface Single extends SinglePart {
  /** what it is taken apart into when it does not leave whole */
  readonly apart?: readonly SinglePart[];
  readonly needs?: readonly SlaughterFact[];
}

export type CutSource =
  | { readonly from: 'item'; readonly id: string }
  | { readonly from: 'stock'; readonly id: string }
  | { readonly from: 'bulk'; readonly id: string };

/** How a customer may ask for a cut, with limits in the unit of the kind. */
export type PortionRule =
  | { readonly by: 'thickness'; readonly minUm: number; readonly maxUm: number }
  | { readonly by: 'ribs'; readonly min: number; readonly max: number }
  | { readonly by: 'weight'; readonly minGrams: number; readonly maxGrams: number }
  | { readonly by: 'whole' }
  | { readonly by: 'bulk' };

/** One portion as asked: a chop of 31 750 um, a rack of 8 ribs, a roast of 1 400 to 1 800 g, an item whole, loose meat. */
export type Portion =
  | { readonly by: 'thickness'; readonly um: number }
  | { readonly by: 'ribs'; readonly ribs: number }
  | { readonly by: 'weight'; readonly fromGrams: number; readonly toGrams: number }
  | { readonly by: 'whole' }
  | { readonly by: 'bulk' };

/** What a customer can order. */
export interface Cut {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  /** any of these fills the order */
  readonly sources: readonly CutSource[];
  readonly portions: readonly PortionRule[];
  readonly usual: Portion;
  /** one is made of two pieces, one from each side of one animal: a crown of two racks. Lines ask for the pieces, two for each */
  readonly bothSides?: true;
}

export interface Species {
  readonly id: string;
  readonly name: string;
  /** hanging weight of a whole carcass that a shop could meet, grams; outside is refused as a slip of the pen */
  readonly hangingGrams: { readonly min: number; readonly max: number; readonly source: SourceKey };
  readonly ribs: {
    readonly min: number;
    readonly max: number;
    readonly usual: number;
    readonly source: SourceKey;
  };
  /** lengths grow with carcass mass to this power, from the reference carcass */
  readonly lengthGrowth: {
    readonly referenceGrams: number;
    readonly exponent: number;
    readonly source: SourceKey;
  };
  readonly sideRoot: string;
  /** regions that damage may name, with what a butcher calls them */
  readonly regions: Readonly<Record<string, string>>;
  readonly parts: Readonly<Record<string, Part>>;
  /** parts in the order of the bench, where the tree alone does not tell it; parts not named come after, in tree order */
  readonly bench: readonly string[];
  readonly items: Readonly<Record<string, Item>>;
  readonly stocks: Readonly<Record<string, Stock>>;
  readonly bulks: Readonly<Record<string, Bulk>>;
  readonly singles: readonly Single[];
  readonly cuts: Readonly<Record<string, Cut>>;
}

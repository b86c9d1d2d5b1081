import { beefFore, goat, hog, lamb, type ScaleReading, type Species } from '@flitchbook/carcass';
import type { Counter, CuttingDay } from '@flitchbook/plan';
import type { FileFault } from '../json-file.ts';

export interface DayFileShop {
  readonly name: string;
  /** ISO 4217 */
  readonly currency: string;
  readonly weightUnit: 'lb' | 'kg';
  readonly lengthUnit: 'in' | 'mm';
}

/** What the scale showed of an animal, which the cutting day itself does not keep. */
export interface WeighedAnimal {
  readonly animalId: string;
  readonly hanging: ScaleReading;
  readonly hotOrCold: 'hot' | 'cold';
  /** null: not weighed alone */
  readonly sides: readonly { readonly sideId: string; readonly weight: ScaleReading | null }[];
}

export interface DayFileOrder {
  readonly orderId: string;
  readonly owner: string;
  readonly note: string;
  readonly lineIds: readonly string[];
  readonly shareIds: readonly string[];
}

/** A day file that is right. */
export interface ParsedDay {
  readonly shop: DayFileShop;
  readonly day: CuttingDay;
  /** one for each animal of the day, in its order */
  readonly weighed: readonly WeighedAnimal[];
  readonly orders: readonly DayFileOrder[];
  /** what was taken other than it is written, or will come out other than expected */
  readonly warnings: readonly FileFault[];
}

export interface FaultyDay {
  readonly faults: readonly FileFault[];
}

export const knownSpecies: Readonly<Record<string, Species>> = {
  hog,
  lamb,
  goat,
  'beef-fore': beefFore,
};

// Invented, as every price of this project: a counter sells the first pieces well and the later ones for less.
/** What unsold pieces are worth where a day file does not say. */
export const usualCounter: Counter = {
  itemSteps: [
    { pieces: 2, worthPercent: 90 },
    { pieces: 4, worthPercent: 75 },
    { pieces: null, worthPercent: 55 },
  ],
  stockSteps: [
    { grams: 2000, worthPercent: 90 },
    { grams: 6000, worthPercent: 75 },
    { grams: null, worthPercent: 55 },
  ],
  worthMinorPerKg: {},
  labourMinorPerHour: 2400,
};

/** A saw and its usual kerf (common practice, no source). */
export const usualTools = { saw: true, kerfUm: 2000 } as const;

export const usualShop: DayFileShop = {
  name: 'The shop',
  currency: 'USD',
  weightUnit: 'lb',
  lengthUnit: 'in',
};

/** An own entry of a table: "constructor" is none. */
export const entryOf = <T>(table: Readonly<Record<string, T>>, id: string): T | undefined =>
  Object.hasOwn(table, id) ? table[id] : undefined;

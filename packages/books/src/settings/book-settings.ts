import type { ScaleReading } from '@flitchbook/carcass';
import type { Fee, TaxClass, Tolerance } from '../bill/money-rules.ts';
import type { Party } from '../exports/invoice.ts';
import type { Accounts } from '../exports/journal.ts';
import { withCheckDigit } from '../gs1/check-digit.ts';
import type { RetailLayout } from '../gs1/retail-number.ts';
import type { NoShowPolicy } from '../hand-over/no-show.ts';
import type { WeeklyWindow } from '../hand-over/windows.ts';
import { type LabelStock, usualStock } from '../label/stock.ts';

/** What goes with one cut, item, stock or kind of loose meat, by its id in the species. */
export interface SoldThing {
  readonly ingredients: readonly string[];
  readonly allergens: readonly string[];
  /** for goods of varying weight: fourteen digits, the first a 9; null: no open number */
  readonly gtin: string | null;
  /** the shop's own number, for numbers with a price inside */
  readonly item: string | null;
  readonly storage: string | null;
  readonly cooking: string | null;
  readonly bestBeforeDays: number | null;
}

/** Everything a shop sets for labels, bills and pick-ups. Limits and wordings are the shop's: local rules decide. */
export interface BookSettings {
  readonly seller: Party;
  readonly label: {
    readonly stock: LabelStock;
    readonly symbol: 'databar' | 'gs1-128' | 'price-inside' | 'none';
    readonly retail: RetailLayout;
    /** the fixed wording of the place, typed in by the shop; empty: none is printed */
    readonly safeHandling: string;
    readonly storage: string;
    readonly cooking: string;
    readonly bestBeforeDays: number | null;
    readonly things: Readonly<Record<string, SoldThing>>;
  };
  readonly tares: readonly (ScaleReading & { readonly name: string })[];
  readonly money: {
    readonly taxClasses: readonly TaxClass[];
    readonly meatTaxClass: string;
    readonly fees: readonly Fee[];
    readonly tolerance: Tolerance;
    readonly estimateSwingPpm: number;
    /** shares are billed on this weight */
    readonly hangingOn: 'hot' | 'cold';
    readonly accounts: Accounts;
  };
  readonly pickUp: {
    readonly weekly: readonly WeeklyWindow[];
    readonly noShow: NoShowPolicy;
    readonly oldAfterDays: number;
  };
  readonly closeTolerancePpm: number;
}

/** Fee of the trade, invented figures. */
const fees: readonly Fee[] = [
  {
    id: 'cutting',
    name: 'Cutting and wrapping',
    by: 'hanging-weight',
    minor: 110,
    per: 'lb',
    taxClass: 'work',
  },
  { id: 'smoking', name: 'Smoking', by: 'piece', minor: 1250, per: 'lb', taxClass: 'work' },
  {
    id: 'change',
    name: 'Late change of instructions',
    by: 'order',
    minor: 2500,
    per: 'lb',
    taxClass: 'work',
  },
];

/** Invented defaults. GS1 prefix 952 is set aside for examples (GS1 list of prefixes, from memory). */
export const usualBookSettings: BookSettings = {
  seller: { name: '', street: '', city: '', postcode: '', country: 'US', taxNumber: null },
  label: {
    stock: usualStock,
    symbol: 'databar',
    retail: { prefix: '20', itemDigits: 5, hasVerifier: true, priceDigits: 4 },
    safeHandling: '',
    storage: 'Keep at 40 °F (4 °C) or below, or frozen.',
    // USDA, 2011.
    cooking: 'Chops and roasts 145 °F, then rest 3 minutes; ground pork and organs 160 °F.',
    // FoodSafety.gov cold storage chart: fresh pork 3 to 5 days.
    bestBeforeDays: 3,
    things: {},
  },
  tares: [
    { name: 'Tray and film', text: '0.04', unit: 'lb' },
    { name: 'Vacuum bag', text: '0.02', unit: 'lb' },
    { name: 'Nothing', text: '0', unit: 'lb' },
  ],
  money: {
    taxClasses: [
      { id: 'food', name: 'Food', ratePpm: 0 },
      { id: 'work', name: 'Work', ratePpm: 0 },
    ],
    meatTaxClass: 'food',
    fees,
    tolerance: { overPpm: 100_000, whenOver: 'charge' },
    estimateSwingPpm: 100_000,
    hangingOn: 'cold',
    accounts: {
      owedByCustomers: '1100',
      deposits: '2100',
      sales: '4000',
      tax: '2200',
      cash: '1000',
      cardTerminal: '1010',
      bank: '1020',
      letGo: '4900',
    },
  },
  pickUp: {
    weekly: [
      { weekday: 5, from: '15:00', to: '18:00', most: 20 },
      { weekday: 6, from: '09:00', to: '13:00', most: 30 },
    ],
    noShow: { remindAfterHours: 2, freezeAfterDays: 2, releaseAfterDays: 10, keepDepositPpm: 500_000 },
    oldAfterDays: 5,
  },
  closeTolerancePpm: 15_000,
};

/** A number for examples, for a shop that has not yet got its own from GS1: never for open trade. */
export function exampleGtin(place: number): string {
  return withCheckDigit(`9952${String(place).padStart(9, '0')}`);
}

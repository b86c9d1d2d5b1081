import { splitExactly } from '@flitchbook/carcass';
import { FaultList, type KitchenFault } from '../faults.ts';

/** Something of an animal that was sold. */
export interface Sale {
  /** counter, orders, restaurants, shares: as the shop names them */
  readonly channel: string;
  readonly minor: number;
  readonly massMg: number;
  /** an extra is no meat: bones, skin, feet; it never counts in the weight of meat that is billed */
  readonly kind: 'meat' | 'extra';
}

export interface AnimalCosts {
  readonly animalMinor: number;
  readonly slaughterMinor: number;
  readonly packingMinor: number;
  readonly minutes: number;
  readonly labourMinorPerHour: number;
}

export interface ChannelMargin {
  readonly channel: string;
  readonly salesMinor: number;
  /** its part of the cost, by what it brought */
  readonly costMinor: number;
  readonly marginMinor: number;
  readonly meatMg: number;
  readonly extraMg: number;
}

export interface AnimalMargin {
  readonly salesMinor: number;
  readonly costMinor: number;
  readonly marginMinor: number;
  readonly channels: readonly ChannelMargin[];
}

/** What an animal earned, in all and by channel. Cost follows sales value, to the minor unit. */
export function animalMargin(
  sales: readonly Sale[],
  costs: AnimalCosts,
): AnimalMargin | { readonly faults: readonly KitchenFault[] } {
  const list = new FaultList();
  for (const field of [
    'animalMinor',
    'slaughterMinor',
    'packingMinor',
    'minutes',
    'labourMinorPerHour',
  ] as const)
    list.whole(`costs.${field}`, costs[field], 0, 1_000_000_000);
  for (const [index, { minor, massMg }] of sales.entries()) {
    list.whole(`sales[${index}].minor`, minor, 0, 1_000_000_000);
    list.whole(`sales[${index}].massMg`, massMg, 0, 10_000_000_000);
  }
  if (list.faults.length > 0) return { faults: list.faults };
  const labourMinor = Math.floor((costs.minutes * costs.labourMinorPerHour * 2 + 60) / 120);
  const costMinor = costs.animalMinor + costs.slaughterMinor + costs.packingMinor + labourMinor;
  const names = [...new Set(sales.map(({ channel }) => channel))];
  const of = (name: string, amount: (sale: Sale) => number): number =>
    sales.reduce((sum, sale) => sum + (sale.channel === name ? amount(sale) : 0), 0);
  const brought = names.map((name) => of(name, ({ minor }) => minor));
  const salesMinor = brought.reduce((sum, minor) => sum + minor, 0);
  const parts = salesMinor === 0 ? names.map(() => 0) : splitExactly(costMinor, brought);
  const channels = names.map((channel, index) => ({
    channel,
    salesMinor: brought[index] ?? 0,
    costMinor: parts[index] ?? 0,
    marginMinor: (brought[index] ?? 0) - (parts[index] ?? 0),
    meatMg: of(channel, ({ kind, massMg }) => (kind === 'meat' ? massMg : 0)),
    extraMg: of(channel, ({ kind, massMg }) => (kind === 'extra' ? massMg : 0)),
  }));
  return { salesMinor, costMinor, marginMinor: salesMinor - costMinor, channels };
}

/** A way to get meat: an animal to cut, or boxes that come cut. */
export interface Supply {
  readonly priceMinor: number;
  readonly usableMg: number;
  readonly minutes: number;
  /** what bones, skin and the rest bring; 0 where nobody takes them */
  readonly byProductsMinor: number;
}

/** What a kilogram that can be used costs, labour in and by-products off, minor units. @throws RangeError when nothing can be used */
export function costPerUsableKg(
  { priceMinor, usableMg, minutes, byProductsMinor }: Supply,
  labourMinorPerHour: number,
): number {
  if (!(usableMg > 0)) throw new RangeError(`usableMg must be above 0, got ${usableMg}`);
  return Math.round(
    ((priceMinor + (minutes * labourMinorPerHour) / 60 - byProductsMinor) * 1_000_000) / usableMg,
  );
}

/** Cutting fees before they are a surprise: each choice with its fee, and all of it beside the price of the animal. */
export interface FeeChoice {
  readonly name: string;
  readonly massMg: number;
  readonly feeMinorPerKg: number;
}

export function feeQuote(choices: readonly FeeChoice[], animalMinor: number) {
  const lines = choices.map(({ name, massMg, feeMinorPerKg }) => ({
    name,
    feeMinor: Math.floor((massMg * feeMinorPerKg * 2 + 1_000_000) / 2_000_000),
  }));
  const feesMinor = lines.reduce((sum, { feeMinor }) => sum + feeMinor, 0);
  return {
    lines,
    feesMinor,
    ofAnimalPpm: animalMinor > 0 ? Math.round((feesMinor * 1_000_000) / animalMinor) : null,
  };
}

import type { ScaleReading } from '@flitchbook/carcass';
import type { PriceByWeight } from '@flitchbook/plan';
import { moneyText } from '../exports/money-text.ts';
import { bracketed } from '../gs1/element-string.ts';
import { packElements } from '../gs1/pack-elements.ts';
import { retailNumber } from '../gs1/retail-number.ts';
import { type DrawnSymbol, drawSymbol } from '../gs1/symbol.ts';
import type { BookSettings } from '../settings/book-settings.ts';
import { type Made, made, type Slip } from '../slips.ts';

/** A pack as its label needs it. */
export interface PackOnLabel {
  readonly what: string;
  readonly name: string;
  /** whose it is; null: for the counter */
  readonly owner: string | null;
  readonly animal: string;
  readonly lot: string;
  readonly serial: number;
  readonly net: ScaleReading;
  readonly price: PriceByWeight | null;
  readonly amountMinor: number | null;
  readonly currency: string;
  readonly packedOn: string;
  readonly bestBefore: string | null;
  readonly legalMode: 'for-sale' | 'for-owner';
  readonly frozen: boolean;
}

/** A label as text and a symbol, in reading order. */
export interface Label {
  readonly notForSale: boolean;
  readonly title: string;
  readonly owner: string | null;
  readonly figures: readonly { readonly term: string; readonly text: string }[];
  readonly facts: readonly { readonly term: string; readonly text: string }[];
  readonly lines: readonly string[];
  readonly safeHandling: string;
  readonly symbol: DrawnSymbol | null;
}

const longest = 2000;

function textSlips(pack: PackOnLabel, { seller, label }: BookSettings): Slip[] {
  const thing = label.things[pack.what];
  const texts: readonly (readonly [string, string])[] = [
    ['name', pack.name],
    ['owner', pack.owner ?? ''],
    ['seller.name', seller.name],
    ['label.safeHandling', label.safeHandling],
    ['label.storage', thing?.storage ?? label.storage],
    ['label.cooking', thing?.cooking ?? label.cooking],
    [`label.things.${pack.what}.ingredients`, (thing?.ingredients ?? []).join(', ')],
  ];
  return texts
    .filter(([, text]) => text.length > longest)
    .map(([at, text]) => ({
      at,
      value: text.length,
      says: `is ${text.length} characters long; no label holds more than ${longest}`,
    }));
}

/** The number or elements of the pack as a symbol; none where the shop has no number for the cut. */
function symbolOf(pack: PackOnLabel, { label }: BookSettings): Made<DrawnSymbol | null> {
  const { symbol, retail } = label;
  const thing = label.things[pack.what];
  if (symbol === 'none') return made(null);
  if (symbol === 'price-inside') {
    if (thing?.item == null || pack.amountMinor === null) return made(null);
    const number = retailNumber(retail, thing.item, pack.amountMinor);
    return number.ok ? drawSymbol(number.value.length === 12 ? 'upc-a' : 'ean-13', number.value) : number;
  }
  if (thing?.gtin == null) return made(null);
  const { net, packedOn, bestBefore, lot } = pack;
  const elements = packElements({
    gtin: thing.gtin,
    net,
    packedOn,
    bestBefore,
    lot,
    serial: String(pack.serial),
  });
  return elements.ok ? drawSymbol(symbol, bracketed(elements.value)) : elements;
}

function figuresOf({ net, price, amountMinor, currency, legalMode }: PackOnLabel): Label['figures'] {
  const weight = { term: 'Net weight', text: `${net.text} ${net.unit}` };
  if (legalMode === 'for-owner' || price === null || amountMinor === null) return [weight];
  return [
    weight,
    { term: 'Unit price', text: `${moneyText(price.minor, currency)}/${price.per}` },
    { term: 'Total price', text: moneyText(amountMinor, currency) },
  ];
}

function linesOf(pack: PackOnLabel, { seller, label }: BookSettings): string[] {
  const thing = label.things[pack.what];
  const address = [seller.name, seller.street, `${seller.postcode} ${seller.city}`.trim()]
    .filter((part) => part !== '')
    .join(', ');
  return [
    thing && thing.ingredients.length > 0 ? `Ingredients: ${thing.ingredients.join(', ')}.` : '',
    thing && thing.allergens.length > 0 ? `Contains: ${thing.allergens.join(', ')}.` : '',
    pack.frozen ? 'Frozen. Keep frozen.' : (thing?.storage ?? label.storage),
    thing?.cooking ?? label.cooking,
    address,
  ].filter((line) => line !== '');
}

/**
 * What a pack's label says. Meat cut for its owner says "Not for sale" (9 CFR 316.16) and bears no price. The block on
 * safe handling is printed as the shop typed it from the rule of its place (9 CFR 317.2(l)); none is made up.
 */
export function labelOf(pack: PackOnLabel, settings: BookSettings): Made<Label> {
  const slips = textSlips(pack, settings);
  if (slips.length > 0) return { ok: false, slips };
  const symbol = symbolOf(pack, settings);
  if (!symbol.ok) return symbol;
  const isOwners = pack.legalMode === 'for-owner';
  return made({
    notForSale: isOwners,
    title: pack.name,
    owner: pack.owner,
    figures: figuresOf(pack),
    facts: [
      { term: 'Packed', text: pack.packedOn },
      ...(pack.bestBefore === null || pack.frozen
        ? []
        : [{ term: 'Best if used by', text: pack.bestBefore }]),
      { term: 'Lot', text: pack.lot },
      { term: 'Animal', text: pack.animal },
      { term: 'Pack', text: String(pack.serial) },
    ],
    lines: linesOf(pack, settings),
    safeHandling: settings.label.safeHandling,
    symbol: symbol.value,
  });
}

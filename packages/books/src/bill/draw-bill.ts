import type { ScaleReading } from '@flitchbook/carcass';
import { addMinor, type PriceByWeight, weightTimesPrice } from '@flitchbook/plan';
import { type Made, made, slip } from '../slips.ts';
import { type Fee, partOf, type TaxClass, type Tolerance } from './money-rules.ts';

/** One line of a bill. Its amount is rounded already and is never reckoned again. */
export interface BillLine {
  readonly kind: 'pack' | 'hanging' | 'fee' | 'allowance';
  readonly name: string;
  /** what it is for: a pack, a line of the order, a share, a fee */
  readonly about: string;
  /** pieces in the pack, or how many times the fee; money goes by weight all the same */
  readonly count: number;
  readonly weight: ScaleReading | null;
  readonly price: PriceByWeight | null;
  readonly amountMinor: number;
  readonly taxClass: string;
}

export interface BillTax {
  readonly taxClass: string;
  readonly name: string;
  readonly ratePpm: number;
  readonly netMinor: number;
  readonly taxMinor: number;
}

export interface Bill {
  readonly lines: readonly BillLine[];
  readonly taxes: readonly BillTax[];
  readonly netMinor: number;
  readonly taxMinor: number;
  readonly totalMinor: number;
  /** lines of the order that weigh more than the estimate and the grace allow */
  readonly over: readonly {
    readonly lineId: string;
    readonly limitMinor: number;
    readonly amountMinor: number;
  }[];
  /** true while the customer has to be asked first */
  readonly needsConsent: boolean;
}

export interface PackOnBill {
  readonly packId: string;
  readonly lineId: string;
  readonly name: string;
  readonly pieces: number;
  readonly net: ScaleReading;
  readonly price: PriceByWeight;
  /** as printed on the label */
  readonly amountMinor: number;
  readonly taxClass: string;
}

/** A side or an animal at its hanging weight. A rule of price names hot or cold, and never mixes them. */
export interface HangingOnBill {
  readonly shareId: string;
  readonly name: string;
  readonly weight: ScaleReading;
  readonly weighed: 'hot' | 'cold';
  readonly price: PriceByWeight & { readonly on: 'hot' | 'cold' };
  readonly taxClass: string;
}

export interface ToBill {
  readonly packs: readonly PackOnBill[];
  readonly hanging: readonly HangingOnBill[];
  readonly fees: readonly {
    readonly fee: Fee;
    readonly count: number;
    readonly hanging: ScaleReading | null;
  }[];
  readonly taxClasses: readonly TaxClass[];
  readonly tolerance: Tolerance;
  /** most that a line of the order was said to cost, minor units; a line that is not in it has no limit */
  readonly estimatedToMinor: Readonly<Record<string, number>>;
  readonly hasConsent: boolean;
}

const packLine = ({ packId, name, pieces, net, price, amountMinor, taxClass }: PackOnBill): BillLine => ({
  kind: 'pack',
  name,
  about: packId,
  count: pieces,
  weight: net,
  price,
  amountMinor,
  taxClass,
});

function hangingLine({ shareId, name, weight, weighed, price, taxClass }: HangingOnBill): Made<BillLine> {
  if (weighed !== price.on)
    return slip(
      'weighed',
      weighed,
      `${name} is priced on ${price.on} weight; the other one is not used instead`,
    );
  const amountMinor = weightTimesPrice(weight, price);
  return made({
    kind: 'hanging',
    name,
    about: shareId,
    count: 1,
    weight,
    price: { minor: price.minor, per: price.per },
    amountMinor,
    taxClass,
  });
}

function feeLine({ fee, count, hanging }: ToBill['fees'][number]): Made<BillLine> {
  const { id, name, by, minor, per, taxClass } = fee;
  if (!Number.isSafeInteger(count) || count < 1)
    return slip(`fees.${id}`, count, 'must be a whole number of 1 or more');
  const line = { kind: 'fee' as const, name, about: id, taxClass };
  if (by !== 'hanging-weight')
    return made({ ...line, count, weight: null, price: null, amountMinor: addMinor([minor * count]) });
  if (hanging === null)
    return slip(
      `fees.${id}`,
      count,
      `${name} goes by hanging weight, and the order has no share of an animal`,
    );
  const price = { minor, per };
  return made({ ...line, count: 1, weight: hanging, price, amountMinor: weightTimesPrice(hanging, price) });
}

interface Over {
  readonly lineId: string;
  readonly limitMinor: number;
  readonly amountMinor: number;
  readonly taxClass: string;
}

function overLimit({ packs, estimatedToMinor, tolerance }: ToBill): Over[] {
  return Object.entries(estimatedToMinor).flatMap(([lineId, estimate]) => {
    const mine = packs.filter((pack) => pack.lineId === lineId);
    const amountMinor = addMinor(mine.map((pack) => pack.amountMinor));
    const limitMinor = estimate + partOf(estimate, tolerance.overPpm);
    return amountMinor > limitMinor
      ? [{ lineId, limitMinor, amountMinor, taxClass: mine[0]?.taxClass ?? '' }]
      : [];
  });
}

const allowance = ({ lineId, limitMinor, amountMinor, taxClass }: Over): BillLine => ({
  kind: 'allowance',
  name: 'Heavier than estimated, not charged',
  about: lineId,
  count: 1,
  weight: null,
  price: null,
  amountMinor: limitMinor - amountMinor,
  taxClass,
});

/** Tax of each class on the sum of its lines, rounded once (EN 16931, BR-CO-17). */
function taxes(lines: readonly BillLine[], classes: readonly TaxClass[]): Made<readonly BillTax[]> {
  const unknown = lines.find(({ taxClass }) => !classes.some(({ id }) => id === taxClass));
  if (unknown)
    return slip('taxClass', unknown.taxClass, `of ${unknown.name} is not among the shop's tax classes`);
  return made(
    classes.flatMap(({ id, name, ratePpm }) => {
      const mine = lines.filter(({ taxClass }) => taxClass === id);
      const netMinor = addMinor(mine.map(({ amountMinor }) => amountMinor));
      return mine.length === 0
        ? []
        : [{ taxClass: id, name, ratePpm, netMinor, taxMinor: partOf(netMinor, ratePpm) }];
    }),
  );
}

/** The bill of one order on what its packs weigh. Totals add stored lines; nothing is weighed or rounded twice. */
export function drawBill(input: ToBill): Made<Bill> {
  const priced = [...input.hanging.map(hangingLine), ...input.fees.map(feeLine)];
  const slips = priced.flatMap((line) => (line.ok ? [] : line.slips));
  if (slips.length > 0) return { ok: false, slips };
  const over = overLimit(input);
  const lines = [
    ...input.packs.map(packLine),
    ...priced.flatMap((line) => (line.ok ? [line.value] : [])),
    ...(input.tolerance.whenOver === 'cap' ? over.map(allowance) : []),
  ];
  const taxed = taxes(lines, input.taxClasses);
  if (!taxed.ok) return taxed;
  const netMinor = addMinor(lines.map(({ amountMinor }) => amountMinor));
  const taxMinor = addMinor(taxed.value.map((tax) => tax.taxMinor));
  return made({
    lines,
    taxes: taxed.value,
    netMinor,
    taxMinor,
    totalMinor: addMinor([netMinor, taxMinor]),
    over: over.map(({ taxClass, ...rest }) => rest),
    needsConsent: input.tolerance.whenOver === 'ask' && over.length > 0 && !input.hasConsent,
  });
}

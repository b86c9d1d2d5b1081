import { knownSpecies } from '@flitchbook/contracts';
import { findShopRules, isServed, type OrderRecord, type ShopRules, type Tx } from '@flitchbook/db';
import {
  askedGrams,
  askedPieces,
  type CuttingDay,
  expectedGrams,
  lineWorth,
  nominalsOf,
} from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { TravellingDay } from '../../solve/day-solver.ts';

/**
 * Until the shop says otherwise: a quarter of an hour to make up one's mind, a day to answer a mail, no deposit. Common
 * practice, no source; they are settings.
 */
const usualRules: ShopRules = {
  holdSeconds: 900,
  promotedHoldSeconds: 86_400,
  depositPercent: 0,
  depositFromMinor: 0,
  ordersPerPerson: 5,
  piecesPerPerson: 60,
  sharesPerPerson: 2,
};

export const rulesOf = async (tx: Tx, shopId: string): Promise<ShopRules> =>
  (await findShopRules(tx, shopId)) ?? usualRules;

type Asked = Pick<OrderRecord, 'lines'> & {
  readonly shares: readonly Pick<OrderRecord['shares'][number], 'size' | 'priceMinorPerKg'>[];
};

/** What an order will cost if every piece weighs what it is expected to; whole minor units, rounded once a line. */
export function expectedMinor(day: TravellingDay, { lines, shares }: Asked): number {
  const known: CuttingDay = { ...day, species: knownSpecies };
  const nominals = nominalsOf(known);
  const ofLines = lines.map((line) => {
    const each = expectedGrams(known, nominals.get(line.speciesId), line.speciesId, line);
    const grams = Math.round(askedGrams(line) || askedPieces(line) * each);
    return lineWorth(grams, line.priceMinorPerKg);
  });
  const sides = known.animals.flatMap((animal) => animal.sides);
  const sideGrams = Math.round(
    sides.reduce((sum, { massMg }) => sum + massMg, 0) / Math.max(1, sides.length) / 1000,
  );
  const ofShares = shares.map(({ size, priceMinorPerKg }) =>
    lineWorth(sideGrams * (size === 'whole' ? 2 : 1), priceMinorPerKg),
  );
  return [...ofLines, ...ofShares].reduce((sum, minor) => sum + minor, 0);
}

/** Rounded half up; nothing below the amount from which the shop asks for one. */
export function depositOf({ depositPercent, depositFromMinor }: ShopRules, expected: number): number {
  if (expected < depositFromMinor) return 0;
  return Math.floor((expected * depositPercent + 50) / 100);
}

const piecesIn = (orders: readonly Asked[]): number =>
  orders.reduce((sum, { lines }) => sum + lines.reduce((pieces, line) => pieces + askedPieces(line), 0), 0);

/** Refused where a customer would have more on the day than the shop keeps for one; all tabs and orders together. */
export function withinCaps(
  rules: ShopRules,
  ofDay: readonly OrderRecord[],
  personId: string,
  order: Asked,
): Outcome<null> {
  const own = ofDay.filter(
    (other) => other.personId === personId && (isServed(other) || other.state === 'queued'),
  );
  const all = [...own, order];
  const shares = all.reduce((sum, asked) => sum + asked.shares.length, 0);
  const over =
    (all.length > rules.ordersPerPerson && `${rules.ordersPerPerson} orders`) ||
    (piecesIn(all) > rules.piecesPerPerson && `${rules.piecesPerPerson} pieces`) ||
    (shares > rules.sharesPerPerson && `${rules.sharesPerPerson} halves or whole animals`);
  if (!over) return done(null);
  return refused(
    'reservation.not-yours-to-hold',
    `The shop keeps at most ${over} for one customer on this day. Release something first.`,
  );
}

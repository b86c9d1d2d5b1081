import { estimate } from '@flitchbook/books';
import { knownSpecies } from '@flitchbook/contracts';
import type { OrderRecord } from '@flitchbook/db';
import { askedGrams, askedPieces, type CuttingDay, expectedGrams, nominalsOf } from '@flitchbook/plan';
import type { TravellingDay } from '../../solve/day-solver.ts';

/** A range of grams and one of minor units: no number before the scale. */
export interface Likely {
  readonly lineId: string;
  readonly grams: { readonly from: number; readonly to: number };
  readonly minor: { readonly from: number; readonly to: number };
}

const ppm = 1_000_000;

/**
 * What each line will weigh and cost. A line asked for by weight weighs what was asked for; a counted one what the day's
 * average side gives, within the swing that the shop allows itself. Lines of the other species are 0.
 */
export function likelyOf(
  day: TravellingDay,
  { lines }: Pick<OrderRecord, 'lines'>,
  swingPpm: number,
): readonly Likely[] {
  const known: CuttingDay = { ...day, species: knownSpecies };
  const nominals = nominalsOf(known);
  return lines.map((line) => {
    const { lineId, portion, priceMinorPerKg } = line;
    const pieces = askedPieces(line);
    const each = expectedGrams(known, nominals.get(line.speciesId), line.speciesId, line);
    const mean = Math.round(askedGrams(line) || pieces * each);
    const swing = askedGrams(line) > 0 ? 0 : Math.round((mean * swingPpm) / ppm);
    const grams =
      portion.by === 'weight'
        ? { from: pieces * portion.fromGrams, to: pieces * portion.toGrams }
        : { from: mean - swing, to: mean + swing };
    const minor = {
      from: estimate(grams.from, priceMinorPerKg, 0).fromMinor,
      to: estimate(grams.to, priceMinorPerKg, 0).toMinor,
    };
    return { lineId, grams, minor };
  });
}

/** All lines together, with `sharesMinor` for sides that are not weighed either. */
export function wholeOf(likely: readonly Likely[], sharesMinor: number, swingPpm: number) {
  const sum = (pick: (each: Likely) => number): number =>
    likely.reduce((total, each) => total + pick(each), 0);
  const swing = Math.round((sharesMinor * swingPpm) / ppm);
  return {
    fromGrams: sum(({ grams }) => grams.from),
    toGrams: sum(({ grams }) => grams.to),
    fromMinor: sum(({ minor }) => minor.from) + sharesMinor - swing,
    toMinor: sum(({ minor }) => minor.to) + sharesMinor + swing,
  };
}

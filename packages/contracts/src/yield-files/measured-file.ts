import { type KnownCarcass, type MeasuredSide, readingToGrams, type ScaleReading } from '@flitchbook/carcass';
import { z } from 'zod';
import { usualTools } from '../day-file/parsed-day.ts';
import { length, reading } from '../day-file/quantity-shapes.ts';
import { type FileFault, openJson, withLines } from '../json-file.ts';
import { readShape } from '../shape-faults.ts';
import { anyId, listOf, maybe, nameText } from '../wire/parts.ts';

const side = z.strictObject({
  id: anyId,
  farm: nameText,
  live: maybe(reading),
  hot: maybe(reading),
  cold: maybe(reading),
  dressing: z.record(anyId, z.boolean()),
  lastRibFat: maybe(length),
  lean: maybe(z.number().min(0).max(100)),
  ribs: maybe(z.int().min(1).max(30)),
  side: reading,
  weighed: z.record(anyId, reading).default({}),
  rest: maybe(reading),
  slices: listOf(
    z.strictObject({
      stock: anyId,
      thickness: length,
      kerfMm: maybe(z.number().min(0).max(20)),
      pieces: z.int().min(1).max(999),
    }),
    100,
  ).default([]),
});

const measuredFileShape = z.strictObject({
  measured: z.literal(1),
  species: anyId,
  sides: listOf(side, 5000),
});

export interface ParsedMeasured {
  readonly species: string;
  readonly sides: readonly MeasuredSide[];
}

type SideParts = z.output<typeof side>;

const weightsOf = (parts: SideParts): Pick<KnownCarcass, 'liveGrams' | 'hotGrams' | 'coldGrams'> => {
  const grams = (field: string, from: ScaleReading | undefined) =>
    from === undefined ? {} : { [field]: readingToGrams(from) };
  return {
    ...grams('liveGrams', parts.live),
    ...grams('hotGrams', parts.hot),
    ...grams('coldGrams', parts.cold),
  };
};

function sideOf(parts: SideParts): MeasuredSide {
  const { id, farm, dressing, lastRibFat, lean, ribs, weighed, rest, slices } = parts;
  return {
    sideId: id,
    farm,
    known: {
      ...weightsOf(parts),
      dressing,
      ...(lastRibFat === undefined ? {} : { lastRibFatMm: lastRibFat.value / 1000 }),
      ...(lean === undefined ? {} : { leanPercent: lean }),
      ...(ribs === undefined ? {} : { ribs }),
    },
    sideGrams: readingToGrams(parts.side),
    weighed: Object.entries(weighed).map(([part, from]) => ({ id: part, grams: readingToGrams(from) })),
    ...(rest === undefined ? {} : { restGrams: readingToGrams(rest) }),
    slices: slices.map(({ stock, thickness, kerfMm, pieces }) => ({
      stock,
      thicknessUm: thickness.value,
      kerfUm: kerfMm === undefined ? usualTools.kerfUm : Math.round(kerfMm * 1000),
      pieces,
    })),
  };
}

/**
 * Reads the text of a file of measured sides (docs/yields.md).
 * @returns the sides as weighed, or every fault with its field, value and line; never throws
 */
export function parseMeasuredFile(text: string): ParsedMeasured | { readonly faults: readonly FileFault[] } {
  const json = openJson(text, { length: 4_000_000, depth: 16 });
  if ('faults' in json) return json;
  const shaped = readShape(measuredFileShape, json.value);
  if ('faults' in shaped) return { faults: withLines(json, shaped.faults) };
  return { species: shaped.value.species, sides: shaped.value.sides.map(sideOf) };
}

import { readingToGrams } from '@flitchbook/carcass';
import { gramsPerUnit, type Units } from './measures.ts';

/** A weight as it stands in a field, to a tenth. */
export const weightTyped = (grams: number, { weightUnit }: Units): string =>
  String(Math.round((grams / gramsPerUnit[weightUnit]) * 10) / 10);

/** Grams of a weight as typed, with a point or a comma; null when it is not a weight. */
export function typedGrams(text: string, { weightUnit }: Units): number | null {
  try {
    const grams = readingToGrams({ text: text.trim().replace(',', '.'), unit: weightUnit });
    return grams > 0 ? grams : null;
  } catch {
    return null;
  }
}

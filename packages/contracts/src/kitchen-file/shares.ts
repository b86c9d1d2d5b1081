import { decimalRatio, ratio, roundHalfUp, times } from '@flitchbook/carcass';
import type { Read } from '../day-file/quantities.ts';

const number = String.raw`\d{1,3}(?:\.\d{1,4})?`;
const shareForm = new RegExp(`^(${number}) ?%$`);
const rangeForm = new RegExp(`^(${number}) ?%? ?(?:-|–|to) ?(${number}) ?%$`);

const ppmOf = (digits: string): number => roundHalfUp(times(decimalRatio(digits), ratio(10_000)));
const whole = 1_000_000;

/** Millionths of "1.6 %". A bare number is refused: 0.016 and 1.6 could both be meant. */
export function readShare(text: string): Read<number> {
  const [, digits] = shareForm.exec(text.trim()) ?? [];
  if (digits === undefined) return { says: 'must be a percentage such as "1.6 %"' };
  const value = ppmOf(digits);
  return value > whole ? { says: 'must be at most 100 %' } : { value };
}

/** Millionths of "25-32 %". */
export function readShareRange(text: string): Read<{ readonly fromPpm: number; readonly toPpm: number }> {
  const [, from, to] = rangeForm.exec(text.trim()) ?? [];
  if (from === undefined || to === undefined) return { says: 'must be a range such as "25-32 %"' };
  const value = { fromPpm: ppmOf(from), toPpm: ppmOf(to) };
  if (value.toPpm > whole) return { says: 'must be at most 100 %' };
  return value.fromPpm > value.toPpm ? { says: 'must go from the lesser share to the greater' } : { value };
}

import { type Portion, umPerInch } from '@flitchbook/carcass';

/** Units that a shop reads; both when nothing is said. */
export interface ShownIn {
  readonly lengthUnit?: 'in' | 'mm';
  readonly weightUnit?: 'lb' | 'kg';
}

const poundMilligrams = 453_592.37;

function greatestCommonDivisor(left: number, right: number): number {
  return right === 0 ? left : greatestCommonDivisor(right, left % right);
}

/**
 * A length in inches and fractions, "1 1/4 in"; marked ~ where it lies between two marks of the ruler.
 * @param um whole micrometres, 0 or more
 * @param marks marks to an inch: 8 or 16
 */
export function inchesText(um: number, marks: 8 | 16 = 16): string {
  const inMarks = Math.round((um * marks) / umPerInch);
  const exact = inMarks * umPerInch === um * marks;
  const inches = Math.floor(inMarks / marks);
  const rest = inMarks % marks;
  const divisor = greatestCommonDivisor(rest, marks);
  const fraction = rest === 0 ? '' : `${rest / divisor}/${marks / divisor}`;
  const parts = [inches === 0 && fraction ? '' : String(inches), fraction].filter((part) => part !== '');
  return `${exact ? '' : '~'}${parts.join(' ')} in`;
}

/** "31.8 mm", to a tenth. */
export const millimetresText = (um: number): string => `${Math.round(um / 100) / 10} mm`;

export function lengthText(um: number, { lengthUnit }: ShownIn = {}, marks: 8 | 16 = 16): string {
  if (lengthUnit === 'in') return inchesText(um, marks);
  if (lengthUnit === 'mm') return millimetresText(um);
  return `${inchesText(um, marks)} (${millimetresText(um)})`;
}

const kilograms = (mg: number): string => (mg / 1_000_000).toFixed(2);
const pounds = (mg: number): string => (mg / poundMilligrams).toFixed(2);

/** "0.36 kg (0.80 lb)": for reading, never for counting. */
export function weightText(mg: number, { weightUnit }: ShownIn = {}): string {
  if (weightUnit === 'kg') return `${kilograms(mg)} kg`;
  if (weightUnit === 'lb') return `${pounds(mg)} lb`;
  return `${kilograms(mg)} kg (${pounds(mg)} lb)`;
}

function rangeText(fromGrams: number, toGrams: number, { weightUnit }: ShownIn): string {
  const [from, to] = [fromGrams * 1000, toGrams * 1000];
  const inKilograms = `${kilograms(from)} to ${kilograms(to)} kg`;
  const inPounds = `${pounds(from)} to ${pounds(to)} lb`;
  if (weightUnit === 'kg') return inKilograms;
  return weightUnit === 'lb' ? inPounds : `${inKilograms} (${inPounds})`;
}

/** How a piece is portioned, as it would be said at the counter. */
export function portionText(portion: Portion, shown: ShownIn = {}): string {
  if (portion.by === 'thickness') return lengthText(portion.um, shown);
  if (portion.by === 'ribs') return portion.ribs === 1 ? '1 rib' : `${portion.ribs} ribs`;
  if (portion.by === 'weight') return rangeText(portion.fromGrams, portion.toGrams, shown);
  return portion.by === 'whole' ? 'whole' : 'by weight';
}

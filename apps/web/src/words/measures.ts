import { type Portion, umPerInch } from '@flitchbook/carcass';

/** How a shop likes its figures. */
export interface Units {
  readonly weightUnit: 'lb' | 'kg';
  readonly lengthUnit: 'in' | 'mm';
}

/** International avoirdupois pound: NIST Handbook 44, appendix C. */
export const gramsPerUnit = { lb: 453.59237, kg: 1000 } as const;

const eighths = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];
const mgPerPound = gramsPerUnit.lb * 1000;

/** Inches to the nearest sixteenth, as a butcher writes them: "1¼", "⅝", "2 3⁄16". */
export function inchesText(um: number): string {
  const sixteenths = Math.round((um * 16) / umPerInch);
  const whole = Math.floor(sixteenths / 16);
  const rest = sixteenths % 16;
  if (rest === 0) return String(whole);
  const fraction = rest % 2 === 0 ? (eighths[rest / 2] ?? '') : `${whole > 0 ? '\u00a0' : ''}${rest}⁄16`;
  return whole === 0 ? fraction : `${whole}${fraction}`;
}

// Figures stay with their unit: a line never breaks between them.
const space = '\u00a0';

/** A length of `um` micrometres in the shop's unit. */
export const lengthText = (um: number, { lengthUnit }: Units): string =>
  lengthUnit === 'in' ? `${inchesText(um)}${space}in` : `${Math.round(um / 1000)}${space}mm`;

/** A length in the other unit than the shop's, for whoever thinks in that. */
export const otherLengthText = (um: number, { lengthUnit }: Units): string =>
  lengthText(um, { weightUnit: 'lb', lengthUnit: lengthUnit === 'in' ? 'mm' : 'in' });

const trimZeros = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

function poundsText(mg: number): string {
  const pounds = mg / mgPerPound;
  if (pounds > 0 && pounds * 16 < 15.5) return `${Math.max(1, Math.round(pounds * 16))}${space}oz`;
  return `${pounds >= 100 ? Math.round(pounds) : trimZeros(pounds.toFixed(pounds < 10 ? 2 : 1))}${space}lb`;
}

function kilogramsText(mg: number): string {
  if (mg > 0 && mg < 995_000) return `${Math.max(5, Math.round(mg / 5000) * 5)}${space}g`;
  return `${trimZeros((mg / 1_000_000).toFixed(mg < 10_000_000 ? 2 : 1))}${space}kg`;
}

/** A mass of `mg` milligrams in the shop's unit, to what a bench scale would tell apart. */
export const weightText = (mg: number, { weightUnit }: Units): string =>
  weightUnit === 'lb' ? poundsText(mg) : kilogramsText(mg);

export const gramsText = (grams: number, units: Units): string => weightText(grams * 1000, units);

function rangeText(fromGrams: number, toGrams: number, { weightUnit }: Units): string {
  const each = (grams: number): string =>
    trimZeros(weightUnit === 'lb' ? ((grams * 1000) / mgPerPound).toFixed(1) : (grams / 1000).toFixed(2));
  const [low, high] = [each(fromGrams), each(toGrams)];
  return low === high ? `${low}${space}${weightUnit}` : `${low} to ${high}${space}${weightUnit}`;
}

/** How one piece was asked for: "1¼ in", "8 ribs", "2 to 3 lb"; nothing for a piece that leaves whole. */
export function portionText(portion: Portion, units: Units): string {
  switch (portion.by) {
    case 'thickness':
      return lengthText(portion.um, units);
    case 'ribs':
      return portion.ribs === 1 ? `1${space}rib` : `${portion.ribs}${space}ribs`;
    case 'weight':
      return rangeText(portion.fromGrams, portion.toGrams, units);
    default:
      return '';
  }
}

/** Money of `minor` units in the shop's currency. */
export function moneyText(minor: number, currency: string): string {
  const format = new Intl.NumberFormat('en', { style: 'currency', currency });
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2;
  return format.format(minor / 10 ** digits);
}

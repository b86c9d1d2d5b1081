import type { ScaleReading } from '@flitchbook/carcass';
import { type Made, made, slip } from '../slips.ts';
import { checkElements, type Element } from './element-string.ts';

/** What the symbol of a pack says. Dates are local, yyyy-mm-dd. */
export interface PackInSymbol {
  /** of the cut at variable weight: fourteen digits, the first a 9 */
  readonly gtin: string;
  readonly net: ScaleReading;
  readonly packedOn: string;
  readonly bestBefore: string | null;
  readonly lot: string;
  readonly serial: string;
}

/** 310n or 320n with as many decimals as the scale showed. What does not fit into six digits is refused. */
export function weightElement({ text, unit }: ScaleReading): Made<Element> {
  if (unit !== 'kg' && unit !== 'lb') return slip('net.unit', unit, 'a symbol holds kilograms or pounds');
  if (!/^\d+(\.\d+)?$/.test(text)) return slip('net.text', text, 'must be a plain decimal number');
  const [whole = '', fraction = ''] = text.split('.');
  const digits = (whole + fraction).replace(/^0+(?=\d)/, '').padStart(6, '0');
  if (fraction.length > 5) return slip('net.text', text, 'has more than five decimals');
  if (digits.length > 6) return slip('net.text', text, 'does not fit into the six digits of a symbol');
  return made({ ai: `${unit === 'kg' ? '310' : '320'}${fraction.length}`, value: digits });
}

/** 2026-11-26 as 261126. */
const shortDate = (date: string): string => date.slice(2).replaceAll('-', '');

/**
 * A two-digit year belongs to the century that puts it nearest: 51 or more ahead is the last one, 50 or more behind the
 * next (GS1 General Specifications, section 7.12). Day 00 is the last of its month.
 * @param year of today
 */
export function longDate(value: string, year: number): string {
  const short = Number(value.slice(0, 2));
  const ahead = short - (year % 100);
  const century = Math.floor(year / 100) + (ahead >= 51 ? -1 : ahead <= -50 ? 1 : 0);
  const [full, month] = [century * 100 + short, Number(value.slice(2, 4))];
  const day = Number(value.slice(4, 6)) || new Date(Date.UTC(full, month, 0)).getUTCDate();
  return `${full}-${value.slice(2, 4)}-${String(day).padStart(2, '0')}`;
}

/** The elements of a pack's symbol: those of fixed length first, so that only one separator is needed. */
export function packElements(pack: PackInSymbol): Made<readonly Element[]> {
  const weight = weightElement(pack.net);
  if (!weight.ok) return weight;
  const elements = [
    { ai: '01', value: pack.gtin },
    weight.value,
    { ai: '13', value: shortDate(pack.packedOn) },
    ...(pack.bestBefore === null ? [] : [{ ai: '15', value: shortDate(pack.bestBefore) }]),
    { ai: '10', value: pack.lot },
    { ai: '21', value: pack.serial },
  ];
  if (!pack.gtin.startsWith('9'))
    return slip('gtin', pack.gtin, 'a number for goods of varying weight starts with 9');
  // Between brackets is how symbols are written for drawing.
  for (const [at, value] of [
    ['lot', pack.lot],
    ['serial', pack.serial],
  ] as const)
    if (/[()]/.test(value)) return slip(at, value, 'must hold no bracket');
  const slips = checkElements(elements);
  return slips.length === 0 ? made(elements) : { ok: false, slips };
}

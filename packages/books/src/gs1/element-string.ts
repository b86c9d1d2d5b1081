import { type Made, made, type Slip, slip } from '../slips.ts';
import { hasCheckDigit } from './check-digit.ts';

/** Ends an element of open length inside a symbol; a scanner sends it for FNC1 (GS1 General Specifications, 7.8). */
export const separator = '\u001d';

type Content = 'gtin' | 'date' | 'weight' | 'count' | 'text';

interface Identifier {
  readonly content: Content;
  readonly digits: number;
  /** of open length up to `digits` */
  readonly isOpen: boolean;
}

const fixed = (content: Content, digits: number): Identifier => ({ content, digits, isOpen: false });
const open = (content: Content, digits: number): Identifier => ({ content, digits, isOpen: true });

/** What each identifier holds (GS1 General Specifications, section 3.2; GS1 syntax dictionary). */
const identifiers: Readonly<Record<string, Identifier>> = {
  '01': fixed('gtin', 14),
  '10': open('text', 20),
  '11': fixed('date', 6),
  '13': fixed('date', 6),
  '15': fixed('date', 6),
  '17': fixed('date', 6),
  '21': open('text', 20),
  '30': open('count', 8),
};

/** 310n is kilograms, 320n pounds; the last digit says how many decimals, 0 to 5. */
const isWeight = (ai: string): boolean => /^3[12]0[0-5]$/.test(ai);
const identifierOf = (ai: string): Identifier | undefined =>
  isWeight(ai) ? fixed('weight', 6) : identifiers[ai];

/** "GS1 AI encodable character set 82" (GS1 General Specifications, figure 7.11-1). */
const characterSet82 = /^[!"%-?A-Z_a-z]+$/;

export interface Element {
  readonly ai: string;
  readonly value: string;
}

const isDate = (value: string): boolean => {
  const [month, day] = [Number(value.slice(2, 4)), Number(value.slice(4, 6))];
  // Judged in a leap year: the century is not written. Day 00 is the end of the month.
  return month >= 1 && month <= 12 && day <= new Date(Date.UTC(2024, month, 0)).getUTCDate();
};

function faultOf({ ai, value }: Element, { content, digits, isOpen }: Identifier): string | undefined {
  if (content === 'text') {
    if (value.length < 1 || value.length > digits) return `must be 1 to ${digits} characters`;
    return characterSet82.test(value) ? undefined : 'has a character that a GS1 symbol cannot hold';
  }
  const length = isOpen ? value.length >= 1 && value.length <= digits : value.length === digits;
  if (!/^\d*$/.test(value) || !length) return `must be ${isOpen ? 'up to ' : ''}${digits} digits`;
  if (content === 'gtin' && !hasCheckDigit(value)) return 'has a wrong check digit';
  if (content === 'date' && !isDate(value)) return `(${ai}) must be a date, yymmdd`;
  return undefined;
}

/** Each element alone, then together: a weight says nothing without the number of what was weighed. */
export function checkElements(elements: readonly Element[]): readonly Slip[] {
  const alone = elements.flatMap((element): Slip[] => {
    const identifier = identifierOf(element.ai);
    const says = identifier ? faultOf(element, identifier) : 'is not an identifier that is used here';
    return says === undefined ? [] : [{ at: `(${element.ai})`, value: element.value, says }];
  });
  const names = elements.map(({ ai }) => ai);
  const twice = names.filter((ai, place) => names.indexOf(ai) !== place);
  const weight = names.find(isWeight);
  return [
    ...alone,
    ...twice.map((ai) => ({ at: `(${ai})`, value: ai, says: 'stands in it twice' })),
    ...(weight !== undefined && !names.includes('01')
      ? [{ at: `(${weight})`, value: weight, says: 'a weight needs the item number (01) beside it' }]
      : []),
  ];
}

const orSlips = (elements: readonly Element[]): Made<readonly Element[]> => {
  const slips = checkElements(elements);
  return slips.length === 0 ? made(elements) : { ok: false, slips };
};

/** As printed below a symbol: "(01)...(10)...". */
export const bracketed = (elements: readonly Element[]): string =>
  elements.map(({ ai, value }) => `(${ai})${value}`).join('');

function readBracketed(text: string): Made<readonly Element[]> {
  const found = [...text.matchAll(/\((\d{2,4})\)([^(]*)/g)].map(([, ai = '', value = '']) => ({ ai, value }));
  return bracketed(found) === text ? orSlips(found) : slip('scan', text, 'is not a row of (identifier)value');
}

/** The identifier that a row of characters begins with: two digits, or four for a weight. */
const startOf = (rest: string): string | undefined =>
  [rest.slice(0, 2), rest.slice(0, 4)].find((ai) => identifierOf(ai));

function readRaw(text: string): Made<readonly Element[]> {
  const elements: Element[] = [];
  for (let rest = text; rest !== ''; ) {
    const ai = startOf(rest);
    const identifier = ai === undefined ? undefined : identifierOf(ai);
    if (ai === undefined || !identifier)
      return slip('scan', text, `"${rest.slice(0, 4)}" is not an identifier that is used here`);
    const after = rest.slice(ai.length);
    const end = after.indexOf(separator);
    const most = identifier.isOpen ? after.length : identifier.digits;
    const value = after.slice(0, end === -1 ? most : Math.min(end, most));
    elements.push({ ai, value });
    rest = after.slice(value.length);
    if (rest.startsWith(separator)) rest = rest.slice(1);
  }
  return orSlips(elements);
}

/** Reads what a scanner sends, with or without the symbology's own prefix (]C1, ]e0), or the text below a symbol. */
export function readElements(scan: string): Made<readonly Element[]> {
  const text = scan.replace(/^\](C1|e0|d2|Q3)/, '').replace(new RegExp(`^${separator}`), '');
  if (text === '') return slip('scan', scan, 'nothing was read');
  return text.startsWith('(') ? readBracketed(text) : readRaw(text);
}

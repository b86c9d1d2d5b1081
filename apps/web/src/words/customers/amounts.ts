import type { Portion } from '@flitchbook/carcass';
import { gramsPerUnit, inchesText, type Units } from '../measures.ts';
import { type Language, language, languageTags } from './language.ts';

const space = '\u00a0';

/** Units may be turned on the page: the shop's own come first. */
export const turned = (units: Units): Units => ({
  weightUnit: units.weightUnit === 'lb' ? 'kg' : 'lb',
  lengthUnit: units.lengthUnit === 'in' ? 'mm' : 'in',
});

const tag = (): string => languageTags[language.value];

const decimals = (value: number, most: number): string =>
  new Intl.NumberFormat(tag(), { maximumFractionDigits: most }).format(value);

export const lengthSaid = (um: number, { lengthUnit }: Units): string =>
  lengthUnit === 'in' ? `${inchesText(um)}${space}in` : `${decimals(um / 1000, 0)}${space}mm`;

const inUnit = (grams: number, { weightUnit }: Units): string =>
  weightUnit === 'lb' ? decimals(grams / gramsPerUnit.lb, grams < 4536 ? 2 : 1) : decimals(grams / 1000, 2);

export const weightSaid = (grams: number, units: Units): string =>
  `${inUnit(grams, units)}${space}${units.weightUnit}`;

const joiner: Readonly<Record<Language, string>> = { english: 'to', spanish: 'a' };

const ranged = (low: string, high: string, unit: string): string =>
  low === high ? `${low}${unit}` : `${low} ${joiner[language.value]} ${high}${unit}`;

/** An estimate is a range. */
export const weightsSaid = ({ from, to }: { from: number; to: number }, units: Units): string =>
  ranged(inUnit(from, units), inUnit(to, units), `${space}${units.weightUnit}`);

export function moneySaid(minor: number, currency: string): string {
  const format = new Intl.NumberFormat(tag(), { style: 'currency', currency });
  return format.format(minor / 10 ** (format.resolvedOptions().maximumFractionDigits ?? 2));
}

export const moneysSaid = ({ from, to }: { from: number; to: number }, currency: string): string =>
  ranged(moneySaid(from, currency), moneySaid(to, currency), '');

/** What a pound or a kilogram costs, from a price a kilogram. */
export function priceSaid(minorPerKg: number, currency: string, { weightUnit }: Units): string {
  const minor = weightUnit === 'lb' ? Math.round((minorPerKg * gramsPerUnit.lb) / 1000) : minorPerKg;
  return `${moneySaid(minor, currency)}${space}/${space}${weightUnit}`;
}

/** How one piece is cut: "1¼ in", "8 ribs", "2 to 3 lb"; nothing for a piece that leaves whole. */
export function portionSaid(portion: Portion, units: Units): string {
  switch (portion.by) {
    case 'thickness':
      return lengthSaid(portion.um, units);
    case 'ribs': {
      const words = { english: ['rib', 'ribs'], spanish: ['costilla', 'costillas'] }[language.value];
      return `${portion.ribs}${space}${portion.ribs === 1 ? words[0] : words[1]}`;
    }
    case 'weight':
      return weightsSaid({ from: portion.fromGrams, to: portion.toGrams }, units);
    default:
      return '';
  }
}

/** A date of the shop in full, with its weekday. It has no time zone to shift it. */
export const dateSaid = (date: string): string =>
  new Intl.DateTimeFormat(tag(), { weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' }).format(
    new Date(`${date}T00:00:00Z`),
  );

/** An instant on the shop's clock, with its day. */
export const instantSaid = (instant: string, timeZone: string): string =>
  new Intl.DateTimeFormat(tag(), {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    hour: 'numeric',
    minute: '2-digit',
    timeZone,
  }).format(new Date(instant));

/** A time of day of the shop, hh:mm, as people say it. */
export const clockSaid = (time: string): string =>
  new Intl.DateTimeFormat(tag(), { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' }).format(
    new Date(`2000-01-01T${time}:00Z`),
  );

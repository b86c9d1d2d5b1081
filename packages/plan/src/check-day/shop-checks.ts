import { show } from '../check-plan/plan-shape.ts';
import type { Counter, CuttingDay } from '../day.ts';
import { type DayNotes, dayLimits } from './day-faults.ts';

/** Whether a local date exists: 2031-02-29 does not. */
function isDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return false;
  const [year, month, dayOfMonth] = match.slice(1).map(Number) as [number, number, number];
  const date = new Date(Date.UTC(year, month - 1, dayOfMonth));
  return year >= 1000 && date.getUTCMonth() === month - 1 && date.getUTCDate() === dayOfMonth;
}

interface Step {
  readonly size: number | null;
  readonly worthPercent: number;
}

/** Steps fall, so that a second piece is never worth more than the first, and the last one has no end. */
function checkSteps(notes: DayNotes, at: string, field: string, steps: readonly Step[]): void {
  notes.atMost(at, steps, dayLimits.counterSteps);
  if (steps.at(-1)?.size !== null)
    notes.error(
      at,
      steps.length,
      'The last step must have no end: what comes after it would be worth nothing known.',
    );
  let before = 100;
  for (const [index, { size, worthPercent }] of steps.entries()) {
    const place = `${at}[${index}]`;
    if (size !== null) notes.whole(`${place}.${field}`, size, 1, dayLimits.grams);
    else if (index < steps.length - 1)
      notes.error(`${place}.${field}`, size, 'Only the last step has no end.');
    const fits = Number.isFinite(worthPercent) && worthPercent >= 0 && worthPercent <= 100;
    if (!fits)
      notes.error(
        `${place}.worthPercent`,
        worthPercent,
        `Must be a percentage from 0 to 100, got ${show(worthPercent)}.`,
      );
    else if (worthPercent > before)
      notes.error(
        `${place}.worthPercent`,
        worthPercent,
        `Later pieces can't be worth more than earlier ones, at ${before} percent.`,
      );
    if (fits) before = worthPercent;
  }
}

function checkCounter(notes: DayNotes, counter: Counter, day: CuttingDay): void {
  checkSteps(
    notes,
    'counter.itemSteps',
    'pieces',
    counter.itemSteps.map(({ pieces, worthPercent }) => ({ size: pieces, worthPercent })),
  );
  checkSteps(
    notes,
    'counter.stockSteps',
    'grams',
    counter.stockSteps.map(({ grams, worthPercent }) => ({ size: grams, worthPercent })),
  );
  const sold = Object.assign(
    {},
    ...Object.values(day.species).flatMap(({ items, stocks, bulks }) => [items, stocks, bulks]),
  ) as Readonly<Record<string, unknown>>;
  for (const [id, worth] of Object.entries(counter.worthMinorPerKg)) {
    notes.known(`counter.worthMinorPerKg.${id}`, id, sold, 'item, stock or bulk');
    notes.whole(`counter.worthMinorPerKg.${id}`, worth, 0, dayLimits.priceMinorPerKg);
  }
  notes.whole('counter.labourMinorPerHour', counter.labourMinorPerHour, 0, dayLimits.priceMinorPerKg);
}

/** The day itself, the tools on the block, and what the counter pays. */
export function checkShop(notes: DayNotes, day: CuttingDay): void {
  notes.text('dayId', day.dayId);
  if (!isDate(day.date))
    notes.error('date', day.date, `Must be a date that exists, yyyy-mm-dd, got ${show(day.date)}.`);
  notes.trueOrFalse('tools.saw', day.tools.saw);
  const inMillimetres = day.tools.kerfUm > 0 && day.tools.kerfUm <= 5 && !Number.isInteger(day.tools.kerfUm);
  notes.whole(
    'tools.kerfUm',
    day.tools.kerfUm,
    0,
    dayLimits.kerfUm,
    inMillimetres ? 'millimetres were keyed as micrometres.' : undefined,
  );
  checkCounter(notes, day.counter, day);
}

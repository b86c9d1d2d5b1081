import type { CuttingDay, DemandLine } from '@flitchbook/plan';
import { madeDay, writtenDay } from '@flitchbook/test-harness/days';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayFileOf, knownSpecies, type ParsedDay, parseDayFile } from '../index.ts';
import { readJson } from './read-json.ts';

type Shop = ParsedDay['shop'];

const shops = fc.record<Shop>({
  name: fc.constantFrom('Tallow Lane Butchery', 'The shop'),
  // 2 decimals, none, and 3 (ISO 4217).
  currency: fc.constantFrom('USD', 'JPY', 'KWD'),
  weightUnit: fc.constantFrom('lb', 'kg'),
  lengthUnit: fc.constantFrom('in', 'mm'),
});

interface Bend {
  readonly line: number;
  readonly priceMinorPerKg: number;
  readonly um: number;
  readonly grams: number;
  readonly id: string;
}

/** One line bent to what no menu has: odd lengths, weights, prices and ids. */
function bent(day: CuttingDay, { line: at, priceMinorPerKg, um, grams, id }: Bend): CuttingDay {
  const change = (line: DemandLine): DemandLine => ({
    ...line,
    lineId: `line of ${id}`,
    priceMinorPerKg,
    onlyHand: 'left',
    onlyAnimal: day.animals[0]?.animalId ?? '',
    ...(line.portion.by === 'thickness' ? { portion: { by: 'thickness', um } } : {}),
    ...(line.portion.by === 'bulk' ? { ask: { grams } } : {}),
  });
  return {
    ...day,
    lines: day.lines.map((line, index) => (index === at % day.lines.length ? change(line) : line)),
  };
}

const locked = (day: CuttingDay): CuttingDay => ({
  ...day,
  locks: day.animals.slice(0, 1).flatMap(({ sides }) =>
    sides.map(({ sideId }) => ({
      lock: 'operation' as const,
      sideId,
      part: 'middle',
      operation: 'clear-cavity',
    })),
  ),
});

const bends = fc.record<Bend>({
  line: fc.nat(50),
  priceMinorPerKg: fc.integer({ min: 0, max: 9_999_999 }),
  um: fc.integer({ min: 20_000, max: 38_100 }),
  grams: fc.integer({ min: 1, max: 40_000 }),
  id: fc.stringMatching(/^[a-z]{1,8}$/),
});

const wishes = fc.record({
  seed: fc.nat(1_000_000),
  animals: fc.integer({ min: 1, max: 6 }),
  lines: fc.integer({ min: 1, max: 40 }),
  shares: fc.nat(3),
  kerfUm: fc.integer({ min: 0, max: 5000 }),
  labourMinorPerHour: fc.integer({ min: 0, max: 9999 }),
  bend: bends,
});

function wishedDay({
  kerfUm,
  labourMinorPerHour,
  bend,
  ...wish
}: typeof wishes extends fc.Arbitrary<infer T> ? T : never): CuttingDay {
  const day = locked(bent(madeDay(wish), bend));
  const counter = { ...day.counter, labourMinorPerHour, worthMinorPerKg: { tenderloin: labourMinorPerHour } };
  return { ...day, tools: { saw: kerfUm > 0, kerfUm }, counter };
}

describe('a day written as a day file', () => {
  it('reads back to the same day, whatever its lengths, weights, prices, ids and units', () => {
    fc.assert(
      fc.property(wishes, shops, (wish, shop) => {
        const written = writtenDay({ ...wishedDay(wish), species: knownSpecies }, shop);
        const parsed = parseDayFile(JSON.stringify(dayFileOf(written)));
        expect('faults' in parsed ? parsed.faults : []).toEqual([]);
        const { warnings: _, ...read } = parsed as ParsedDay;
        expect(read).toEqual(written);
      }),
      { numRuns: 60, seed: 20261125 },
    );
  });

  it('keeps two lines apart that the reader would take for one', () => {
    const [first] = madeDay({ seed: 1, animals: 1, lines: 1 }).lines;
    const line = {
      ...(first as DemandLine),
      cut: 'liver',
      portion: { by: 'whole' } as const,
      ask: { pieces: 1 },
      substitutes: [],
    };
    const day = {
      ...madeDay({ seed: 1, animals: 1, lines: 1 }),
      lines: [line, { ...line, lineId: 'order-1-line-2' }],
    };
    const written = writtenDay(day, {
      name: 'The shop',
      currency: 'USD',
      weightUnit: 'lb',
      lengthUnit: 'in',
    });
    expect(parseDayFile(JSON.stringify(dayFileOf(written)))).toMatchObject({ day: { lines: day.lines } });
  });

  it('is read by people: the shop’s own units where they are exact', () => {
    const day = madeDay({ seed: 3, animals: 1, lines: 12 });
    const file = JSON.stringify(
      dayFileOf(writtenDay(day, { name: 'The shop', currency: 'USD', weightUnit: 'lb', lengthUnit: 'in' })),
    );
    expect(file).toMatch(/"thickness":"(\d |\d\/\d |\d \d\/\d )in"/);
    expect(file).toMatch(/"price":"\d+\.\d\d\/lb"/);
    expect(file).not.toMatch(/ mm"|\/kg"| k?g"/);
  });
});

describe('cuts of every species', () => {
  // A file says "whole" and "by weight" by saying nothing.
  it('are usually whole, or usually loose, where they can be', () => {
    const cuts = Object.values(knownSpecies).flatMap((species) => Object.values(species.cuts));
    expect(cuts.length).toBeGreaterThan(40);
    const unsayable = cuts.filter(
      ({ portions, usual }) =>
        portions.some(({ by }) => by === 'whole' || by === 'bulk') && !['whole', 'bulk'].includes(usual.by),
    );
    expect(unsayable.map(({ id }) => id)).toEqual([]);
  });
});

describe('JSON as it is read here', () => {
  // RFC 8259, with JSON.parse as the reference; what it leaves open is refused.
  it('means what it means everywhere', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom(undefined, 1, '\t'), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        const read = readJson(text, { length: 1_000_000, depth: 64 });
        if ('fault' in read) expect(read.fault.says).toMatch(/surrogate|NUL/);
        else expect(read.value).toEqual(JSON.parse(text));
      }),
      { numRuns: 300, seed: 20261125 },
    );
  });

  it('never throws, and names a place inside the text', () => {
    fc.assert(
      fc.property(fc.string(), fc.nat(20), (text, cut) => {
        const broken = `{"a": [1, "${text}"`.slice(0, 12 + cut);
        const read = readJson(broken, { length: 1000, depth: 8 });
        if (!('fault' in read)) return;
        const line = broken.split('\n')[read.fault.line - 1];
        expect(line).toBeDefined();
        expect(read.fault.column).toBeLessThanOrEqual((line ?? '').length + 1);
      }),
      { numRuns: 300, seed: 20261125 },
    );
  });
});

it('counts crowns where the plan counts the racks they are made of', () => {
  const text = JSON.stringify({
    flitchbook: 1,
    date: '2031-03-14',
    animals: [{ id: 'a', name: 'Hog 1', species: 'hog', hanging: '184 lb', hotOrCold: 'cold' }],
    orders: [{ owner: 'Ann', lines: [{ cut: 'crown', ribs: 8, count: 2, price: '9.00/lb' }] }],
  });
  const parsed = parseDayFile(text);
  if ('faults' in parsed) throw new Error(JSON.stringify(parsed.faults));
  expect(parsed.day.lines[0]?.ask).toEqual({ pieces: 4 });
  expect(dayFileOf(parsed).orders?.[0]?.lines?.[0]?.count).toBe(2);
});

import { describe, expect, it } from 'vitest';
import { parseDayFile } from './parse-day-file.ts';

const hog = {
  id: 'hog-1',
  name: 'Hog 1',
  species: 'hog',
  hanging: '184 lb',
  hotOrCold: 'cold',
  facts: ['skin-on', 'head', 'feet', 'organs'],
};

const file = (change: object) => ({ flitchbook: 1, date: '2026-11-26', animals: [hog], ...change });
const withAnimal = (change: object) => file({ animals: [{ ...hog, ...change }] });
const withLines = (...lines: readonly object[]) => file({ orders: [{ owner: 'Ada Vell', lines }] });
const withLine = (change: object) => withLines({ cut: 'rib-chop', price: '5.00/lb', ...change });
const withShare = (change: object) =>
  file({ orders: [{ owner: 'Ada Vell', shares: [{ size: 'half', price: '3.60/lb', ...change }] }] });

const faultsOf = (day: unknown) => {
  const parsed = parseDayFile(JSON.stringify(day));
  return 'faults' in parsed ? parsed.faults : [];
};
const warningsOf = (day: unknown) => {
  const parsed = parseDayFile(JSON.stringify(day));
  return 'faults' in parsed ? parsed.faults : parsed.warnings;
};

/** What is wrong, the day that has it, the field that must be named, the value that must be shown, a word of the sentence. */
type Bad = readonly [name: string, day: unknown, at: string, value: unknown, says: RegExp];

const inLine = 'orders[0].lines[0]';

const badLines: readonly Bad[] = [
  ['an unknown cut', withLine({ cut: 'rib-chopp' }), `${inLine}.cut`, 'rib-chopp', /Maybe "rib-chop"/],
  ['a cut named as a built-in', withLine({ cut: 'constructor' }), `${inLine}.cut`, 'constructor', /No cut/],
  ['thickness 0', withLine({ thickness: '0 in' }), `${inLine}.thickness`, '0 in', /above 0/],
  ['thickness 1 mm', withLine({ thickness: '1 mm' }), `${inLine}.thickness`, '1 mm', /9\.525 mm to 101\.6/],
  ['thickness 300 mm', withLine({ thickness: '300 mm' }), `${inLine}.thickness`, '300 mm', /to 101\.6 mm/],
  ['thickness NaN', withLine({ thickness: 'NaN' }), `${inLine}.thickness`, 'NaN', /length such as/],
  [
    'a negative thickness',
    withLine({ thickness: '-1 in' }),
    `${inLine}.thickness`,
    '-1 in',
    /length such as/,
  ],
  ['a thickness without a unit', withLine({ thickness: 25 }), `${inLine}.thickness`, 25, /text in quotes/],
  ['a count of 0', withLine({ count: 0 }), `${inLine}.count`, 0, /at least 1/],
  ['a negative count', withLine({ count: -2 }), `${inLine}.count`, -2, /at least 1/],
  ['half a piece', withLine({ count: 1.5 }), `${inLine}.count`, 1.5, /whole number/],
  ['a huge count', withLine({ count: 1e9 }), `${inLine}.count`, 1e9, /at most 9999/],
  ['a count in words', withLine({ count: 'four' }), `${inLine}.count`, 'four', /a number/],
  [
    'two portions at once',
    withLine({ thickness: '1 in', ribs: 2 }),
    inLine,
    { cut: 'rib-chop', price: '5.00/lb', thickness: '1 in', ribs: 2 },
    /one of thickness, ribs and weight/,
  ],
  ['loose meat by the piece', withLine({ cut: 'ground-pork', count: 2 }), `${inLine}.count`, 2, /by weight/],
  [
    'loose meat by the shipload',
    withLine({ cut: 'ground-pork', amount: '9999999 kg' }),
    `${inLine}.amount`,
    '9999999 kg',
    /from 1 to 10000000/,
  ],
  ['chops by weight', withLine({ amount: '5 lb' }), `${inLine}.amount`, '5 lb', /by the piece/],
  ['a price per nothing', withLine({ price: '5.00' }), `${inLine}.price`, '5.00', /per what/],
  ['a negative price', withLine({ price: '-5.00/lb' }), `${inLine}.price`, '-5.00/lb', /per what/],
  ['a tenth of a cent', withLine({ price: '5.001/lb' }), `${inLine}.price`, '5.001/lb', /at most 2 decimals/],
  [
    'an unknown substitute',
    withLine({ substitutes: [{ cut: 'cop' }] }),
    `${inLine}.substitutes[0].cut`,
    'cop',
    /coppa/,
  ],
  [
    'an unknown animal',
    withLine({ onlyAnimal: 'Hog 11' }),
    `${inLine}.onlyAnimal`,
    'Hog 11',
    /Maybe "Hog 1"/,
  ],
  ['an unknown species', withLine({ species: 'yak' }), `${inLine}.species`, 'yak', /no species/i],
  ['a misspelt field', withLine({ thicknes: '1 in' }), `${inLine}.thicknes`, '1 in', /Maybe "thickness"/],
  [
    'one line id twice',
    withLines({ id: 'l', cut: 'liver' }, { id: 'l', cut: 'tail' }),
    'orders[0].lines[1].id',
    'l',
    /already at orders\[0\]\.lines\[0\]\.id/,
  ],
];

const badAnimals: readonly Bad[] = [
  ['a carcass of 3 kg', withAnimal({ hanging: '3 kg' }), 'animals[0].hanging', '3 kg', /20 kg to 250 kg/],
  [
    'a carcass of 900 kg',
    withAnimal({ hanging: '900 kg' }),
    'animals[0].hanging',
    '900 kg',
    /20 kg to 250 kg/,
  ],
  ['a negative carcass', withAnimal({ hanging: '-80 kg' }), 'animals[0].hanging', '-80 kg', /weight/],
  [
    'a side heavier than its animal',
    withAnimal({ sides: [{ hand: 'left', weight: '200 lb' }, { hand: 'right' }] }),
    'animals[0].sides[0].weight',
    '200 lb',
    /90\.7 kg, its whole carcass 83\.5 kg/,
  ],
  [
    'a side as heavy as its animal',
    withAnimal({ sides: [{ hand: 'left', weight: '184 lb' }] }),
    'animals[0].sides[0].weight',
    '184 lb',
    /nothing for the other/,
  ],
  [
    'sides heavier together than their animal',
    withAnimal({
      sides: [
        { hand: 'left', weight: '100 lb' },
        { hand: 'right', weight: '100 lb' },
      ],
    }),
    'animals[0].sides',
    [
      { hand: 'left', weight: '100 lb' },
      { hand: 'right', weight: '100 lb' },
    ],
    /90\.7 kg together/,
  ],
  [
    'two left sides',
    withAnimal({ sides: [{ hand: 'left' }, { hand: 'left' }] }),
    'animals[0].sides[1].hand',
    'left',
    /listed already/,
  ],
  ['a species nobody knows', withAnimal({ species: 'yak' }), 'animals[0].species', 'yak', /No such species/],
  ['a hog of 5 ribs', withAnimal({ ribs: 5 }), 'animals[0].ribs', 5, /13 to 17/],
  ['an unknown fact', withAnimal({ facts: ['tail-on'] }), 'animals[0].facts[0]', 'tail-on', /"skin-on"/],
  [
    'one animal id twice',
    file({ animals: [hog, hog] }),
    'animals[1].id',
    'hog-1',
    /already at animals\[0\]\.id/,
  ],
];

const badRest: readonly Bad[] = [
  ['a date that does not exist', file({ date: '2026-02-30' }), 'date', '2026-02-30', /date that exists/],
  ['a later form of the file', file({ flitchbook: 2 }), 'flitchbook', 2, /Must be 1/],
  ['no animals at all', { flitchbook: 1, date: '2026-11-26' }, 'animals', undefined, /missing/],
  ['animals that are no list', file({ animals: {} }), 'animals', {}, /list/],
  ['orders that are text', file({ orders: 'none' }), 'orders', 'none', /list/],
  ['an owner without a name', file({ orders: [{ owner: '  ' }] }), 'orders[0].owner', '  ', /not be empty/],
  ['a bell in a name', file({ orders: [{ owner: 'A\u0007' }] }), 'orders[0].owner', 'A\u0007', /control/],
  [
    'one order id twice',
    file({
      orders: [
        { id: 'o', owner: 'A' },
        { id: 'o', owner: 'B' },
      ],
    }),
    'orders[1].id',
    'o',
    /stands at orders\[0\] already/,
  ],
  [
    'a share cut in an unknown way',
    withShare({ instructions: { operations: { ham: 'ham-flown' } } }),
    'orders[0].shares[0].instructions.operations.ham',
    'ham-flown',
    /it has ham-whole/,
  ],
  [
    'a share portioned in no way',
    withShare({ instructions: { portions: { 'rib-bone-in': {} } } }),
    'orders[0].shares[0].instructions.portions.rib-bone-in',
    {},
    /one of thickness/,
  ],
  [
    'a lock on an unknown operation',
    file({ locks: [{ animal: 'Hog 1', hand: 'left', part: 'middle', operation: 'fly' }] }),
    'locks[0].operation',
    'fly',
    /it has clear-cavity/,
  ],
  [
    'a lock on nobody’s side',
    file({ locks: [{ animal: 'Hog 9', hand: 'left', part: 'middle', operation: 'clear-cavity' }] }),
    'locks[0].animal',
    'Hog 9',
    /No animal/,
  ],
  ['a kerf of an inch', file({ tools: { kerfMm: 25.4 } }), 'tools.kerfMm', 25.4, /at most 20/],
  [
    'more than all of its worth',
    file({ counter: { itemSteps: [{ percent: 101 }] } }),
    'counter.itemSteps[0].percent',
    101,
    /at most 100/,
  ],
];

describe.each([
  ['a line', badLines],
  ['an animal', badAnimals],
  ['the rest', badRest],
])('%s of a day file', (_, bad) => {
  it.each(bad)('refuses %s, naming field and value', (_name, day, at, value, says) => {
    const faults = faultsOf(day);
    expect(faults).toContainEqual(expect.objectContaining({ at, value, says: expect.stringMatching(says) }));
    // Whatever else is said is a sentence about a place of this file.
    for (const fault of faults) expect(fault.says).toMatch(/^[A-Z].*[.?]$/s);
  });
});

describe('a day file that can be cut as it stands', () => {
  it('may be empty', () => {
    const day = file({ animals: [], orders: [] });
    expect(faultsOf(day)).toEqual([]);
    expect(warningsOf(day)).toMatchObject([
      { at: 'animals', says: expect.stringContaining('nothing to cut') },
    ]);
  });

  it('may ask for an animal that is not there, which is said', () => {
    const day = { ...withLine({}), animals: [] };
    expect(faultsOf(day)).toEqual([]);
    expect(warningsOf(day).at(-1)).toMatchObject({
      at: `${inLine}.species`,
      says: expect.stringContaining('No hog is there that day'),
    });
  });

  it('takes two lines that ask for the same as one, and says so', () => {
    const day = withLines({ cut: 'liver', count: 2 }, { cut: 'tail' }, { cut: 'liver' });
    const parsed = parseDayFile(JSON.stringify(day));
    expect(parsed).toMatchObject({
      day: { lines: [{ cut: 'liver', ask: { pieces: 3 } }, { cut: 'tail' }] },
      warnings: [{ at: 'orders[0].lines[2]', says: expect.stringContaining('one line of 3 pieces') }],
    });
  });

  it('says every fault at once, each with its line', () => {
    const text = JSON.stringify(
      withLines({ cut: 'rib-chop', count: -1 }, { cut: 'nothing' }, { cut: 'liver', price: '1' }),
      null,
      1,
    );
    const parsed = parseDayFile(text);
    const faults = 'faults' in parsed ? parsed.faults : [];
    expect(faults.map(({ at }) => at)).toEqual(['orders[0].lines[0].count']);
    const [fault] = faults;
    expect(text.split('\n')[(fault?.line ?? 0) - 1]).toContain('"count": -1');
  });
});

describe('a text that is no day file', () => {
  it.each([
    ['nothing', '', 'line 1, column 1', 'the end of the file'],
    ['an object that does not end', '{"flitchbook": 1,', 'line 1, column 18', 'the end of the file'],
    ['a comma too many', '{\n"animals": [1,]}', 'line 2, column 15', ']}'],
    ['a field given twice', '{"date": 1, "date": 2}', 'line 1, column 13', '"date": 2}'],
    ['words for numbers', '{"date": NaN}', 'line 1, column 10', 'NaN}'],
    ['a number beyond all numbers', '{"date": 1e999}', 'line 1, column 10', '1e999}'],
    ['half of a letter', '{"date": "\\ud800"}', 'line 1, column 10', '"\\ud800"}'],
    ['something after the end', '{}{}', 'line 1, column 3', '{}'],
    ['lists in lists', '['.repeat(100_000), 'line 1, column 33', '['.repeat(40)],
    ['objects in objects', '{"a":'.repeat(50_000), 'line 1, column 161', '{"a":'.repeat(8)],
    ['ten megabytes', `{"note": "${'a'.repeat(10_000_000)}"}`, 'line 1, column 1', '10000012 characters'],
  ])('is refused: %s', (_, text, at, value) => {
    const parsed = parseDayFile(text);
    expect(parsed).toMatchObject({ faults: [{ at, value, says: expect.stringMatching(/^[A-Z].*\.$/) }] });
  });

  it.each([
    ['a list', '[]'],
    ['nothing', 'null'],
    ['text', '"day"'],
    ['a number', '7'],
  ])('is refused where it is %s', (_, text) => {
    expect(parseDayFile(text)).toMatchObject({ faults: [{ at: 'the file', value: JSON.parse(text) }] });
  });
});

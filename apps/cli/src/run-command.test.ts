import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runCommand } from './run-command.ts';

const example = readFileSync(new URL('../../../examples/two-hogs.json', import.meta.url), 'utf8');

async function run(args: readonly string[], file = example) {
  const printed: string[] = [];
  const complained: string[] = [];
  const readFile = (name: string): string => {
    if (name === 'day.json') return file;
    throw Object.assign(new Error(`no such file: ${name}`), { code: 'ENOENT' });
  };
  const status = await runCommand(args, {
    readFile,
    print: (text) => printed.push(text),
    complain: (text) => complained.push(text),
  });
  return { status, printed: printed.join('\n'), complained: complained.join('\n') };
}

describe('flitchbook plan', () => {
  it('prints the cut list of the example, and says 1: the day is oversold', async () => {
    const { status, printed } = await run(['plan', 'day.json', '--deadline', '2']);
    expect(status).toBe(1);
    expect(printed).toContain('Hog 18, right side');
    expect(printed).toMatch(/SHORT {2}Odalys Finch: Tenderloin/);
  });

  it('prints JSON for machines, each side balanced to the milligram', async () => {
    const { printed } = await run(['plan', 'day.json', '--json', '--deadline', '2']);
    const { plan } = JSON.parse(printed);
    for (const side of plan.sides) {
      const runs = side.bars.flatMap((bar: { runs: object[] }) => bar.runs);
      const pieces = runs.flatMap((entry: { pieces: { massMg: number }[] }) => entry.pieces);
      const masses = [...side.items, ...pieces].map(({ massMg }: { massMg: number }) => massMg);
      const free = runs.map(({ freeMg }: { freeMg: number }) => freeMg);
      const all = [...masses, ...free, ...Object.values<number>(side.bulkMg)];
      expect(all.reduce((sum, mg) => sum + mg, 0)).toBe(side.massMg);
    }
  });

  it('lays the ways to break a middle beside each other, and names the sides it knows', async () => {
    const { status, printed } = await run(['split', 'day.json', '--side', 'hog-18-left', '--deadline', '2']);
    expect(status).toBe(0);
    expect(printed).toMatch(/^hog-18-left, middle\n/);
    expect(printed).toContain('[as planned]');
    expect(printed).toContain('Porchetta of the whole middle');
    expect(await run(['split', 'day.json', '--side', 'left'])).toMatchObject({
      status: 2,
      complained: expect.stringMatching(/--side must be one of .*hog-18-left.*, got "left"/),
    });
    expect((await run(['split', 'day.json'])).status).toBe(2);
  });

  const folder = new URL('../../../examples/broken/', import.meta.url);
  /** The field that each broken example is about, and the value that is shown with it. */
  const broken: Readonly<Record<string, string>> = {
    'animal-twice.json': 'animals[1].id: The animal "hog-1" is already at animals[0].id. (got "hog-1")',
    'carcass-3-kg.json':
      'animals[0].hanging: A carcass of hog weighs 20 kg to 250 kg in whole grams, got 3000 g.',
    'carcass-900-kg.json':
      'animals[0].hanging: A carcass of hog weighs 20 kg to 250 kg in whole grams, got 900000 g.',
    'cut-off.json': 'line 5, column 1: Is not a value',
    'huge-count.json': 'orders[0].lines[0].count: Must be at most 9999. (got 1000000000)',
    'key-twice.json': 'line 1, column 42: Is given twice in one object.',
    'line-twice.json':
      'orders[0].lines[1].id: The line "chops" is already at orders[0].lines[0].id. (got "chops")',
    'negative-count.json': 'orders[0].lines[0].count: Must be at least 1. (got -2)',
    'nested.json': 'line 1, column 84: Is nested deeper than 32 levels.',
    'side-heavier-than-animal.json':
      'animals[0].sides[0].weight: The side weighs 90.7 kg, its whole carcass 83.5 kg.',
    'thickness-1-mm.json': 'orders[0].lines[0].thickness: Bone-in rib chop is cut 9.525 mm to 101.6 mm thick',
    'thickness-300-mm.json':
      'orders[0].lines[0].thickness: Bone-in rib chop is cut 9.525 mm to 101.6 mm thick',
    'thickness-nan.json':
      'orders[0].lines[0].thickness: Must be a length such as "1 1/4 in" or "32 mm". (got "NaN")',
    'thickness-zero.json': 'orders[0].lines[0].thickness: Must be above 0. (got "0 in")',
    'unknown-cut.json':
      'orders[0].lines[0].cut: No cut of the hog is called that. Maybe "rib-chop"? (got "rib-chopp")',
    'unknown-species.json': 'orders[0].lines[0].species: There is no species called "yak". (got "yak")',
    'wrong-types.json': 'date: Must be text. (got 20261126)',
  };

  it('knows what is wrong with every broken example', () => {
    expect(readdirSync(folder).sort()).toEqual(Object.keys(broken));
  });

  it.each(Object.entries(broken))(
    'refuses examples/broken/%s with 2, naming field and value',
    async (name, named) => {
      const text = readFileSync(new URL(name, folder), 'utf8');
      for (const command of ['plan', 'check']) {
        const { status, complained, printed } = await run([command, 'day.json'], text);
        expect(status).toBe(2);
        expect(complained).toContain(named);
        expect(complained).toMatch(/^day\.json:\d+: /);
        expect(printed).toBe('');
      }
    },
  );

  it('refuses ten megabytes before it reads them', async () => {
    const { status, complained } = await run(['plan', 'day.json'], `{"note": "${'a'.repeat(10_000_000)}"}`);
    expect(status).toBe(2);
    expect(complained).toContain('Is longer than 1000000 characters. (got "10000012 characters")');
  });

  it('says 0 where everything is filled', async () => {
    const { orders, ...day } = JSON.parse(example);
    const { status, printed } = await run(
      ['plan', 'day.json', '--deadline', '3'],
      JSON.stringify({ ...day, orders: orders.slice(0, 1) }),
    );
    expect(status).toBe(0);
    expect(printed).toContain('filled Ines Okafor: Tenderloin, whole. 2 of 2.');
    expect(printed).not.toContain('SHORT');
  });

  it('says 3 where the fault is not in the file', async () => {
    const complained: string[] = [];
    const status = await runCommand(['plan', 'day.json', '--deadline', '1'], {
      readFile: () => JSON.stringify({ flitchbook: 1, date: '2026-11-26', animals: [] }),
      print: () => {
        throw new Error('the printer is on fire');
      },
      complain: (text) => complained.push(text),
    });
    expect(status).toBe(3);
    expect(complained).toContain('the printer is on fire');
  });

  it('plans an empty day', async () => {
    const { status } = await run(
      ['plan', 'day.json', '--deadline', '2'],
      JSON.stringify({ flitchbook: 1, date: '2026-11-26', animals: [] }),
    );
    expect(status).toBe(0);
  });
});

describe('flitchbook', () => {
  it.each([
    [[]],
    [['plan']],
    [['plan', 'day.json', 'other.json']],
    [['slice', 'day.json']],
    [['plan', 'missing.json']],
    [['plan', 'day.json', '--gap', '2']],
    [['plan', 'day.json', '--pace', '2']],
  ])('refuses %j', async (args) => {
    const { status, complained } = await run(args);
    expect(status).toBe(2);
    expect(complained).not.toBe('');
  });

  it('lists the cuts of a species', async () => {
    const { status, printed } = await run(['cuts']);
    expect(status).toBe(0);
    expect(printed).toContain('t-bone-chop');
  });
});

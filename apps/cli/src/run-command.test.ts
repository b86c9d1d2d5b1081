import { readFileSync } from 'node:fs';
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

  const day = JSON.parse(example);
  const withLine = (line: object) =>
    JSON.stringify({ ...day, orders: [{ owner: 'Ada', lines: [{ price: '5.00/lb', ...line }] }] });
  it.each([
    ['an unknown cut', withLine({ cut: 'rib-chopp', thickness: '1 in', count: 2 }), /cut/],
    ['a thickness of 0', withLine({ cut: 'rib-chop', thickness: '0 in', count: 2 }), /thickness/],
    ['a thickness of 1 mm', withLine({ cut: 'rib-chop', thickness: '1 mm', count: 2 }), /thickness/],
    ['a thickness of 300 mm', withLine({ cut: 'rib-chop', thickness: '300 mm', count: 2 }), /thickness/],
    ['a thickness that is no number', withLine({ cut: 'rib-chop', thickness: 'NaN', count: 2 }), /thickness/],
    ['a negative count', withLine({ cut: 'rib-chop', thickness: '1 in', count: -2 }), /count/],
    ['a huge count', withLine({ cut: 'rib-chop', thickness: '1 in', count: 1e9 }), /count/],
    [
      'a carcass of 3 kg',
      JSON.stringify({ ...day, orders: [], animals: [{ ...day.animals[0], hanging: '3 kg' }] }),
      /hanging|animals/,
    ],
    [
      'a carcass of 900 kg',
      JSON.stringify({ ...day, orders: [], animals: [{ ...day.animals[0], hanging: '900 kg' }] }),
      /hanging|animals/,
    ],
    [
      'one id twice',
      JSON.stringify({ ...day, orders: [], animals: [day.animals[0], day.animals[0]] }),
      /animals/,
    ],
    ['broken JSON', '{"flitchbook": 1,', /line|JSON|end/i],
    ['ten megabytes', `{"flitchbook": 1, "note": "${'a'.repeat(10_000_000)}"}`, /1,?000,?000|large|long/],
  ])('refuses %s and names it', async (_, file, named) => {
    const { status, complained, printed } = await run(['plan', 'day.json'], file);
    expect(status).toBe(2);
    expect(complained).toMatch(named);
    expect(printed).toBe('');
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

import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { dayFileOf, parseDayFile } from '@flitchbook/contracts';
import { jsonText } from '@flitchbook/test-harness';
import { madeDay, writtenDay } from '@flitchbook/test-harness/days';
import { describe, expect, it } from 'vitest';

const folder = new URL('../../examples/', import.meta.url);
const read = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const shop = { name: 'Tallow Lane Butchery', currency: 'USD', weightUnit: 'lb', lengthUnit: 'in' } as const;

/** Files of the kitchen (docs/kitchen.md) stand there too. */
const isOfKitchen = (name: string): boolean => 'cures' in JSON.parse(read(name));

it.each(readdirSync(folder).filter((name) => name.endsWith('.json') && !isOfKitchen(name)))(
  'examples/%s is a good day file',
  (name) => {
    expect(parseDayFile(read(name))).toMatchObject({ warnings: [] });
  },
);

it('examples/five-hogs.json is a made day of 5 hogs and 75 lines (npm run documents writes it anew)', async () => {
  const made = dayFileOf(writtenDay(madeDay({ seed: 5, animals: 5, lines: 75 }), shop));
  await expect(jsonText(made, 110)).toMatchFileSnapshot('../../examples/five-hogs.json');
});

describe('the day of the demo', () => {
  const parsed = parseDayFile(read('two-hogs.json'));
  if ('faults' in parsed) throw new Error(JSON.stringify(parsed.faults));
  const { lines, shares, animals } = parsed.day;
  const wanted = (...cuts: readonly string[]): number =>
    lines
      .filter(({ cut }) => cuts.includes(cut))
      .reduce((sum, { ask }) => sum + ('pieces' in ask ? ask.pieces : 0), 0);

  it('has two hogs and about thirty lines', () => {
    expect(animals).toHaveLength(2);
    expect(lines.length + shares.length).toBeGreaterThanOrEqual(28);
    expect(lines.length + shares.length).toBeLessThanOrEqual(32);
  });

  // Facts of the animal: common practice, no source.
  it('wants more than two hogs have, in every way that happens', () => {
    expect(wanted('tenderloin')).toBe(5); // four there are
    expect(wanted('t-bone-chop')).toBeGreaterThan(0); // each side that gives them gives no tenderloin
    expect(wanted('back-ribs')).toBeGreaterThan(0);
    expect(wanted('rib-chop', 'rib-rack', 'long-bone-chop')).toBeGreaterThan(0); // over the same ribs
    expect(wanted('porchetta')).toBe(1); // a whole middle
    expect(wanted('slab-bacon')).toBeGreaterThan(1); // none from the porchetta’s side
    const [half] = shares;
    expect(shares).toHaveLength(1);
    expect(half?.size).toBe('half');
    expect(Object.keys(half?.instructions.portions ?? {}).length).toBeGreaterThan(1);
  });
});

describe('the command line, as a shop runs it', () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const run = (...args: readonly string[]) =>
    spawnSync(process.execPath, ['scripts/flitchbook.mjs', ...args], { cwd: root, encoding: 'utf8' });

  it.each([
    [0, ['check', 'examples/two-hogs.json'], /two-hogs\.json is a good day file/],
    [1, ['plan', 'examples/two-hogs.json', '--deadline', '1'], /SHORT/],
    [2, ['plan', 'examples/broken/unknown-cut.json'], /unknown-cut\.json:24: orders\[0\]\.lines\[0\]\.cut: /],
    [2, ['plan', 'examples/nowhere.json'], /nowhere\.json/],
  ])('ends with %i after %j', (status, args, says) => {
    const ended = run(...args);
    expect(ended.stdout + ended.stderr).toMatch(says);
    expect(ended.status).toBe(status);
  });
});

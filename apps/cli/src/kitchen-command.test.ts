import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runCommand } from './run-command.ts';

const example = readFileSync(new URL('../../../examples/kitchen.json', import.meta.url), 'utf8');
const file = JSON.parse(example);

async function run(content: unknown, ...more: string[]) {
  const printed: string[] = [];
  const complained: string[] = [];
  const status = await runCommand(['kitchen', 'k.json', ...more], {
    readFile: () => (typeof content === 'string' ? content : JSON.stringify(content)),
    print: (text) => printed.push(text),
    complain: (text) => complained.push(text),
  });
  return { status, printed: printed.join('\n'), complained: complained.join('\n') };
}

const cure = (change: object) => ({ flitchbook: 1, cures: [{ ...file.cures[0], ...change }] });
const sausage = (change: object) => ({ flitchbook: 1, sausage: { ...file.sausage, ...change } });

describe('flitchbook kitchen', () => {
  it('reckons the example: a slab to its day, two batches, a price list that makes its margin', async () => {
    const { status, printed } = await run(example);
    expect(status).toBe(0);
    expect(printed).toContain('cure 10.80 g, 120.00 ppm as sodium-nitrite');
    expect(printed).toContain('look at it on 2026-12-03 at the earliest');
    expect(printed).toContain('Sausage on 2026-11-27: 2 batches');
    expect(printed).toContain('a margin of 30.0 %');
    expect(printed).not.toMatch(/\bsafe\b/i);
  });

  it('prints the same for machines', async () => {
    const { printed } = await run(example, '--json');
    const report = JSON.parse(printed);
    expect(report.cures[0].answer.cureMg).toBe(10_799);
    expect(report.sausage.plan.proven).toBe(true);
    expect(report.prices.marginPpm).toBeGreaterThanOrEqual(300_000);
  });

  it('says 1 for a cure above its limit, and gives no dose', async () => {
    const { status, printed } = await run(cure({ target: '201 ppm' }));
    expect(status).toBe(1);
    expect(printed).toContain('REFUSED, do not use');
    expect(printed).toContain('no dose is given');
  });

  it('names what could be ground when the pool is short', async () => {
    const { status, printed } = await run(sausage({ trim: file.sausage.trim.slice(2) }));
    expect(status).toBe(1);
    expect(printed).toMatch(/SHORT {2}/);
    expect(printed).toContain('could be ground: Picnic of hog 19, left');
  });

  it.each([
    ['a strength without a percent sign', cure({ bag: { nitrite: '6.25' } }), 'cures[0].bag.nitrite'],
    ['an unknown place', cure({ jurisdiction: 'moon' }), 'cures[0].jurisdiction'],
    ['an unknown field of a cure', cure({ salts: '1 %' }), 'cures[0].salts'],
    [
      'an unknown calendar',
      cure({ calendar: { ...file.cures[0].calendar, rule: 'dice' } }),
      'cures[0].calendar.rule',
    ],
    [
      'a thickness of 2 m',
      cure({ calendar: { ...file.cures[0].calendar, thickness: '2000 mm' } }),
      'cures[0].calendar.thickness: must be a whole number of at least 1000 and at most 600000 (got "2000 mm")',
    ],
    [
      'a fat over 100 %',
      sausage({ trim: [{ ...file.sausage.trim[0], fat: '101 %' }] }),
      'sausage.trim[0].fat',
    ],
    [
      'a share that is a fraction',
      sausage({ trim: [{ ...file.sausage.trim[0], fat: '0.28' }] }),
      'sausage.trim[0].fat',
    ],
    [
      'a negative weight',
      sausage({ trim: [{ ...file.sausage.trim[0], weight: '-3 lb' }] }),
      'sausage.trim[0].weight',
    ],
    [
      'an unknown recipe',
      sausage({ promises: [{ ...file.sausage.promises[0], recipe: 'haggis' }] }),
      'sausage.promises[0].recipe: is no recipe of this day (got "haggis")',
    ],
    [
      'a cut of no weight',
      { flitchbook: 1, prices: { ...file.prices, cuts: [{ ...file.prices.cuts[0], weight: '0 lb' }] } },
      'prices.cuts[0].weight',
    ],
    ['a margin of 100 %', { flitchbook: 1, prices: { ...file.prices, margin: '100 %' } }, 'prices.margin:'],
    ['an unknown currency', { flitchbook: 1, currency: 'shells' }, 'currency'],
    ['an unknown part', { flitchbook: 1, lard: {} }, 'lard'],
    ['broken JSON', '{"flitchbook": 1,', 'k.json'],
  ])('refuses %s and names it', async (_, content, named) => {
    const { status, complained, printed } = await run(content);
    expect([status, printed]).toEqual([2, '']);
    expect(complained).toContain(named);
  });

  it('is content with an empty kitchen', async () => expect((await run({ flitchbook: 1 })).status).toBe(0));
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { runCommand } from './run-command.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../examples/yields/${name}`, import.meta.url), 'utf8');
const files: Readonly<Record<string, string>> = {
  'measured.json': example('measured-sides.json'),
  'audit.json': example('audit.json'),
};

async function run(args: readonly string[], more: Readonly<Record<string, string>> = {}) {
  const printed: string[] = [];
  const complained: string[] = [];
  const status = await runCommand(args, {
    readFile: (name) => {
      const text = { ...files, ...more }[name];
      if (text === undefined) throw Object.assign(new Error(`no such file: ${name}`), { code: 'ENOENT' });
      return text;
    },
    print: (text) => printed.push(text),
    complain: (text) => complained.push(text),
  });
  const text = printed.join('\n');
  // Lines are broken for people; what they say is not.
  return { status, printed: text, said: text.replace(/\s+/g, ' '), complained: complained.join('\n') };
}

const hog = ['yield', '--cold', '184 lb', '--on', 'skin,feet,leaf-fat', '--off', 'head'];
const without = (option: string): string[] => {
  const at = hog.indexOf(option);
  return hog.filter((_, index) => index !== at && index !== at + 1);
};

describe('flitchbook yield', () => {
  it('shows the way to the boxes, the parts, slices, ribs and every style', async () => {
    const { status, said, complained } = await run([...hog, '--unit', 'lb']);
    expect([status, complained]).toEqual([0, '']);
    // 22.5 of 92.1 lb: National Pork Producers Council.
    expect(said).toMatch(/Fresh ham\s+24\.4 %\s+22\.48 lb, at least 20\.\d\d lb/);
    expect(said).toMatch(/Ribs: 14 \(\d+ %\), 15 \(\d+ %\), 16/);
    expect(said).toMatch(/Mostly boneless: \d+\.\d\d lb to \d+\.\d\d lb boxed, 6\d to 6\d %/);
    expect(said).toContain('stays behind: Fat trim');
  });

  it('says what each step from the live animal loses', async () => {
    const { printed, said } = await run([
      'yield',
      '--live',
      '250 lb',
      '--tape',
      '--on',
      'feet',
      '--off',
      'skin,head,leaf-fat',
      '--unit',
      'lb',
    ]);
    expect(said).toMatch(/live\s+250\.00 lb \(23\d\.\d\d lb to 26\d\.\d\d lb\)/);
    expect(said).toMatch(
      /hanging, hot .* off: blood, guts and their contents, the skin, the head, the leaf fat/,
    );
    expect(said).toMatch(/hanging, cold .* off: water, in the cooler/);
    expect(printed).not.toMatch(/^ +Skin /m);
  });

  it('prints JSON for machines', async () => {
    const { printed } = await run([...hog, '--json', '--style', 'boneless', '--sides', '2']);
    const { takeHome, partMg, chain } = JSON.parse(printed);
    expect(takeHome).toHaveLength(1);
    expect(takeHome[0].boxed.low).toBeLessThan(takeHome[0].boxed.high);
    expect(partMg.ham.mean).toBeGreaterThan(10_000_000);
    expect(chain.at(-1).stage).toBe('side');
  });

  it('says what is believed of a farm and why, and which sides taught nothing', async () => {
    const { status, said, complained } = await run([
      ...hog,
      '--measured',
      'measured.json',
      '--farm',
      'Bramble Hollow',
    ]);
    expect(status).toBe(0);
    expect(said).toContain('What is believed of Bramble Hollow');
    expect(said).toMatch(/Belly, sheeted: this farm's run \d % heavier than published, from 9 sides; likely/);
    expect(complained).toMatch(
      /side bramble-10 teaches nothing: weighed: the side does not balance: .* 83\.\d %/,
    );
  });

  it('lends a farm it has not seen what the shop believes', async () => {
    const { said } = await run([...hog, '--measured', 'measured.json', '--farm', 'Nettle Bank']);
    expect(said).toContain('a farm that nothing was weighed of');
    expect(said).toMatch(/this shop's run/);
  });

  it.each<[string, readonly string[], RegExp]>([
    ['no weight', without('--cold'), /--cold: .*weight is needed/],
    ['dressing half said', without('--off'), /head: refused: say whether the head hangs/],
    ['184 kg as a note', [...hog.slice(0, 2), '184 kg', ...hog.slice(3)], /Were these pounds/],
    ['408 kg', [...hog.slice(0, 2), '408 kg', ...hog.slice(3)], /--cold: refused: .* none of a Hog/],
    ['hot below cold', [...hog, '--hot', '180 lb'], /--hot: refused: .*below the cold one/],
    ['a weight without a unit', [...hog.slice(0, 2), '184', ...hog.slice(3)], /--cold must be a weight/],
    ['a weight that is none', [...hog, '--hot', 'NaN lb'], /--hot must be a weight/],
    ['one part on and off', [...hog, '--off', 'skin,head'], /both name skin/],
    ['a part that no hog has', [...hog, '--off', 'head,wool'], /knows no wool/],
    [
      'an unknown species',
      [...hog, '--species', 'constructor'],
      /--species.*Known: hog, lamb, goat, beef-fore/,
    ],
    ['an unknown style', [...hog, '--style', 'fancy'], /--style.*Known: bone-in/],
    ['three sides', [...hog, '--sides', '3'], /--sides/],
    ['12 ribs', [...hog, '--ribs', '12'], /--ribs: refused: .*13 to 17/],
    ['a confidence of 1', [...hog, '--confidence', '1'], /--confidence/],
    ['fat of a metre', [...hog, '--fat', '999'], /--fat: refused: .*between 4 and 80/],
    ['an option it does not know', [...hog, '--weight', '3'], /weight/],
    ['a file that is not there', [...hog, '--measured', 'gone.json'], /gone/],
  ])('refuses or questions %s, and names it', async (what, args, named) => {
    const { status, complained } = await run(args);
    expect(complained).toMatch(named);
    expect(status).toBe(what.endsWith('note') ? 0 : 2);
  });

  const sides = JSON.parse(files['measured.json'] ?? '');
  const [first] = sides.sides;
  const withSide = (changes: object) => JSON.stringify({ ...sides, sides: [{ ...first, ...changes }] });
  it.each<[string, string, RegExp]>([
    ['another species', JSON.stringify({ ...sides, species: 'goat' }), /species: .* goat/],
    ['a side without a weight', withSide({ side: undefined }), /sides\[0\]\.side: Is missing/],
    ['a weight that is no text', withSide({ weighed: { ham: 12 } }), /sides\[0\]\.weighed\.ham/],
    ['an unknown field', withSide({ feet: 'no' }), /sides\[0\]\.feet/],
    ['broken JSON', '{"measured": 1,', /line 1/],
  ])('refuses a file with %s', async (_, file, named) => {
    const { status, complained } = await run([...hog, '--measured', 'bad.json'], { 'bad.json': file });
    expect(complained).toMatch(named);
    expect(status).toBe(2);
  });
});

describe('flitchbook audit', () => {
  it('says of the example that it is 17.4 lb over: 108.8 % of carcass and oats', async () => {
    const { status, said } = await run(['audit', 'audit.json', '--unit', 'lb']);
    expect(status).toBe(1);
    expect(said).toContain('216.7 lb of 199.25 lb, 108.8 %: 17.45 lb too much');
    expect(said).toMatch(/in, no carcass\s+11\.25 lb/);
    expect(said).toContain('It does not balance.');
  });

  const audited = JSON.parse(files['audit.json'] ?? '');
  it('says 0 of a list that balances, as JSON too', async () => {
    const file = JSON.stringify({
      ...audited,
      out: [...audited.out.slice(0, 1), { name: 'Lard', weight: '22.55 lb' }],
    });
    expect((await run(['audit', 'good.json'], { 'good.json': file })).status).toBe(0);
    const { printed } = await run(['audit', 'good.json', '--json'], { 'good.json': file });
    expect(JSON.parse(printed)).toMatchObject({ balances: true, findings: [] });
  });

  it.each<[string, string, RegExp]>([
    ['nothing that goes in', JSON.stringify({ ...audited, in: [] }), /in: Must list at least 1/],
    [
      'a weight without a unit',
      JSON.stringify({ ...audited, out: [{ name: 'Ham', weight: '5' }] }),
      /out\[0\]\.weight/,
    ],
    [
      'a percent that is none',
      JSON.stringify({ ...audited, out: [{ name: 'Ham', weight: '5 lb', percent: 'half' }] }),
      /out\[0\]\.percent/,
    ],
    [
      'a part of a part without a name',
      JSON.stringify({ ...audited, out: [{ name: 'Ham', weight: '5 lb', parts: [{ weight: '5 lb' }] }] }),
      /out\[0\]\.parts\[0\]\.name/,
    ],
    [
      'a weight of nothing going in',
      JSON.stringify({ ...audited, in: [{ name: 'Carcass', weight: '0 lb' }] }),
      /something must go in/,
    ],
    ['no JSON', 'ham 5 lb', /line 1/],
  ])('refuses a list with %s', async (_, file, named) => {
    const { status, complained } = await run(['audit', 'bad.json'], { 'bad.json': file });
    expect(complained).toMatch(named);
    expect(status).toBe(2);
  });

  it.each([[['audit']], [['audit', 'a.json', 'b.json']], [['audit', 'audit.json', '--unit', 'stone']]])(
    'refuses %j',
    async (args) => {
      const { status, complained } = await run(args);
      expect(status).toBe(2);
      expect(complained).not.toBe('');
    },
  );
});

import { type AuditSheet, auditSheet, splitExactly } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import {
  bulletinPercent,
  entries,
  metaSummary,
  nppc,
  nppcPrimals,
  oklahomaCuts,
  sheet,
  washingtonHalf,
  washingtonMeat,
} from './published-sheets.ts';

const pound = 453_592.37;
const pounds = (mg: number): number => mg / pound;
const kindsOf = (audited: AuditSheet): string[] =>
  auditSheet(audited).findings.map(({ kind, at }) => `${kind} ${at}`.trim());

describe('published lists that balance', () => {
  it('National Pork Producers Council: primals equal their lines, 0.2 lb over 184, and 22 % printed for 21.3', () => {
    const { findings, lines, outMg } = auditSheet(nppc);
    expect(pounds(outMg)).toBeCloseTo(184.2, 5);
    expect(kindsOf(nppc)).toEqual(['rounding', 'percent Miscellaneous']);
    expect(pounds(findings[0]!.byMg)).toBeCloseTo(0.2, 5);
    expect(lines.at(-1)!.percentOfIn).toBeCloseTo(21.3, 1);
    const trim = Object.values(nppcPrimals).flatMap(({ parts }) =>
      parts.filter(([name]) => name === 'Trimmings'),
    );
    expect(trim.reduce((sum, [, text]) => sum + Number(text), 0)).toBeCloseTo(18.2, 6);
  });

  it('National Pork Producers Council, loin by the boneless route: 16.9 lb a side, halved line by line', () => {
    const { total, parts } = nppcPrimals['loin']!;
    const half = (text: string): string => (Number(text) / 2).toFixed(2);
    const audited = sheet(
      'lb',
      half(total[1]),
      parts.map(([name, text]) => [name, half(text)] as const),
    );
    expect(auditSheet(audited)).toMatchObject({ balances: true, findings: [] });
    expect(audited.outs.map(({ reading }) => reading.text)).toEqual([
      '1.60',
      '5.35',
      '3.80',
      '2.85',
      '0.80',
      '0.80',
      '1.70',
    ]);
  });

  it('Oklahoma: 144 lb and 36 lb of loss are 180 exactly; 20 % is lost, 57.6 % of live weight boxed', () => {
    const audited = auditSheet(sheet('lb', '180', [...oklahomaCuts, ['Loss', '36', '20']]));
    expect(audited).toMatchObject({ balances: true, findings: [] });
    const live = auditSheet(sheet('lb', '250', oklahomaCuts));
    expect(pounds(live.outMg)).toBeCloseTo(144, 5);
    expect(live.outPercent).toBeCloseTo(57.6, 6);
  });

  it('Washington: 52 lb of meat, 15 of lard and 8 of waste in a half of 75 lb, every printed percent right', () => {
    expect(auditSheet(washingtonHalf)).toMatchObject({ balances: true, findings: [] });
    const meat = auditSheet(sheet('lb', '75', washingtonMeat));
    expect(pounds(meat.outMg)).toBeCloseTo(52, 5);
    expect(meat.outPercent).toBeCloseTo(69, 0);
  });

  it('USDA bulletin: its percentages on a side of 92 lb', () => {
    const split = splitExactly(Math.round(92 * pound), Object.values(bulletinPercent));
    const expected = [17.48, 16.56, 16.56, 15.64, 15.64, 4.6, 2.76, 2.76];
    split.forEach((mg, turn) => {
      expect(pounds(mg)).toBeCloseTo(expected[turn]!, 2);
    });
    expect(split.reduce((sum, mg) => sum + mg, 0)).toBe(Math.round(92 * pound));
  });

  it('2017 meta-summary: lean and carcass cutting yield from its weights, within 0.3 points of those it prints', () => {
    const lean = auditSheet(sheet('kg', '44.49', metaSummary)).outPercent;
    const carcass = auditSheet(
      sheet('kg', '44.49', [...metaSummary, ['Natural-fall belly', '7.38']]),
    ).outPercent;
    expect([lean.toFixed(2), carcass.toFixed(2)]).toEqual(['71.14', '87.73']);
    expect(Math.abs(lean - 71.15)).toBeLessThan(0.3);
    expect(Math.abs(carcass - 87.51)).toBeLessThan(0.3);
  });

  it('goat kid (Cornell, 2009): 31.0 lb of 39.5 are 78.5 %, printed 78.4; of 77 lb live 40.3 %', () => {
    const cuts = [
      ['Shoulder and neck roasts', '6.0'],
      ['Arm steaks', '2.6'],
      ['Blade steaks', '2.2'],
      ['Shanks and breasts', '2.2'],
      ['Sirloins', '2.0'],
      ['Leg roasts', '7.4'],
      ['Ribs and flank', '4.0'],
      ['Rib and loin chops', '4.6'],
    ] as const;
    const kid = auditSheet(sheet('lb', '39.5', cuts));
    expect(pounds(kid.outMg)).toBeCloseTo(31, 5);
    expect(kid.outPercent).toBeCloseTo(78.5, 1);
    expect(auditSheet(sheet('lb', '77', cuts)).outPercent).toBeCloseTo(40.3, 1);
    expect(kid.findings[0]).toMatchObject({ kind: 'short' });
  });

  it('lamb (National Live Stock and Meat Board for the US Army): 100 lb a 100 lb carcass', () => {
    const lamb = sheet('lb', '100', [
      ['Legs with sirloin', '32', '32'],
      ['Shoulders, 5 ribs', '23', '23'],
      ['Breasts, shanks, neck', '21', '21'],
      ['Loin, untrimmed', '13', '13'],
      ['Rack, 8 ribs', '11', '11'],
    ]);
    expect(auditSheet(lamb)).toMatchObject({ balances: true, findings: [] });
  });

  it('beef quarters (Washington): 97 of 140 lb and 89 of 131 lb', () => {
    const fore = auditSheet(
      sheet('lb', '140', [
        ['Rib', '12'],
        ['Stew', '6'],
        ['Short ribs', '4'],
        ['Hamburger', '38'],
        ['Chuck', '37'],
        ['Waste', '43'],
      ]),
    );
    const hind = auditSheet(
      sheet('lb', '131', [
        ['T-bone, club', '18'],
        ['Sirloin', '16'],
        ['Round', '29'],
        ['Rump', '8'],
        ['Flank', '2'],
        ['Ground', '16'],
        ['Waste', '42'],
      ]),
    );
    expect([fore.balances, hind.balances]).toEqual([true, true]);
    expect(97 + 43).toBe(140);
    expect(89 + 42).toBe(131);
  });
});

describe('published lists that do not balance', () => {
  it('"A hog is not all chops": 145 lb saleable are made of 163 lb', () => {
    const lines = [44, 36, 12, 13, 28, 7, 11, 12].map((lb, turn) => [`Line ${turn + 1}`, `${lb}`] as const);
    const [saleable] = entries('lb', [['Saleable', '145']]);
    const { ins, outs } = sheet('lb', '180', [['Waste', '35']]);
    const audited = auditSheet({ ins, outs: [{ ...saleable!, parts: entries('lb', lines) }, ...outs] });
    expect(audited.balances).toBe(false);
    const found = audited.findings.find(({ kind }) => kind === 'parts')!;
    expect(found.at).toBe('Saleable');
    expect(found.says).toContain('163 lb of 145 lb');
    expect(pounds(found.byMg)).toBeCloseTo(18, 5);
  });

  it('a retail chart of a 77.5 lb half: its lines are 72.7 lb, its total of 88 more than the half', () => {
    const lines = [
      ['Loin', '16.5'],
      ['Butt', '8.8'],
      ['Picnic', '7.7'],
      ['Belly', '10.6'],
      ['Ribs', '3.3'],
      ['Leg', '22'],
      ['Hock', '2'],
      ['Riblets, neck', '1.8'],
    ] as const;
    const listed = auditSheet(sheet('lb', '77.5', lines));
    expect(pounds(listed.outMg)).toBeCloseTo(72.7, 5);
    expect(listed.outPercent).toBeCloseTo(93.8, 1);
    expect(listed.findings[0]).toMatchObject({ kind: 'short' });
    const stated = auditSheet(sheet('lb', '77.5', [['Total stated', '88']]));
    expect(stated.findings[0]).toMatchObject({ kind: 'over' });
    expect(stated.findings[0]!.says).toContain('113.5 %');
  });

  it('a 4-H page: 29 lb printed as 6 % of 149 lb', () => {
    expect(
      kindsOf(
        sheet('lb', '149', [
          ['All but the last line', '140', '94'],
          ['Miscellaneous', '29', '6'],
        ]),
      ),
    ).toEqual(['over', 'percent Miscellaneous']);
  });

  it('a small-animal handbook: 23 lb of ham printed as 23 % of 170 lb, which would be 39', () => {
    const { findings } = auditSheet(
      sheet('lb', '170', [
        ['Ham', '23', '23'],
        ['The rest', '147'],
      ]),
    );
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ kind: 'percent', at: 'Ham' });
    expect(findings[0]!.says).toContain('39.1 lb');
  });

  it("a grower's sheet: 176.72 lb boxed and 40 lb of lard from 188 lb hanging: 216.72 lb, 115.3 %", () => {
    const { findings, balances } = auditSheet(
      sheet('lb', '188', [
        ['Boxed', '176.72'],
        ['Lard', '40'],
      ]),
    );
    expect(balances).toBe(false);
    expect(findings[0]).toMatchObject({ kind: 'over' });
    expect(findings[0]!.says).toContain('216.72 lb of 188 lb, 115.3 %: 28.72 lb too much');
  });

  it('lamb slides: 36, 17, 13, 8 and a leg of 34 % are 108 % of a carcass', () => {
    const shares = [
      ['Shoulder', '36'],
      ['Breast', '17'],
      ['Loin', '13'],
      ['Rack', '8'],
      ['Leg', '34'],
    ] as const;
    expect(auditSheet(sheet('lb', '100', shares)).findings[0]!.says).toContain('108.0 %');
  });
});

describe('what is no carcass', () => {
  const withRusk = (lard: string): AuditSheet => ({
    ins: [
      { name: 'Carcass', reading: { text: '188', unit: 'lb' }, from: 'carcass' },
      { name: 'Oats and rusk', reading: { text: '11.25', unit: 'lb' }, from: 'other' },
    ],
    outs: entries('lb', [
      ['Boxed', '176.72'],
      ['Lard', lard],
    ]),
  });

  it('stands in a line of its own and counts as going in', () => {
    expect(auditSheet(withRusk('22.53'))).toMatchObject({ balances: true, findings: [] });
    expect(pounds(auditSheet(withRusk('22.53')).otherMg)).toBeCloseTo(11.25, 5);
  });

  it('does not explain the 40 lb of lard: 108.8 % of all that went in', () => {
    expect(auditSheet(withRusk('40')).findings[0]!.says).toContain('108.8 %');
  });
});

import { beefFore, checkSpecies, goat, lamb, type Primal, type Species } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';

const pound = 453.59237;

/** What a side comes to, in pounds: items and stretches by id, bulk by "bulk ID". */
function cutOut(
  species: Species,
  sidePounds: number,
  ways: Readonly<Record<string, string>> = {},
  manners: Readonly<Record<string, string>> = {},
): Map<string, number> {
  const found = new Map<string, number>();
  const add = (key: string, amount: number): void => void found.set(key, (found.get(key) ?? 0) + amount);
  const visit = (partId: string, pounds: number): void => {
    add(`part ${partId}`, pounds);
    const part = species.parts[partId];
    if (part?.kind === 'bar') {
      const sum = part.zones.reduce((running, { mass }) => running + mass.parts, 0);
      for (const zone of part.zones) {
        const manner = zone.manners.find(({ id }) => id === manners[zone.id]) ?? zone.manners[0]!;
        const shares = [manner.keeps, ...manner.releases];
        const all = shares.reduce((running, { parts }) => running + parts, 0);
        const each = (pounds * zone.mass.parts) / sum / all;
        add(manner.stock, each * manner.keeps.parts);
        for (const release of manner.releases)
          add(release.to === 'bulk' ? `bulk ${release.id}` : release.id, each * release.parts);
      }
      return;
    }
    const primal = part as Primal;
    const operation = primal.operations.find(({ id }) => id === ways[partId]) ?? primal.operations[0]!;
    const all = operation.outputs.reduce((running, { parts }) => running + parts, 0);
    for (const { to, id, parts } of operation.outputs) {
      if (to === 'part') visit(id, (pounds * parts) / all);
      else add(to === 'bulk' ? `bulk ${id}` : id, (pounds * parts) / all);
    }
  };
  visit(species.sideRoot, sidePounds);
  return found;
}

const sum = (out: ReadonlyMap<string, number>, ...ids: readonly string[]): number =>
  ids.reduce((running, id) => running + (out.get(id) ?? Number.NaN), 0);

describe('species data', () => {
  it.each([lamb, goat, beefFore])('has no loose end and a source for every figure: $name', (species) => {
    expect(checkSpecies(species)).toEqual([]);
  });
});

// Handbook on cutting lamb, prepared for the US Army: cutting test of the National Live Stock and Meat Board, per 100 lb.
describe('lamb, cutting test for the US Army, 100 lb carcass', () => {
  const eight = cutOut(lamb, 50, { side: 'rack-of-8' });

  it('parts into legs 32, shoulders 23, breasts with shanks and necks 21, loin 13, rack 11: 100', () => {
    const seven = cutOut(lamb, 50);
    expect(2 * sum(seven, 'part leg')).toBeCloseTo(32, 6);
    expect(2 * sum(seven, 'part shoulder')).toBeCloseTo(23, 6);
    expect(2 * sum(seven, 'part breast', 'part neck', 'fore-shank')).toBeCloseTo(21, 6);
    expect(2 * sum(seven, 'part loin', 'part rack')).toBeCloseTo(13 + 11, 6);
    expect(2 * sum(eight, 'part rack-of-8')).toBeCloseTo(11, 6);
  });

  it('keeps of 100 boneless: loin 54, rack 60, shoulder 69', () => {
    const boned = cutOut(
      lamb,
      50,
      { side: 'rack-of-8', 'shoulder-short': 'shoulder-rolled' },
      { loin: 'boned', rack: 'boned' },
    );
    expect(sum(boned, 'loin-boned', 'fillet') / sum(boned, 'part loin-bar')).toBeCloseTo(0.54, 6);
    expect(sum(boned, 'rack-eye') / sum(boned, 'part rack-of-8')).toBeCloseTo(0.6, 6);
    expect(sum(boned, 'shoulder-rolled') / sum(boned, 'part shoulder-short')).toBeCloseTo(0.69, 6);
  });
});

// Cornell small ruminant extension, market kid retail cuts (2009): Boer kid, 77 lb live, 39.5 lb carcass.
describe('goat, Boer kid of 39.5 lb', () => {
  const kid = cutOut(goat, 39.5 / 2);

  it.each([
    ['shoulder-neck-roast', 6],
    ['arm', 2.6],
    ['blade', 2.2],
    ['shanks-and-breast', 2.2],
    ['sirloin', 2],
    ['leg-roast', 7.4],
    ['ribs-and-flank', 4],
  ])('gives %s %d lb', (id, pounds) => {
    expect(2 * sum(kid, id)).toBeCloseTo(pounds, 6);
  });

  it('gives rib and loin chops 4.6 lb, and 31.0 lb of cuts in all: 78.5 % of the carcass, printed 78.4', () => {
    expect(2 * sum(kid, 'rib-bone-in', 'loin-bone-in')).toBeCloseTo(4.6, 6);
    const cuts = 2 * [...kid].reduce((all, [id, pounds]) => all + (/^(bulk|part) /.test(id) ? 0 : pounds), 0);
    expect(cuts).toBeCloseTo(31, 6);
    expect((100 * cuts) / 39.5).toBeCloseTo(78.5, 1);
  });
});

// Washington State Department of Agriculture, processing percentage charts: front quarter of 140 lb.
describe('beef, front quarter of 140 lb', () => {
  const quarter = cutOut(beefFore, 140, {}, { shank: 'boned' });

  it('gives rib 12, stew 6, short ribs 4, hamburger 38, chuck 37: 97 of meat, 69 %, and 43 of waste', () => {
    const short = quarter.get('short-ribs-english') ?? 0;
    const meat = [
      sum(quarter, 'rib-bone-in'),
      sum(quarter, 'shank-stew'),
      short,
      sum(quarter, 'bulk trim'),
      sum(quarter, 'chuck-blade', 'chuck-arm'),
    ];
    expect(meat.map((pounds) => Math.round(pounds * 10) / 10)).toEqual([12, 6, 4, 38, 37]);
    const all = meat.reduce((running, pounds) => running + pounds, 0);
    expect(all).toBeCloseTo(97, 6);
    expect(Math.round((100 * all) / 140)).toBe(69);
    expect(sum(quarter, 'bulk bone', 'bulk fat-trim', 'bulk loss')).toBeCloseTo(43, 6);
  });

  it('has one hanger a beast, about 1.5 lb (news interview with a butcher)', () => {
    const [hanger] = beefFore.singles;
    expect((hanger?.meanGrams ?? 0) / pound).toBeCloseTo(1.5, 1);
  });
});

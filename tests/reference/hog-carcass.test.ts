import {
  checkSpecies,
  countPieces,
  footprint,
  hog,
  type Manner,
  type Operation,
  type Primal,
  type SideFacts,
  type SideShape,
  shapeSide,
  shareOf,
  type ZoneShape,
} from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';

const gramsPerPound = 453.59237;
/** One side of the National Pork Producers Council's carcass: half of the 184.2 lb that its lines add up to. */
const sidePounds = 92.1;

function sideOf(carcassGrams: number, massGrams: number, ribs = 15): SideFacts {
  return {
    sideId: 'side',
    animalId: 'hog',
    hand: 'left',
    massMg: Math.round(massGrams * 1000),
    carcassGrams,
    ribs,
    facts: ['skin-on', 'head', 'feet', 'organs'],
    lostParts: [],
  };
}

const published = shapeSide(hog, sideOf(184 * gramsPerPound, sidePounds * gramsPerPound));

const pounds = (massMg: number): number => massMg / 1000 / gramsPerPound;
const partPounds = (partId: string, shape: SideShape = published): number =>
  pounds(shape.partMassMg.get(partId) ?? 0);

function operationOf(partId: string, operationId: string): Operation {
  const operation = (hog.parts[partId] as Primal).operations.find(({ id }) => id === operationId);
  if (!operation) throw new Error(`no ${operationId} of ${partId}`);
  return operation;
}

function outputPounds(partId: string, operationId: string, outputId: string): number {
  const { outputs } = operationOf(partId, operationId);
  const at = outputs.findIndex(({ id }) => id === outputId);
  return partPounds(partId) * shareOf(outputs, at);
}

const mannerOf = (zone: ZoneShape, mannerId: string): Manner =>
  zone.zone.manners.find(({ id }) => id === mannerId) as Manner;

/** Pounds of a zone in a manner: what it keeps (-1) or one of its releases. */
function mannerPounds(barId: string, zoneId: string, mannerId: string, id: string | null): number {
  const zone = published.bars
    .get(barId)
    ?.zones.find((candidate) => candidate.zone.id === zoneId) as ZoneShape;
  const manner = mannerOf(zone, mannerId);
  const shares = [manner.keeps, ...manner.releases];
  const at = id === null ? 0 : 1 + manner.releases.findIndex((release) => release.id === id);
  return at === 0 && id !== null ? 0 : pounds(zone.massMg * shareOf(shares, at));
}

const zonesOfLoin = ['blade', 'rib', 'lumbar', 'sirloin'] as const;
/** By the boneless route the blade end goes to country-style ribs. */
const boneless = { blade: 'country', rib: 'boned', lumbar: 'boned', sirloin: 'boned' } as const;

describe('National Pork Producers Council, hog carcass breakdown of 184 lb (University of Kentucky reproduction)', () => {
  it('has data without a dangling name, and a source for every figure', () => {
    expect(checkSpecies(hog)).toEqual([]);
  });

  it('gives the primals of one side within 0.05 lb', () => {
    expect(partPounds('ham')).toBeCloseTo(45 / 2, 1);
    expect(partPounds('belly-ribbed')).toBeCloseTo(34.9 / 2, 1);
    expect(partPounds('loin-in')).toBeCloseTo(33.8 / 2, 1);
    expect(partPounds('picnic')).toBeCloseTo(16.6 / 2, 1);
    expect(partPounds('butt')).toBeCloseTo(14.7 / 2, 1);
    expect(partPounds('loin-in') + partPounds('belly-ribbed')).toBeCloseTo(34.35, 1);
  });

  it('adds up to 184.2 lb, 0.2 over the weight it is stated for, as published', () => {
    const lines = [45.0, 34.9, 33.8, 16.6, 14.7, 39.2];
    expect(lines.reduce((sum, line) => sum + line, 0)).toBeCloseTo(184.2, 6);
    expect(184.2 - 184).toBeCloseTo(0.2, 6);
    expect(sidePounds * 2).toBeCloseTo(184.2, 6);
  });

  it('gives the loin by the boneless route, per side', () => {
    const kept = (zone: (typeof zonesOfLoin)[number]): number =>
      mannerPounds('loin-out', zone, boneless[zone], null);
    const released = (id: string): number =>
      zonesOfLoin.reduce((sum, zone) => sum + mannerPounds('loin-out', zone, boneless[zone], id), 0);
    expect(kept('rib') + kept('lumbar')).toBeCloseTo(5.35, 1);
    expect(kept('blade')).toBeCloseTo(3.8, 1);
    expect(kept('sirloin')).toBeCloseTo(2.85, 1);
    expect(released('back-ribs')).toBeCloseTo(1.6, 1);
    expect(outputPounds('middle-open', 'pull-tenderloin', 'tenderloin')).toBeCloseTo(0.8, 1);
    expect(released('trim')).toBeCloseTo(0.8, 1);
    expect(released('fat-trim') + released('bone')).toBeCloseTo(1.7, 1);
  });

  it('leaves 18.2 lb of trim a carcass by the published way of cutting', () => {
    const loin = zonesOfLoin.reduce(
      (sum, zone) => sum + mannerPounds('loin-out', zone, boneless[zone], 'trim'),
      0,
    );
    const trim =
      loin +
      outputPounds('belly-ribbed', 'sheet-ribs', 'trim') +
      outputPounds('butt', 'butt-across', 'trim') +
      outputPounds('ham', 'ham-seamed', 'trim');
    expect(2 * trim).toBeCloseTo(18.2, 0);
    expect(Math.abs(2 * trim - 18.2)).toBeLessThan(0.1);
  });
});

describe('Journal of Animal Science 94:4903 (2016): 432 mm of boneless loin, 17 chops of 25.4 mm', () => {
  const chop = footprint(
    { tool: 'knife', pitchUm: 0, densityMgPerUm: 1 },
    { by: 'thickness', um: 25_400 },
    { saw: true, kerfUm: 1000 },
  );

  it('counts 17 chops in 432 mm', () => {
    expect(countPieces(432_000, chop?.takesUm ?? 0)).toBe(17);
  });

  it.each([14, 15, 16])(
    'gives the same count with %i ribs, within one of the published 17 at the published 103.6 kg',
    (ribs) => {
      const shape = shapeSide(hog, sideOf(103_600, 50_000, ribs));
      const zones = (shape.bars.get('loin-out')?.zones ?? []).filter(
        ({ zone }) => zone.id === 'rib' || zone.id === 'lumbar',
      );
      const usableUm = zones.reduce(
        (sum, zone) => sum + (zone.lengthUm * mannerOf(zone, 'boned').lengthPpm) / 1_000_000,
        0,
      );
      expect(countPieces(usableUm, chop?.takesUm ?? 0)).toBeGreaterThanOrEqual(16);
      expect(countPieces(usableUm, chop?.takesUm ?? 0)).toBeLessThanOrEqual(18);
      const at15 = shapeSide(hog, sideOf(103_600, 50_000, 15)).bars.get('loin-out')?.lengthUm ?? 0;
      expect(Math.abs((shape.bars.get('loin-out')?.lengthUm ?? 0) - at15)).toBeLessThan(1000);
    },
  );
});

describe('Journal of Animal Science (January 1996), 180 loins', () => {
  it('keeps 92.8 to 95.3 % of a loin cut bone-in', () => {
    const kept = zonesOfLoin.reduce((sum, zone) => sum + mannerPounds('loin-in', zone, 'bone-in', null), 0);
    expect((100 * kept) / partPounds('loin-in')).toBeGreaterThanOrEqual(92.8);
    expect((100 * kept) / partPounds('loin-in')).toBeLessThanOrEqual(95.3);
  });

  it('keeps 71.1 to 77.9 % of a loin boned from end to end, its back ribs and tenderloin sold', () => {
    const kept = zonesOfLoin.reduce((sum, zone) => sum + mannerPounds('loin-out', zone, 'boned', null), 0);
    const sold =
      kept +
      mannerPounds('loin-out', 'rib', 'boned', 'back-ribs') +
      outputPounds('middle-open', 'pull-tenderloin', 'tenderloin');
    expect((100 * sold) / partPounds('loin-in')).toBeGreaterThanOrEqual(71.1);
    expect((100 * sold) / partPounds('loin-in')).toBeLessThanOrEqual(77.9);
  });
});

// Institutional Meat Purchase Specifications, Fresh Pork Series 400: numbers seen in reproductions and in catalogues that
// quote them.
it('names no item number that was not seen in print, and none twice', () => {
  const seen =
    '401 402D 403 404 405 405A 406 406A 408 409 409A 410 411 412 412C 413 413A 413B 414 415 415A 416 416A 423';
  const named = [...Object.values(hog.items), ...Object.values(hog.stocks)].flatMap(({ imps }) => imps ?? []);
  expect(named.filter((number) => !seen.split(' ').includes(number))).toEqual([]);
  expect(new Set(named).size).toBe(named.length);
  expect(named.length).toBeGreaterThanOrEqual(12);
});

describe('the rib end of the loin (common practice, no source)', () => {
  it('has nine ribs in the rib end of a 15-rib loin cut after rib 2, and lets them part anywhere between two', () => {
    const rib = published.bars.get('loin-out')?.zones.find(({ zone }) => zone.id === 'rib') as ZoneShape;
    expect(rib.stations).toBe(9);
    const cuts = rib.ways.filter((way) => way.length === 2).map((way) => way[0]?.toStation);
    expect(new Set(cuts)).toEqual(new Set([1, 2, 3, 4, 5, 6, 7, 8]));
  });
});

import { describe, expect, it } from 'vitest';
import { cutList } from './cut-list.ts';
import { fillReport } from './fill-report.ts';
import { busyDay, busyPlan } from './test-days/busy-day.ts';
import { layPlan } from './test-days/lay-plan.ts';
import { animal, day, line, share } from './test-days/test-day.ts';

const sideOf = (sideId: string) => {
  const side = cutList(busyDay, busyPlan)
    .animals.flatMap(({ sides }) => sides)
    .find((candidate) => candidate.sideId === sideId);
  if (!side) throw new Error(`no side ${sideId}`);
  return side;
};

describe('the cut list', () => {
  it('goes in bench order: leaf fat, tenderloin, line, ribs, then portions; shoulder and leg after the middle (common practice, no source)', () => {
    const parts = sideOf('a-right').steps.map(({ part }) => part);
    expect(parts).toEqual([
      ...[
        'side',
        'middle',
        'middle-open',
        'middle-fillet-in',
        'belly-ribbed',
        'loin-in',
        'loin-in',
        'loin-in',
        'loin-in',
        'belly-slab',
      ],
      ...['shoulder', 'upper-shoulder', 'lower-shoulder', 'butt', 'picnic', 'leg', 'ham', 'ham-centre'],
      ...['trim', 'fat-trim', 'leaf-fat', 'back-fat', 'bone', 'skin'],
    ]);
    expect(sideOf('a-right').steps.map(({ order }) => order)).toEqual(parts.map((_, index) => index + 1));
  });

  it('names every piece of a plan once, with its owner', () => {
    const listed = cutList(busyDay, busyPlan).animals.flatMap(({ sides, singles }) => [
      ...sides.flatMap(({ steps }) =>
        steps.flatMap(({ pieces }) => pieces.map(({ pieceId, owner }) => `${pieceId} ${owner}`)),
      ),
      ...(singles?.pieces.map(({ pieceId, owner }) => `${pieceId} ${owner}`) ?? []),
    ]);
    const planned = [
      ...busyPlan.sides.flatMap(({ items, bars }) => [
        ...items,
        ...bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces)),
      ]),
      ...busyPlan.singles,
    ].map(
      ({ pieceId, owner }) =>
        `${pieceId} ${owner === null ? null : `Customer ${'lineId' in owner ? owner.lineId : owner.shareId}`}`,
    );
    expect(listed.toSorted()).toEqual(planned.toSorted());
    expect(new Set(listed).size).toBe(listed.length);
  });

  it('says where a run lies, what is cut from it and what stays', () => {
    const rib = sideOf('a-left').steps[6];
    expect(rib).toMatchObject({
      part: 'loin-out',
      action: 'Rib: Bone-in rib chops and racks',
      to: 'Customer rack, Customer chops and the counter',
    });
    expect(rib?.detail).toBe(
      'From ~5 3/8 in (135 mm) to ~17 1/4 in (438.8 mm) from the head end, 9 bones. 1 × Rack of pork, 3 ribs, for Customer rack. ' +
        '4 × Bone-in rib chop, 1 in (25.4 mm), for Customer chops. Leave ~3 5/8 in (92.9 mm) whole, about 0.77 kg (1.69 lb).',
    );
  });

  it('puts back ribs with the run that they are boned from, before its portions', () => {
    const boned = sideOf('a-right').steps.find(({ pieces }) =>
      pieces.some(({ name }) => name === 'Back ribs'),
    );
    expect(boned?.pieces.map(({ name }) => name)).toEqual(['Back ribs', 'Boneless loin roast']);
    expect(boned?.detail).toContain('~10 in (253.8 mm) once it is boned');
  });

  it('keeps leaf fat apart, and a share’s trim with the share', () => {
    const leafFat = sideOf('b-left').steps.find(({ part }) => part === 'leaf-fat');
    expect(leafFat?.detail).toMatch(/apart from the hard back fat/);
    expect(leafFat?.to).toBe('Customer half');
    expect(sideOf('b-left').sharedBy).toBe('Customer half');
    expect(sideOf('b-right').steps.at(-1)?.to).toBe('the pool of the day');
  });

  it('sets lost parts aside', () => {
    const lost = day({ animals: [animal({ animalId: 'a', lostParts: ['leg'] })] });
    const steps = cutList(lost, layPlan(lost)).animals[0]?.sides[0]?.steps ?? [];
    expect(steps.filter(({ action }) => action.startsWith('Set aside')).map(({ action }) => action)).toEqual([
      'Set aside: Leg',
    ]);
    expect(steps.some(({ part }) => part === 'ham')).toBe(false);
  });

  it('follows the tree for a species with no bench order of its own, in the shop’s units', () => {
    const of = day({ animals: [animal({ animalId: 'p', speciesId: 'plank' })] });
    const [side] = cutList(of, layPlan(of), { lengthUnit: 'mm', weightUnit: 'kg' }).animals[0]?.sides ?? [];
    expect(side?.steps.map(({ part, detail }) => [part, detail])).toEqual([
      ['side', 'Open it.'],
      ['log', 'From 0 mm to 80 mm from the head end, 8 bones. Leave 80 mm whole, about 0.08 kg.'],
      ['log', 'From 80 mm to 100 mm from the head end, 2 bones. Leave 20 mm whole, about 0.02 kg.'],
      ['scrap', 'About 0.01 kg.'],
    ]);
  });
});

describe('the fill report', () => {
  const report = fillReport(busyDay, busyPlan);
  const lineOf = (lineId: string) => report.lines.find((candidate) => candidate.lineId === lineId);

  it('says who is filled and who is short, and why', () => {
    expect(lineOf('chops')).toMatchObject({ asked: 4, filled: 4, short: 0, says: '4 of 4.' });
    expect(lineOf('fillets')).toMatchObject({
      unit: 'pieces',
      asked: 3,
      filled: 2,
      short: 1,
      says: '2 of 3. 1 short. The day has fewer.',
    });
    expect(lineOf('belly')).toMatchObject({
      what: 'Belly roast, ribs in, 2 ribs',
      substituted: 1,
      says: '1 of 1. 1 of them as an accepted substitute.',
    });
    expect(lineOf('mince')).toMatchObject({
      unit: 'grams',
      filled: 4000,
      says: '4.00 kg (8.82 lb) of 4.00 kg (8.82 lb).',
    });
    expect(report.short).toEqual({ promised: 1, wished: 0 });
  });

  it('says which sides a share gets', () => {
    expect(report.shares.map(({ says }) => says)).toEqual(['Gets the left side of Animal b.']);
    const of = day({
      animals: [animal({ animalId: 'a' })],
      shares: [share({ shareId: 's', size: 'whole', rank: 'wished' })],
    });
    expect(fillReport(of, layPlan(of))).toMatchObject({
      shares: [{ says: 'Gets nothing. The day has fewer.' }],
      short: { promised: 0, wished: 1 },
    });
  });

  it('adds up bulk by kind, and takes from the pool what lines took', () => {
    const trim = report.bulk.find(({ bulk }) => bulk === 'trim');
    const pooledMg = busyPlan.sides
      .filter(({ shareId }) => shareId === null)
      .reduce((sum, { bulkMg }) => sum + (bulkMg['trim'] ?? 0), 0);
    const sharedMg = busyPlan.sides.find(({ shareId }) => shareId === 'half')?.bulkMg['trim'] ?? 0;
    expect(trim).toEqual({
      speciesId: 'hog',
      bulk: 'trim',
      name: 'Lean trim',
      pooledGrams: Math.floor(pooledMg / 1000),
      takenGrams: 4000,
      freeGrams: Math.floor(pooledMg / 1000) - 4000,
      sharedGrams: Math.floor(sharedMg / 1000),
    });
    expect(report.bulk.map(({ bulk }) => bulk)).toContain('leaf-fat');
  });

  it('counts a porchetta with the tenderloin rolled in as the porchetta that was ordered', () => {
    const of = day({
      animals: [animal({ animalId: 'a' })],
      lines: [line({ lineId: 'l', cut: 'porchetta', portion: { by: 'whole' } })],
    });
    const plan = layPlan(of, {
      sides: {
        'a-left': {
          operations: { 'middle-open': 'leave-tenderloin', 'middle-fillet-in': 'porchetta-whole' },
          items: { 'porchetta-fillet': { lineId: 'l' } },
        },
      },
    });
    expect(fillReport(of, plan).lines[0]).toMatchObject({ filled: 1, substituted: 0 });
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planRules } from './check-plan/plan-rules.ts';
import { checkPlan } from './check-plan.ts';
import type { CuttingPlan, RunPlan } from './cutting-plan.ts';
import type { CuttingDay } from './day.ts';
import { busyDay, busyPlan, changed, fillOf, type Mutable } from './test-days/busy-day.ts';
import { layPlan } from './test-days/lay-plan.ts';
import type { PieceWish, SideWish } from './test-days/lay-side.ts';
import { animal, day } from './test-days/test-day.ts';

const run = (plan: Partial<RunPlan> & Pick<RunPlan, 'stock' | 'stretches'>): RunPlan => ({
  fromUm: 0,
  toUm: 0,
  usableUm: 0,
  pieces: [],
  freeUm: 0,
  freeMg: 0,
  ...plan,
});

/**
 * Worked out by hand, without the carcass package. A side of 120 g is 100 g of log, a 15 g knob and 5 g of scrap; the log is
 * 80 g over 8 stations of 10 mm and 20 g over 2 of 10 mm. Two boned stations keep 12 of 20 g on 10 mm and give no rack, so
 * 8 g go to scrap; they stand last and join the plain end: 32 g on 30 mm. Six stations on the bone hold 60 g on 60 mm:
 * a slice of 2 ribs is 18 mm and 18 g, and the saw turns 2 g to dust.
 */
const byHand: CuttingPlan = {
  dayId: 'day-1',
  sides: ['p-left', 'p-right'].map((sideId) => ({
    sideId,
    animalId: 'p',
    shareId: null,
    massMg: 120_000,
    operations: { side: 'open' },
    items: [{ pieceId: `${sideId}/knob`, item: 'knob', from: 'side', massMg: 15_000, owner: null }],
    bars: [
      {
        bar: 'log',
        runs: [
          run({
            stock: 'ribbed-bone-in',
            stretches: [{ zone: 'ribbed', manner: 'bone-in', fromStation: 0, toStation: 6 }],
            toUm: 60_000,
            usableUm: 60_000,
            pieces: [
              {
                pieceId: `${sideId}/slice`,
                cut: 'slice',
                portion: { by: 'ribs', ribs: 2 },
                fromUm: 0,
                toUm: 18_000,
                massMg: 18_000,
                owner: null,
              },
            ],
            freeUm: 40_000,
            freeMg: 40_000,
          }),
          run({
            stock: 'meat',
            stretches: [
              { zone: 'ribbed', manner: 'boned', fromStation: 6, toStation: 8 },
              { zone: 'plain', manner: 'boned', fromStation: 0, toStation: 2 },
            ],
            fromUm: 60_000,
            toUm: 100_000,
            usableUm: 30_000,
            pieces: [
              {
                pieceId: `${sideId}/steak`,
                cut: 'steak',
                portion: { by: 'weight', fromGrams: 16, toGrams: 16 },
                fromUm: 60_000,
                toUm: 75_000,
                massMg: 16_000,
                owner: null,
              },
            ],
            freeUm: 15_000,
            freeMg: 16_000,
          }),
        ],
      },
    ],
    bulkMg: { scrap: 13_000, loss: 2000 },
    minutes: 4,
  })),
  singles: [
    { pieceId: 'crest', animalId: 'p', item: 'crest', massMg: 7000, owner: null },
    { pieceId: 'knob', animalId: 'p', item: 'knob', massMg: 3000, owner: null },
  ],
  lines: [],
  shares: [],
  proof: null,
};
const plankDay = day({ animals: [animal({ animalId: 'p', speciesId: 'plank' })] });

describe('a plan worked out by hand', () => {
  it('keeps every rule', () => expect(checkPlan(plankDay, byHand)).toEqual([]));

  it('gives a rack from six boned stations and none from five', () => {
    const plan = (boned: number): CuttingPlan =>
      layPlan(plankDay, { sides: { 'p-left': { zones: { ribbed: ['bone-in', 8 - boned, 'boned'] } } } });
    expect(plan(6).sides[0]?.items.map(({ item, massMg }) => [item, massMg])).toEqual([
      ['rack', 18_000],
      ['knob', 15_000],
    ]);
    expect(plan(5).sides[0]?.items.map(({ item }) => item)).toEqual(['knob']);
    expect([...checkPlan(plankDay, plan(6)), ...checkPlan(plankDay, plan(5))]).toEqual([]);
  });

  it('may be empty on an empty day', () => {
    expect(
      checkPlan(day({}), { dayId: 'day-1', sides: [], singles: [], lines: [], shares: [], proof: null }),
    ).toEqual([]);
  });
});

it('has a sentence for every rule', () => {
  expect(Object.keys(planRules)).toEqual(Array.from({ length: 28 }, (_, index) => `P${index}`));
});

type Change = (plan: Mutable<CuttingPlan>) => void;

/** Changes of one figure of one piece, and of who it is for: each must be noticed. */
function tampers(of: CuttingDay, plan: CuttingPlan): Change[] {
  const spans = plan.sides.flatMap((side, at) =>
    side.bars.flatMap((bar, barAt) =>
      bar.runs.flatMap((of, runAt) => of.pieces.map((_, pieceAt) => ({ at, barAt, runAt, pieceAt }))),
    ),
  );
  const runs = plan.sides.flatMap((side, at) =>
    side.bars.flatMap((bar, barAt) => bar.runs.map((_, runAt) => ({ at, barAt, runAt }))),
  );
  const runIn = (copy: Mutable<CuttingPlan>, { at, barAt, runAt }: (typeof runs)[number]) =>
    copy.sides[at]!.bars[barAt]!.runs[runAt]!;
  const onSpan = (change: (piece: Mutable<RunPlan>['pieces'][number]) => void): Change[] =>
    spans.map((place) => (copy) => change(runIn(copy, place).pieces[place.pieceAt]!));
  const onRun = (change: (of: Mutable<RunPlan>) => void): Change[] =>
    runs.map((place) => (copy) => change(runIn(copy, place)));
  const items = plan.sides.flatMap((side, at) => side.items.map((_, itemAt) => ({ at, itemAt })));
  const lines = of.lines.map(({ lineId }) => lineId);
  const owners = [
    null,
    { shareId: 'half' },
    { shareId: 'ghost' },
    { lineId: 'ghost' },
    ...lines.map((lineId) => ({ lineId })),
  ];
  const same = (left: unknown, right: unknown): boolean => JSON.stringify(left) === JSON.stringify(right);
  const reowned = owners.flatMap((owner) => [
    ...spans
      .filter(
        (place) =>
          !same(
            plan.sides[place.at]?.bars[place.barAt]?.runs[place.runAt]?.pieces[place.pieceAt]?.owner,
            owner,
          ),
      )
      .map(
        (place): Change =>
          (copy) =>
            Object.assign(runIn(copy, place).pieces[place.pieceAt]!, { owner }),
      ),
    ...items
      .filter(({ at, itemAt }) => !same(plan.sides[at]?.items[itemAt]?.owner, owner))
      .map(
        ({ at, itemAt }): Change =>
          (copy) =>
            Object.assign(copy.sides[at]!.items[itemAt]!, { owner }),
      ),
  ]);
  return [
    ...[1, -2000].flatMap((um) => [
      ...onSpan((piece) => Object.assign(piece, { fromUm: piece.fromUm + um })),
      ...onSpan((piece) => Object.assign(piece, { toUm: piece.toUm + um })),
      ...onSpan((piece) => Object.assign(piece, { fromUm: piece.fromUm + um, toUm: piece.toUm + um })),
      ...onRun((of) => Object.assign(of, { freeUm: of.freeUm + um })),
      ...onRun((of) => Object.assign(of, { usableUm: of.usableUm + um })),
      ...onRun((of) => Object.assign(of, { fromUm: of.fromUm + um })),
    ]),
    ...[1, -1000].flatMap((mg) => [
      ...onSpan((piece) => Object.assign(piece, { massMg: piece.massMg + mg })),
      ...onRun((of) => Object.assign(of, { freeMg: of.freeMg + mg })),
      ...items.map(
        ({ at, itemAt }): Change =>
          (copy) => {
            copy.sides[at]!.items[itemAt]!.massMg += mg;
          },
      ),
      ...plan.sides.flatMap((side, at) =>
        Object.keys(side.bulkMg).map(
          (bulk): Change =>
            (copy) => {
              copy.sides[at]!.bulkMg[bulk]! += mg;
            },
        ),
      ),
    ]),
    ...reowned,
    ...lines.map(
      (lineId): Change =>
        (copy) => {
          fillOf(copy, lineId).filled += 1;
        },
    ),
  ];
}

describe('tampering', () => {
  it('is noticed, whichever figure or owner of a busy day it touches', () => {
    const changes = tampers(busyDay, busyPlan);
    expect(changes.length).toBeGreaterThan(1000);
    const unnoticed = changes.filter((change) => checkPlan(busyDay, changed(busyPlan, change)).length === 0);
    expect(unnoticed.map(String)).toEqual([]);
  });
});

const manners: fc.Arbitrary<SideWish['zones'] & object> = fc.record({
  rib: fc.oneof(
    fc.constantFrom('bone-in', 'boned'),
    fc.tuple(fc.constant('boned' as const), fc.integer({ min: 1, max: 6 }), fc.constant('bone-in' as const)),
    fc.tuple(fc.constant('bone-in' as const), fc.integer({ min: 1, max: 6 }), fc.constant('boned' as const)),
  ),
  lumbar: fc.constant('bone-in'),
  blade: fc.constantFrom('bone-in', 'country', 'boned'),
});
const operations = fc.record({
  'middle-open': fc.constantFrom('pull-tenderloin', 'leave-tenderloin'),
  'middle-fillet-out': fc.constantFrom(
    'standard-line',
    'long-bone-line',
    'porchetta-front',
    'porchetta-rear',
    'porchetta-whole',
  ),
  'middle-fillet-in': fc.constantFrom('standard-line', 'long-bone-line', 'porchetta-whole'),
  'belly-ribbed': fc.constantFrom('sheet-ribs', 'sheet-st-louis', 'leave-ribs-in', 'roll-belly'),
  butt: fc.constantFrom('butt-whole', 'butt-across', 'butt-coppa', 'butt-boned', 'butt-ground'),
  ham: fc.constantFrom('ham-whole', 'ham-halves', 'ham-centre', 'ham-seamed', 'ham-ground'),
});
const chops: readonly PieceWish[] = [
  { stock: 'blade-bone-in', cut: 'blade-chop', portion: { by: 'thickness', um: 19_050 } },
  { stock: 'butt-bone-in', cut: 'blade-steak', portion: { by: 'thickness', um: 19_050 } },
  { stock: 'ham-centre', cut: 'ham-steak', portion: { by: 'thickness', um: 12_700 } },
  { stock: 'belly-slab', cut: 'slab-bacon', portion: { by: 'weight', fromGrams: 700, toGrams: 900 } },
];
const sideWish: fc.Arbitrary<SideWish> = fc.record({
  operations,
  zones: manners,
  pieces: fc.subarray([...chops]),
});
const hogWish = fc.record({
  carcassGrams: fc.integer({ min: 40_000, max: 140_000 }),
  ribs: fc.integer({ min: 13, max: 17 }),
  kerfUm: fc.integer({ min: 0, max: 5000 }),
});

describe('any way to cut a hog', () => {
  it('keeps every rule when it is laid by the measures of the carcass data', () => {
    fc.assert(
      fc.property(hogWish, sideWish, sideWish, ({ kerfUm, ...wish }, left, right) => {
        const of = day({ animals: [animal({ animalId: 'a', ...wish })], tools: { saw: true, kerfUm } });
        expect(checkPlan(of, layPlan(of, { sides: { 'a-left': left, 'a-right': right } }))).toEqual([]);
      }),
      { numRuns: 80, seed: 20_310_314 },
    );
  });

  it('breaks a rule as soon as a length, a mass or an owner is touched', () => {
    fc.assert(
      fc.property(hogWish, sideWish, fc.nat(), ({ kerfUm, ...wish }, left, pick) => {
        const of = day({ animals: [animal({ animalId: 'a', ...wish })], tools: { saw: true, kerfUm } });
        const plan = layPlan(of, { sides: { 'a-left': left } });
        const changes = tampers(of, plan);
        const change = changes[pick % changes.length] as Change;
        expect(checkPlan(of, changed(plan, change))).not.toEqual([]);
      }),
      { numRuns: 150, seed: 20_310_314 },
    );
  });
});

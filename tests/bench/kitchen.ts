import {
  checkSausagePlan,
  type KitchenDay,
  planSausages,
  type Recipe,
  type TrimLot,
} from '../../packages/kitchen/src/index.ts';

/** A large day of sausage, invented: 20 recipes, 60 lots, 40 promises, from a seed. */
const kg = 1_000_000;

function seeded(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

interface Kind {
  readonly kind: string;
  readonly fat: number;
  readonly worth: number;
}

const kinds: readonly [Kind, ...Kind[]] = [
  { kind: 'trim', fat: 230_000, worth: 380 },
  { kind: 'fat-trim', fat: 580_000, worth: 90 },
  { kind: 'back-fat', fat: 770_000, worth: 220 },
];

const pick = <T>(list: readonly [T, ...T[]], random: (below: number) => number): T =>
  list[random(list.length)] ?? list[0];

function recipeOf(index: number, random: (below: number) => number): Recipe {
  const fatLeastPpm = 180_000 + random(15) * 10_000;
  return {
    recipeId: `recipe-${index}`,
    name: `Recipe ${index}`,
    meats: [
      { kind: 'trim', leastPpm: 300_000 },
      { kind: 'fat-trim' },
      { kind: 'back-fat', mostPpm: 400_000 },
    ],
    fatLeastPpm,
    fatMostPpm: fatLeastPpm + 40_000 + random(6) * 10_000,
    additions: [
      { name: 'salt', ppmOfMeat: 15_000 + random(5) * 1000, allergens: [], costMinorPerKg: 120 },
      { name: 'spice', ppmOfMeat: 2_000 + random(9) * 1000, allergens: [], costMinorPerKg: 2500 },
    ],
    batchLeastMg: (4 + random(5)) * kg,
    batchMostMg: (12 + random(15)) * kg,
    minutesPerBatch: 20 + random(40),
    trimDaysMost: 2 + random(3),
  };
}

function lotOf(
  index: number,
  owners: readonly [string | null, ...(string | null)[]],
  random: (below: number) => number,
): TrimLot {
  const { kind, fat, worth } = pick(kinds, random);
  return {
    lotId: `lot-${index}`,
    kind,
    species: 'pork',
    animalId: `hog-${Math.floor(index / 6)}`,
    ownerId: pick(owners, random),
    mayPool: random(2) === 0,
    massMg: (1 + random(9)) * kg + random(1000) * 1000,
    fatPpm: fat + random(100_000) - 50_000,
    fatFrom: 'measured',
    cutOn: `2026-11-2${2 + random(4)}`,
    weight: 'scale',
    costMinorPerKg: worth + random(60),
  };
}

function largeDay(seed: number): KitchenDay {
  const random = seeded(seed);
  const owners: readonly [string | null, ...(string | null)[]] = [
    null,
    null,
    null,
    null,
    null,
    null,
    'ada',
    'bo',
    'cy',
  ];
  const recipes = Array.from({ length: 20 }, (_, index) => recipeOf(index, random));
  return {
    date: '2026-11-25',
    recipes,
    lots: Array.from({ length: 60 }, (_, index) => lotOf(index, owners, random)),
    promises: Array.from({ length: 40 }, (_, index) => ({
      promiseId: `promise-${index}`,
      recipeId: `recipe-${random(20)}`,
      massMg: (2 + random(6)) * kg,
      ownerId: pick(owners, random),
      priceMinorPerKg: 1200 + random(800),
    })),
    offers: [],
    labourMinorPerHour: 3000,
    olderFirstMinorPerKgDay: 1,
  };
}

async function timed(seed: number): Promise<number> {
  const day = largeDay(seed);
  const begun = performance.now();
  const plan = await planSausages(day, 30);
  const took = (performance.now() - begun) / 1000;
  if ('faults' in plan) throw new Error(JSON.stringify(plan.faults));
  const faults = checkSausagePlan(day, plan);
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  const whole = plan.fills.filter(({ askedMg, filledMg }) => askedMg === filledMg).length;
  const proof = plan.proven ? 'optimal' : 'not proven';
  console.log(
    `seed ${seed}: ${took.toFixed(2)} s, ${proof}, ${plan.batches.length} batches, ${whole} of 40 promises whole`,
  );
  return took;
}

// The first solve of a process also loads and compiles the engine.
const first = await timed(0);
const seconds: number[] = [];
for (let seed = 1; seed <= 15; seed++) seconds.push(await timed(seed));
seconds.sort((a, b) => a - b);
const shown = [first, seconds[7], seconds[14]].map((took) => `${took?.toFixed(2)} s`);
console.log(
  `20 recipes, 60 lots, 40 promises: first ${shown[0]}, then median ${shown[1]}, slowest ${shown[2]}`,
);

import { hog, type Portion, type SlaughterFact } from '@flitchbook/carcass';
import type { CarcassShare, CuttingDay, DayAnimal, DemandLine, Rank } from '@flitchbook/plan';
import { familyNames, givenNames } from './names.ts';

export interface DayWish {
  /** the same seed makes the same day */
  readonly seed: number;
  readonly animals: number;
  readonly lines: number;
  /** half hogs, each an order of its own; none if left out */
  readonly shares?: number;
}

/** What customers ask for: how often, in which portions, how many at once, at how many cents a pound. */
interface Habit {
  readonly cut: string;
  readonly often: number;
  readonly portions: readonly Portion[];
  /** pieces; pounds of loose meat */
  readonly most: number;
  readonly centsPerPound: number;
  readonly instead?: string;
}

const whole: readonly Portion[] = [{ by: 'whole' }];
const thick = (...inches: readonly number[]): readonly Portion[] =>
  inches.map((inch) => ({ by: 'thickness', um: inch * 25_400 }));
const pounds = (count: number): number => Math.round(count * 453.59237);
const heavy = (...ranges: readonly (readonly [number, number])[]): readonly Portion[] =>
  ranges.map(([from, to]) => ({ by: 'weight', fromGrams: pounds(from), toGrams: pounds(to) }));
const ribs = (...counts: readonly number[]): readonly Portion[] =>
  counts.map((count) => ({ by: 'ribs', ribs: count }));

// Invented, like every price and habit of this project. What is wanted most is what a hog has least of.
const habits: readonly Habit[] = [
  { cut: 'tenderloin', often: 8, portions: whole, most: 2, centsPerPound: 1400 },
  {
    cut: 'rib-chop',
    often: 9,
    portions: thick(1, 1.25, 1.5),
    most: 8,
    centsPerPound: 750,
    instead: 'centre-chop',
  },
  { cut: 't-bone-chop', often: 6, portions: thick(1, 1.25), most: 6, centsPerPound: 800 },
  { cut: 'back-ribs', often: 6, portions: whole, most: 2, centsPerPound: 850, instead: 'spareribs' },
  { cut: 'boneless-chop', often: 5, portions: thick(0.75, 1), most: 8, centsPerPound: 800 },
  { cut: 'slab-bacon', often: 8, portions: heavy([3, 4], [4, 6]), most: 2, centsPerPound: 600 },
  { cut: 'spareribs', often: 4, portions: whole, most: 2, centsPerPound: 550 },
  { cut: 'coppa', often: 3, portions: whole, most: 1, centsPerPound: 900 },
  { cut: 'butt-roast', often: 6, portions: heavy([3, 4], [4, 5]), most: 2, centsPerPound: 480 },
  { cut: 'porchetta', often: 2, portions: whole, most: 1, centsPerPound: 650 },
  { cut: 'loin-roast', often: 4, portions: heavy([2, 3], [3, 4]), most: 1, centsPerPound: 820 },
  { cut: 'rib-rack', often: 3, portions: ribs(4, 5, 6), most: 1, centsPerPound: 900 },
  { cut: 'long-bone-chop', often: 3, portions: ribs(1), most: 4, centsPerPound: 1050 },
  { cut: 'country-ribs', often: 3, portions: heavy([1, 2]), most: 2, centsPerPound: 500 },
  { cut: 'fresh-belly', often: 4, portions: heavy([2, 3]), most: 1, centsPerPound: 620 },
  { cut: 'ham-steak', often: 3, portions: thick(0.5), most: 4, centsPerPound: 520 },
  { cut: 'ham-whole', often: 2, portions: whole, most: 1, centsPerPound: 390 },
  { cut: 'picnic-whole', often: 2, portions: whole, most: 1, centsPerPound: 320 },
  { cut: 'jowl', often: 2, portions: whole, most: 2, centsPerPound: 400 },
  { cut: 'front-hock', often: 3, portions: whole, most: 2, centsPerPound: 300 },
  { cut: 'liver', often: 2, portions: whole, most: 1, centsPerPound: 200 },
  { cut: 'hanging-tender', often: 1, portions: whole, most: 1, centsPerPound: 600 },
  { cut: 'ground-pork', often: 5, portions: [{ by: 'bulk' }], most: 12, centsPerPound: 450 },
  { cut: 'leaf-fat', often: 2, portions: [{ by: 'bulk' }], most: 2, centsPerPound: 300 },
];

type Chance = (below: number) => number;

/** Whole numbers from 0 to below the limit: a linear congruence with the multiplier of Knuth's MMIX, high bits used. */
function chanceOf(seed: number): Chance {
  let state = BigInt.asUintN(64, BigInt(seed) * 0x9e37_79b9_7f4a_7c15n + 1n);
  return (below) => {
    state = BigInt.asUintN(64, state * 6_364_136_223_846_793_005n + 1_442_695_040_888_963_407n);
    return Number((state >> 33n) % BigInt(below));
  };
}

const oneOf = <T>(chance: Chance, list: readonly T[]): T => list[chance(list.length)] as T;

function oneHabit(chance: Chance, left: readonly Habit[]): Habit {
  let turn = chance(left.reduce((sum, { often }) => sum + often, 0));
  const found = left.find(({ often }) => {
    turn -= often;
    return turn < 0;
  });
  return found as Habit;
}

const pricePerKg = (centsPerPound: number): number => Math.round(centsPerPound / 0.45359237);

const slaughterFacts: readonly SlaughterFact[] = ['skin-on', 'head', 'feet', 'organs'];

/** A hog of 165 to 205 lb, as they come to a small shop; 14 to 16 ribs. */
function madeAnimal(chance: Chance, turn: number): DayAnimal {
  const animalId = `hog-${turn + 21}`;
  const carcassGrams = pounds(165 + chance(41));
  const ribCount = 14 + chance(3);
  const sides = (['left', 'right'] as const).map((hand) => ({
    sideId: `${animalId}-${hand}`,
    animalId,
    hand,
    massMg: carcassGrams * 500,
    carcassGrams,
    ribs: ribCount,
    facts: slaughterFacts,
    lostParts: [],
  }));
  return { animalId, name: `Hog ${turn + 21}`, speciesId: 'hog', lostItems: [], sides };
}

interface Whose {
  readonly orderId: string;
  readonly owner: string;
}

const rankOf = (chance: Chance): Rank => (chance(6) === 0 ? 'wished' : 'promised');

function madeLine(chance: Chance, habit: Habit, lineId: string, whose: Whose): DemandLine {
  const portion = oneOf(chance, habit.portions);
  const amount = 1 + chance(habit.most);
  const instead = habit.instead !== undefined && chance(3) === 0 ? hog.cuts[habit.instead] : undefined;
  return {
    lineId,
    ...whose,
    speciesId: 'hog',
    cut: habit.cut,
    portion,
    ask: portion.by === 'bulk' ? { grams: pounds(amount) } : { pieces: amount },
    rank: rankOf(chance),
    priceMinorPerKg: pricePerKg(habit.centsPerPound),
    sameAnimal: portion.by === 'thickness' && chance(12) === 0,
    substitutes: instead ? [{ cut: instead.id, portion: instead.usual }] : [],
  };
}

function madeShare(chance: Chance, whose: Whose): CarcassShare {
  const chop = oneOf(chance, thick(0.75, 1, 1.25));
  return {
    shareId: `${whose.orderId}-share-1`,
    ...whose,
    speciesId: 'hog',
    size: 'half',
    rank: 'promised',
    priceMinorPerKg: pricePerKg(360),
    instructions: {
      operations: { ham: oneOf(chance, ['ham-halves', 'ham-whole']) },
      manners: { rib: 'bone-in', lumbar: 'bone-in' },
      portions: { 'rib-bone-in': chop, 'lumbar-bone-in': chop },
    },
  };
}

/** Somebody else each time, until every name has been used. */
const ownerOf = (seed: number, turn: number): string => {
  const given = givenNames[(seed * 7 + turn) % givenNames.length] as string;
  const family = familyNames[
    (seed * 5 + turn + Math.floor(turn / givenNames.length)) % familyNames.length
  ] as string;
  return `${given} ${family}`;
};

/**
 * A cutting day of hogs with orders of one to four lines that clash as orders do: tests and benchmarks of every size take
 * their days from here, and `examples/five-hogs.json` is one of them.
 */
export function madeDay({ seed, animals, lines: wanted, shares: halves = 0 }: DayWish): CuttingDay {
  const chance = chanceOf(seed);
  const lines: DemandLine[] = [];
  const shares: CarcassShare[] = [];
  const whose = (turn: number): Whose => ({ orderId: `order-${turn + 1}`, owner: ownerOf(seed, turn) });
  const herd = Array.from({ length: animals }, (_, turn) => madeAnimal(chance, turn));
  let turn = 0;
  for (; lines.length < wanted; turn++) {
    let left = habits;
    const count = Math.min(1 + chance(4), wanted - lines.length);
    for (let index = 0; index < count; index++) {
      const habit = oneHabit(chance, left);
      left = left.filter((other) => other !== habit);
      lines.push(madeLine(chance, habit, `order-${turn + 1}-line-${index + 1}`, whose(turn)));
    }
  }
  for (let half = 0; half < halves; half++) shares.push(madeShare(chance, whose(turn + half)));
  return {
    dayId: 'day-2026-12-03',
    date: '2026-12-03',
    species: { hog },
    animals: herd,
    lines,
    shares,
    locks: [],
    tools: { saw: true, kerfUm: 2000 },
    counter: {
      itemSteps: [
        { pieces: 2, worthPercent: 90 },
        { pieces: 4, worthPercent: 75 },
        { pieces: null, worthPercent: 55 },
      ],
      stockSteps: [
        { grams: 2000, worthPercent: 90 },
        { grams: 6000, worthPercent: 75 },
        { grams: null, worthPercent: 55 },
      ],
      worthMinorPerKg: {},
      labourMinorPerHour: 2400,
    },
  };
}

import { hog, type SideFacts, type SlaughterFact } from '@flitchbook/carcass';
import type { CarcassShare, CuttingDay, DayAnimal, DemandLine } from '../day.ts';
import { plank } from './plank.ts';

const allFacts: readonly SlaughterFact[] = ['skin-on', 'head', 'feet', 'organs'];

export interface AnimalWish {
  readonly animalId: string;
  readonly speciesId?: string;
  readonly carcassGrams?: number;
  readonly ribs?: number;
  readonly facts?: readonly SlaughterFact[];
  readonly lostParts?: readonly string[];
  readonly lostItems?: readonly string[];
}

/** An animal with a left and a right side of half the carcass each, all facts kept. */
export function animal(wish: AnimalWish): DayAnimal {
  const isPlank = wish.speciesId === 'plank';
  const carcassGrams = wish.carcassGrams ?? (isPlank ? 240 : 83_461);
  const side = (hand: 'left' | 'right'): SideFacts => ({
    sideId: `${wish.animalId}-${hand}`,
    animalId: wish.animalId,
    hand,
    massMg: carcassGrams * 500,
    carcassGrams,
    ribs: wish.ribs ?? (isPlank ? 8 : 15),
    facts: wish.facts ?? allFacts,
    lostParts: wish.lostParts ?? [],
  });
  return {
    animalId: wish.animalId,
    name: `Animal ${wish.animalId}`,
    speciesId: wish.speciesId ?? 'hog',
    lostItems: wish.lostItems ?? [],
    sides: [side('left'), side('right')],
  };
}

type LineWish = Partial<DemandLine> & Pick<DemandLine, 'lineId' | 'cut' | 'portion'>;

export const line = (wish: LineWish): DemandLine => ({
  orderId: `order-${wish.lineId}`,
  owner: `Customer ${wish.lineId}`,
  speciesId: 'hog',
  ask: { pieces: 1 },
  rank: 'promised',
  priceMinorPerKg: 1000,
  sameAnimal: false,
  substitutes: [],
  ...wish,
});

export const share = (
  wish: Partial<CarcassShare> & Pick<CarcassShare, 'shareId' | 'size'>,
): CarcassShare => ({
  orderId: `order-${wish.shareId}`,
  owner: `Customer ${wish.shareId}`,
  speciesId: 'hog',
  rank: 'promised',
  priceMinorPerKg: 700,
  instructions: { operations: {}, manners: {}, portions: {} },
  ...wish,
});

/** A day with no animals and no orders, a saw of 2 mm kerf. */
export const day = (wish: Partial<CuttingDay>): CuttingDay => ({
  dayId: 'day-1',
  date: '2031-03-14',
  species: { hog, plank },
  animals: [],
  lines: [],
  shares: [],
  locks: [],
  tools: { saw: true, kerfUm: 2000 },
  counter: {
    itemSteps: [{ pieces: null, worthPercent: 80 }],
    stockSteps: [{ grams: null, worthPercent: 80 }],
    worthMinorPerKg: {},
    labourMinorPerHour: 2000,
  },
  ...wish,
});

import { randomUUID } from 'node:crypto';
import type { CuttingPlan } from '@flitchbook/plan';
import type { Database, Tx } from '../database.ts';
import { forShop } from '../engines/engine.ts';
import { addAnimal } from '../queries/animals.ts';
import { createDay, touchDay } from '../queries/days.ts';
import { addOrder } from '../queries/orders.ts';
import type { NewAnimal, NewLine, NewOrder, NewShare, TouchedDay } from '../queries/shapes.ts';
import { createShop } from '../queries/shops.ts';
import { inTransaction } from '../transaction.ts';

/** A shop that nobody has: one hog, one order of chops and a tenderloin, one half hog. */
export interface InventedShop {
  readonly shopId: string;
  readonly dayId: string;
  readonly animalId: string;
  readonly left: string;
  readonly right: string;
  readonly chops: string;
  readonly tenderloin: string;
  readonly half: string;
  readonly orderId: string;
  /** the day's version with all of it */
  readonly version: number;
}

export const newId = (): string => randomUUID();

export const line = (lineId: string, change: Partial<NewLine> = {}): NewLine => ({
  lineId,
  speciesId: 'hog',
  cut: 'rib-chop',
  portion: { by: 'thickness', um: 31_750 },
  ask: { pieces: 4 },
  rank: 'promised',
  priceMinorPerKg: 1890,
  sameAnimal: false,
  substitutes: [{ cut: 'boneless-chop', portion: { by: 'thickness', um: 25_400 } }],
  ...change,
});

export const share = (shareId: string, change: Partial<NewShare> = {}): NewShare => ({
  shareId,
  speciesId: 'hog',
  size: 'half',
  rank: 'promised',
  priceMinorPerKg: 790,
  instructions: { operations: { middle: 'clear-cavity' }, manners: {}, portions: {} },
  ...change,
});

export const order = (orderId: string, change: Partial<NewOrder> = {}): NewOrder => ({
  orderId,
  owner: 'Petra Oduya',
  personId: null,
  note: '',
  lines: [],
  shares: [],
  ...change,
});

export const hog = (animalId: string, left: string, right: string): NewAnimal => ({
  animalId,
  name: 'Tag 41',
  speciesId: 'hog',
  farmId: null,
  ribs: 15,
  hanging: { text: '206.4', unit: 'lb', grams: 93_621 },
  hotOrCold: 'cold',
  legalMode: 'for-sale',
  facts: ['skin-on', 'head'],
  lostItems: [],
  sides: [
    { sideId: left, hand: 'left', massMg: 46_810_500, weight: null, lostParts: [] },
    {
      sideId: right,
      hand: 'right',
      massMg: 46_720_000,
      weight: { text: '46.72', unit: 'kg' },
      lostParts: ['jowl'],
    },
  ],
});

export async function touched(tx: Tx, day: { shopId: string; dayId: string }): Promise<TouchedDay> {
  const touch = await touchDay(tx, day);
  if (touch.outcome !== 'touched') throw new Error(`the day is ${touch.outcome}`);
  return touch.day;
}

export async function inventShop(db: Database): Promise<InventedShop> {
  const [shopId, dayId, animalId, left, right] = [newId(), newId(), newId(), newId(), newId()];
  const [chops, tenderloin, half, orderId] = [newId(), newId(), newId(), newId()];
  const lines = [
    line(chops),
    line(tenderloin, {
      cut: 'tenderloin',
      portion: { by: 'whole' },
      ask: { pieces: 1 },
      onlyAnimal: animalId,
    }),
  ];
  const version = await inTransaction(forShop(db, shopId), async (tx) => {
    await createShop(tx, {
      shopId,
      name: 'The Ninth Rib',
      currency: 'EUR',
      timeZone: 'Europe/Lisbon',
      weightUnit: 'kg',
      lengthUnit: 'mm',
    });
    const counter = {
      itemSteps: [{ pieces: null, worthPercent: 100 }],
      stockSteps: [{ grams: null, worthPercent: 80 }],
      worthMinorPerKg: {},
      labourMinorPerHour: 2400,
    };
    await createDay(tx, { shopId, dayId, date: '2027-03-04', tools: { saw: true, kerfUm: 1500 }, counter });
    await addAnimal(tx, await touched(tx, { shopId, dayId }), hog(animalId, left, right));
    const day = await touched(tx, { shopId, dayId });
    await addOrder(tx, day, order(orderId, { lines, shares: [share(half)] }));
    return day.version;
  });
  return { shopId, dayId, animalId, left, right, chops, tenderloin, half, orderId, version };
}

/** A plan of that shop's day, as far as the database looks: two chops and a tenderloin, the right side for the share. */
export function planOf(shop: InventedShop): CuttingPlan {
  const chop = (fromUm: number, toUm: number, owner: { lineId: string } | null) => ({
    pieceId: `${shop.left}:loin-front:${fromUm}`,
    cut: 'rib-chop',
    portion: { by: 'thickness', um: 31_750 } as const,
    fromUm,
    toUm,
    massMg: 240_000,
    owner,
  });
  const pieces = [chop(0, 31_750, { lineId: shop.chops }), chop(33_250, 65_000, { lineId: shop.chops })];
  return {
    dayId: shop.dayId,
    sides: [
      {
        sideId: shop.left,
        animalId: shop.animalId,
        shareId: null,
        massMg: 46_810_500,
        operations: { side: 'break', middle: 'clear-cavity' },
        items: [
          {
            pieceId: `${shop.left}:middle:tenderloin`,
            item: 'tenderloin',
            from: 'middle',
            massMg: 480_000,
            owner: { lineId: shop.tenderloin },
          },
        ],
        bars: [
          {
            bar: 'loin-front',
            runs: [
              {
                stock: 'rib-bone-in',
                stretches: [{ zone: 'rib', manner: 'bone-in', fromStation: 0, toStation: 4 }],
                fromUm: 0,
                toUm: 120_000,
                usableUm: 120_000,
                pieces,
                freeUm: 55_000,
                freeMg: 400_000,
              },
            ],
          },
        ],
        bulkMg: { trim: 45_450_500 },
        minutes: 31,
      },
      {
        sideId: shop.right,
        animalId: shop.animalId,
        shareId: shop.half,
        massMg: 46_720_000,
        operations: { side: 'break' },
        items: [],
        bars: [],
        bulkMg: { trim: 46_720_000 },
        minutes: 12,
      },
    ],
    singles: [
      {
        pieceId: `${shop.animalId}:liver`,
        animalId: shop.animalId,
        item: 'liver',
        massMg: 1_810_000,
        owner: null,
      },
    ],
    lines: [
      {
        lineId: shop.chops,
        asked: 4,
        filled: 2,
        pieceIds: pieces.map(({ pieceId }) => pieceId),
        bulkGrams: 0,
        shortfall: null,
      },
      {
        lineId: shop.tenderloin,
        asked: 1,
        filled: 1,
        pieceIds: [`${shop.left}:middle:tenderloin`],
        bulkGrams: 0,
        shortfall: null,
      },
    ],
    shares: [{ shareId: shop.half, sideIds: [shop.right], shortfall: null }],
    proof: null,
  };
}

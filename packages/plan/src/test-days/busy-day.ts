import type { CuttingPlan, Owner } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';
import { layPlan, type PlanWish } from './lay-plan.ts';
import { animal, day, line, share } from './test-day.ts';

export type Mutable<T> = { -readonly [K in keyof T]: Mutable<T[K]> };

/** A changed copy of a plan. */
export function changed(plan: CuttingPlan, change: (plan: Mutable<CuttingPlan>) => void): CuttingPlan {
  // Not structuredClone: it keeps objects shared that a test means to change alone.
  const copy = JSON.parse(JSON.stringify(plan)) as Mutable<CuttingPlan>;
  change(copy);
  return copy;
}

export const inch = 25_400;
const whole = { by: 'whole' } as const;
const oneInch = { by: 'thickness', um: inch } as const;

/** Two hogs: one cut for lines, the other shared: its left half by one customer, its right side by lines. */
export const busyDay: CuttingDay = day({
  animals: [animal({ animalId: 'a' }), animal({ animalId: 'b', carcassGrams: 92_000, ribs: 16 })],
  lines: [
    line({ lineId: 'fillets', cut: 'tenderloin', portion: whole, ask: { pieces: 3 } }),
    line({ lineId: 'chops', cut: 'rib-chop', portion: oneInch, ask: { pieces: 4 }, sameAnimal: true }),
    line({ lineId: 'rack', cut: 'rib-rack', portion: { by: 'ribs', ribs: 3 }, onlyHand: 'left' }),
    line({ lineId: 't-bones', cut: 't-bone-chop', portion: oneInch, ask: { pieces: 2 } }),
    line({ lineId: 'back-ribs', cut: 'back-ribs', portion: whole, onlyAnimal: 'a' }),
    line({ lineId: 'roast', cut: 'loin-roast', portion: { by: 'weight', fromGrams: 900, toGrams: 1400 } }),
    line({
      lineId: 'slab',
      cut: 'slab-bacon',
      portion: { by: 'weight', fromGrams: 1360, toGrams: 1600 },
      ask: { pieces: 2 },
    }),
    line({
      lineId: 'belly',
      cut: 'rib-in-belly',
      portion: { by: 'ribs', ribs: 2 },
      substitutes: [{ cut: 'fresh-belly', portion: { by: 'weight', fromGrams: 900, toGrams: 1200 } }],
    }),
    line({ lineId: 'mince', cut: 'ground-pork', portion: { by: 'bulk' }, ask: { grams: 4000 } }),
    line({ lineId: 'liver', cut: 'liver', portion: whole }),
  ],
  shares: [
    share({
      shareId: 'half',
      size: 'half',
      instructions: {
        operations: { 'middle-open': 'pull-tenderloin', butt: 'butt-boned' },
        manners: { rib: 'boned', lumbar: 'boned' },
        portions: { 'loin-boned': oneInch },
      },
    }),
  ],
});

const pieces = <T>(count: number, piece: T): readonly T[] => Array.from({ length: count }, () => piece);
const roast = {
  stock: 'loin-boned',
  cut: 'loin-roast',
  portion: { by: 'weight', fromGrams: 900, toGrams: 1400 },
} as const;

export const busyWish: PlanWish = {
  sides: {
    'a-left': {
      operations: { 'middle-open': 'pull-tenderloin', 'belly-ribbed': 'sheet-ribs' },
      zones: { rib: 'bone-in', lumbar: 'boned' },
      pieces: [
        {
          stock: 'rib-bone-in',
          cut: 'rib-rack',
          portion: { by: 'ribs', ribs: 3 },
          owner: { lineId: 'rack' },
        },
        ...pieces(4, { stock: 'rib-bone-in', cut: 'rib-chop', portion: oneInch, owner: { lineId: 'chops' } }),
        ...pieces(2, {
          stock: 'belly-slab',
          cut: 'slab-bacon',
          portion: { by: 'weight', fromGrams: 1360, toGrams: 1600 } as const,
          owner: { lineId: 'slab' },
        }),
      ],
      items: { tenderloin: { lineId: 'fillets' } },
    },
    'a-right': {
      operations: { 'middle-open': 'leave-tenderloin', ham: 'ham-centre' },
      zones: { rib: 'boned', lumbar: 'bone-in' },
      pieces: [
        ...pieces(2, {
          stock: 'lumbar-with-fillet',
          cut: 't-bone-chop',
          portion: oneInch,
          owner: { lineId: 't-bones' },
        }),
        { ...roast, owner: { lineId: 'roast' } },
        { stock: 'ham-centre', cut: 'ham-steak', portion: { by: 'thickness', um: 12_700 } },
        {
          stock: 'belly-slab',
          cut: 'fresh-belly',
          portion: { by: 'weight', fromGrams: 900, toGrams: 1200 },
          owner: { lineId: 'belly' },
        },
      ],
      items: { 'back-ribs': { lineId: 'back-ribs' } },
    },
    'b-left': {
      operations: { 'middle-open': 'pull-tenderloin', butt: 'butt-boned' },
      zones: { rib: 'boned', lumbar: 'boned' },
      pieces: pieces(16, { stock: 'loin-boned', cut: 'boneless-chop', portion: oneInch }),
      shareId: 'half',
    },
    'b-right': {
      zones: { rib: ['bone-in', 5, 'boned'], lumbar: 'boned' },
      items: { tenderloin: { lineId: 'fillets' } },
    },
  },
  singles: { 'b/liver': { lineId: 'liver' } },
  bulkGrams: { mince: 4000 },
};

export const busyPlan: CuttingPlan = layPlan(busyDay, busyWish);

/** The parts of a copied plan that tests change most. */
export const sideOf = (plan: Mutable<CuttingPlan>, sideId: string) => {
  const side = plan.sides.find((candidate) => candidate.sideId === sideId);
  if (!side) throw new Error(`no side ${sideId}`);
  return side;
};

export const runOf = (plan: Mutable<CuttingPlan>, sideId: string, stock: string) => {
  const run = sideOf(plan, sideId)
    .bars.flatMap((bar) => bar.runs)
    .find((candidate) => candidate.stock === stock);
  if (!run) throw new Error(`no run of ${stock} in ${sideId}`);
  return run;
};

export const fillOf = (plan: Mutable<CuttingPlan>, lineId: string) => {
  const fill = plan.lines.find((candidate) => candidate.lineId === lineId);
  if (!fill) throw new Error(`no line ${lineId}`);
  return fill;
};

/** Gives a piece to someone, and keeps the accounts of lines in step. */
export function give(
  plan: Mutable<CuttingPlan>,
  piece: { pieceId: string; owner: Mutable<Owner> },
  to: Mutable<Owner>,
): void {
  if (piece.owner && 'lineId' in piece.owner) {
    const fill = fillOf(plan, piece.owner.lineId);
    fill.pieceIds = fill.pieceIds.filter((pieceId) => pieceId !== piece.pieceId);
    fill.filled -= 1;
    fill.shortfall ??= {
      kind: 'scarce',
      says: 'None left.',
      withLines: [],
      withShares: [],
      withLocks: [],
      mostPossible: 0,
    };
  }
  if (to && 'lineId' in to) {
    const fill = fillOf(plan, to.lineId);
    fill.pieceIds.push(piece.pieceId);
    fill.filled += 1;
    if (fill.filled >= fill.asked) fill.shortfall = null;
  }
  piece.owner = to;
}

export const itemOf = (plan: Mutable<CuttingPlan>, sideId: string, item: string) => {
  const found = sideOf(plan, sideId).items.find((candidate) => candidate.item === item);
  if (!found) throw new Error(`no ${item} of ${sideId}`);
  return found;
};

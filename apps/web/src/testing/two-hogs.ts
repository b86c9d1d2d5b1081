import { hog, type Portion, type SideFacts } from '@flitchbook/carcass';
import type {
  CarcassShare,
  CuttingDay,
  CuttingPlan,
  DemandLine,
  LineFill,
  Rank,
  Shortfall,
} from '@flitchbook/plan';
import type { Board } from '../wire/board.ts';
import { kerfUm, SideLayer, type SideWish } from './lay-side.ts';

// A small day laid out by hand: two hogs, one half of them owned, one middle rolled for porchetta.

const whole: Portion = { by: 'whole' };
export const inch = 25_400;
const thick = (um: number): Portion => ({ by: 'thickness', um });

const side = (animalId: string, hand: SideFacts['hand'], massMg: number): SideFacts => ({
  sideId: `${animalId}-${hand}`,
  animalId,
  hand,
  massMg,
  carcassGrams: 83_400,
  ribs: 15,
  facts: ['skin-on', 'head', 'feet', 'organs'],
  lostParts: [],
});

interface LineOf {
  readonly lineId: string;
  readonly orderId: string;
  readonly owner: string;
  readonly cut: string;
  readonly portion?: Portion;
  readonly pieces?: number;
  readonly grams?: number;
  readonly rank?: Rank;
}

const line = ({ pieces = 1, grams, portion = whole, rank = 'promised', ...rest }: LineOf): DemandLine => ({
  ...rest,
  portion,
  rank,
  speciesId: 'hog',
  ask: grams === undefined ? { pieces } : { grams },
  priceMinorPerKg: 1500,
  sameAnimal: false,
  substitutes: [],
});

const lines: readonly DemandLine[] = [
  line({
    lineId: 'marsh-1',
    orderId: 'marsh',
    owner: 'Marsh',
    cut: 'rib-chop',
    portion: thick(inch * 1.25),
    pieces: 6,
  }),
  line({ lineId: 'marsh-2', orderId: 'marsh', owner: 'Marsh', cut: 'tenderloin' }),
  line({ lineId: 'okafor-1', orderId: 'okafor', owner: 'Okafor', cut: 'back-ribs', pieces: 2 }),
  line({
    lineId: 'okafor-2',
    orderId: 'okafor',
    owner: 'Okafor',
    cut: 'boneless-chop',
    portion: thick(inch),
    pieces: 4,
  }),
  line({
    lineId: 'lamp-1',
    orderId: 'lamp',
    owner: 'The Tin Lamp',
    cut: 't-bone-chop',
    portion: thick(inch * 1.5),
    pieces: 4,
  }),
  line({
    lineId: 'vance-1',
    orderId: 'vance',
    owner: 'Vance',
    cut: 'rib-rack',
    portion: { by: 'ribs', ribs: 8 },
  }),
  line({ lineId: 'lindqvist-1', orderId: 'lindqvist', owner: 'Lindqvist', cut: 'porchetta' }),
  line({ lineId: 'quist-1', orderId: 'quist', owner: 'Quist', cut: 'tenderloin', pieces: 2, rank: 'wished' }),
  line({
    lineId: 'quist-2',
    orderId: 'quist',
    owner: 'Quist',
    cut: 'ground-pork',
    portion: { by: 'bulk' },
    grams: 2000,
  }),
];

const share: CarcassShare = {
  shareId: 'corder-half',
  orderId: 'corder',
  owner: 'Corder',
  speciesId: 'hog',
  size: 'half',
  rank: 'promised',
  priceMinorPerKg: 900,
  instructions: {
    operations: { 'middle-open': 'pull-tenderloin' },
    manners: { rib: 'bone-in' },
    portions: { 'rib-bone-in': thick(inch) },
  },
};

export const day: CuttingDay = {
  dayId: 'day-1',
  date: '2026-11-26',
  species: { hog },
  animals: [
    {
      animalId: 'a',
      name: 'Tag 1',
      speciesId: 'hog',
      lostItems: [],
      sides: [side('a', 'left', 41_800_001), side('a', 'right', 41_600_000)],
    },
    {
      animalId: 'b',
      name: 'Tag 2',
      speciesId: 'hog',
      lostItems: [],
      sides: [side('b', 'left', 41_700_000), side('b', 'right', 41_700_000)],
    },
  ],
  lines,
  shares: [share],
  locks: [{ lock: 'operation', sideId: 'b-right', part: 'middle-fillet-out', operation: 'porchetta-whole' }],
  tools: { saw: true, kerfUm },
  counter: {
    itemSteps: [{ pieces: null, worthPercent: 100 }],
    stockSteps: [{ grams: null, worthPercent: 100 }],
    worthMinorPerKg: {},
    labourMinorPerHour: 2400,
  },
};

const wishes: Readonly<Record<string, SideWish>> = {
  'a-left': {
    shareId: 'corder-half',
    operations: { 'middle-open': 'pull-tenderloin' },
    zones: { rib: 'bone-in' },
    pieces: [{ stock: 'rib-bone-in', cut: 'rib-chop', portion: thick(inch), count: 10, owner: null }],
  },
  'a-right': {
    operations: { 'middle-open': 'leave-tenderloin' },
    pieces: [
      {
        stock: 'rib-bone-in',
        cut: 'rib-rack',
        portion: { by: 'ribs', ribs: 8 },
        count: 1,
        owner: { lineId: 'vance-1' },
      },
      {
        stock: 'lumbar-with-fillet',
        cut: 't-bone-chop',
        portion: thick(inch * 1.5),
        count: 4,
        owner: { lineId: 'lamp-1' },
      },
    ],
  },
  'b-left': {
    zones: { rib: ['bone-in', 7, 'boned'], lumbar: 'boned' },
    pieces: [
      {
        stock: 'rib-bone-in',
        cut: 'rib-chop',
        portion: thick(inch * 1.25),
        count: 6,
        owner: { lineId: 'marsh-1' },
      },
      {
        stock: 'loin-boned',
        cut: 'boneless-chop',
        portion: thick(inch),
        count: 4,
        owner: { lineId: 'okafor-2' },
      },
    ],
    items: { tenderloin: { lineId: 'marsh-2' } },
  },
  'b-right': {
    operations: { 'middle-fillet-out': 'porchetta-whole' },
    items: { porchetta: { lineId: 'lindqvist-1' }, tenderloin: { lineId: 'quist-1' } },
  },
};

const short = (part: Partial<Shortfall>): Shortfall => ({
  kind: 'clash',
  says: '',
  withLines: [],
  withShares: [],
  withLocks: [],
  mostPossible: 2,
  ...part,
});

const shortfalls: Readonly<Record<string, Shortfall>> = {
  'okafor-1': short({
    says: 'The loins that could be boned are sawn into chops.',
    withLines: ['vance-1', 'marsh-1'],
    withShares: ['corder-half'],
  }),
  'quist-1': short({
    kind: 'scarce',
    says: 'Three tenderloins are wanted beside it.',
    withLines: ['marsh-2', 'quist-1'],
  }),
};

function layPlan(): CuttingPlan {
  const sides = day.animals
    .flatMap((animal) => animal.sides)
    .map((facts) => new SideLayer(hog, facts, wishes[facts.sideId] ?? {}).lay());
  const pieces = sides.flatMap((laid) => [
    ...laid.items,
    ...laid.bars.flatMap((bar) => bar.runs.flatMap((run) => run.pieces)),
  ]);
  const fillOf = ({ lineId, ask }: DemandLine): LineFill => {
    const mine = pieces.flatMap(({ owner, pieceId }) =>
      owner && 'lineId' in owner && owner.lineId === lineId ? [pieceId] : [],
    );
    const [asked, filled] = 'pieces' in ask ? [ask.pieces, mine.length] : [ask.grams, ask.grams];
    return {
      lineId,
      asked,
      filled,
      pieceIds: mine,
      bulkGrams: 'pieces' in ask ? 0 : ask.grams,
      shortfall: shortfalls[lineId] ?? null,
    };
  };
  return {
    dayId: day.dayId,
    sides,
    singles: day.animals.flatMap(({ animalId }) =>
      hog.singles.map(({ item, meanGrams }) => ({
        pieceId: `${animalId}:${item}`,
        animalId,
        item,
        massMg: meanGrams * 1000,
        owner: null,
      })),
    ),
    lines: lines.map(fillOf),
    shares: [{ shareId: 'corder-half', sideIds: ['a-left'], shortfall: null }],
    proof: null,
  };
}

export const plan: CuttingPlan = layPlan();

const order = (orderId: string, number: number, owner: string) => ({
  orderId,
  number,
  owner,
  note: '',
  lineIds: lines.filter((each) => each.orderId === orderId).map(({ lineId }) => lineId),
  shareIds: orderId === 'corder' ? ['corder-half'] : [],
});

const { species: _, ...travelling } = day;

export const board: Board = {
  shop: {
    shopId: 'shop',
    name: 'A shop',
    currency: 'USD',
    timeZone: 'America/Chicago',
    weightUnit: 'lb',
    lengthUnit: 'in',
  },
  day: {
    dayId: 'day-1',
    date: day.date,
    state: 'open',
    version: 4,
    plannedVersion: 4,
    plannedAt: '2026-11-25T12:02:00Z',
  },
  cuttingDay: travelling,
  orders: ['Marsh', 'Okafor', 'The Tin Lamp', 'Vance', 'Lindqvist', 'Quist', 'Corder'].map((owner, index) =>
    order(owner === 'The Tin Lamp' ? 'lamp' : owner.toLowerCase(), 201 + index, owner),
  ),
  plan,
};

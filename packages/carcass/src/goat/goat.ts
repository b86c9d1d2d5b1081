import { fromStocks, looseCut, piece, ribsOf, slices, wholeCuts } from '../cut-data.ts';
import type { Bulk, Cut, Item, Part, Species, Stock, Zone } from '../species.ts';
import { block, manner, named, operation, outputsOf, primal, released } from '../tree-data.ts';

/** Pounds of one side of a Boer kid of 39.5 lb; what names no source of its own splits a published line. */
const { part, item, bulk } = outputsOf('cornell-split');

const regions = {
  shoulder: 'Shoulder and neck',
  shank: 'Shanks and breast',
  rack: 'Rack and loin',
  plate: 'Ribs and flank',
  sirloin: 'Sirloin',
  leg: 'Leg',
} as const;

const pitchMm = 22;
const bone = (parts: number) => released('bulk', 'bone', parts, 'cornell-split');

const zone = (id: string, name: string, stations: Zone['stations'], count: number): Zone => ({
  id,
  name,
  stations,
  lengthMm: pitchMm * count,
  lengthSource: 'memory',
  mass: { parts: count, source: 'cornell-split' },
  manners: [
    manner({
      id: 'bone-in',
      name: `${name} chops`,
      stock: `${id}-bone-in`,
      tool: 'saw',
      // Chops 4.6 lb of the 5.6 lb that rib and loin are taken to weigh.
      keeps: { parts: 4.6, source: 'cornell-2009' },
      releases: [bone(1)],
      minutes: 2,
    }),
  ],
  maySplit: false,
});

const parts: readonly Part[] = [
  primal('side', 'Side', Object.keys(regions), [
    operation('break-side', 'Break the side', 'Shoulder off behind rib 5, leg off ahead of the hip.', 5, [
      part('shoulder', 6.5),
      part('rack-and-loin', 2.8),
      item('ribs-and-flank', 2, 'cornell-2009', { regions: ['plate'] }),
      item('shanks-and-breast', 1.1, 'cornell-2009', { regions: ['shank'] }),
      part('leg', 5.9),
      bulk('bone', 0.7),
      bulk('loss', 0.75),
    ]),
  ]),
  primal(
    'shoulder',
    'Shoulder',
    ['shoulder'],
    [
      operation(
        'shoulder-and-steaks',
        'Roasts, arm and blade steaks',
        'Arm and blade in steaks, the rest in roasts.',
        6,
        [
          item('shoulder-neck-roast', 3, 'cornell-2009'),
          part('arm', 1.3, 'cornell-2009'),
          part('blade', 1.1, 'cornell-2009'),
          bulk('bone', 1.1),
        ],
      ),
      operation('shoulder-cubed', 'Cube the shoulder', 'Bone in, for the pot.', 8, [
        item('cubed-shoulder', 5.6, 'practice'),
        bulk('bone', 0.9, 'practice'),
      ]),
    ],
  ),
  primal(
    'leg',
    'Leg',
    ['sirloin', 'leg'],
    [
      operation('leg-roast', 'Sirloin off, leg in a roast', 'Bone in.', 4, [
        item('sirloin', 1, 'cornell-2009', { regions: ['sirloin'] }),
        item('leg-roast', 3.7, 'cornell-2009', { regions: ['leg'] }),
        bulk('bone', 1.2),
      ]),
      operation('leg-whole', 'Keep the leg whole', 'Sirloin on, shank on.', 1, [
        item('leg-whole', 5.6, 'practice'),
        bulk('trim', 0.3, 'practice'),
      ]),
    ],
  ),
  {
    kind: 'bar',
    id: 'rack-and-loin',
    name: 'Rack and loin',
    regions: ['rack'],
    zones: [zone('rib', 'Rib', { fromRib: 6 }, 8), zone('loin', 'Loin', { fixed: 6 }, 6)],
  },
  block({
    id: 'arm',
    name: 'Arm',
    regions: ['shoulder'],
    lengthMm: 60,
    tool: 'saw',
    source: 'cornell-split',
  }),
  block({
    id: 'blade',
    name: 'Blade',
    regions: ['shoulder'],
    lengthMm: 60,
    tool: 'saw',
    source: 'cornell-split',
  }),
];

const items = named<Item>([
  piece('shoulder-neck-roast', 'Shoulder and neck roast', 1100),
  piece('cubed-shoulder', 'Cubed shoulder', 1200),
  piece('ribs-and-flank', 'Ribs and flank', 700),
  piece('shanks-and-breast', 'Shanks and breast', 800),
  piece('sirloin', 'Sirloin', 1400),
  piece('leg-roast', 'Leg roast', 1400),
  piece('leg-whole', 'Whole leg', 1300),
  piece('liver', 'Liver', 500),
  piece('heart', 'Heart', 400),
]);

const stocks = named<Stock>([
  piece('rib-bone-in', 'Rack, bone in', 1800),
  piece('loin-bone-in', 'Loin, bone in', 1800),
  piece('arm', 'Arm of the shoulder', 1100),
  piece('blade', 'Blade of the shoulder', 1100),
]);

const bulks = named<Bulk>([
  { id: 'trim', name: 'Lean trim', worthMinorPerKg: 700 },
  { id: 'bone', name: 'Bone and fat', worthMinorPerKg: 60 },
  { id: 'loss', name: 'Shrink and saw dust', worthMinorPerKg: 0 },
  { id: 'lost', name: 'Set aside: damaged or condemned', worthMinorPerKg: 0 },
]);

const portioned: readonly Cut[] = [
  slices('rib-chop', 'Rib chop', 'From the rack, bone in.', ['rib-bone-in'], 25_400),
  fromStocks('rack', 'Rack', 'Bone in, counted in ribs.', {
    stocks: ['rib-bone-in'],
    portions: [ribsOf(3, 8)],
    usual: { by: 'ribs', ribs: 8 },
  }),
  slices('loin-chop', 'Loin chop', 'From the loin, bone in.', ['loin-bone-in'], 25_400),
  slices('arm-steak', 'Arm steak', 'Across the arm.', ['arm'], 19_050),
  slices('blade-steak', 'Blade steak', 'Across the blade.', ['blade'], 19_050),
];

/** The goat: a small third species, after the retail cuts of one kid. */
export const goat: Species = {
  id: 'goat',
  name: 'Goat',
  hangingGrams: { min: 5_000, max: 50_000, source: 'practice' },
  ribs: { min: 13, max: 13, usual: 13, source: 'memory' },
  lengthGrowth: { referenceGrams: 17_917, exponent: 0.33, source: 'practice' },
  sideRoot: 'side',
  regions,
  parts: named<Part>(parts),
  bench: [],
  items,
  stocks,
  bulks,
  singles: [
    { item: 'liver', meanGrams: 450, source: 'memory', needs: ['organs'] },
    { item: 'heart', meanGrams: 130, source: 'memory', needs: ['organs'] },
  ],
  cuts: named<Cut>([
    ...portioned,
    ...wholeCuts(Object.values(items)),
    looseCut('ground-goat', 'Ground goat', 'From the trim.', 'trim'),
    looseCut('soup-bones', 'Soup bones', 'Bones for stock.', 'bone'),
  ]),
};

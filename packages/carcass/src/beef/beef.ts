import { fromStocks, joints, looseCut, piece, ribsOf, slices, wholeCuts } from '../cut-data.ts';
import type { Bulk, Cut, Item, Part, Species, Stock } from '../species.ts';
import { named } from '../tree-data.ts';
import { chuckParts } from './beef-chuck.ts';
import { ribParts } from './beef-rib.ts';
import { beefRegions, beefSide } from './beef-side.ts';

const items = named<Item>([
  piece('flat-iron', 'Flat iron', 1900),
  piece('denver', 'Denver', 1900),
  piece('shoulder-tender', 'Shoulder tender', 2200),
  piece('chuck-eye', 'Chuck eye', 1500),
  piece('chuck-eye-long', 'Long chuck eye', 1700),
  piece('cross-rib', 'Cross rib', 1200),
  piece('back-ribs', 'Back ribs', 900),
  piece('rib-short-ribs', 'Short ribs of the rib', 1300),
  piece('navel', 'Navel', 800),
  piece('brisket-whole', 'Whole brisket', 1100),
  piece('brisket-flat', 'Brisket flat', 1200),
  piece('brisket-point', 'Brisket point', 1000),
  piece('neck-roast', 'Neck roast', 900),
  piece('outside-skirt', 'Outside skirt', 2000),
  piece('hanger', 'Hanger', 2000),
]);

const stocks = named<Stock>([
  piece('rib-bone-in', 'Rib, bone in', 2200),
  piece('rib-long', 'Rib on long bones', 2400),
  piece('ribeye', 'Ribeye', 2900),
  piece('short-ribs-english', 'Short ribs, English', 1200),
  piece('short-ribs-flanken', 'Short ribs, flanken', 1200),
  piece('shank-stew', 'Shank meat', 1000),
  piece('shank-sawn', 'Shank, sawn', 800),
  piece('chuck-blade', 'Blade of the chuck', 950),
  piece('chuck-arm', 'Arm of the chuck', 950),
  piece('clod-heart', 'Clod heart', 1200),
]);

const bulks = named<Bulk>([
  { id: 'trim', name: 'Lean trim', worthMinorPerKg: 750 },
  { id: 'fat-trim', name: 'Fat trim', worthMinorPerKg: 50 },
  { id: 'bone', name: 'Bone', worthMinorPerKg: 80 },
  { id: 'loss', name: 'Shrink and saw dust', worthMinorPerKg: 0 },
  { id: 'lost', name: 'Set aside: damaged or condemned', worthMinorPerKg: 0 },
]);

const portioned: readonly Cut[] = [
  fromStocks('rib-roast', 'Standing rib roast', 'Bone in, counted in ribs: seven a side.', {
    stocks: ['rib-bone-in'],
    portions: [ribsOf(2, 7)],
    usual: { by: 'ribs', ribs: 4 },
  }),
  fromStocks('rib-steak', 'Rib steak', 'A steak on one rib.', {
    stocks: ['rib-bone-in'],
    portions: [ribsOf(1, 1)],
    usual: { by: 'ribs', ribs: 1 },
  }),
  fromStocks(
    'long-bone-steak',
    'Long-bone rib steak',
    'A rib steak on its whole rib. That side gives no rib short ribs.',
    {
      stocks: ['rib-long'],
      portions: [ribsOf(1, 1)],
      usual: { by: 'ribs', ribs: 1 },
    },
  ),
  slices(
    'ribeye-steak',
    'Ribeye steak',
    'From the boned rib; its ribs leave as back ribs.',
    ['ribeye'],
    31_750,
  ),
  fromStocks('short-ribs-english', 'Short ribs, English cut', 'Along the bones, two to five ribs.', {
    stocks: ['short-ribs-english'],
    portions: [ribsOf(2, 5)],
    usual: { by: 'ribs', ribs: 3 },
  }),
  fromStocks('short-ribs-flanken', 'Short ribs, flanken cut', 'Across the bones, two to five ribs.', {
    stocks: ['short-ribs-flanken'],
    portions: [ribsOf(2, 5)],
    usual: { by: 'ribs', ribs: 3 },
  }),
  slices('blade-steak', 'Blade steak', 'Sawn across the chuck, blade bone in.', ['chuck-blade'], 25_400),
  joints(
    'pot-roast',
    'Blade pot roast',
    'A thick slice of the chuck: two or three a side.',
    ['chuck-blade'],
    [1800, 3000],
  ),
  joints('arm-roast', 'Arm-bone roast', 'Sawn across the arm.', ['chuck-arm'], [1500, 2500]),
  joints('clod-roast', 'Clod heart roast', 'From the heart of the clod.', ['clod-heart'], [1200, 2000]),
  slices('ranch-steak', 'Ranch steak', 'A slice of the heart of the clod.', ['clod-heart'], 25_400),
  slices('shank-slice', 'Cross-cut shank', 'Sawn across, marrow in it.', ['shank-sawn'], 38_100),
  joints('shank-stew', 'Stew of the shank', 'Boned shank.', ['shank-stew'], [400, 700]),
];

const corned: Cut = {
  id: 'corned-brisket',
  name: 'Brisket, corned whole',
  says: 'The whole brisket in the cure: it is no fresh one any more.',
  sources: [{ from: 'item', id: 'brisket-whole' }],
  portions: [{ by: 'whole' }],
  usual: { by: 'whole' },
};

/** The fore quarter of beef, ribs 1 to 12. Masses are pounds of a quarter of 140 lb. */
export const beefFore: Species = {
  id: 'beef-fore',
  name: 'Beef fore quarter',
  hangingGrams: { min: 60_000, max: 260_000, source: 'practice' },
  ribs: { min: 13, max: 13, usual: 13, source: 'memory' },
  lengthGrowth: { referenceGrams: 127_006, exponent: 0.33, source: 'practice' },
  sideRoot: 'side',
  regions: beefRegions,
  parts: named<Part>([beefSide, ...chuckParts, ...ribParts]),
  bench: [],
  items,
  stocks,
  bulks,
  singles: [{ item: 'hanger', meanGrams: 680, source: 'hanger-800', needs: ['organs'] }],
  cuts: named<Cut>([
    ...portioned,
    ...wholeCuts(Object.values(items), {
      hanger: 'One a beast: who shares the beast shares it by the shop’s rule.',
    }),
    corned,
    looseCut('ground-beef', 'Ground beef', 'From the trim.', 'trim'),
    looseCut('soup-bones', 'Soup bones', 'Bones for stock.', 'bone'),
  ]),
};

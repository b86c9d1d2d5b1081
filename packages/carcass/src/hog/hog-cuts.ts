import type { Bulk, Cut, CutSource, Item, Portion, PortionRule, Stock } from '../species.ts';

const named = <T extends { readonly id: string }>(list: readonly T[]): Readonly<Record<string, T>> =>
  Object.fromEntries(list.map((entry) => [entry.id, entry]));

const item = (id: string, name: string, worthMinorPerKg: number): Item => ({ id, name, worthMinorPerKg });

export const hogItems = named<Item>([
  item('tenderloin', 'Tenderloin', 1500),
  item('kidney', 'Kidney', 300),
  item('outside-skirt', 'Outside skirt', 900),
  item('back-ribs', 'Back ribs', 1000),
  item('long-rib-rack', 'Rack of long ribs', 900),
  item('spareribs', 'Spareribs', 700),
  item('st-louis-ribs', 'St Louis ribs', 850),
  item('rib-tips', 'Rib tips', 400),
  item('rib-sheet', 'Rib sheet', 600),
  item('porchetta', 'Porchetta of the whole middle', 900),
  item('porchetta-fillet', 'Porchetta of the whole middle, tenderloin rolled in', 920),
  item('porchetta-half', 'Half-length porchetta', 900),
  item('belly-porchetta', 'Belly porchetta', 850),
  item('butt-whole', 'Whole butt', 620),
  item('coppa', 'Coppa', 1100),
  item('butt-braising', 'Braising meat of the butt', 560),
  item('picnic-whole', 'Whole picnic', 420),
  item('neck-bones', 'Neck bones', 180),
  item('jowl', 'Jowl', 450),
  item('front-hock', 'Front hock', 350),
  item('front-foot', 'Front foot', 200),
  item('hind-hock', 'Hind hock', 350),
  item('hind-foot', 'Hind foot', 200),
  item('ham-whole', 'Whole leg', 480),
  item('ham-rump-half', 'Rump half of the leg', 520),
  item('ham-shank-half', 'Shank half of the leg', 470),
  item('ham-rump-end', 'Rump end of the leg', 500),
  item('ham-shank-end', 'Shank end of the leg', 450),
  item('ham-inside', 'Inside of the leg', 700),
  item('ham-outside', 'Outside of the leg', 620),
  item('ham-knuckle', 'Knuckle', 680),
  item('ham-rump', 'Rump', 660),
  item('hanging-tender', 'Hanging tender', 700),
  item('head', 'Head', 150),
  item('tongue', 'Tongue', 400),
  item('tail', 'Tail', 250),
  item('liver', 'Liver', 250),
  item('heart', 'Heart', 250),
]);

const stock = (id: string, name: string, worthMinorPerKg: number): Stock => ({ id, name, worthMinorPerKg });

export const hogStocks = named<Stock>([
  stock('blade-bone-in', 'Blade end, bone in', 520),
  stock('country-ribs', 'Country-style ribs', 560),
  stock('blade-boned', 'Blade end, boneless', 600),
  stock('rib-bone-in', 'Rib end, bone in', 700),
  stock('rib-long', 'Rib end on long bare ribs', 760),
  stock('loin-boned', 'Centre loin, boneless', 850),
  stock('lumbar-bone-in', 'Loin end, bone in', 640),
  stock('lumbar-with-fillet', 'Loin end with the tenderloin', 760),
  stock('sirloin-bone-in', 'Sirloin, bone in', 520),
  stock('sirloin-with-fillet', 'Sirloin, bone in, with the fillet head', 560),
  stock('sirloin-boned', 'Sirloin, boneless', 600),
  stock('belly-slab', 'Slab belly', 620),
  stock('belly-ribs-on', 'Belly, ribs in', 560),
  stock('butt-bone-in', 'Butt, bone in', 560),
  stock('butt-boneless', 'Butt, boneless', 620),
  stock('picnic-boneless', 'Picnic, boneless', 500),
  stock('ham-centre', 'Centre of the leg', 600),
]);

export const hogBulks = named<Bulk>([
  { id: 'trim', name: 'Lean trim', worthMinorPerKg: 380 },
  { id: 'fat-trim', name: 'Fat trim', worthMinorPerKg: 90 },
  { id: 'leaf-fat', name: 'Leaf fat', worthMinorPerKg: 350 },
  { id: 'back-fat', name: 'Hard back fat', worthMinorPerKg: 220 },
  { id: 'bone', name: 'Bone', worthMinorPerKg: 60 },
  { id: 'cartilage', name: 'Cartilage strip', worthMinorPerKg: 60 },
  { id: 'skin', name: 'Skin', worthMinorPerKg: 80 },
  { id: 'loss', name: 'Shrink and saw dust', worthMinorPerKg: 0 },
  { id: 'lost', name: 'Set aside: damaged or condemned', worthMinorPerKg: 0 },
]);

const inch = 25_400;
/** Whole-number thickness of a customer's inches: an eighth of an inch is exactly 3 175 um. */
const thickness: PortionRule = { by: 'thickness', minUm: 9_525, maxUm: 101_600 };
const roast: PortionRule = { by: 'weight', minGrams: 300, maxGrams: 4_500 };
const ribs = (min: number, max: number): PortionRule => ({ by: 'ribs', min, max });
const whole: PortionRule = { by: 'whole' };
const fromStock = (...ids: readonly string[]): readonly CutSource[] =>
  ids.map((id) => ({ from: 'stock', id }));
const oneInch: Portion = { by: 'thickness', um: inch };
const weight = (fromGrams: number, toGrams: number): Portion => ({ by: 'weight', fromGrams, toGrams });

const portioned: readonly Cut[] = [
  {
    id: 'rib-chop',
    name: 'Bone-in rib chop',
    says: 'From the rib end, bone in. Takes the back ribs with it.',
    sources: fromStock('rib-bone-in'),
    portions: [thickness, ribs(1, 2)],
    usual: oneInch,
  },
  {
    id: 'rib-rack',
    name: 'Rack of pork',
    says: 'Bone-in rib roast, counted in ribs. Takes the back ribs with it.',
    sources: fromStock('rib-bone-in'),
    portions: [ribs(3, 11)],
    usual: { by: 'ribs', ribs: 8 },
  },
  {
    id: 'long-bone-chop',
    name: 'Long-bone chop',
    says: 'A rib chop on its whole rib, bare. That side gives no spareribs.',
    sources: fromStock('rib-long'),
    portions: [ribs(1, 2)],
    usual: { by: 'ribs', ribs: 1 },
  },
  {
    id: 'long-bone-rack',
    name: 'Long-bone rack',
    says: 'A rack on long bare ribs. That side gives no spareribs.',
    sources: fromStock('rib-long'),
    portions: [ribs(3, 11)],
    usual: { by: 'ribs', ribs: 6 },
  },
  {
    id: 't-bone-chop',
    name: 'T-bone chop',
    says: 'From the loin end with the tenderloin in it. That side gives no whole tenderloin.',
    sources: fromStock('lumbar-with-fillet'),
    portions: [thickness],
    usual: oneInch,
  },
  {
    id: 'loin-chop',
    name: 'Bone-in loin chop, tenderloin out',
    says: 'From the loin end, bone in; the tenderloin went elsewhere.',
    sources: fromStock('lumbar-bone-in'),
    portions: [thickness],
    usual: oneInch,
  },
  {
    id: 'centre-chop',
    name: 'Bone-in centre chop',
    says: 'Bone in, from the rib end or the loin end as they come.',
    sources: fromStock('rib-bone-in', 'lumbar-bone-in', 'lumbar-with-fillet'),
    portions: [thickness],
    usual: oneInch,
  },
  {
    id: 'blade-chop',
    name: 'Blade chop',
    says: 'From the shoulder end of the loin: well marbled, for braising or a slow grill.',
    sources: fromStock('blade-bone-in'),
    portions: [thickness],
    usual: oneInch,
  },
  {
    id: 'blade-roast',
    name: 'Blade-end roast',
    says: 'Bone-in roast from the shoulder end of the loin.',
    sources: fromStock('blade-bone-in'),
    portions: [roast],
    usual: weight(900, 1400),
  },
  {
    id: 'country-ribs',
    name: 'Country-style ribs',
    says: 'From the blade end of the loin, 3 to 6 ribs of it.',
    sources: fromStock('country-ribs'),
    portions: [{ by: 'weight', minGrams: 200, maxGrams: 2_000 }],
    usual: weight(650, 900),
  },
  {
    id: 'boneless-chop',
    name: 'Boneless loin chop',
    says: 'From the boned centre loin; its ribs leave as back ribs.',
    sources: fromStock('loin-boned'),
    portions: [thickness],
    usual: oneInch,
  },
  {
    id: 'loin-roast',
    name: 'Boneless loin roast',
    says: 'From the boned centre loin; its ribs leave as back ribs.',
    sources: fromStock('loin-boned'),
    portions: [roast],
    usual: weight(900, 1400),
  },
  {
    id: 'back-bacon',
    name: 'Loin for back bacon',
    says: 'Boned centre loin to be cured. Takes the chops with it.',
    sources: fromStock('loin-boned'),
    portions: [roast],
    usual: weight(1000, 1600),
  },
  {
    id: 'sirloin-chop',
    name: 'Sirloin chop',
    says: 'From the hip end of the loin, bone in.',
    sources: fromStock('sirloin-bone-in', 'sirloin-with-fillet'),
    portions: [thickness],
    usual: oneInch,
  },
  {
    id: 'sirloin-roast',
    name: 'Sirloin roast',
    says: 'Boneless roast from the hip end of the loin.',
    sources: fromStock('sirloin-boned'),
    portions: [roast],
    usual: weight(700, 1200),
  },
  {
    id: 'slab-bacon',
    name: 'Slab bacon',
    says: 'Sheeted belly in one piece, for the cure. Its ribs leave as spareribs.',
    sources: fromStock('belly-slab'),
    portions: [roast],
    usual: weight(1360, 1600),
  },
  {
    id: 'fresh-belly',
    name: 'Fresh belly',
    says: 'Boneless belly for roasting or braising.',
    sources: fromStock('belly-slab'),
    portions: [roast, thickness],
    usual: weight(900, 1200),
  },
  {
    id: 'rib-in-belly',
    name: 'Belly roast, ribs in',
    says: 'Belly with its ribs left in. That side gives no spareribs.',
    sources: fromStock('belly-ribs-on'),
    portions: [roast, ribs(2, 6)],
    usual: weight(1000, 1500),
  },
  {
    id: 'blade-steak',
    name: 'Blade steak',
    says: 'Cut across the butt, bone in.',
    sources: fromStock('butt-bone-in'),
    portions: [thickness],
    usual: { by: 'thickness', um: 19_050 },
  },
  {
    id: 'butt-roast',
    name: 'Butt roast',
    says: 'A length of the butt, bone in or boneless as it comes; for pulling and braising.',
    sources: fromStock('butt-bone-in', 'butt-boneless'),
    portions: [roast],
    usual: weight(1360, 1815),
  },
  {
    id: 'picnic-roast',
    name: 'Boneless picnic roast',
    says: 'Rolled from the boned picnic; for slow roasting.',
    sources: fromStock('picnic-boneless'),
    portions: [roast],
    usual: weight(1000, 1500),
  },
  {
    id: 'ham-steak',
    name: 'Centre ham steak',
    says: 'Cut across the middle of the leg; no whole leg is left.',
    sources: fromStock('ham-centre'),
    portions: [thickness],
    usual: { by: 'thickness', um: 12_700 },
  },
];

const says: Readonly<Record<string, string>> = {
  tenderloin: 'The whole fillet, pulled. Two a hog; a side that gives T-bone chops gives none.',
  'back-ribs': 'Eight ribs or more from a boned loin. Bone-in rib chops take them.',
  spareribs: 'One sheet a side, from under the belly: one slab of about 2 to 3 lb, feeds two or three.',
  porchetta:
    'The whole middle boned and rolled, skin on. That side gives no chops, no loin roast and no slab.',
  'hanging-tender': 'One an animal and small: a snack for one, or for the sausage.',
};

const wholeCuts: readonly Cut[] = Object.values(hogItems).map((entry) => ({
  id: entry.id,
  name: entry.name,
  says: says[entry.id] ?? 'Sold as one piece.',
  sources:
    entry.id === 'porchetta'
      ? [
          { from: 'item', id: 'porchetta' },
          { from: 'item', id: 'porchetta-fillet' },
        ]
      : [{ from: 'item', id: entry.id }],
  portions: [whole],
  usual: whole,
}));

const loose = (id: string, name: string, about: string, bulk: string): Cut => ({
  id,
  name,
  says: about,
  sources: [{ from: 'bulk', id: bulk }],
  portions: [{ by: 'bulk' }],
  usual: { by: 'bulk' },
});

const looseCuts: readonly Cut[] = [
  loose(
    'ground-pork',
    'Ground pork',
    'From the trim. Beyond the natural trim a whole primal has to be ground.',
    'trim',
  ),
  loose('leaf-fat', 'Leaf fat', 'The fat of the cavity, kept apart: the best for rendering.', 'leaf-fat'),
  loose('back-fat', 'Back fat', 'Hard fat from over the loin.', 'back-fat'),
  loose('soup-bones', 'Soup bones', 'Bones for stock.', 'bone'),
  loose('skin', 'Skin', 'Skin for crackling.', 'skin'),
];

export const hogCuts = named<Cut>([...portioned, ...wholeCuts, ...looseCuts]);

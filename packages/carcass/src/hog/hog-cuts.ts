import { looseCut, wholeCuts } from '../cut-data.ts';
import type { Cut, CutSource, Portion, PortionRule } from '../species.ts';
import { named } from '../tree-data.ts';
import { hogItems } from './hog-pieces.ts';

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
    id: 'crown',
    name: 'Crown roast',
    says: 'A rack of each side bent round and tied. Takes the rib chops and the back ribs of both.',
    sources: fromStock('rib-bone-in'),
    portions: [ribs(7, 11)],
    usual: { by: 'ribs', ribs: 8 },
    bothSides: true,
  },
  {
    id: 'small-crown',
    name: 'Small crown',
    says: 'One long rack bent round and tied, slit between the ribs.',
    sources: fromStock('rib-bone-in'),
    portions: [ribs(8, 11)],
    usual: { by: 'ribs', ribs: 9 },
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
    id: 'sirloin-chop-with-fillet',
    name: 'Sirloin chop, fillet in',
    says: 'From the hip end of the loin with the head of the tenderloin in it. That side gives no whole tenderloin.',
    sources: fromStock('sirloin-with-fillet'),
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
    id: 'fat-cap-chop',
    name: 'Chop under its fat',
    says: 'A rib or loin chop with a thick cap of fat. That side gives no slab of back fat.',
    sources: fromStock('rib-capped', 'lumbar-capped'),
    portions: [thickness],
    usual: oneInch,
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
    id: 'thin-slab',
    name: 'Thin slab bacon',
    says: 'The slab of a belly whose ribs took some meat with them.',
    sources: fromStock('belly-thin'),
    portions: [roast],
    usual: weight(1200, 1500),
  },
  {
    id: 'rindless-slab',
    name: 'Slab bacon, rind off',
    says: 'Slab for the cure without its rind; the rind leaves apart.',
    sources: fromStock('belly-rindless'),
    portions: [roast],
    usual: weight(1360, 1600),
  },
  {
    id: 'pancetta',
    name: 'Belly for pancetta',
    says: 'A length of sheeted belly for the dry cure. Takes the slab with it.',
    sources: fromStock('belly-slab'),
    portions: [roast],
    usual: weight(1500, 2000),
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
    id: 'butt-country-ribs',
    name: 'Country-style ribs of the butt',
    says: 'Strips of the butt: not the ribs of the loin that share the name.',
    sources: fromStock('butt-bone-in', 'butt-boneless'),
    portions: [{ by: 'weight', minGrams: 200, maxGrams: 2_000 }],
    usual: weight(650, 900),
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
    id: 'arm-steak',
    name: 'Arm steak',
    says: 'Cut across the picnic, bone in; no whole picnic is left.',
    sources: fromStock('picnic-bone-in'),
    portions: [thickness],
    usual: { by: 'thickness', um: 19_050 },
  },
  {
    id: 'shank-slice',
    name: 'Slice of shank',
    says: 'Sawn across the front shank, marrow in it, for braising.',
    sources: fromStock('fore-shank'),
    portions: [thickness],
    usual: { by: 'thickness', um: 38_100 },
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
  'back-ribs-full':
    'Blade end and rib end boned in one: eleven ribs or more in one sheet. That loin has no bone left in it.',
  'belly-whole': 'The sheeted belly in one piece at its full width.',
  'coppa-long':
    'The coppa with the two ribs behind the usual line: the blade end of the loin is so much shorter.',
  'ham-long': 'For the dry cure: it takes the sirloin with it.',
  head: 'Whole, tongue and cheeks in it.',
  'hanging-tender': 'One an animal and small: a snack for one, or for the sausage.',
};

const pieces: readonly Cut[] = wholeCuts(Object.values(hogItems), says).map((cut) =>
  cut.id === 'porchetta'
    ? { ...cut, sources: [...cut.sources, { from: 'item', id: 'porchetta-fillet' }] }
    : cut,
);

const looseCuts: readonly Cut[] = [
  looseCut(
    'ground-pork',
    'Ground pork',
    'From the trim. Beyond the natural trim a whole primal has to be ground.',
    'trim',
  ),
  looseCut('leaf-fat', 'Leaf fat', 'The fat of the cavity, kept apart: the best for rendering.', 'leaf-fat'),
  looseCut('back-fat', 'Back fat', 'Hard fat from over the loin.', 'back-fat'),
  looseCut('soup-bones', 'Soup bones', 'Bones for stock.', 'bone'),
  looseCut('skin', 'Skin', 'Skin for crackling.', 'skin'),
];

/** The same piece, cured: once the cure has begun there is no fresh one. */
const cured: readonly Cut[] = [
  {
    id: 'cured-leg',
    name: 'Leg for a ham, cured whole',
    says: 'The whole leg in the cure. It is no fresh leg any more.',
    sources: [{ from: 'item', id: 'ham-whole' }],
    portions: [whole],
    usual: whole,
  },
];

export const hogCuts = named<Cut>([...portioned, ...pieces, ...cured, ...looseCuts]);

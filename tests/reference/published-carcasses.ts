import type { KnownCarcass } from '@flitchbook/carcass';

/** What the model is to be asked for: ids of parts, items or bulk added up, or boxes in a style. */
type Asked =
  | { readonly sum: readonly string[] }
  | { readonly restOf: readonly string[] }
  | { readonly boxed: 'bone-in' | 'mixed' | 'boneless' | 'everything' }
  | { readonly chopsOf: readonly string[]; readonly thicknessUm: number }
  | { readonly hanging: true };

export interface PublishedLine {
  readonly name: string;
  /** one figure, or a range as printed */
  readonly printed: readonly [number] | readonly [number, number];
  readonly asked: Asked;
  /** why the two differ, where the model's span does not hold the printed figure */
  readonly because?: string;
}

/** A carcass in print, with what was known of it and what it gave. */
export interface PublishedCarcass {
  readonly title: string;
  readonly source: string;
  readonly unit: 'lb' | 'kg';
  readonly sides: 1 | 2;
  readonly known: Omit<KnownCarcass, 'dressing'>;
  readonly dressing: Readonly<Record<string, boolean>>;
  readonly lines: readonly PublishedLine[];
}

const packer = { skin: true, head: false, feet: true, 'leaf-fat': true };
const lb = (pounds: number): number => Math.round(pounds * 453.59237);
const line = (
  name: string,
  printed: number | readonly [number, number],
  asked: Asked | readonly string[],
  because?: string,
): PublishedLine => ({
  name,
  printed: typeof printed === 'number' ? [printed] : printed,
  asked: Array.isArray(asked) ? { sum: asked } : (asked as Asked),
  ...(because === undefined ? {} : { because }),
});

const primals = ['ham', 'belly-ribbed', 'loin-in', 'picnic', 'butt'] as const;

export const publishedCarcasses: readonly PublishedCarcass[] = [
  {
    title: 'National Pork Producers Council, 184 lb carcass',
    source: 'nppc',
    unit: 'lb',
    sides: 2,
    known: { coldGrams: lb(184) },
    dressing: packer,
    lines: [
      line('Ham', 45.0, ['ham']),
      line('Side with spareribs', 34.9, ['belly-ribbed']),
      line('Loin', 33.8, ['loin-in']),
      line('Picnic', 16.6, ['picnic']),
      line('Boston butt', 14.7, ['butt']),
      line('Miscellaneous', 39.2, { restOf: primals }),
    ],
  },
  {
    title: 'Oklahoma Department of Agriculture, 180 lb carcass, head on',
    source: 'oklahoma',
    unit: 'lb',
    sides: 2,
    known: { coldGrams: lb(180) },
    dressing: { ...packer, head: true },
    lines: [
      line(
        'Fresh ham',
        28,
        ['ham-whole'],
        'trimmed and boned harder: a fifth of the carcass is counted as cutting loss',
      ),
      line('Loin', 23, ['loin-in'], 'a loin trimmed of its fat; a fat hog, 23 lb of back fat'),
      line('Side', 23, ['belly-slab'], 'the whole side squared, not the slab after curing'),
      line(
        'Back fat',
        23,
        ['back-fat', 'leaf-fat', 'fat-trim'],
        'a lard-type hog: twice the fat of the reference carcass',
      ),
      line('Picnic', 12, ['picnic-whole'], 'trimmed of skin, fat and shank'),
      line('Boston butt', 9, ['butt'], 'trimmed of its fat'),
      line('Spareribs', 6, ['spareribs']),
      line('Feet', 3, ['front-foot', 'hind-foot']),
      line('Jowl', 3, ['jowl']),
    ],
  },
  {
    title: 'USDA farmers’ bulletin, U.S. No. 2 hog, percent of 184 lb',
    source: 'usda-bulletin',
    unit: 'lb',
    sides: 2,
    known: { coldGrams: lb(184) },
    dressing: packer,
    lines: [
      line('Ham, trimmed', 34.96, ['ham-whole']),
      line('Belly, untrimmed', 33.12, ['belly-ribbed']),
      line('Picnic and butt, trimmed', 31.28, ['picnic', 'butt']),
      line('Loin, trimmed', 31.28, ['loin-in']),
      line('Spareribs', 5.52, ['spareribs']),
      line('Jowl, untrimmed', 5.52, ['jowl'], 'cut with the cheek and part of the neck'),
    ],
  },
  {
    title: 'Extension leaflet on pork processing, leaner hog, percent of 184 lb',
    source: 'leaflet',
    unit: 'lb',
    sides: 2,
    known: { coldGrams: lb(184) },
    dressing: packer,
    lines: [
      line('Leg', 40.48, ['ham']),
      line('Belly', 34.96, ['belly-ribbed']),
      line('Loin', 29.44, ['loin-in']),
      line('Picnic', 18.4, ['picnic']),
      line('Boston butt', 16.56, ['butt']),
      line('Spareribs', 5.52, ['spareribs']),
      line('Jowl', 3.68, ['jowl']),
    ],
  },
  {
    title: 'Washington State Department of Agriculture, half of 75 lb (F1)',
    source: 'washington',
    unit: 'lb',
    sides: 1,
    known: { coldGrams: lb(150) },
    dressing: packer,
    lines: [
      line('Ham', 12, ['ham-whole'], 'a small hog with 20 % lard, trimmed close for the cure'),
      line(
        'Loin roasts, chops',
        9,
        ['loin-in'],
        'trimmed of its fat; blade and sirloin ends went to sausage',
      ),
      line('Bacon', 10, ['belly-slab'], 'sliced from the whole side'),
      line('Spareribs', 2, ['spareribs']),
      line('Butt roasts, chops', 6, ['butt']),
      line('Picnic', 7, ['picnic-whole']),
      line('All boxed, no lard, no bone', 52, { boxed: 'boneless' }, 'hocks and jowl went into the sausage'),
    ],
  },
  {
    title: '2017 meta-summary, middle weight class, one side of 44.49 kg',
    source: 'meta-2017',
    unit: 'kg',
    sides: 1,
    known: { coldGrams: 88_980 },
    dressing: packer,
    lines: [
      line('Whole ham', 10.93, ['ham']),
      line(
        'Trimmed loin',
        10.29,
        ['loin-in'],
        'a modern lean carcass; the loin is cut with more of the blade and back',
      ),
      line('Boston butt', 4.24, ['butt']),
      line('Picnic', 4.62, ['picnic']),
      line('Spareribs', 1.57, ['spareribs']),
      line('Natural-fall belly', 7.38, ['belly-ribbed'], 'weighed without its spareribs, before squaring'),
    ],
  },
  {
    title: 'Research herd of 2011, one side, 81.84 kg hot',
    source: 'herd-2011',
    unit: 'kg',
    sides: 1,
    known: { hotGrams: 81_840 },
    dressing: packer,
    lines: [
      line('Ham', 9.63, ['ham']),
      line('Loin', 8.28, ['loin-in'], 'a modern lean carcass, as in the meta-summary'),
      line('Belly', 5.03, ['belly-slab'], 'squared but not yet trimmed to the bacon slab'),
      line('Boston butt', 3.9, ['butt']),
      line('Picnic', 3.72, ['picnic']),
      line('Spareribs', 1.53, ['spareribs']),
    ],
  },
  {
    title: 'Half of 127.5 lb, grower’s page 2017 (F2)',
    source: 'half-127',
    unit: 'lb',
    sides: 1,
    known: { coldGrams: lb(255) },
    dressing: packer,
    lines: [
      line('Chops and loin roasts', 15.25, ['loin-in'], 'the ends of the loin went into 17 lb of sausage'),
      line('Butt', 11.3, ['butt']),
      line('Picnic', 9.1, ['picnic-whole'], 'part of it ground'),
      line('Spareribs', 2.8, ['spareribs'], 'cut narrow'),
      line('Belly', 9.0, ['belly-slab'], 'trimmed into the sausage'),
      line('Ham and ham steaks', 20.2, ['ham-whole'], 'part of it ground'),
      line('Leaf fat', 1.1, ['leaf-fat']),
      line('Back fat', 7.3, ['back-fat']),
      line(
        'Boxed with bones and fat',
        99.35,
        { boxed: 'everything' },
        'a fifth of the half is in no line: skin, feet, jowl, trim',
      ),
    ],
  },
  {
    title: 'Half of 48 lb, lard breed, grower’s page (F3)',
    source: 'half-48',
    unit: 'lb',
    sides: 1,
    known: { coldGrams: lb(96) },
    dressing: packer,
    lines: [
      line('Chops', 6.44, ['loin-out'], 'the ends of the loin are in the shoulder and the ham'),
      line('Shoulder', 9.5, ['butt', 'picnic']),
      line('Belly', 6, ['belly-slab'], 'a lard breed; left rough, on the bone'),
      line('Spareribs', 3, ['spareribs'], 'meaty: the flap was left on'),
      line('Ham', 9, ['ham-whole']),
      line('Leaf fat', 1.31, ['leaf-fat'], 'a lard breed carries its fat inside'),
      line('Back fat', 1.56, ['back-fat'], 'left on the joints'),
      line('Boxed', 39.8, { boxed: 'bone-in' }),
    ],
  },
  {
    title: 'Carcass of 167 lb, farm page (F4)',
    source: 'carcass-167',
    unit: 'lb',
    sides: 2,
    known: { coldGrams: lb(167) },
    dressing: packer,
    lines: [
      line('Bacon', 16.5, ['belly-slab']),
      line('Ham', 32.9, ['ham-whole']),
      line('Chops and loin roasts', 25.7, ['loin-in'], 'trimmed; the trim is in the 7 lb of ground'),
      line('Steaks and shoulder', 23.4, ['butt', 'picnic'], 'part of it ground'),
      line('Ribs', 7.3, ['spareribs'], 'both sheets cut meaty, or country-style ribs among them'),
      line('Hocks', 3.9, ['front-hock', 'hind-hock']),
      line(
        'Boxed',
        116.7,
        { boxed: 'mixed' },
        'bacon and hams weighed after smoking, which takes about a tenth of them',
      ),
    ],
  },
  {
    title: 'Half of 143.5 lb, farm page (F5)',
    source: 'half-143',
    unit: 'lb',
    sides: 1,
    known: { coldGrams: lb(287) },
    dressing: packer,
    lines: [line('Usual cuts', 98, { boxed: 'boneless' })],
  },
  {
    title: 'Carcass of 212 lb, nearly all of it sliced, farm page 2016 (F6)',
    source: 'carcass-212',
    unit: 'lb',
    sides: 2,
    known: { coldGrams: lb(212) },
    dressing: { ...packer, feet: false },
    lines: [
      line(
        'Boxed, no feet or bones',
        190.09,
        { boxed: 'everything' },
        'the bones were left out of the boxes',
      ),
    ],
  },
  {
    title: 'Pig of 90 kg live, pig-keeping course (F7)',
    source: 'course-90',
    unit: 'kg',
    sides: 2,
    known: { liveGrams: 90_000 },
    dressing: packer,
    lines: [
      line('Dressed, just under', 65, { hanging: true }),
      line('Belly', 4, ['belly-slab'], 'one boned piece; the rest of it was sold as other joints'),
    ],
  },
  {
    title: 'Half of 100 lb, custom processor (F8)',
    source: 'half-100',
    unit: 'lb',
    sides: 1,
    known: { coldGrams: lb(200) },
    dressing: packer,
    lines: [
      line('Ham', [16, 20], ['ham-whole']),
      line('Spareribs', 2, ['spareribs'], 'cut narrow'),
      line('Belly', [8, 10], ['belly-slab']),
      line('Chops of 3/4 in, pieces', 20, {
        chopsOf: ['rib-bone-in', 'lumbar-bone-in'],
        thicknessUm: 19_050,
      }),
    ],
  },
  {
    title: 'Half, the writer’s usual carcass is 180 lb, farm page 2006 (F9)',
    source: 'half-90',
    unit: 'lb',
    sides: 1,
    known: { coldGrams: lb(180) },
    dressing: packer,
    lines: [
      line('Chops of 1 in, pieces', 23, {
        chopsOf: ['blade-bone-in', 'rib-bone-in', 'lumbar-bone-in', 'sirloin-bone-in'],
        thicknessUm: 25_400,
      }),
      line('Slab belly', 8, ['belly-slab']),
      line('Spareribs', 3, ['spareribs']),
      line('Home, 60 to 70 usual', [60, 75], { boxed: 'mixed' }),
    ],
  },
];

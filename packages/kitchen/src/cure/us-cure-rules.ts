import type { CureLimit, CureMethod, Jurisdiction, ProductClass } from './cure-rules.ts';

const checkedOn = '2026-11-25';
const table = '9 CFR 424.21(c), table of curing agents';
const baconRule = '9 CFR 424.22(b), 2024 edition';
const soaks: readonly CureMethod[] = ['short-soak', 'long-soak'];
const wet: readonly CureMethod[] = [...soaks, 'pumped'];
const all: readonly CureMethod[] = [...wet, 'dry-rub', 'mixed-in'];

type Figure = Pick<CureLimit, 'methods' | 'ppm'> & Partial<CureLimit>;

/** Outside the bacon rule the table gives both nitrites one weight. */
const bothNitrites = (ppm: number) => ({ 'sodium-nitrite': ppm, 'potassium-nitrite': ppm });
const bothNitrates = (ppm: number) => ({ 'sodium-nitrate': ppm, 'potassium-nitrate': ppm });

const nitrite = (figure: Figure): CureLimit => ({
  basis: 'ingoing',
  kind: 'at-most',
  of: 'nitrite',
  source: table,
  standing: 'quoted',
  checkedOn,
  ...figure,
});
const nitrate = (figure: Figure): CureLimit => nitrite({ of: 'nitrate', standing: 'derived', ...figure });

const finished = nitrite({
  methods: all,
  basis: 'residual',
  ppm: { 'sodium-nitrite': 200 },
  source: `${table}: finished product`,
});
const keptCold = nitrite({
  methods: all,
  kind: 'at-least',
  ppm: { 'sodium-nitrite': 120 },
  source:
    'FSIS Processing Inspectors’ Calculations Handbook (Directive 7620.3, 1995), p. 12, as quoted: products marked to keep refrigerated',
  standing: 'second-hand',
});
const noNitrate = nitrate({
  methods: all,
  ppm: bothNitrates(0),
  source: `${baconRule}: no nitrate in bacon`,
  standing: 'quoted',
});
const bacon = (figure: Figure): CureLimit => nitrite({ source: baconRule, skinFree: true, ...figure });
const ascorbate: CureLimit = bacon({
  methods: ['pumped'],
  kind: 'level',
  of: 'ascorbate',
  ppm: { ascorbate: 550 },
});

const classes: readonly ProductClass[] = [
  {
    id: 'ham-and-cuts',
    name: 'Ham, shoulder, loin, hock',
    says: 'Whole cuts that are not bacon.',
    limits: [
      nitrite({
        methods: wet,
        ppm: bothNitrites(200),
        source: `${table}: 2 lb to 100 gal of pickle at 10 % pump`,
      }),
      nitrite({ methods: ['dry-rub'], ppm: bothNitrites(625), source: `${table}: 1 oz to 100 lb` }),
      nitrate({
        methods: wet,
        ppm: bothNitrates(700),
        source: `${table}: 7 lb to 100 gal of pickle of 10 lb a gallon`,
      }),
      nitrate({ methods: ['dry-rub'], ppm: bothNitrates(2187.5), source: `${table}: 3 1/2 oz to 100 lb` }),
      keptCold,
      finished,
    ],
  },
  {
    id: 'ground',
    name: 'Ground or chopped',
    says: 'Cured sausage and other ground meat.',
    limits: [
      nitrite({ methods: ['mixed-in'], ppm: bothNitrites(156.25), source: `${table}: 1/4 oz to 100 lb` }),
      nitrate({ methods: ['mixed-in'], ppm: bothNitrates(1718.75), source: `${table}: 2 3/4 oz to 100 lb` }),
      keptCold,
      finished,
    ],
  },
  {
    id: 'bacon',
    name: 'Bacon',
    says: 'Cured belly. Pumped, it takes a required level of nitrite together with ascorbate or erythorbate.',
    limits: [
      bacon({ methods: ['pumped'], kind: 'level', ppm: { 'sodium-nitrite': 120, 'potassium-nitrite': 148 } }),
      ascorbate,
      bacon({ methods: soaks, ppm: { 'sodium-nitrite': 120, 'potassium-nitrite': 148 } }),
      bacon({ methods: ['dry-rub'], ppm: { 'sodium-nitrite': 200, 'potassium-nitrite': 246 } }),
      noNitrate,
    ],
  },
  {
    id: 'bacon-alternative-a',
    name: 'Pumped bacon, alternative A',
    says: 'The rule’s first alternative: less nitrite, under a quality control programme that the authority has accepted.',
    limits: [
      bacon({ methods: ['pumped'], kind: 'level', ppm: { 'sodium-nitrite': 100, 'potassium-nitrite': 123 } }),
      ascorbate,
      noNitrate,
    ],
  },
  {
    id: 'bacon-alternative-b',
    name: 'Pumped bacon, alternative B',
    says: 'The rule’s second alternative: 40 to 80 ppm with at least 0.7 % fermentable sugar and a lactic culture.',
    limits: [
      bacon({
        methods: ['pumped'],
        kind: 'at-least',
        ppm: { 'sodium-nitrite': 40, 'potassium-nitrite': 49 },
      }),
      bacon({ methods: ['pumped'], ppm: { 'sodium-nitrite': 80, 'potassium-nitrite': 99 } }),
      ascorbate,
      noNitrate,
    ],
  },
];

export const unitedStates: Jurisdiction = {
  id: 'us',
  name: 'United States',
  says: 'Federal limits on what goes in, by green weight. Bellies count without skin.',
  classes,
};

import type { AuditEntry, AuditSheet, ScaleReading } from '@flitchbook/carcass';

/** Published lists of what an animal gave, line by line as printed, in the unit they were printed in. */
type Line = readonly [name: string, text: string, percent?: string];

export const entries = (unit: ScaleReading['unit'], lines: readonly Line[]): AuditEntry[] =>
  lines.map(([name, text, percent]) => ({
    name,
    reading: { text, unit },
    ...(percent === undefined ? {} : { percent }),
  }));

export const sheet = (
  unit: ScaleReading['unit'],
  carcass: string,
  lines: readonly Line[],
): AuditSheet & { readonly outs: AuditEntry[] } => ({
  ins: [{ name: 'Carcass', reading: { text: carcass, unit }, from: 'carcass' }],
  outs: entries(unit, lines),
});

/** National Pork Producers Council, hog carcass breakdown, 184 lb, both sides (University of Kentucky reproduction). */
export const nppcPrimals: Readonly<Record<string, { total: Line; parts: readonly Line[] }>> = {
  ham: {
    total: ['Ham', '45.0', '24'],
    parts: [
      ['Cured ham', '25.5'],
      ['Fresh ham', '2.3'],
      ['Trimmings', '5.8'],
      ['Skin, fat, bone', '11.4'],
    ],
  },
  side: {
    total: ['Side', '34.9', '19'],
    parts: [
      ['Cured bacon', '19.0'],
      ['Spareribs', '5.8'],
      ['Trimmings', '9.1'],
      ['Fat', '1.0'],
    ],
  },
  loin: {
    total: ['Loin', '33.8', '18'],
    parts: [
      ['Back ribs', '3.2'],
      ['Boneless loin', '10.7'],
      ['Country-style ribs', '7.6'],
      ['Sirloin roast', '5.7'],
      ['Tenderloin', '1.6'],
      ['Trimmings', '1.6'],
      ['Fat and bone', '3.4'],
    ],
  },
  picnic: {
    total: ['Picnic', '16.6', '9'],
    parts: [
      ['Boneless picnic meat', '12.6'],
      ['Skin, fat, bone', '4.0'],
    ],
  },
  butt: {
    total: ['Boston butt', '14.7', '8'],
    parts: [
      ['Blade steaks', '4.4'],
      ['Blade roast', '7.8'],
      ['Trimmings', '1.7'],
      ['Fat', '0.8'],
    ],
  },
  rest: {
    total: ['Miscellaneous', '39.2', '22'],
    parts: [
      ['Jowls, feet, tail, neck bones', '15.4'],
      ['Fat, skin, bone', '22.0'],
      ['Shrink and loss', '1.8'],
    ],
  },
};

export const nppc: AuditSheet = {
  ins: [{ name: 'Carcass', reading: { text: '184', unit: 'lb' }, from: 'carcass' }],
  outs: Object.values(nppcPrimals).map(({ total, parts }) => ({
    ...(entries('lb', [total])[0] as AuditEntry),
    parts: entries('lb', parts),
  })),
};

/** Oklahoma Department of Agriculture, Food and Forestry, hog weight brochure: 250 lb live, 180 lb carcass, 144 lb of cuts. */
export const oklahomaCuts: readonly Line[] = [
  ['Fresh ham', '28'],
  ['Loin', '23'],
  ['Side', '23'],
  ['Back fat', '23'],
  ['Picnic', '12'],
  ['Boston butt', '9'],
  ['Trim for sausage', '9'],
  ['Spareribs', '6'],
  ['Head', '5'],
  ['Feet', '3'],
  ['Jowl', '3'],
];

/** Washington State Department of Agriculture, processing percentage charts: a half of 75 lb. */
export const washingtonMeat: readonly Line[] = [
  ['Ham', '12', '16'],
  ['Loin roasts, chops', '9', '12'],
  ['Bacon', '10', '13'],
  ['Spareribs', '2', '3'],
  ['Butt roasts, chops', '6', '8'],
  ['Picnic', '7', '9'],
  ['Sausage', '6', '8'],
];
export const washingtonHalf = sheet('lb', '75', [
  ...washingtonMeat,
  ['Lard', '15', '20'],
  ['Bone, fat, trimmings', '8', '11'],
]);

/** USDA farmers' bulletin on pork, table 1: U.S. No. 2 hog, percent of the carcass. */
export const bulletinPercent: Readonly<Record<string, number>> = {
  'Ham, trimmed': 19,
  'Belly, untrimmed': 18,
  'Collar, fat back, clear plate': 18,
  'Picnic and Boston butt, trimmed': 17,
  'Loin, trimmed': 17,
  'Feet, tail, neck bones': 5,
  Spareribs: 3,
  'Jowl, untrimmed': 3,
};

/** Translational Animal Science 1:77 (2017), table 2, middle weight class: one chilled side of 44.49 kg. */
export const metaSummary: readonly Line[] = [
  ['Whole ham', '10.93'],
  ['Trimmed loin', '10.29'],
  ['Boston butt', '4.24'],
  ['Picnic', '4.62'],
  ['Spareribs', '1.57'],
];

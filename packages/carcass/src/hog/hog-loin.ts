import type { Bar, Manner, Output, Release, Share, Zone } from '../species.ts';
import { manner, released } from '../tree-data.ts';
import { type MiddleForm, middleForms, part, usualMiddle } from './hog-side.ts';

/** How the ribs of the loin come: at their usual length, long and bare, under their fat, or lifted out in one sheet. */
type Ribs = 'usual' | 'long' | 'capped' | 'gone';

interface LoinForm {
  readonly filletIn: boolean;
  readonly ribs: Ribs;
}

const nppc = (parts: number): Share => ({ parts, source: 'nppc-split' });
const bulk = (id: string, parts: number): Release => released('bulk', id, parts, 'nppc-split');

interface BoneInMass {
  readonly keeps: number;
  readonly trim: number;
  readonly fat: number;
}

const boneIn = (stock: string, name: string, { keeps, trim, fat }: BoneInMass, minutes: number): Manner =>
  manner({
    id: 'bone-in',
    name,
    stock,
    tool: 'saw',
    keeps: { parts: keeps, source: 'jas-1996' },
    releases: [released('bulk', 'trim', trim, 'jas-1996'), released('bulk', 'fat-trim', fat, 'jas-1996')],
    minutes,
  });

/** A boned centre loin draws up: 432 mm of the 517 mm it held in the carcass went into whole chops. */
const drawsUp = { ppm: 835_600, source: 'jas-2016' } as const;

const boned = (
  stock: string,
  name: string,
  keeps: number,
  releases: readonly Release[],
  minutes: number,
): Manner =>
  manner({
    id: 'boned',
    name,
    stock,
    tool: 'knife',
    joins: stock === 'loin-boned',
    drawsUp,
    keeps: nppc(keeps),
    releases,
    minutes,
  });

const pitchMm = 36.9;

function bladeZone(firstRib: 3 | 5): Zone {
  const stations = 7 - firstRib;
  // Country-style ribs are cut from 3 to 6 ribs of the blade end; two are not enough.
  const country = manner({
    id: 'country',
    name: 'Country-style ribs',
    stock: 'country-ribs',
    tool: 'knife',
    keeps: { parts: 3.8, source: 'nppc' },
    releases: [bulk('trim', 0.25), bulk('fat-trim', 0.15), bulk('bone', 0.1)],
    minutes: 2,
  });
  const pluma = manner({
    onRequest: true,
    id: 'pluma',
    name: 'Boneless blade end, pluma apart',
    stock: 'blade-plumaless',
    tool: 'knife',
    drawsUp,
    keeps: { parts: 2.2, source: 'practice' },
    releases: [
      released('item', 'pluma', 0.25, 'memory'),
      bulk('trim', 0.6),
      bulk('fat-trim', 0.35),
      bulk('bone', 0.9),
    ],
    minutes: 4,
  });
  return {
    id: 'blade',
    name: 'Blade end',
    stations: { fromRib: firstRib, toRib: 6 },
    lengthMm: pitchMm * stations,
    lengthSource: 'jas-2016-derived',
    mass: nppc((4.3 * stations) / 4),
    manners: [
      boneIn('blade-bone-in', 'Bone-in blade chops and roasts', { keeps: 4.04, trim: 0.13, fat: 0.13 }, 1.2),
      ...(stations < 3 ? [] : [country]),
      boned(
        'blade-boned',
        'Boneless blade end',
        2.45,
        [bulk('trim', 0.6), bulk('fat-trim', 0.35), bulk('bone', 0.9)],
        2.5,
      ),
      ...(stations < 3 ? [] : [pluma]),
    ],
    maySplit: false,
  };
}

/** The blade end whose ribs went with the long sheet of back ribs. */
const bladeRibless = (): Zone => ({
  ...bladeZone(3),
  mass: nppc(3.6),
  manners: [
    boned(
      'blade-boned',
      'Boneless blade end',
      2.45,
      [bulk('trim', 0.6), bulk('fat-trim', 0.35), bulk('bone', 0.2)],
      2,
    ),
  ],
});

const ribMass: Record<Ribs, Share> = {
  usual: nppc(5.89),
  long: { parts: 7.79, source: 'practice' },
  capped: { parts: 7.19, source: 'practice' },
  gone: nppc(4.29),
};

function ribManners(ribs: Ribs): readonly Manner[] {
  const loose = [bulk('trim', 0.25), bulk('fat-trim', 0.3), bulk('bone', 0.3)];
  const boning = (releases: readonly Release[]): Manner =>
    boned('loin-boned', 'Boned, ribs apart', 3.44, [...releases, ...loose], 3);
  const rack = (id: string, parts: number, source: string): Release => ({
    ...released('item', id, parts, source),
    stationsMin: 8,
    stationsSource: 'imps-400',
    otherwise: 'bone',
  });
  switch (ribs) {
    case 'usual':
      return [
        boneIn('rib-bone-in', 'Bone-in rib chops and racks', { keeps: 5.54, trim: 0.17, fat: 0.18 }, 1.2),
        boning([rack('back-ribs', 1.6, 'nppc')]),
      ];
    case 'long':
      return [
        boneIn('rib-long', 'Long-bone chops and racks', { keeps: 7.4, trim: 0.19, fat: 0.2 }, 2),
        boning([rack('long-rib-rack', 3.5, 'practice')]),
      ];
    case 'capped':
      return [
        boneIn(
          'rib-capped',
          'Rib chops and racks under their fat',
          { keeps: 6.84, trim: 0.17, fat: 0.18 },
          1.2,
        ),
      ];
    case 'gone':
      return [boning([])];
  }
}

const ribZone = (ribs: Ribs): Zone => ({
  id: 'rib',
  name: 'Rib',
  stations: { fromRib: 7 },
  lengthMm: 9 * pitchMm,
  lengthSource: 'jas-2016-derived',
  mass: ribMass[ribs],
  manners: ribManners(ribs),
  maySplit: ribs === 'usual' || ribs === 'long',
});

const lumbarBoned = (filletIn: boolean): Manner =>
  boned(
    'loin-boned',
    'Boned',
    1.91,
    [
      ...(filletIn ? [bulk('trim', 0.56)] : []),
      bulk('trim', 0.15),
      bulk('fat-trim', 0.25),
      bulk('bone', 0.3),
    ],
    2,
  );

function lumbarManners({ filletIn, ribs }: LoinForm): readonly Manner[] {
  if (ribs === 'gone') return [lumbarBoned(false)];
  if (ribs === 'capped')
    return [
      boneIn(
        'lumbar-capped',
        'Loin chops under their fat, tenderloin out',
        { keeps: 3.15, trim: 0.13, fat: 0.13 },
        1.2,
      ),
    ];
  const inBone = filletIn
    ? boneIn('lumbar-with-fillet', 'T-bone chops', { keeps: 2.96, trim: 0.1, fat: 0.11 }, 1.2)
    : boneIn(
        'lumbar-bone-in',
        'Bone-in loin chops, tenderloin out',
        { keeps: 2.45, trim: 0.08, fat: 0.08 },
        1.2,
      );
  return [inBone, lumbarBoned(filletIn)];
}

/** Five vertebrae, or four where the long leg took the last; the fillet's mass lies over those that are left. */
const lumbarMass = ({ filletIn, ribs }: LoinForm, vertebrae: 4 | 5): number =>
  (2.61 * vertebrae) / 5 + (filletIn ? 0.56 : 0) + (ribs === 'capped' ? 0.8 : 0);

const lumbarZone = (form: LoinForm, vertebrae: 4 | 5): Zone => ({
  id: 'lumbar',
  name: 'Loin end',
  stations: { fixed: vertebrae },
  lengthMm: vertebrae * pitchMm,
  lengthSource: 'jas-2016-derived',
  mass: nppc(lumbarMass(form, vertebrae)),
  manners: lumbarManners(form),
  maySplit: false,
});

function sirloinZone(filletIn: boolean): Zone {
  const inBone = filletIn
    ? boneIn(
        'sirloin-with-fillet',
        'Bone-in sirloin, fillet head in',
        { keeps: 3.32, trim: 0.11, fat: 0.11 },
        1,
      )
    : boneIn('sirloin-bone-in', 'Bone-in sirloin', { keeps: 3.1, trim: 0.1, fat: 0.1 }, 1);
  return {
    id: 'sirloin',
    name: 'Sirloin',
    stations: { fixed: 3 },
    lengthMm: 3 * pitchMm,
    lengthSource: 'jas-2016-derived',
    mass: nppc(filletIn ? 3.54 : 3.3),
    manners: [
      inBone,
      boned(
        'sirloin-boned',
        'Sirloin boned for roasts',
        2.85,
        [
          ...(filletIn ? [bulk('trim', 0.24)] : []),
          bulk('trim', 0.15),
          bulk('fat-trim', 0.1),
          bulk('bone', 0.2),
        ],
        2,
      ),
    ],
    maySplit: false,
  };
}

const out = (ribs: Ribs): LoinForm => ({ filletIn: false, ribs });
const within = (ribs: Ribs): LoinForm => ({ filletIn: true, ribs });

const bar = (id: string, name: string, zones: readonly Zone[], more: readonly string[] = []): Bar => ({
  kind: 'bar',
  id,
  name,
  regions: [
    ...new Set([
      ...zones.map(({ id: zone }) => (zone === 'blade' || zone === 'sirloin' ? zone : 'loin')),
      ...more,
    ]),
  ],
  zones,
});

/** The loin of a middle: the ends that a moved line took with it are not on it. */
const loinBar = (id: string, name: string, form: LoinForm, { firstRib, hip, name: lines }: MiddleForm): Bar =>
  bar(
    id,
    `${name}, ${form.filletIn ? 'tenderloin in' : 'tenderloin out'}${lines}`,
    [
      form.ribs === 'gone' ? bladeRibless() : bladeZone(firstRib),
      ribZone(form.ribs),
      lumbarZone(form, hip === 'loin' ? 5 : 4),
      ...(hip === 'loin' ? [sirloinZone(form.filletIn)] : []),
    ],
    [...(form.filletIn ? ['fillet'] : []), ...(form.ribs === 'long' ? ['spare-ribs'] : [])],
  );

const loinId = ({ filletIn, ribs }: LoinForm, { suffix }: MiddleForm): string =>
  `loin${ribs === 'long' ? '-long' : ''}-${filletIn ? 'in' : 'out'}${suffix}`;

const loinsOf = (middle: MiddleForm): readonly Bar[] =>
  [out('usual'), within('usual'), out('long'), within('long')].map((form) =>
    loinBar(loinId(form, middle), form.ribs === 'long' ? 'Loin with long bare ribs' : 'Loin', form, middle),
  );

export const loinBars: readonly Bar[] = [
  ...middleForms.flatMap(loinsOf),
  loinBar('loin-capped', 'Loin under its fat', out('capped'), usualMiddle),
  loinBar('loin-ribless', 'Loin, ribs lifted', out('gone'), usualMiddle),
  bar('loin-front', 'Front of the loin', [bladeZone(3), ribZone('usual')]),
  bar('loin-rear', 'Rear of the loin, tenderloin out', [lumbarZone(out('usual'), 5), sirloinZone(false)]),
];

/** Pounds of a bar of the reference side: the sum of its zones. */
export function loinPounds(id: string): number {
  const zones = loinBars.find((candidate) => candidate.id === id)?.zones ?? [];
  return zones.reduce((sum, { mass }) => sum + mass.parts, 0);
}

/** What the loin of a middle comes as. */
export function loinOf(middle: MiddleForm, filletIn: boolean, ribs: 'usual' | 'long'): Output {
  const id = loinId({ filletIn, ribs }, middle);
  return part(id, loinPounds(id), ribs === 'long' ? 'practice' : 'nppc-split');
}

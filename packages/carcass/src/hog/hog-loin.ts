import type { Bar, Manner, Release, Share, Zone } from '../species.ts';

/** Whether the tenderloin still lies in the loin, and whether the belly's ribs were left long and bare on it. */
interface LoinForm {
  readonly filletIn: boolean;
  readonly longRibs: boolean;
}

const nppc = (parts: number): Share => ({ parts, source: 'nppc-split' });
const bulk = (id: string, parts: number): Release => ({ to: 'bulk', id, ...nppc(parts) });

interface BoneInMass {
  readonly keeps: number;
  readonly trim: number;
  readonly fat: number;
}

function boneIn(stock: string, name: string, mass: BoneInMass, minutes: number): Manner {
  return {
    id: 'bone-in',
    name,
    stock,
    tool: 'saw',
    joins: false,
    lengthPpm: 1_000_000,
    lengthSource: 'practice',
    keeps: { parts: mass.keeps, source: 'jas-1996' },
    releases: [
      { to: 'bulk', id: 'trim', parts: mass.trim, source: 'jas-1996' },
      { to: 'bulk', id: 'fat-trim', parts: mass.fat, source: 'jas-1996' },
    ],
    minutes,
  };
}

/** A boned centre loin draws up: 432 mm of the 517 mm it held in the carcass went into whole chops. */
const bonedLengthPpm = 835_600;

function boned(
  stock: string,
  name: string,
  keeps: number,
  releases: readonly Release[],
  minutes: number,
): Manner {
  return {
    id: 'boned',
    name,
    stock,
    tool: 'knife',
    joins: stock === 'loin-boned',
    lengthPpm: bonedLengthPpm,
    lengthSource: 'jas-2016',
    keeps: nppc(keeps),
    releases,
    minutes,
  };
}

function bladeZone(): Zone {
  const country: Manner = {
    id: 'country',
    name: 'Country-style ribs',
    stock: 'country-ribs',
    tool: 'knife',
    joins: false,
    lengthPpm: 1_000_000,
    lengthSource: 'practice',
    keeps: { parts: 3.8, source: 'nppc' },
    releases: [bulk('trim', 0.25), bulk('fat-trim', 0.15), bulk('bone', 0.1)],
    minutes: 2,
  };
  return {
    id: 'blade',
    name: 'Blade end',
    stations: { fixed: 4 },
    lengthMm: 147.6,
    lengthSource: 'jas-2016-derived',
    mass: nppc(4.3),
    manners: [
      boneIn('blade-bone-in', 'Bone-in blade chops and roasts', { keeps: 4.04, trim: 0.13, fat: 0.13 }, 1.2),
      country,
      boned(
        'blade-boned',
        'Boneless blade end',
        2.45,
        [bulk('trim', 0.6), bulk('fat-trim', 0.35), bulk('bone', 0.9)],
        2.5,
      ),
    ],
    maySplit: false,
  };
}

function ribZone({ longRibs }: LoinForm): Zone {
  const mass = longRibs ? 7.79 : 5.89;
  const ribs: Release = longRibs
    ? { to: 'item', id: 'long-rib-rack', stationsMin: 8, otherwise: 'bone', parts: 3.5, source: 'practice' }
    : { to: 'item', id: 'back-ribs', stationsMin: 8, otherwise: 'bone', parts: 1.6, source: 'nppc' };
  const inBone = longRibs
    ? boneIn('rib-long', 'Long-bone chops and racks', { keeps: 7.4, trim: 0.19, fat: 0.2 }, 2)
    : boneIn('rib-bone-in', 'Bone-in rib chops and racks', { keeps: 5.54, trim: 0.17, fat: 0.18 }, 1.2);
  return {
    id: 'rib',
    name: 'Rib',
    stations: { ribsLess: 6 },
    lengthMm: 332.1,
    lengthSource: 'jas-2016-derived',
    mass: longRibs ? { parts: mass, source: 'practice' } : nppc(mass),
    manners: [
      inBone,
      boned(
        'loin-boned',
        'Boned, ribs apart',
        3.44,
        [ribs, bulk('trim', 0.25), bulk('fat-trim', 0.3), bulk('bone', 0.3)],
        3,
      ),
    ],
    maySplit: true,
  };
}

function lumbarZone({ filletIn }: LoinForm): Zone {
  const inBone = filletIn
    ? boneIn('lumbar-with-fillet', 'T-bone chops', { keeps: 2.96, trim: 0.1, fat: 0.11 }, 1.2)
    : boneIn(
        'lumbar-bone-in',
        'Bone-in loin chops, tenderloin out',
        { keeps: 2.45, trim: 0.08, fat: 0.08 },
        1.2,
      );
  const fillet: readonly Release[] = filletIn ? [bulk('trim', 0.56)] : [];
  return {
    id: 'lumbar',
    name: 'Loin end',
    stations: { fixed: 5 },
    lengthMm: 184.5,
    lengthSource: 'jas-2016-derived',
    mass: nppc(filletIn ? 3.17 : 2.61),
    manners: [
      inBone,
      boned(
        'loin-boned',
        'Boned',
        1.91,
        [...fillet, bulk('trim', 0.15), bulk('fat-trim', 0.25), bulk('bone', 0.3)],
        2,
      ),
    ],
    maySplit: false,
  };
}

function sirloinZone({ filletIn }: LoinForm): Zone {
  const inBone = filletIn
    ? boneIn(
        'sirloin-with-fillet',
        'Bone-in sirloin, fillet head in',
        { keeps: 3.32, trim: 0.11, fat: 0.11 },
        1,
      )
    : boneIn('sirloin-bone-in', 'Bone-in sirloin', { keeps: 3.1, trim: 0.1, fat: 0.1 }, 1);
  const fillet: readonly Release[] = filletIn ? [bulk('trim', 0.24)] : [];
  return {
    id: 'sirloin',
    name: 'Sirloin',
    stations: { fixed: 3 },
    lengthMm: 110.7,
    lengthSource: 'jas-2016-derived',
    mass: nppc(filletIn ? 3.54 : 3.3),
    manners: [
      inBone,
      boned(
        'sirloin-boned',
        'Sirloin boned for roasts',
        2.85,
        [...fillet, bulk('trim', 0.15), bulk('fat-trim', 0.1), bulk('bone', 0.2)],
        2,
      ),
    ],
    maySplit: false,
  };
}

const filletPlace = (form: LoinForm) => (form.filletIn ? 'tenderloin in' : 'tenderloin out');

function loin(id: string, name: string, form: LoinForm): Bar {
  return {
    kind: 'bar',
    id,
    name: `${name}, ${filletPlace(form)}`,
    zones: [bladeZone(), ribZone(form), lumbarZone(form), sirloinZone(form)],
  };
}

/** Mass of each loin in pounds of the reference side: the sum of its zones, used where the middle is parted. */
export const loinPounds = {
  out: 16.1,
  in: 16.9,
  longOut: 18,
  longIn: 18.8,
  front: 10.19,
  rear: 5.91,
} as const;

const out: LoinForm = { filletIn: false, longRibs: false };

export const loinBars: readonly Bar[] = [
  loin('loin-out', 'Loin', out),
  loin('loin-in', 'Loin', { filletIn: true, longRibs: false }),
  loin('loin-long-out', 'Loin with long bare ribs', { filletIn: false, longRibs: true }),
  loin('loin-long-in', 'Loin with long bare ribs', { filletIn: true, longRibs: true }),
  { kind: 'bar', id: 'loin-front', name: 'Front of the loin', zones: [bladeZone(), ribZone(out)] },
  {
    kind: 'bar',
    id: 'loin-rear',
    name: 'Rear of the loin, tenderloin out',
    zones: [lumbarZone(out), sirloinZone(out)],
  },
];

import type { Part, Zone } from '../species.ts';
import { block, manner, onRequest, operation, primal, released } from '../tree-data.ts';
import { bulk, inBone, item, oneZone, part, pitchMm, ribPounds } from './lamb-side.ts';

const kidney = item('kidney', 0.2, 'ahdb-lamb', {
  needs: ['organs'],
  otherwise: 'fat-trim',
  regions: ['kidney'],
});
const loinPounds = 6.5 + ribPounds;

const loin = primal(
  'loin',
  'Loin',
  ['loin', 'kidney'],
  [
    operation('loin-across', 'Lay the loin down', 'Kidney and its fat out first.', 2, [
      part('loin-bar', loinPounds - 0.2),
      kidney,
    ]),
    operation(
      'half-saddle',
      'Keep the saddle, kidneys out',
      'The two loins stay one: half of a saddle roast on this side.',
      3,
      [item('half-saddle', loinPounds - 0.2, 'practice', { regions: ['loin'] }), kidney],
      { ...onRequest, needs: ['unsplit'] },
    ),
    operation(
      'half-saddle-kidneys-in',
      'Keep the saddle, kidneys in',
      'Half of a saddle roast with its kidney.',
      2,
      [item('half-saddle-with-kidney', loinPounds, 'practice', { regions: ['loin', 'kidney'] })],
      { ...onRequest, needs: ['unsplit'] },
    ),
    operation(
      'saddle-across',
      'Cut the saddle across',
      'Across both loins between each two vertebrae: half of each double chop on this side.',
      2,
      [part('saddle-half', loinPounds - 0.2, 'practice'), kidney],
      { ...onRequest, needs: ['unsplit'] },
    ),
  ],
);

/** Rib 13 and six lumbar vertebrae. */
const loinZone: Zone = {
  id: 'loin',
  name: 'Loin',
  stations: { fixed: 7 },
  lengthMm: pitchMm * 7,
  lengthSource: 'memory',
  mass: { parts: 1, source: 'lamb-army-split' },
  manners: [
    inBone('loin-bone-in', 'Loin chops, fillet in'),
    manner({
      id: 'boned',
      name: 'Boned for noisettes, fillet apart',
      stock: 'loin-boned',
      tool: 'knife',
      keeps: { parts: 44, source: 'lamb-army-split' },
      releases: [
        // A fillet cut short is no fillet: from fewer than all seven bones it goes to the trim.
        {
          ...released('item', 'fillet', 10, 'lamb-army-split'),
          stationsMin: 7,
          stationsSource: 'practice',
          otherwise: 'trim',
        },
        released('bulk', 'bone', 26, 'practice'),
        released('bulk', 'fat-trim', 20, 'practice'),
      ],
      minutes: 6,
    }),
  ],
  maySplit: true,
};

const saddleZone: Zone = {
  ...loinZone,
  id: 'saddle',
  name: 'Half of the saddle',
  manners: [inBone('saddle-half', 'Half double chops')],
  maySplit: false,
};

const leg = primal(
  'leg',
  'Leg with chump',
  ['leg', 'chump', 'hind-shank'],
  [
    operation('chump-off', 'Chump off', 'Chump off just behind the hip bone.', 2, [
      part('leg-short', 13.2),
      part('chump', 2.8),
    ]),
    operation('leg-whole', 'Keep the leg whole, chump on', 'One piece, bone in.', 1, [
      item('leg-chump-on', 15.5, 'practice', { regions: ['leg', 'chump', 'hind-shank'] }),
      bulk('fat-trim', 0.5, 'practice'),
    ]),
  ],
);

const chump = primal(
  'chump',
  'Chump',
  ['chump'],
  [
    operation('chump-across', 'Saw chump chops', 'Across the bone.', 1, [
      part('chump-bar', 2.6, 'practice'),
      bulk('trim', 0.2, 'practice'),
    ]),
    operation('chump-roast', 'Bone the chump for a roast', 'Bone out, one piece.', 3, [
      item('chump-roast', 1.9, 'practice'),
      bulk('bone', 0.6, 'practice'),
      bulk('trim', 0.3, 'practice'),
    ]),
  ],
);

const legShort = primal(
  'leg-short',
  'Leg',
  ['leg', 'hind-shank'],
  [
    operation('leg-short-whole', 'Keep the leg whole', 'Bone in, shank on.', 1, [
      item('leg-whole', 12.8, 'practice', { regions: ['leg', 'hind-shank'] }),
      bulk('fat-trim', 0.4, 'practice'),
    ]),
    operation('shank-off', 'Hind shank off', 'Shank off at the knee; what is left is a short leg.', 2, [
      part('leg-shankless', 11),
      item('hind-shank', 2.2, 'practice', { regions: ['hind-shank'] }),
    ]),
  ],
);

const legShankless = primal(
  'leg-shankless',
  'Leg without its shank',
  ['leg'],
  [
    operation('leg-shankless-whole', 'Keep the short leg whole', 'Bone in.', 1, [
      item('leg-shankless', 1, 'practice'),
    ]),
    operation('leg-boned', 'Bone the leg', 'Opened out or rolled.', 8, [
      item('leg-boned', 8.2, 'practice'),
      bulk('bone', 1.9, 'practice'),
      bulk('fat-trim', 0.9, 'practice'),
    ]),
    operation('leg-across', 'Saw leg steaks', 'Across the bone from the thick end.', 3, [
      part('leg-centre', 6.5, 'practice'),
      item('leg-end', 4, 'practice'),
      bulk('trim', 0.5, 'practice'),
    ]),
  ],
);

const across = (id: string, name: string, region: string, lengthMm: number): Part =>
  block({ id, name, regions: [region], lengthMm, tool: 'saw', source: 'lamb-army-split' });

export const rearParts: readonly Part[] = [
  loin,
  leg,
  chump,
  legShort,
  legShankless,
  oneZone('loin-bar', 'Loin', ['loin'], loinZone),
  oneZone('saddle-half', 'Half of the saddle', ['loin'], saddleZone),
  across('chump-bar', 'Chump', 'chump', 70),
  across('leg-centre', 'Centre of the leg', 'leg', 110),
];

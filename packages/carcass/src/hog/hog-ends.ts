import type { Bar, Operation, Output, Part, Primal } from '../species.ts';
import { bulk, item, part } from './outputs.ts';

const operation = (
  id: string,
  name: string,
  says: string,
  minutes: number,
  outputs: readonly Output[],
): Operation => ({
  id,
  name,
  says,
  minutes,
  minutesSource: 'practice',
  outputs,
});

const side: Primal = {
  kind: 'primal',
  id: 'side',
  name: 'Side',
  operations: [
    operation(
      'break-side',
      'Break the side',
      'Shoulder off between ribs 2 and 3, leg off just ahead of the hip; the middle stays whole.',
      6,
      [
        { ...part('shoulder', 22.98), cvPercent: 14 },
        part('middle', 43.97),
        { ...part('leg', 24.25), cvPercent: 8 },
        bulk('loss', 0.9, 'nppc'),
      ],
    ),
  ],
};

const shoulder: Primal = {
  kind: 'primal',
  id: 'shoulder',
  name: 'Shoulder',
  operations: [
    operation(
      'part-shoulder',
      'Part butt and picnic',
      'Foot and hock off, jowl and neck bones off, then butt from picnic above the shoulder joint.',
      8,
      [
        { ...part('butt', 7.35, 'nppc'), cvPercent: 14 },
        { ...part('picnic', 8.3, 'nppc'), cvPercent: 15 },
        item('neck-bones', 1.6, 'fat-lists'),
        item('jowl', 1.6),
        item('front-hock', 1.25),
        item('front-foot', 0.75, 'oklahoma'),
        bulk('bone', 1.38),
        bulk('skin', 0.75),
      ],
    ),
  ],
};

const butt: Primal = {
  kind: 'primal',
  id: 'butt',
  name: 'Boston butt',
  operations: [
    operation('butt-whole', 'Keep the butt whole', 'Bone in, one piece.', 1, [
      item('butt-whole', 6.7),
      bulk('trim', 0.4),
      bulk('fat-trim', 0.25),
    ]),
    operation(
      'butt-across',
      'Cut the butt across, bone in',
      'Blade steaks from one end, roasts from the other: they share the inches.',
      2,
      [part('butt-bone-in', 6.1, 'nppc'), bulk('trim', 0.85, 'nppc'), bulk('fat-trim', 0.4, 'nppc')],
    ),
    operation(
      'butt-coppa',
      'Seam out the coppa',
      'Follow the seams; the coppa leaves whole, the rest is braising meat.',
      8,
      [
        item('coppa', 2.6, 'practice'),
        item('butt-braising', 3, 'practice'),
        bulk('bone', 0.6, 'practice'),
        bulk('trim', 0.75, 'practice'),
        bulk('fat-trim', 0.4, 'practice'),
      ],
    ),
    operation('butt-boned', 'Bone the butt', 'Blade bone out, then tied or cut to weight.', 5, [
      part('butt-boneless', 5.4, 'practice'),
      bulk('bone', 0.6, 'practice'),
      bulk('trim', 0.95, 'practice'),
      bulk('fat-trim', 0.4, 'practice'),
    ]),
    operation('butt-ground', 'Bone the butt for the grinder', 'All of it to trim.', 5, [
      bulk('trim', 6.15, 'practice'),
      bulk('bone', 0.6, 'practice'),
      bulk('fat-trim', 0.6, 'practice'),
    ]),
  ],
};

const picnic: Primal = {
  kind: 'primal',
  id: 'picnic',
  name: 'Picnic',
  operations: [
    operation('picnic-whole', 'Keep the picnic whole', 'Bone in, one roast.', 1, [
      item('picnic-whole', 7.9),
      bulk('fat-trim', 0.4),
    ]),
    operation('picnic-boned', 'Bone the picnic', 'Boned for rolled roasts or cubes.', 7, [
      part('picnic-boneless', 6.3, 'nppc'),
      bulk('bone', 1),
      bulk('skin', 0.6),
      bulk('fat-trim', 0.4),
    ]),
    operation('picnic-ground', 'Bone the picnic for the grinder', 'All of it to trim.', 6, [
      bulk('trim', 6.3, 'nppc'),
      bulk('bone', 1),
      bulk('skin', 0.6),
      bulk('fat-trim', 0.4),
    ]),
  ],
};

const leg: Primal = {
  kind: 'primal',
  id: 'leg',
  name: 'Leg',
  operations: [
    operation('part-leg', 'Foot and hock off', 'Foot off at the joint, hock off above it.', 3, [
      part('ham', 22.5, 'nppc'),
      item('hind-hock', 1),
      item('hind-foot', 0.75, 'oklahoma'),
    ]),
  ],
};

const ham: Primal = {
  kind: 'primal',
  id: 'ham',
  name: 'Fresh ham',
  operations: [
    operation('ham-whole', 'Keep the leg whole', 'Bone in, squared, one piece.', 2, [
      item('ham-whole', 19.6),
      bulk('trim', 2, 'practice'),
      bulk('fat-trim', 0.9, 'practice'),
    ]),
    operation('ham-halves', 'Halve the leg', 'Across the middle: a rump half and a shank half.', 3, [
      item('ham-rump-half', 9.6),
      item('ham-shank-half', 9.2),
      bulk('trim', 2.5, 'practice'),
      bulk('fat-trim', 1.2, 'practice'),
    ]),
    operation(
      'ham-centre',
      'Centre steaks, two end joints',
      'Steaks come off where the halves would meet; both ends stay as joints.',
      4,
      [
        item('ham-rump-end', 5.6, 'practice'),
        item('ham-shank-end', 5.4, 'practice'),
        part('ham-centre', 7.8, 'practice'),
        bulk('trim', 2.5, 'practice'),
        bulk('fat-trim', 1.2, 'practice'),
      ],
    ),
    operation(
      'ham-seamed',
      'Seam the leg out',
      'Open it along the seams: inside, outside, knuckle and rump each leave whole.',
      14,
      [
        item('ham-inside', 3.6, 'practice'),
        item('ham-outside', 4.9, 'practice'),
        item('ham-knuckle', 2.8, 'practice'),
        item('ham-rump', 2.6, 'practice'),
        bulk('trim', 2.9, 'nppc'),
        bulk('bone', 2.7, 'practice'),
        bulk('skin', 1.2, 'practice'),
        bulk('fat-trim', 1.8, 'practice'),
      ],
    ),
    operation('ham-ground', 'Bone the leg for the grinder', 'All of it to trim.', 10, [
      bulk('trim', 16.8, 'nppc'),
      bulk('bone', 2.7, 'practice'),
      bulk('skin', 1.2, 'practice'),
      bulk('fat-trim', 1.8, 'practice'),
    ]),
  ],
};

interface BlockForm {
  readonly id: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly tool: 'saw' | 'knife';
}

/** A block cut across: no bone to count by, so its length is all that matters. */
const block = ({ id, name, lengthMm, tool }: BlockForm): Bar => ({
  kind: 'bar',
  id,
  name,
  zones: [
    {
      id: 'block',
      name,
      stations: { fixed: 1 },
      lengthMm,
      lengthSource: 'memory',
      mass: { parts: 1, source: 'nppc-split' },
      manners: [
        {
          id: 'across',
          name: 'Cut across',
          stock: id,
          tool,
          joins: false,
          lengthPpm: 1_000_000,
          lengthSource: 'practice',
          keeps: { parts: 1, source: 'nppc-split' },
          releases: [],
          minutes: 1,
        },
      ],
      maySplit: false,
    },
  ],
});

export const endParts: readonly Part[] = [
  side,
  shoulder,
  butt,
  picnic,
  leg,
  ham,
  block({ id: 'butt-bone-in', name: 'Butt, bone in', lengthMm: 230, tool: 'saw' }),
  block({ id: 'butt-boneless', name: 'Butt, boneless', lengthMm: 230, tool: 'knife' }),
  block({ id: 'picnic-boneless', name: 'Picnic, boneless', lengthMm: 220, tool: 'knife' }),
  block({ id: 'ham-centre', name: 'Centre of the leg', lengthMm: 150, tool: 'saw' }),
];

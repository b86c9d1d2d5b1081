import type { Part } from '../species.ts';
import { block, onRequest, operation, primal } from '../tree-data.ts';
import { bulk, item, moves, part } from './hog-side.ts';

const footOnly = { needs: ['feet'], otherwise: 'bone', regions: ['hind-shank'] } as const;
const shankOnly = { regions: ['hind-shank'] } as const;
const whenScalded = { needs: ['skin-on'], otherwise: 'fat-trim' } as const;

const leg = primal(
  'leg',
  'Leg',
  ['ham', 'hind-shank'],
  [
    operation('part-leg', 'Foot and hock off', 'Foot off at the joint, hock off above it.', 3, [
      part('ham', 22.5, 'nppc'),
      item('hind-hock', 1, 'nppc-split', shankOnly),
      item('hind-foot', 0.75, 'oklahoma', footOnly),
    ]),
    operation(
      'hock-long',
      'Hock cut long',
      'The hock is taken well up the shank; the leg has no shank end left.',
      3,
      [
        part('ham-shankless', 20.4, 'practice'),
        item('hind-hock-long', 3.1, 'practice', shankOnly),
        item('hind-foot', 0.75, 'oklahoma', footOnly),
      ],
      onRequest,
    ),
    operation(
      'foot-long',
      'Foot cut long',
      'Foot off above the joint, with the lower half of the hock.',
      3,
      [part('ham', 22.5, 'nppc'), item('hind-foot-long', 1.75, 'practice', shankOnly)],
      { ...onRequest, needs: ['feet'] },
    ),
  ],
);

const legLong = primal(
  'leg-long',
  'Leg, cut long',
  ['ham', 'hind-shank', 'sirloin'],
  [
    operation('part-leg', 'Foot and hock off', 'Foot off at the joint, hock off above it.', 3, [
      part('ham-long', 22.5 + moves.hip, 'nppc-split'),
      item('hind-hock', 1, 'nppc-split', shankOnly),
      item('hind-foot', 0.75, 'oklahoma', footOnly),
    ]),
  ],
);

const hamLong = primal(
  'ham-long',
  'Fresh ham, cut long',
  ['ham', 'sirloin'],
  [
    operation('ham-long', 'Keep the long leg whole', 'Bone in, rounded for the dry cure.', 4, [
      item('ham-long', 22.9, 'practice'),
      bulk('trim', 2.2, 'practice'),
      bulk('fat-trim', 1.222, 'practice'),
    ]),
  ],
);

const ham = primal(
  'ham',
  'Fresh ham',
  ['ham'],
  [
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
        bulk('skin', 1.2, 'practice', whenScalded),
        bulk('fat-trim', 1.8, 'practice'),
      ],
    ),
    operation('ham-ground', 'Bone the leg for the grinder', 'All of it to trim.', 10, [
      bulk('trim', 16.8, 'nppc'),
      bulk('bone', 2.7, 'practice'),
      bulk('skin', 1.2, 'practice', whenScalded),
      bulk('fat-trim', 1.8, 'practice'),
    ]),
  ],
);

const hamShankless = primal(
  'ham-shankless',
  'Fresh ham without its shank',
  ['ham'],
  [
    operation('ham-shankless', 'Keep the leg whole', 'Bone in, squared, the shank gone to the hock.', 2, [
      item('ham-shankless', 17.5, 'practice'),
      bulk('trim', 2, 'practice'),
      bulk('fat-trim', 0.9, 'practice'),
    ]),
    operation(
      'ham-shankless-centre',
      'Centre steaks, one end joint',
      'Steaks off the middle, the rump end stays as a joint.',
      4,
      [
        item('ham-rump-end', 5.6, 'practice'),
        part('ham-centre', 7.8, 'practice'),
        bulk('trim', 5.4, 'practice'),
        bulk('fat-trim', 1.6, 'practice'),
      ],
    ),
  ],
);

export const legParts: readonly Part[] = [
  leg,
  legLong,
  ham,
  hamLong,
  hamShankless,
  block({
    id: 'ham-centre',
    name: 'Centre of the leg',
    regions: ['ham'],
    lengthMm: 150,
    tool: 'saw',
    source: 'nppc-split',
  }),
];

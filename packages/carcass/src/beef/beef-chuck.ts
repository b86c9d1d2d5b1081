import type { Part, Zone } from '../species.ts';
import { block, manner, operation, primal, released } from '../tree-data.ts';
import { boneIn, bulk, item, oneZone, part, ribPounds } from './beef-side.ts';

const chuck = primal(
  'chuck',
  'Chuck',
  ['chuck', 'arm'],
  [
    operation(
      'chuck-sawn',
      'Saw the chuck across',
      'Blade and arm steaks and pot roasts: the saw goes through every muscle.',
      15,
      [
        part('chuck-blade', 24),
        part('chuck-arm', 13),
        bulk('trim', 10),
        bulk('bone', 5),
        bulk('fat-trim', 8),
      ],
    ),
    operation(
      'chuck-seamed',
      'Seam the chuck out',
      'Each muscle along its seam; nothing is left to saw across.',
      45,
      [
        item('flat-iron', 3, 'practice'),
        item('denver', 3.4, 'practice'),
        item('shoulder-tender', 1, 'practice'),
        item('chuck-eye', 5.5, 'practice'),
        item('cross-rib', 5, 'practice'),
        part('clod-heart', 7, 'practice'),
        bulk('trim', 18, 'practice'),
        bulk('bone', 9, 'practice'),
        bulk('fat-trim', 8.1, 'practice'),
      ],
    ),
    operation('chuck-ground', 'Bone the chuck for the grinder', 'All of it to trim.', 25, [
      bulk('trim', 43, 'practice'),
      bulk('bone', 9, 'practice'),
      bulk('fat-trim', 8, 'practice'),
    ]),
  ],
);

const chuckLong = primal(
  'chuck-long',
  'Chuck, to rib 6',
  ['chuck', 'arm', 'rib'],
  [
    operation(
      'chuck-eye-long',
      'Take the eye long',
      'The eye of the chuck runs on over rib 6; the rest is boned.',
      40,
      [
        item('chuck-eye-long', 7, 'practice'),
        bulk('trim', 36 + ribPounds, 'practice'),
        bulk('bone', 10, 'practice'),
        bulk('fat-trim', 7, 'practice'),
      ],
    ),
  ],
);

const brisket = primal(
  'brisket',
  'Brisket',
  ['brisket'],
  [
    operation('brisket-ground', 'Bone the brisket for the grinder', 'All of it to trim.', 8, [
      bulk('trim', 9),
      bulk('bone', 2),
      bulk('fat-trim', 5),
    ]),
    operation('brisket-whole', 'Bone the brisket whole', 'Point and flat in one.', 8, [
      item('brisket-whole', 10.5, 'practice'),
      bulk('bone', 2, 'practice'),
      bulk('fat-trim', 3.5, 'practice'),
    ]),
    operation('brisket-parted', 'Part point and flat', 'Along the seam of fat between them.', 10, [
      item('brisket-flat', 5.8, 'practice'),
      item('brisket-point', 4.2, 'practice'),
      bulk('trim', 0.5, 'practice'),
      bulk('bone', 2, 'practice'),
      bulk('fat-trim', 3.5, 'practice'),
    ]),
  ],
);

const neck = primal(
  'neck',
  'Neck',
  ['neck'],
  [
    operation('neck-ground', 'Bone the neck for the grinder', 'All of it to trim.', 6, [
      bulk('trim', 6),
      bulk('bone', 2),
    ]),
    operation('neck-roast', 'Keep the neck in a roast', 'Boned and tied.', 8, [
      item('neck-roast', 5, 'practice'),
      bulk('trim', 1, 'practice'),
      bulk('bone', 2, 'practice'),
    ]),
  ],
);

const skirt = primal(
  'skirt',
  'Outside skirt',
  ['skirt'],
  [
    operation('skirt-ground', 'Skirt to the grinder', 'With its film off.', 2, [bulk('trim', 1)]),
    operation('skirt-whole', 'Keep the outside skirt', 'Peeled of its film.', 4, [
      item('outside-skirt', 1.5, 'practice'),
      bulk('trim', 0.5, 'practice'),
    ]),
  ],
);

const shankZone: Zone = {
  id: 'shank',
  name: 'Fore shank',
  stations: { fixed: 6 },
  lengthMm: 300,
  lengthSource: 'memory',
  mass: { parts: 1, source: 'wsda-split' },
  manners: [
    manner({
      id: 'boned',
      name: 'Boned for stew',
      stock: 'shank-stew',
      tool: 'knife',
      keeps: { parts: 6, source: 'wsda-beef' },
      releases: [released('bulk', 'trim', 1, 'wsda-split'), released('bulk', 'bone', 5, 'wsda-split')],
      minutes: 6,
    }),
    boneIn('sawn', 'Sawn across', 'shank-sawn', { keeps: 11, source: 'practice' }, [
      released('bulk', 'bone', 1, 'practice'),
    ]),
  ],
  maySplit: true,
};

const source = 'wsda-split';

/** Chuck, brisket, neck, skirt and shank. */
export const chuckParts: readonly Part[] = [
  chuck,
  chuckLong,
  brisket,
  neck,
  skirt,
  oneZone('shank', 'Fore shank', ['shank'], shankZone),
  block({
    id: 'chuck-blade',
    name: 'Blade side of the chuck',
    regions: ['chuck'],
    lengthMm: 300,
    tool: 'saw',
    source,
  }),
  block({
    id: 'chuck-arm',
    name: 'Arm side of the chuck',
    regions: ['arm'],
    lengthMm: 200,
    tool: 'saw',
    source,
  }),
  block({
    id: 'clod-heart',
    name: 'Heart of the clod',
    regions: ['arm'],
    lengthMm: 250,
    tool: 'knife',
    source,
  }),
];

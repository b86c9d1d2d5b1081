import type { Bar, Manner, Part, Release, Zone } from '../species.ts';
import { block, manner, onRequest, operation, outputsOf, primal, released } from '../tree-data.ts';

/** Pounds of a fore quarter of 140 lb; what names no source of its own splits a published line. */
const { part, item, bulk } = outputsOf('wsda-split');

export const beefRegions = {
  neck: 'Neck',
  chuck: 'Chuck',
  arm: 'Arm',
  rib: 'Rib',
  plate: 'Plate',
  skirt: 'Outside skirt',
  brisket: 'Brisket',
  shank: 'Fore shank',
} as const;

/** One rib of seven, pounds: it moves with the line between chuck and rib. */
const ribPounds = 20 / 7;

const quarterOf = (chuck: string, chuckPounds: number, rib: string, ribPoundsThere: number) => [
  part(chuck, chuckPounds),
  part(rib, ribPoundsThere + 18),
  part('brisket', 16),
  part('shank', 12),
  part('neck', 8),
  part('skirt', 2),
  bulk('loss', 4),
];

const side = primal('side', 'Fore quarter', Object.keys(beefRegions), [
  operation(
    'break-quarter',
    'Break the fore quarter',
    'Chuck off between ribs 5 and 6, brisket and shank off along the arm; rib and plate stay together.',
    12,
    quarterOf('chuck', 60, 'rib-and-plate', 20),
  ),
  operation(
    'chuck-at-rib-7',
    'Break the fore quarter, chuck long',
    'Chuck off between ribs 6 and 7: the eye of the chuck is longer by a rib, the rib shorter.',
    12,
    quarterOf('chuck-long', 60 + ribPounds, 'rib-of-6-and-plate', 20 - ribPounds),
    onRequest,
  ),
]);

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

interface Keep {
  readonly keeps: number;
  readonly source: string;
}

const boneIn = (
  id: string,
  name: string,
  stock: string,
  { keeps, source }: Keep,
  releases: readonly Release[],
): Manner => manner({ id, name, stock, tool: 'saw', keeps: { parts: keeps, source }, releases, minutes: 4 });

const pitchMm = 55;

const ribZone = (fromRib: 6 | 7, long: boolean): Zone => ({
  id: 'rib',
  name: 'Rib',
  stations: { fromRib, toRib: 12 },
  lengthMm: pitchMm * (13 - fromRib),
  lengthSource: 'memory',
  mass: { parts: 1, source: 'wsda-split' },
  manners: [
    boneIn(
      'bone-in',
      long ? 'Long-bone steaks' : 'Rib roasts and steaks',
      long ? 'rib-long' : 'rib-bone-in',
      { keeps: 12, source: 'wsda-beef' },
      [
        released('bulk', 'trim', 2, 'wsda-split'),
        released('bulk', 'bone', 2, 'wsda-split'),
        released('bulk', 'fat-trim', 4, 'wsda-split'),
      ],
    ),
    ...(long
      ? []
      : [
          manner({
            id: 'boned',
            name: 'Boned, ribs apart',
            stock: 'ribeye',
            tool: 'knife',
            keeps: { parts: 8.6, source: 'practice' },
            releases: [
              {
                ...released('item', 'back-ribs', 3, 'practice'),
                stationsMin: 5,
                stationsSource: 'practice',
                otherwise: 'bone',
              },
              released('bulk', 'trim', 2.4, 'practice'),
              released('bulk', 'bone', 1.5, 'practice'),
              released('bulk', 'fat-trim', 4.5, 'practice'),
            ],
            minutes: 8,
          }),
        ]),
  ],
  maySplit: !long,
});

const bar = (id: string, name: string, regions: readonly string[], zone: Zone): Bar => ({
  kind: 'bar',
  id,
  name,
  regions,
  zones: [zone],
});

const ribAndPlate = (id: string, name: string, rib: string, pounds: number) =>
  primal(
    id,
    name,
    ['rib', 'plate'],
    [
      operation('usual-line', 'Part rib and plate', 'A hand’s breadth from the eye.', 4, [
        part(rib, pounds),
        part('plate', 18),
      ]),
      ...(rib === 'rib'
        ? [
            operation(
              'short-rib-line',
              'Part rib and plate, short ribs between',
              'A strip of rib ends comes off the plate as short ribs.',
              6,
              [
                part(rib, pounds),
                item('rib-short-ribs', 4.5, 'practice', { regions: ['plate'] }),
                part('plate-narrow', 13.5, 'practice'),
              ],
              onRequest,
            ),
            operation(
              'long-bone-line',
              'Ribs left long',
              'The ribs stay long and bare on the steaks; the plate is the narrower by them.',
              8,
              [part('rib-long', pounds + 4.5, 'practice'), part('plate-narrow', 13.5, 'practice')],
              onRequest,
            ),
          ]
        : []),
    ],
  );

const plate = primal(
  'plate',
  'Plate',
  ['plate'],
  [
    operation(
      'plate-short-ribs',
      'Short ribs from the plate',
      'Ribs 6 to 10 as short ribs, the navel end to trim.',
      8,
      [part('short-ribs', 7, 'practice'), bulk('trim', 6.5), bulk('bone', 1.5), bulk('fat-trim', 3)],
    ),
    operation('plate-boned', 'Bone the plate', 'Ribs out; the navel leaves whole.', 10, [
      item('navel', 9, 'practice'),
      bulk('trim', 2, 'practice'),
      bulk('bone', 4, 'practice'),
      bulk('fat-trim', 3, 'practice'),
    ]),
  ],
);

const plateNarrow = primal(
  'plate-narrow',
  'Plate, narrow',
  ['plate'],
  [
    operation('plate-ground', 'Bone the plate for the grinder', 'All of it to trim.', 8, [
      bulk('trim', 0.6, 'practice'),
      bulk('bone', 0.2, 'practice'),
      bulk('fat-trim', 0.2, 'practice'),
    ]),
  ],
);

/** Short ribs between the bones (English) or across them (flanken): the same ribs, one way or the other. */
const shortRibZone: Zone = {
  id: 'short-ribs',
  name: 'Short ribs',
  stations: { fromRib: 6, toRib: 10 },
  lengthMm: 5 * pitchMm,
  lengthSource: 'memory',
  mass: { parts: 1, source: 'wsda-split' },
  manners: [
    boneIn('english', 'English cut', 'short-ribs-english', { keeps: 4, source: 'wsda-beef' }, [
      released('bulk', 'trim', 1.5, 'wsda-split'),
      released('bulk', 'fat-trim', 1.5, 'wsda-split'),
    ]),
    boneIn('flanken', 'Flanken cut', 'short-ribs-flanken', { keeps: 4, source: 'wsda-beef' }, [
      released('bulk', 'trim', 1.5, 'wsda-split'),
      released('bulk', 'fat-trim', 1.5, 'wsda-split'),
    ]),
  ],
  maySplit: true,
};

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

export const beefParts: readonly Part[] = [
  side,
  chuck,
  chuckLong,
  ribAndPlate('rib-and-plate', 'Rib and plate', 'rib', 20),
  ribAndPlate('rib-of-6-and-plate', 'Rib of six and plate', 'rib-of-6', 20 - ribPounds),
  plate,
  plateNarrow,
  brisket,
  neck,
  skirt,
  bar('rib', 'Rib', ['rib'], ribZone(6, false)),
  bar('rib-of-6', 'Rib of six', ['rib'], ribZone(7, false)),
  bar('rib-long', 'Rib with long bones', ['rib', 'plate'], ribZone(6, true)),
  bar('short-ribs', 'Short ribs', ['plate'], shortRibZone),
  bar('shank', 'Fore shank', ['shank'], shankZone),
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

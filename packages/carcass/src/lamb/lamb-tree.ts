import type { Bar, Manner, Part, Zone } from '../species.ts';
import { block, manner, onRequest, operation, outputsOf, primal, released } from '../tree-data.ts';

/** Pounds of one side of a carcass of 100 lb; what names no source of its own splits a published line. */
const { part, item, bulk } = outputsOf('lamb-army-split');

export const lambRegions = {
  neck: 'Neck',
  shoulder: 'Shoulder',
  'fore-shank': 'Fore shank',
  rack: 'Rack',
  breast: 'Breast',
  loin: 'Loin',
  kidney: 'Kidney',
  chump: 'Chump',
  leg: 'Leg',
  'hind-shank': 'Hind shank',
} as const;

/** One rib of the rack of eight, pounds: it moves with the line between shoulder and rack. */
const ribPounds = 5.5 / 8;
const rackOf7 = 7 * ribPounds;

const foreRegions = ['neck', 'shoulder', 'fore-shank'];

const side = primal('side', 'Side', Object.keys(lambRegions), [
  operation(
    'break-side',
    'Break the side',
    'Shoulder off between ribs 5 and 6, rack from loin between 12 and 13, leg off just ahead of the hip bone.',
    5,
    [
      part('fore', 11.5 + 5),
      part('rib-and-breast', rackOf7 + 5.5),
      part('loin', 6.5 + ribPounds),
      part('leg', 16, 'lamb-army'),
    ],
  ),
  operation(
    'rack-of-8',
    'Break the side, rack of eight',
    'Shoulder off between ribs 4 and 5: the rack has eight ribs and the shoulder four.',
    5,
    [
      part('fore-short', 11.5 + 5 - ribPounds),
      part('rib-and-breast-of-8', rackOf7 + ribPounds + 5.5),
      part('loin', 6.5 + ribPounds),
      part('leg', 16, 'lamb-army'),
    ],
    onRequest,
  ),
]);

const neckOff = (shoulder: string, pounds: number) =>
  operation(
    'neck-and-shank-off',
    'Neck and shank off',
    'Neck off straight, fore shank off at the elbow; the shoulder is square.',
    3,
    [
      part(shoulder, pounds),
      part('neck', 2.8),
      item('fore-shank', 2.2, 'lamb-army-split', { regions: ['fore-shank'] }),
    ],
  );

const fore = primal('fore', 'Fore with neck', foreRegions, [
  neckOff('shoulder', 11.5),
  operation(
    'shank-on',
    'Shank left on the shoulder',
    'Neck off; the shoulder leaves whole with its shank.',
    2,
    [item('shoulder-shank-on', 13.7, 'practice', { regions: ['shoulder', 'fore-shank'] }), part('neck', 2.8)],
    onRequest,
  ),
  operation(
    'neck-on',
    'Neck left on the shoulder',
    'Shank off; shoulder and neck leave in one piece.',
    2,
    [
      item('shoulder-neck-on', 14.3, 'practice', { regions: ['shoulder', 'neck'] }),
      item('fore-shank', 2.2, 'lamb-army-split', { regions: ['fore-shank'] }),
    ],
    onRequest,
  ),
]);

const foreShort = primal('fore-short', 'Fore with neck, to rib 4', foreRegions, [
  neckOff('shoulder-short', 11.5 - ribPounds),
]);

/** Boned, a shoulder keeps 69 of 100. */
const boned = (pounds: number) => [
  bulk('bone', pounds * 0.21, 'lamb-army-split'),
  bulk('trim', pounds * 0.05, 'practice'),
  bulk('fat-trim', pounds * 0.05, 'practice'),
];

const shoulder = (id: string, name: string, pounds: number) =>
  primal(
    id,
    name,
    ['shoulder'],
    [
      operation('shoulder-square', 'Keep the shoulder square', 'Bone in, one piece.', 1, [
        item(id === 'shoulder' ? 'shoulder-square' : 'shoulder-square-short', pounds * 0.95, 'practice'),
        bulk('fat-trim', pounds * 0.05, 'practice'),
      ]),
      operation(
        'shoulder-across',
        'Saw the shoulder in chops',
        'Arm chops from below, blade chops from behind.',
        4,
        [
          part(`${id}-arm`, pounds * 0.4, 'practice'),
          part(`${id}-blade`, pounds * 0.5, 'practice'),
          bulk('trim', pounds * 0.05, 'practice'),
          bulk('fat-trim', pounds * 0.05, 'practice'),
        ],
      ),
      operation('shoulder-rolled', 'Bone and roll the shoulder', 'All bones out, rolled and tied.', 9, [
        item('shoulder-rolled', pounds * 0.69, 'lamb-army'),
        ...boned(pounds),
      ]),
      operation('shoulder-ground', 'Bone the shoulder for the grinder', 'All of it to trim.', 7, [
        bulk('trim', pounds * 0.69, 'lamb-army'),
        bulk('bone', pounds * 0.21, 'lamb-army-split'),
        bulk('fat-trim', pounds * 0.1, 'practice'),
      ]),
    ],
  );

const neck = primal(
  'neck',
  'Neck',
  ['neck'],
  [
    operation('neck-whole', 'Keep the neck whole', 'One piece for braising.', 0.5, [
      item('neck', 1, 'practice'),
    ]),
    operation('neck-sliced', 'Saw the neck in slices', 'Across the bone, for braising.', 1, [
      item('neck-slices', 1, 'practice'),
    ]),
    operation('neck-ground', 'Bone the neck for the grinder', 'All of it to trim.', 3, [
      bulk('trim', 0.38, 'lamb-army'),
      bulk('bone', 0.52, 'practice'),
      bulk('fat-trim', 0.1, 'practice'),
    ]),
  ],
);

const ribAndBreast = (id: string, name: string, rack: string, rackPounds: number) =>
  primal(
    id,
    name,
    ['rack', 'breast'],
    [
      operation(
        'usual-line',
        'Part rack and breast',
        'A hand’s breadth from the eye, straight along the ribs.',
        2,
        [part(rack, rackPounds, rack === 'rack' ? 'lamb-army-split' : 'lamb-army'), part('breast', 5.5)],
      ),
      ...(rack === 'rack'
        ? [
            operation(
              'long-bone-line',
              'Ribs left long on the rack',
              'The ribs stay long on the rack; the breast is left without them.',
              5,
              [
                part('rack-long', rackPounds + 1.3, 'practice'),
                item('breast-boneless', 3.6, 'practice', { regions: ['breast'] }),
                bulk('trim', 0.6, 'practice'),
              ],
              onRequest,
            ),
          ]
        : []),
    ],
  );

const breast = primal(
  'breast',
  'Breast',
  ['breast'],
  [
    operation('breast-rolled', 'Bone and roll the breast', 'Ribs out, rolled for stuffing.', 6, [
      item('breast-rolled', 3.4, 'practice'),
      bulk('bone', 1.4, 'practice'),
      bulk('fat-trim', 0.7, 'practice'),
    ]),
    operation('breast-riblets', 'Saw riblets', 'The rib end in riblets, the flap to trim.', 3, [
      item('riblets', 2.6, 'practice'),
      bulk('trim', 1.6, 'practice'),
      bulk('bone', 0.4, 'practice'),
      bulk('fat-trim', 0.9, 'practice'),
    ]),
    operation('breast-ground', 'Bone the breast for the grinder', 'All of it to trim.', 5, [
      bulk('trim', 0.38, 'lamb-army'),
      bulk('bone', 0.32, 'practice'),
      bulk('fat-trim', 0.3, 'practice'),
    ]),
  ],
);

const inBone = (stock: string, name: string): Manner =>
  manner({
    id: 'bone-in',
    name,
    stock,
    tool: 'saw',
    keeps: { parts: 94, source: 'practice' },
    releases: [released('bulk', 'fat-trim', 6, 'practice')],
    minutes: 2,
  });

/** Millimetres from rib to rib at a carcass of 22 kg. */
const pitchMm = 26;

const rackZone = (fromRib: 5 | 6, stock: string): Zone => ({
  id: 'rack',
  name: 'Rack',
  stations: { fromRib, toRib: 12 },
  lengthMm: pitchMm * (13 - fromRib),
  lengthSource: 'memory',
  mass: { parts: 1, source: 'lamb-army-split' },
  manners: [
    inBone(stock, stock === 'rack-long' ? 'Long-bone chops and racks' : 'Rib chops and racks'),
    manner({
      id: 'boned',
      name: 'Boned, the eye alone',
      stock: 'rack-eye',
      tool: 'knife',
      keeps: { parts: 60, source: 'lamb-army' },
      releases: [released('bulk', 'bone', 30, 'practice'), released('bulk', 'fat-trim', 10, 'practice')],
      minutes: 4,
    }),
  ],
  maySplit: true,
});

const bar = (id: string, name: string, regions: readonly string[], zone: Zone): Bar => ({
  kind: 'bar',
  id,
  name,
  regions,
  zones: [zone],
});

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
        { ...released('item', 'fillet', 10, 'lamb-army-split'), stationsMin: 7, otherwise: 'trim' },
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

const source = 'lamb-army-split';
const chops = (id: string, name: string, lengthMm: number, stock: string): Bar =>
  block({ id, name, regions: ['shoulder'], lengthMm, tool: 'saw', source, stock });

export const lambParts: readonly Part[] = [
  side,
  fore,
  foreShort,
  shoulder('shoulder', 'Shoulder', 11.5),
  shoulder('shoulder-short', 'Shoulder, to rib 4', 11.5 - ribPounds),
  neck,
  ribAndBreast('rib-and-breast', 'Rack and breast', 'rack', rackOf7),
  ribAndBreast('rib-and-breast-of-8', 'Rack of eight and breast', 'rack-of-8', 5.5),
  breast,
  loin,
  leg,
  chump,
  legShort,
  legShankless,
  bar('rack', 'Rack of seven', ['rack'], rackZone(6, 'rack-bone-in')),
  bar('rack-of-8', 'Rack of eight', ['rack'], rackZone(5, 'rack-of-8-bone-in')),
  bar('rack-long', 'Rack with long ribs', ['rack', 'breast'], rackZone(6, 'rack-long')),
  bar('loin-bar', 'Loin', ['loin'], loinZone),
  bar('saddle-half', 'Half of the saddle', ['loin'], saddleZone),
  chops('shoulder-arm', 'Arm of the shoulder', 110, 'shoulder-arm'),
  chops('shoulder-blade', 'Blade of the shoulder', 130, 'shoulder-blade'),
  chops('shoulder-short-arm', 'Arm of the short shoulder', 110, 'shoulder-arm'),
  chops('shoulder-short-blade', 'Blade of the short shoulder', 110, 'shoulder-blade'),
  block({ id: 'chump-bar', name: 'Chump', regions: ['chump'], lengthMm: 70, tool: 'saw', source }),
  block({
    id: 'leg-centre',
    name: 'Centre of the leg',
    regions: ['leg'],
    lengthMm: 110,
    tool: 'saw',
    source,
  }),
];

import type { Output, Part } from '../species.ts';
import { block, onRequest, operation, primal } from '../tree-data.ts';
import { bulk, item, moves, part, shoulderRegions } from './hog-side.ts';

const upperRegions = ['neck', 'jowl', 'butt'];
const lowerRegions = ['picnic', 'fore-shank'];

const whenScalded = { needs: ['skin-on'], otherwise: 'fat-trim' } as const;
const footOnly = { needs: ['feet'], otherwise: 'bone', regions: ['fore-shank'] } as const;
const shankOnly = { regions: ['fore-shank'] } as const;

const shoulder = (id: string, name: string, upper: Output, regions: readonly string[]) =>
  primal(id, name, regions, [
    operation(
      'part-shoulder',
      'Part the shoulder',
      'Butt from picnic, straight across above the shoulder joint.',
      2,
      [upper, part('lower-shoulder', 11.4)],
    ),
  ]);

const neckAndJowl = [
  item('neck-bones', 1.6, 'fat-lists', { regions: ['neck'] }),
  item('jowl', 1.6, 'nppc-split', { regions: ['jowl'] }),
];
const jowl = item('jowl', 1.6, 'nppc-split', { regions: ['jowl'] });
const skin = bulk('skin', 0.35, 'nppc-split', whenScalded);

const upperShoulder = primal('upper-shoulder', 'Upper shoulder', upperRegions, [
  operation('neck-off', 'Neck and jowl off', 'Neck bones out, jowl off; the butt is squared.', 3, [
    part('butt', 7.35, 'nppc', { cvPercent: 14 }),
    ...neckAndJowl,
    bulk('bone', 0.68),
    skin,
  ]),
  operation(
    'neck-steaks',
    'Neck in steaks',
    'The neck is sawn across for braising, not boned.',
    3,
    [
      part('butt', 7.35, 'nppc', { cvPercent: 14 }),
      item('neck-steaks', 2, 'practice', { regions: ['neck'] }),
      jowl,
      bulk('bone', 0.28, 'practice'),
      skin,
    ],
    onRequest,
  ),
  operation(
    'neck-left-on',
    'Neck left on the butt',
    'The whole neck end in one piece: a long butt, the coppa whole in it.',
    2,
    [
      item('butt-with-neck', 8.95, 'practice', { regions: ['neck', 'butt'] }),
      jowl,
      bulk('bone', 0.68, 'practice'),
      skin,
    ],
    onRequest,
  ),
]);

const upperLong = primal(
  'upper-shoulder-long',
  'Upper shoulder, to rib 5',
  [...upperRegions, 'blade'],
  [
    operation('neck-off', 'Neck and jowl off', 'Neck bones out, jowl off; the butt keeps four ribs.', 3, [
      part('butt-long', 7.35 + moves.blade, 'nppc-split', { cvPercent: 14 }),
      ...neckAndJowl,
      bulk('bone', 0.68),
      skin,
    ]),
  ],
);

const lowerShoulder = primal('lower-shoulder', 'Lower shoulder', lowerRegions, [
  operation(
    'hock-off',
    'Foot and hock off',
    'Foot off at the joint, hock off above it, then the picnic is squared.',
    3,
    [
      part('picnic', 8.3, 'nppc', { cvPercent: 15 }),
      item('front-hock', 1.25, 'nppc-split', shankOnly),
      item('front-foot', 0.75, 'oklahoma', footOnly),
      bulk('bone', 0.7),
      bulk('skin', 0.4, 'nppc-split', whenScalded),
    ],
  ),
  operation(
    'hock-long',
    'Hock taken half-way up the leg',
    'A long meaty hock; the picnic loses its shank end.',
    3,
    [
      item('picnic-short', 7.2, 'practice', { regions: ['picnic'] }),
      item('front-hock-long', 2.35, 'practice', shankOnly),
      item('front-foot', 0.75, 'oklahoma', footOnly),
      bulk('bone', 0.7, 'practice'),
      bulk('skin', 0.4, 'practice', whenScalded),
    ],
    onRequest,
  ),
  operation(
    'shank-sliced',
    'Shank sawn in slices',
    'The long shank is sawn across the marrow; the picnic loses its shank end.',
    4,
    [
      item('picnic-short', 7.2, 'practice', { regions: ['picnic'] }),
      part('fore-shank', 2.35, 'practice'),
      item('front-foot', 0.75, 'oklahoma', footOnly),
      bulk('bone', 0.7, 'practice'),
      bulk('skin', 0.4, 'practice', whenScalded),
    ],
    onRequest,
  ),
  operation(
    'foot-long',
    'Foot cut long',
    'Foot off above the joint, with the lower half of the hock.',
    3,
    [
      part('picnic', 8.3, 'nppc', { cvPercent: 15 }),
      item('front-foot-long', 1.35, 'practice', shankOnly),
      bulk('bone', 1.35, 'practice'),
      bulk('skin', 0.4, 'practice', whenScalded),
    ],
    { ...onRequest, needs: ['feet'] },
  ),
  operation(
    'shank-on',
    'Shank left on the picnic',
    'The picnic whole with its shank: an arm ham.',
    1,
    [
      item('picnic-shank-on', 9.55, 'practice', { regions: lowerRegions }),
      item('front-foot', 0.75, 'oklahoma', footOnly),
      bulk('bone', 0.7, 'practice'),
      bulk('skin', 0.4, 'practice', whenScalded),
    ],
    onRequest,
  ),
]);

const butt = primal(
  'butt',
  'Boston butt',
  ['butt'],
  [
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
    operation(
      'butt-presa',
      'Seam out the presa',
      'The marbled muscle under the blade bone leaves whole; it takes a bite of the coppa with it.',
      8,
      [
        item('presa', 0.9, 'memory'),
        item('butt-braising', 4.7, 'practice'),
        bulk('bone', 0.6, 'practice'),
        bulk('trim', 0.75, 'practice'),
        bulk('fat-trim', 0.4, 'practice'),
      ],
      onRequest,
    ),
  ],
);

const buttLong = primal(
  'butt-long',
  'Butt, to rib 5',
  ['butt', 'blade'],
  [
    operation(
      'coppa-long',
      'Seam out the long coppa',
      'The coppa runs on under ribs 3 and 4 and leaves whole.',
      9,
      [
        item('coppa-long', 3.6, 'practice'),
        item('butt-braising', 3.6, 'practice'),
        bulk('bone', 0.8, 'practice'),
        bulk('trim', 1, 'practice'),
        bulk('fat-trim', 0.5, 'practice'),
      ],
    ),
    operation(
      'butt-long-across',
      'Cut the long butt across, bone in',
      'Blade steaks and roasts, four ribs of them.',
      3,
      [
        part('butt-long-bone-in', 8, 'practice'),
        bulk('trim', 1, 'practice'),
        bulk('fat-trim', 0.5, 'practice'),
      ],
    ),
  ],
);

const picnic = primal(
  'picnic',
  'Picnic',
  ['picnic'],
  [
    operation('picnic-whole', 'Keep the picnic whole', 'Bone in, one roast.', 1, [
      item('picnic-whole', 7.9),
      bulk('fat-trim', 0.4),
    ]),
    operation('picnic-boned', 'Bone the picnic', 'Boned for rolled roasts or cubes.', 7, [
      part('picnic-boneless', 6.3, 'nppc'),
      bulk('bone', 1),
      bulk('skin', 0.6, 'nppc-split', whenScalded),
      bulk('fat-trim', 0.4),
    ]),
    operation('picnic-ground', 'Bone the picnic for the grinder', 'All of it to trim.', 6, [
      bulk('trim', 6.3, 'nppc'),
      bulk('bone', 1),
      bulk('skin', 0.6, 'nppc-split', whenScalded),
      bulk('fat-trim', 0.4),
    ]),
    operation(
      'picnic-across',
      'Cut the picnic across, bone in',
      'Arm steaks from the thick end; no whole picnic is left.',
      3,
      [
        part('picnic-bone-in', 7.5, 'practice'),
        bulk('trim', 0.4, 'practice'),
        bulk('fat-trim', 0.4, 'practice'),
      ],
      onRequest,
    ),
    operation(
      'picnic-secreto',
      'Lift the secreto, grind the rest',
      'The thin marbled sheet between shoulder and belly leaves whole; the rest is boned to trim.',
      9,
      [
        item('secreto', 0.6, 'memory'),
        bulk('trim', 5.7, 'practice'),
        bulk('bone', 1, 'practice'),
        bulk('skin', 0.6, 'practice', whenScalded),
        bulk('fat-trim', 0.4, 'practice'),
      ],
      onRequest,
    ),
  ],
);

const source = 'nppc-split';

export const shoulderParts: readonly Part[] = [
  shoulder('shoulder', 'Shoulder', part('upper-shoulder', 11.58), shoulderRegions),
  shoulder('shoulder-long', 'Shoulder, to rib 5', part('upper-shoulder-long', 11.58 + moves.blade), [
    ...shoulderRegions,
    'blade',
  ]),
  upperShoulder,
  upperLong,
  lowerShoulder,
  butt,
  buttLong,
  picnic,
  block({ id: 'butt-bone-in', name: 'Butt, bone in', regions: ['butt'], lengthMm: 230, tool: 'saw', source }),
  block({
    id: 'butt-long-bone-in',
    name: 'Long butt, bone in',
    regions: ['butt', 'blade'],
    lengthMm: 304,
    tool: 'saw',
    source,
    stock: 'butt-bone-in',
  }),
  block({
    id: 'butt-boneless',
    name: 'Butt, boneless',
    regions: ['butt'],
    lengthMm: 230,
    tool: 'knife',
    source,
  }),
  block({
    id: 'picnic-boneless',
    name: 'Picnic, boneless',
    regions: ['picnic'],
    lengthMm: 220,
    tool: 'knife',
    source,
  }),
  block({
    id: 'picnic-bone-in',
    name: 'Picnic, bone in',
    regions: ['picnic'],
    lengthMm: 220,
    tool: 'saw',
    source,
  }),
  block({
    id: 'fore-shank',
    name: 'Front shank',
    regions: ['fore-shank'],
    lengthMm: 170,
    tool: 'saw',
    source,
  }),
];

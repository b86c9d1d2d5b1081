import type { Bar, Part, Zone } from '../species.ts';
import { block, manner, onRequest, operation, primal, released } from '../tree-data.ts';
import { bulk, inBone, item, oneZone, part, pitchMm, rackOf7, ribPounds } from './lamb-side.ts';

const foreRegions = ['neck', 'shoulder', 'fore-shank'];

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

const chops = (id: string, name: string, lengthMm: number, stock: string): Bar =>
  block({ id, name, regions: ['shoulder'], lengthMm, tool: 'saw', source: 'lamb-army-split', stock });

export const foreParts: readonly Part[] = [
  fore,
  foreShort,
  shoulder('shoulder', 'Shoulder', 11.5),
  shoulder('shoulder-short', 'Shoulder, to rib 4', 11.5 - ribPounds),
  neck,
  ribAndBreast('rib-and-breast', 'Rack and breast', 'rack', rackOf7),
  ribAndBreast('rib-and-breast-of-8', 'Rack of eight and breast', 'rack-of-8', 5.5),
  breast,
  oneZone('rack', 'Rack of seven', ['rack'], rackZone(6, 'rack-bone-in')),
  oneZone('rack-of-8', 'Rack of eight', ['rack'], rackZone(5, 'rack-of-8-bone-in')),
  oneZone('rack-long', 'Rack with long ribs', ['rack', 'breast'], rackZone(6, 'rack-long')),
  chops('shoulder-arm', 'Arm of the shoulder', 110, 'shoulder-arm'),
  chops('shoulder-blade', 'Blade of the shoulder', 130, 'shoulder-blade'),
  chops('shoulder-short-arm', 'Arm of the short shoulder', 110, 'shoulder-arm'),
  chops('shoulder-short-blade', 'Blade of the short shoulder', 110, 'shoulder-blade'),
];

import type { Part, Zone } from '../species.ts';
import { manner, onRequest, operation, primal, released } from '../tree-data.ts';
import { boneIn, bulk, item, oneZone, part, ribPounds } from './beef-side.ts';

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

/** Rib and plate. */
export const ribParts: readonly Part[] = [
  ribAndPlate('rib-and-plate', 'Rib and plate', 'rib', 20),
  ribAndPlate('rib-of-6-and-plate', 'Rib of six and plate', 'rib-of-6', 20 - ribPounds),
  plate,
  plateNarrow,
  oneZone('rib', 'Rib', ['rib'], ribZone(6, false)),
  oneZone('rib-of-6', 'Rib of six', ['rib'], ribZone(7, false)),
  oneZone('rib-long', 'Rib with long bones', ['rib', 'plate'], ribZone(6, true)),
  oneZone('short-ribs', 'Short ribs', ['plate'], shortRibZone),
];

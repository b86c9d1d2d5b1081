import type { Bar, Manner, Primal, Zone } from '../species.ts';
import { manner, onRequest, operation, outputsOf, primal, released } from '../tree-data.ts';

/** Pounds of one side of a carcass of 100 lb; what names no source of its own splits a published line. */
export const { part, item, bulk } = outputsOf('lamb-army-split');

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
export const ribPounds = 5.5 / 8;
export const rackOf7 = 7 * ribPounds;

export const lambSide: Primal = primal('side', 'Side', Object.keys(lambRegions), [
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

export const inBone = (stock: string, name: string): Manner =>
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
export const pitchMm = 26;

export const oneZone = (id: string, name: string, regions: readonly string[], zone: Zone): Bar => ({
  kind: 'bar',
  id,
  name,
  regions,
  zones: [zone],
});

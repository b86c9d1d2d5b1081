import type { Bar, Manner, Primal, Release, Zone } from '../species.ts';
import { manner, onRequest, operation, outputsOf, primal } from '../tree-data.ts';

/** Pounds of a fore quarter of 140 lb; what names no source of its own splits a published line. */
export const { part, item, bulk } = outputsOf('wsda-split');

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
export const ribPounds = 20 / 7;

const quarterOf = (chuck: string, chuckPounds: number, rib: string, ribPoundsThere: number) => [
  part(chuck, chuckPounds),
  part(rib, ribPoundsThere + 18),
  part('brisket', 16),
  part('shank', 12),
  part('neck', 8),
  part('skirt', 2),
  bulk('loss', 4),
];

export const beefSide: Primal = primal('side', 'Fore quarter', Object.keys(beefRegions), [
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

interface Keep {
  readonly keeps: number;
  readonly source: string;
}

export const boneIn = (
  id: string,
  name: string,
  stock: string,
  { keeps, source }: Keep,
  releases: readonly Release[],
): Manner => manner({ id, name, stock, tool: 'saw', keeps: { parts: keeps, source }, releases, minutes: 4 });

export const oneZone = (id: string, name: string, regions: readonly string[], zone: Zone): Bar => ({
  kind: 'bar',
  id,
  name,
  regions,
  zones: [zone],
});

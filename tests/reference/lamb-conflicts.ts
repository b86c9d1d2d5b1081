import type { Conflict } from './conflict.ts';
import { ask, grams, inches, loose, ribs } from './one-side.ts';

const unsplit = ['organs', 'unsplit'] as const;

/**
 * Conflicts between lamb cuts, on one side of a lamb of 22 kg with 13 ribs. Lines of USDA Farmers' Bulletin 2264 (1977):
 * shoulder off between ribs 5 and 6, rack from loin between 12 and 13, leg just ahead of the hip bone; the rest is common
 * practice, no source.
 */
export const lambConflicts: readonly Conflict[] = [
  {
    id: 'L1',
    says: 'seven ribs in a rack, eight if the line moves and the shoulder gives one up',
    can: [
      [ribs('rack', 5), ribs('rib-chop', 1, 2)],
      [ask('shoulder-square'), ribs('rack', 7)],
      [ask('shoulder-square-short'), ribs('rack-of-8', 8)],
    ],
    cannot: [
      [ribs('rack', 7), ribs('rib-chop', 1, 1)],
      [ribs('rack-of-8', 8), ask('shoulder-square')],
    ],
  },
  {
    id: 'L2',
    says: 'a crown takes both racks: loin chops and legs are untouched',
    sides: 2,
    can: [[ribs('crown', 7, 2), inches('loin-chop', 1, 10), ask('leg-whole', 2)]],
    cannot: [
      [ribs('crown', 7, 2), ribs('rib-chop', 1, 1)],
      [ribs('crown', 7, 2), ribs('rack', 7)],
    ],
  },
  {
    id: 'L3',
    says: 'a saddle takes both loins of a lamb that was not split',
    sides: 2,
    facts: unsplit,
    can: [[ask('saddle', 2), ask('kidney', 2), ribs('crown', 7, 2)]],
    cannot: [
      [ask('saddle', 2), inches('loin-chop', 1, 1)],
      [ask('saddle', 2), ribs('barnsley-chop', 1, 2)],
      [ask('saddle', 2), inches('noisette', 1.25, 1)],
    ],
  },
  {
    id: 'L3 and L4, split',
    says: 'a split lamb gives neither saddle nor Barnsley chops',
    sides: 2,
    facts: ['organs'],
    can: [[inches('loin-chop', 1, 10)]],
    cannot: [],
    never: [ask('saddle', 2), ribs('barnsley-chop', 1, 2)],
  },
  {
    id: 'L4',
    says: 'seven Barnsley chops, each a vertebra of both loins, and no single ones',
    sides: 2,
    facts: unsplit,
    can: [[ribs('barnsley-chop', 1, 14), ask('kidney', 2)]],
    cannot: [[ribs('barnsley-chop', 1, 2), inches('loin-chop', 1, 1)]],
    never: [ribs('barnsley-chop', 1, 16)],
  },
  {
    id: 'L5',
    says: 'noisettes and a whole fillet, or loin chops, along the loin',
    can: [
      [inches('noisette', 1.25, 5), ask('fillet')],
      [inches('noisette', 1.25, 2), inches('loin-chop', 1, 3)],
    ],
    cannot: [
      [ask('fillet'), inches('loin-chop', 1, 1)],
      [inches('noisette', 1.25, 5), inches('loin-chop', 1, 1)],
    ],
  },
  {
    id: 'L6',
    says: 'the chump is on the leg or off it',
    can: [[ask('leg-whole'), inches('chump-chop', 1, 2)]],
    cannot: [
      [ask('leg-chump-on'), inches('chump-chop', 1, 1)],
      [ask('leg-chump-on'), ask('chump-roast')],
    ],
  },
  {
    id: 'L7',
    says: 'a leg is whole, boned, or in steaks; the shank goes with it or apart',
    can: [[ask('leg-boned'), ask('hind-shank')]],
    cannot: [
      [ask('leg-whole'), inches('leg-steak', 0.75, 1)],
      [ask('leg-whole'), ask('leg-boned')],
      [ask('leg-whole'), ask('hind-shank')],
      [ask('leg-boned'), inches('leg-steak', 0.75, 1)],
    ],
  },
  {
    id: 'L8',
    says: 'a shoulder is square, in chops, or rolled; neck and shank go with it or apart',
    can: [[ask('shoulder-square'), ask('fore-shank'), ask('neck-slices')]],
    cannot: [
      [ask('shoulder-square'), inches('arm-chop', 0.75, 1)],
      [ask('shoulder-square'), inches('blade-chop', 0.75, 1)],
      [ask('shoulder-square'), ask('shoulder-rolled')],
      [ask('shoulder-shank-on'), ask('fore-shank')],
      [ask('shoulder-neck-on'), ask('neck-slices')],
    ],
  },
  {
    id: 'L9',
    says: 'long bones on the rack are missing in the breast',
    can: [[ribs('long-bone-chop', 1, 7), ask('breast-boneless')]],
    cannot: [[ribs('long-bone-chop', 1, 1), ask('riblets')]],
  },
  {
    id: 'L10',
    says: 'a breast is rolled, in riblets, or trim',
    can: [[ask('riblets'), loose('ground-lamb', 100)]],
    cannot: [[ask('breast-rolled'), ask('riblets')]],
  },
  {
    id: 'L11',
    says: 'kidneys stay in the saddle or are sold apart',
    sides: 2,
    facts: unsplit,
    can: [[ask('saddle', 2), ask('kidney', 2)]],
    cannot: [[ask('saddle-with-kidneys', 2), ask('kidney', 1)]],
  },
  {
    id: 'L8, rolled to weight',
    says: 'a cannon of the rack takes its chops',
    can: [[grams('cannon', 300, 450), ask('shoulder-rolled')]],
    cannot: [[grams('cannon', 300, 450, 2), ribs('rack', 7), inches('loin-chop', 1, 5)]],
  },
];

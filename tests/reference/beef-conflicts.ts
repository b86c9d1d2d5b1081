import type { Conflict } from './conflict.ts';
import { ask, grams, inches, loose, ribs } from './one-side.ts';

/**
 * Conflicts between cuts of a fore quarter of beef of 64 kg. Chuck of ribs 1 to 5, rib of ribs 6 to 12, quartered between
 * 12 and 13 (trade specification); the rest is common practice, no source.
 */
export const beefConflicts: readonly Conflict[] = [
  {
    id: 'B1',
    says: 'seven ribs a side: a roast of four leaves three',
    can: [[ribs('rib-roast', 4), ribs('rib-steak', 1, 3)]],
    cannot: [
      [ribs('rib-roast', 4), ribs('rib-steak', 1, 4)],
      [ribs('rib-roast', 4), ask('back-ribs')],
      [ribs('rib-roast', 7), inches('ribeye-steak', 1.25, 1)],
    ],
  },
  {
    id: 'B2',
    says: 'a ribeye is boned over the same ribs, and sets the back ribs free',
    can: [[inches('ribeye-steak', 1.25, 8), ask('back-ribs')]],
    cannot: [[ask('back-ribs'), ribs('rib-steak', 1, 3)]],
  },
  {
    id: 'B3',
    says: 'a sawn chuck has every muscle cut through',
    can: [
      [grams('pot-roast', 1800, 3000, 3), grams('arm-roast', 1500, 2500)],
      [ask('flat-iron'), ask('chuck-eye'), ask('denver'), ask('shoulder-tender')],
    ],
    cannot: [
      [grams('pot-roast', 1800, 3000), ask('flat-iron')],
      [inches('blade-steak', 1, 1), ask('chuck-eye')],
      [grams('pot-roast', 1800, 3000), ask('denver')],
      [inches('blade-steak', 1, 1), ask('shoulder-tender')],
    ],
  },
  {
    id: 'B4',
    says: 'an arm-bone roast is sawn through clod, shoulder tender and cross rib',
    can: [[ask('cross-rib'), ask('shoulder-tender')]],
    cannot: [
      [grams('arm-roast', 1500, 2500), inches('ranch-steak', 1, 1)],
      [grams('arm-roast', 1500, 2500), ask('shoulder-tender')],
      [grams('arm-roast', 1500, 2500), ask('cross-rib')],
    ],
  },
  {
    id: 'B5',
    says: 'clod heart roast and ranch steaks share its length (3.2 kg)',
    can: [[grams('clod-roast', 1200, 2000), inches('ranch-steak', 1, 5)]],
    cannot: [[grams('clod-roast', 1200, 2000, 2), inches('ranch-steak', 1, 4)]],
  },
  {
    id: 'B6',
    says: 'plate short ribs, or a boned plate',
    can: [[ribs('short-ribs-english', 5)]],
    cannot: [[ribs('short-ribs-english', 3), ask('navel')]],
  },
  {
    id: 'B7',
    says: 'the rib ends are short ribs or stay on long-bone steaks',
    can: [[ask('rib-short-ribs'), ribs('rib-roast', 7)]],
    cannot: [[ask('rib-short-ribs'), ribs('long-bone-steak', 1, 1)]],
  },
  {
    id: 'B8',
    says: 'English or flanken over the same five ribs',
    can: [[ribs('short-ribs-english', 3), ribs('short-ribs-flanken', 2)]],
    cannot: [[ribs('short-ribs-english', 3), ribs('short-ribs-flanken', 3)]],
  },
  {
    id: 'B9',
    says: 'a brisket is whole or parted, fresh or corned',
    can: [[ask('brisket-flat'), ask('brisket-point')]],
    cannot: [
      [ask('brisket-whole'), ask('brisket-flat')],
      [ask('brisket-whole'), ask('corned-brisket')],
    ],
  },
  {
    id: 'B10',
    says: 'the skirt is whole or trim; a beast has one hanger',
    sides: 2,
    can: [[ask('outside-skirt', 2), ask('hanger')]],
    cannot: [],
    never: [ask('hanger', 2)],
  },
  {
    id: 'B11',
    says: 'slices of shank and stew share its length',
    can: [[inches('shank-slice', 1.5, 3), grams('shank-stew', 400, 700, 2)]],
    cannot: [[inches('shank-slice', 1.5, 5), grams('shank-stew', 400, 700, 4)]],
  },
  {
    id: 'B12',
    says: 'a neck is a roast or ground',
    can: [[ask('neck-roast'), ask('back-ribs')]],
    cannot: [[ask('neck-roast'), loose('ground-beef', 31_500)]],
  },
  {
    id: 'B13',
    says: 'a chuck eye taken long leaves six ribs',
    can: [[ask('chuck-eye-long'), ribs('rib-roast', 6)]],
    cannot: [
      [ask('chuck-eye-long'), ribs('rib-roast', 7)],
      [ask('chuck-eye-long'), ask('chuck-eye')],
    ],
  },
];

import type { Conflict } from './conflict.ts';
import { type Ask, ask, grams, inches, loose, ribs } from './one-side.ts';

const slab = grams('slab-bacon', 1000, 1300);
const ribChops = (pieces: number): Ask => inches('rib-chop', 1, pieces);

/**
 * Conflicts between pork cuts. The facts are those of the trade: cutting specifications (IMPS Series 400: back ribs of 8
 * ribs or more, country-style ribs from 3 to 6 ribs of the blade end; AHDB: shoulder off between ribs 4 and 5, line of
 * loin and belly 50 or 200 mm from the eye), farm and butcher pages; what names none of them is common practice, no
 * source. Figures are for a side of 41.8 kg with 15 ribs and a kerf of 2 mm.
 */
export const middleConflicts: readonly Conflict[] = [
  {
    id: 'P1',
    says: 'a whole tenderloin or T-bone chops; loin chops without it are still to be had',
    can: [[ask('tenderloin'), inches('loin-chop', 1, 4)]],
    cannot: [[ask('tenderloin'), inches('t-bone-chop', 1, 1)]],
  },
  {
    id: 'P2',
    says: 'a whole tenderloin beside bone-in rib chops or a rack: it scarcely reaches the ribs',
    can: [
      [ask('tenderloin'), ribChops(8)],
      [ask('tenderloin'), ribs('rib-rack', 8)],
    ],
    cannot: [],
  },
  {
    id: 'P3',
    says: 'the head of the fillet goes with the tenderloin or with bone-in sirloin',
    can: [[ask('tenderloin'), grams('sirloin-roast', 700, 1200)]],
    cannot: [[ask('tenderloin'), inches('sirloin-chop-with-fillet', 1, 1)]],
  },
  {
    id: 'P4',
    says: 'back ribs need 8 of the 9 ribs behind the blade end: one is left for a chop, not two',
    can: [
      [ask('back-ribs'), ribs('rib-chop', 1, 1)],
      [ask('back-ribs'), inches('boneless-chop', 1, 8)],
    ],
    cannot: [
      [ask('back-ribs'), ribs('rib-chop', 1, 2)],
      [ask('back-ribs'), ribs('rib-rack', 3)],
    ],
  },
  {
    id: 'P5',
    says: 'boneless or bone-in, inch by inch',
    can: [[inches('boneless-chop', 1, 14), ribs('rib-chop', 1, 1)]],
    cannot: [[inches('boneless-chop', 1, 15), ribs('rib-chop', 1, 1)]],
  },
  {
    id: 'P6',
    says: 'back bacon takes the chops, and sets back ribs and tenderloin free',
    can: [[grams('back-bacon', 2300, 2500), ask('back-ribs'), ask('tenderloin')]],
    cannot: [
      [grams('back-bacon', 2300, 2500), inches('boneless-chop', 1, 2)],
      [grams('back-bacon', 2300, 2500), ribChops(1)],
    ],
  },
  {
    id: 'P7',
    says: 'a roast of r costs at most r over (thickness and saw) chops, rounded up: 146 mm cost 6 of 15',
    can: [[grams('loin-roast', 900, 1100), inches('boneless-chop', 1, 9)]],
    cannot: [[grams('loin-roast', 900, 1100), inches('boneless-chop', 1, 10)]],
  },
  {
    id: 'P8',
    says: 'country-style ribs take the blade end: no blade chops, no roast of it, no back ribs of the whole loin',
    can: [[grams('country-ribs', 650, 900), ask('back-ribs')]],
    cannot: [
      [grams('country-ribs', 650, 900), inches('blade-chop', 1, 1)],
      [grams('country-ribs', 650, 900), grams('blade-roast', 900, 1400)],
      [grams('country-ribs', 650, 900), ask('back-ribs-full')],
    ],
  },
  {
    id: 'P9',
    says: 'country-style ribs of the butt are another thing under one name: they share the butt',
    can: [
      [grams('butt-country-ribs', 650, 900, 2), grams('butt-roast', 1360, 1815)],
      [grams('country-ribs', 650, 900), ask('coppa')],
    ],
    cannot: [
      [grams('butt-country-ribs', 650, 900, 3), grams('butt-roast', 1360, 1815)],
      [grams('butt-country-ribs', 650, 900), ask('coppa')],
      [grams('butt-country-ribs', 650, 900, 3), inches('blade-steak', 0.75, 5)],
    ],
  },
  {
    id: 'P10',
    says: 'a rack of 8 takes the back ribs and all but one rib chop; loin chops and tenderloin survive',
    can: [[ribs('rib-rack', 8), ribs('rib-chop', 1, 1), inches('loin-chop', 1, 4), ask('tenderloin')]],
    cannot: [
      [ribs('rib-rack', 8), ask('back-ribs')],
      [ribs('rib-rack', 8), ribs('rib-chop', 1, 2)],
    ],
  },
  {
    id: 'P11',
    says: 'a crown takes a rack of both sides: loin chops and tenderloins survive; one long rack bends to a small crown',
    sides: 2,
    can: [
      [ribs('crown', 8, 2), inches('loin-chop', 1, 8), ask('tenderloin', 2)],
      [ribs('small-crown', 9), ribs('rib-rack', 8)],
    ],
    cannot: [
      [ribs('crown', 8, 2), ribs('rib-rack', 3)],
      [ribs('crown', 8, 2), ask('back-ribs')],
      [ribs('crown', 8, 2), ribs('small-crown', 9)],
    ],
  },
  {
    id: 'P12',
    says: 'long-bone chops move the line 150 mm into the belly: no spareribs, no belly of full width',
    can: [[ribs('long-bone-chop', 1, 9), slab]],
    cannot: [
      [ribs('long-bone-chop', 1, 1), ask('spareribs')],
      [ribs('long-bone-chop', 1, 1), ask('belly-whole')],
    ],
  },
  {
    id: 'P13',
    says: 'a porchetta of the whole middle leaves no slab, no chops, no roast; a rib sheet and a pulled tenderloin',
    can: [[ask('porchetta'), ask('rib-sheet'), ask('tenderloin')]],
    cannot: [
      [ask('porchetta'), slab],
      [ask('porchetta'), ribChops(1)],
      [ask('porchetta'), grams('loin-roast', 900, 1100)],
    ],
  },
  {
    id: 'P14',
    says: 'half a porchetta leaves the other half: the front one costs the ribs',
    can: [
      [ask('porchetta-half'), ask('rib-sheet'), inches('loin-chop', 1, 4), slab],
      [ask('porchetta-half'), ask('spareribs'), ribChops(8)],
    ],
    cannot: [
      [ask('porchetta-half'), ribChops(1), inches('loin-chop', 1, 1)],
      [ask('porchetta-half'), ask('spareribs'), inches('loin-chop', 1, 1)],
    ],
  },
  {
    id: 'P15',
    says: 'a porchetta of the belly takes the slab; the loin is untouched and the spareribs come free',
    can: [[ask('belly-porchetta'), ask('spareribs'), ribChops(8)]],
    cannot: [[ask('belly-porchetta'), slab]],
  },
  {
    id: 'P16',
    says: 'spareribs or a belly with its ribs in',
    can: [[ask('spareribs'), slab]],
    cannot: [[ask('spareribs'), grams('rib-in-belly', 1000, 1500)]],
  },
  {
    id: 'P17',
    says: 'St Louis ribs are made of the spareribs, and leave the tips',
    can: [[ask('st-louis-ribs'), ask('rib-tips'), slab]],
    cannot: [[ask('st-louis-ribs'), ask('spareribs')]],
  },
  {
    id: 'P18',
    says: 'meat left on the ribs is missing in the slab',
    can: [[ask('meaty-spareribs'), grams('thin-slab', 1200, 1500)]],
    cannot: [[ask('meaty-spareribs'), slab]],
  },
  {
    id: 'P19',
    says: 'bacon, fresh belly and pancetta share the inches of the belly (4.3 kg)',
    can: [[grams('slab-bacon', 2800, 3100), grams('fresh-belly', 1000, 1200)]],
    cannot: [
      [grams('slab-bacon', 3400, 3700), grams('fresh-belly', 1000, 1200)],
      [grams('slab-bacon', 3400, 3700), grams('pancetta', 1000, 1200)],
    ],
  },
  {
    id: 'P20',
    says: 'a skinned hog gives nothing with its skin on',
    facts: ['head', 'feet', 'organs'],
    can: [[slab, ask('spareribs')]],
    cannot: [],
    never: [
      ask('porchetta'),
      ask('porchetta-half'),
      ask('belly-porchetta'),
      ask('belly-rind'),
      loose('skin', 200),
    ],
  },
  {
    id: 'P21',
    says: 'the rind is sold apart or stays on the bacon',
    can: [[ask('belly-rind'), grams('rindless-slab', 1000, 1300), ask('spareribs')]],
    cannot: [[ask('belly-rind'), slab]],
  },
  {
    id: 'P22',
    says: 'each millimetre of back fat once: in a slab, or on the chops',
    can: [[ask('back-fat-slab'), ribChops(8)]],
    cannot: [[ask('back-fat-slab'), inches('fat-cap-chop', 1, 1)]],
  },
  {
    id: 'P23',
    says: 'kidney, caul and liver that were not kept at slaughter are not to be had',
    facts: ['skin-on', 'head', 'feet'],
    can: [[loose('leaf-fat', 400)]],
    cannot: [],
    never: [ask('kidney'), ask('caul'), ask('liver'), ask('hanging-tender')],
  },
  {
    id: 'P23, condemned',
    says: 'leaf fat and kidney of a condemned cavity are set aside',
    lostParts: ['cavity'],
    can: [[ask('tenderloin')]],
    cannot: [],
    never: [ask('kidney'), loose('leaf-fat', 400)],
  },
];

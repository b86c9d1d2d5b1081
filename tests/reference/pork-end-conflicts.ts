import type { Conflict } from './conflict.ts';
import { ask, grams, inches, loose } from './one-side.ts';

const slab = grams('slab-bacon', 1000, 1300);

/** The same for shoulder, leg, head, and what the whole side shares: rows P24 to P40. */
export const endConflicts: readonly Conflict[] = [
  {
    id: 'P24',
    says: 'a butt is whole, in steaks and roasts, or seamed',
    can: [[inches('blade-steak', 0.75, 4), grams('butt-roast', 1360, 1815)]],
    cannot: [
      [ask('butt-whole'), inches('blade-steak', 0.75, 1)],
      [ask('butt-whole'), ask('coppa')],
      [ask('coppa'), inches('blade-steak', 0.75, 1)],
      [inches('blade-steak', 0.75, 6), grams('butt-roast', 1360, 1815)],
    ],
  },
  {
    id: 'P25',
    says: 'a long coppa takes ribs 3 and 4: two blade chops are left, and no country-style ribs',
    can: [[ask('coppa-long'), inches('blade-chop', 1, 2)]],
    cannot: [
      [ask('coppa-long'), inches('blade-chop', 1, 3)],
      [ask('coppa-long'), grams('country-ribs', 650, 900)],
      [ask('coppa-long'), inches('blade-steak', 0.75, 1)],
      [ask('coppa-long'), ask('butt-whole')],
    ],
  },
  {
    id: 'P26',
    says: 'presa, pluma and secreto come out of coppa, blade chops and picnic',
    can: [[ask('presa'), ask('pluma'), ask('secreto')]],
    cannot: [
      [ask('presa'), ask('coppa')],
      [ask('presa'), inches('blade-steak', 0.75, 1)],
      [ask('pluma'), inches('blade-chop', 1, 1)],
      [ask('secreto'), ask('picnic-whole')],
    ],
  },
  {
    id: 'P27',
    says: 'a picnic is whole, rolled or in steaks',
    can: [[ask('picnic-whole'), ask('front-hock')]],
    cannot: [
      [ask('picnic-whole'), grams('picnic-roast', 1000, 1500)],
      [ask('picnic-whole'), inches('arm-steak', 0.75, 1)],
      [grams('picnic-roast', 1000, 1500), inches('arm-steak', 0.75, 1)],
    ],
  },
  {
    id: 'P28',
    says: 'a long hock or slices of shank shorten the picnic',
    can: [
      [ask('front-hock-long'), ask('picnic-short')],
      [inches('shank-slice', 1.5, 3), ask('picnic-short')],
    ],
    cannot: [
      [ask('front-hock-long'), ask('picnic-whole')],
      [inches('shank-slice', 1.5, 1), ask('front-hock')],
      [ask('picnic-shank-on'), ask('front-hock')],
    ],
  },
  {
    id: 'P29',
    says: 'a foot cut long takes the hock',
    can: [[ask('front-foot-long'), ask('picnic-whole')]],
    cannot: [
      [ask('front-foot-long'), ask('front-hock')],
      [ask('hind-foot-long'), ask('hind-hock')],
    ],
  },
  {
    id: 'P29, no feet',
    says: 'without scalded feet there is none',
    facts: ['skin-on', 'head', 'organs'],
    can: [[ask('front-hock')]],
    cannot: [],
    never: [ask('front-foot'), ask('front-foot-long'), ask('hind-foot'), ask('hind-foot-long')],
  },
  {
    id: 'P30',
    says: 'a whole leg leaves nothing else of the leg but the hock',
    can: [[ask('ham-whole'), ask('hind-hock')]],
    cannot: [
      [ask('ham-whole'), inches('ham-steak', 0.5, 1)],
      [ask('ham-whole'), ask('ham-rump-half')],
      [ask('ham-whole'), ask('ham-inside')],
      [ask('ham-whole'), ask('ham-knuckle')],
    ],
  },
  {
    id: 'P31',
    says: 'centre steaks come off where the halves meet: the ends are left as joints',
    can: [[inches('ham-steak', 0.5, 9), ask('ham-rump-end'), ask('ham-shank-end')]],
    cannot: [
      [inches('ham-steak', 0.5, 1), ask('ham-rump-half')],
      [inches('ham-steak', 0.5, 1), ask('ham-shank-half')],
    ],
  },
  {
    id: 'P32',
    says: 'a leg seamed out gives all its muscles and no steak across them',
    can: [[ask('ham-inside'), ask('ham-outside'), ask('ham-knuckle'), ask('ham-rump'), ask('hind-hock')]],
    cannot: [[ask('ham-inside'), inches('ham-steak', 0.5, 1)]],
  },
  {
    id: 'P33',
    says: 'a long-cut leg takes the sirloin and the last lumbar chop',
    can: [[ask('ham-long'), inches('loin-chop', 1, 4)]],
    cannot: [
      [ask('ham-long'), grams('sirloin-roast', 700, 1200)],
      [ask('ham-long'), inches('sirloin-chop', 1, 1)],
      [ask('ham-long'), inches('loin-chop', 1, 5)],
      [ask('ham-long'), ask('ham-whole')],
    ],
  },
  {
    id: 'P25 and P33',
    says: 'both lines can be moved on one side',
    can: [[ask('coppa-long'), ask('ham-long'), inches('rib-chop', 1, 8), ask('tenderloin'), slab]],
    cannot: [],
  },
  {
    id: 'P34',
    says: 'a long hind hock takes the shank end of the leg',
    can: [[ask('hind-hock-long'), inches('ham-steak', 0.5, 4), ask('ham-rump-end')]],
    cannot: [
      [ask('hind-hock-long'), ask('ham-shank-end')],
      [ask('hind-hock-long'), ask('ham-whole')],
    ],
  },
  {
    id: 'P35',
    says: 'a head leaves whole, or its tongue, cheeks and ears do; the jowl stays on the shoulder',
    can: [
      [ask('tongue'), ask('cheeks'), ask('ears'), ask('jowl')],
      [ask('head'), ask('jowl')],
    ],
    cannot: [
      [ask('head'), ask('tongue')],
      [ask('head'), ask('cheeks')],
      [ask('head'), ask('ears')],
    ],
  },
  {
    id: 'P36',
    says: 'the neck is bones, steaks, or left on a long butt',
    can: [[ask('neck-bones'), ask('coppa')]],
    cannot: [
      [ask('neck-bones'), ask('butt-with-neck')],
      [ask('neck-steaks'), ask('butt-with-neck')],
      [ask('neck-bones'), ask('neck-steaks')],
      [ask('butt-with-neck'), ask('coppa')],
    ],
  },
  {
    id: 'P38',
    says: 'ground meat beyond the natural trim takes a primal: here picnic, butt or leg',
    can: [
      [loose('ground-pork', 3000), ask('picnic-whole'), ask('butt-whole'), ask('ham-whole')],
      [loose('ground-pork', 6000), ask('butt-whole'), ask('ham-whole')],
    ],
    cannot: [[loose('ground-pork', 6000), ask('picnic-whole'), ask('butt-whole'), ask('ham-whole')]],
  },
  {
    id: 'P39',
    says: 'bones for stock are not in bone-in cuts as well',
    can: [[loose('soup-bones', 3000), ask('ham-inside'), grams('picnic-roast', 1000, 1500)]],
    cannot: [[loose('soup-bones', 3000), ask('ham-whole'), ask('picnic-whole')]],
  },
  {
    id: 'P40',
    says: 'the same leg is cured or fresh',
    can: [[ask('cured-leg')]],
    cannot: [[ask('cured-leg'), ask('ham-whole')]],
  },
];

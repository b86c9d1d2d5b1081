import type { Bar, Operation, Output, Part, Primal, SlaughterFact } from '../species.ts';
import { loinBars, loinPounds } from './hog-loin.ts';
import { bulk, item, part } from './outputs.ts';

interface Way {
  readonly id: string;
  readonly name: string;
  readonly says: string;
  readonly minutes: number;
  readonly outputs: readonly Output[];
  readonly needs?: readonly SlaughterFact[];
}
const operation = (way: Way): Operation => ({ minutesSource: 'practice', ...way });

const middle: Primal = {
  kind: 'primal',
  id: 'middle',
  name: 'Middle',
  operations: [
    operation({
      id: 'clear-cavity',
      name: 'Clear the cavity',
      says: 'Leaf fat first and kept apart, then the kidney at the end of the tenderloin, then the skirt, peeled of its film.',
      minutes: 4,
      outputs: [
        bulk('leaf-fat', 1.1, 'fat-lists'),
        item('kidney', 0.37, 'memory'),
        item('outside-skirt', 0.25, 'memory'),
        part('middle-open', 42.25),
      ],
    }),
  ],
};

const middleOpen: Primal = {
  kind: 'primal',
  id: 'middle-open',
  name: 'Middle, cavity cleared',
  operations: [
    operation({
      id: 'pull-tenderloin',
      name: 'Pull the tenderloin',
      says: 'Follow the backbone close: it saves a few ounces. Trim off the chain and the loose fat.',
      minutes: 3,
      outputs: [{ ...item('tenderloin', 0.8, 'nppc'), cvPercent: 10 }, part('middle-fillet-out', 41.45)],
    }),
    operation({
      id: 'leave-tenderloin',
      name: 'Leave the tenderloin in',
      says: 'The tenderloin stays under the loin: chops of the loin end carry it.',
      minutes: 0,
      outputs: [part('middle-fillet-in', 1)],
    }),
  ],
};

interface MiddleForm {
  readonly fillet: 'out' | 'in';
  readonly loin: number;
  readonly longLoin: number;
}

const standardLine = ({ fillet, loin }: MiddleForm) =>
  operation({
    id: 'standard-line',
    name: 'Part loin and belly',
    says: 'Just past the small eye of muscle under the loin eye, straight down to the bone; mark the ribs from one face, free them from the other.',
    minutes: 5,
    outputs: [
      part(`loin-${fillet}`, loin),
      part('belly-ribbed', 17.45, 'nppc'),
      bulk('back-fat', 6.4, 'fat-lists'),
      bulk('skin', 1.5),
    ],
  });

const longBoneLine = ({ fillet, longLoin }: MiddleForm) =>
  operation({
    id: 'long-bone-line',
    name: 'Ribs long and bare on the loin',
    says: 'Free each rib from the belly along its length and leave it on the loin; the meat between the ribs stays on the belly.',
    minutes: 9,
    outputs: [
      part(`loin-long-${fillet}`, longLoin, 'practice'),
      part('belly-boneless', 15.15, 'practice'),
      bulk('cartilage', 0.4, 'practice'),
      bulk('back-fat', 6.4, 'fat-lists'),
      bulk('skin', 1.5),
    ],
  });

const wholePorchetta = ({ fillet }: MiddleForm) =>
  operation({
    id: 'porchetta-whole',
    name: 'Porchetta of the whole middle',
    says: 'Bone the middle in one sheet, skin on, and roll it: no loin, no slab; the ribs come away as one sheet.',
    minutes: 25,
    needs: ['skin-on'],
    outputs: [
      item(fillet === 'out' ? 'porchetta' : 'porchetta-fillet', fillet === 'out' ? 31.2 : 32, 'practice'),
      item('rib-sheet', 4.5),
      bulk('bone', 2.2),
      bulk('fat-trim', 1.15),
      bulk('back-fat', 2.4),
    ],
  });

const frontPorchetta = operation({
  id: 'porchetta-front',
  name: 'Porchetta of the front half',
  says: 'The rib half of loin and belly is boned and rolled; the loin end, the sirloin and the flank end of the belly stay to be cut.',
  minutes: 18,
  needs: ['skin-on'],
  outputs: [
    item('porchetta-half', 16, 'practice'),
    item('rib-sheet', 4.1, 'practice'),
    bulk('bone', 1.4, 'practice'),
    bulk('fat-trim', 0.565, 'practice'),
    bulk('back-fat', 4, 'practice'),
    part('loin-rear', loinPounds.rear),
    part('belly-rear', 8.725, 'practice'),
    bulk('skin', 0.75),
  ],
});

const rearPorchetta = operation({
  id: 'porchetta-rear',
  name: 'Porchetta of the rear half',
  says: 'The loin end, sirloin and flank end are boned and rolled; the rib half of loin and belly stays to be cut.',
  minutes: 15,
  needs: ['skin-on'],
  outputs: [
    item('porchetta-half', 14.4, 'practice'),
    bulk('bone', 0.8, 'practice'),
    bulk('fat-trim', 0.585, 'practice'),
    bulk('back-fat', 6, 'practice'),
    part('loin-front', loinPounds.front),
    part('belly-front', 8.725, 'practice'),
    bulk('skin', 0.75),
  ],
});

const filletOut: MiddleForm = { fillet: 'out', loin: loinPounds.out, longLoin: loinPounds.longOut };
const filletIn: MiddleForm = { fillet: 'in', loin: loinPounds.in, longLoin: loinPounds.longIn };

const middles: readonly Primal[] = [
  {
    kind: 'primal',
    id: 'middle-fillet-out',
    name: 'Middle, tenderloin out',
    operations: [
      standardLine(filletOut),
      longBoneLine(filletOut),
      wholePorchetta(filletOut),
      frontPorchetta,
      rearPorchetta,
    ],
  },
  {
    kind: 'primal',
    id: 'middle-fillet-in',
    name: 'Middle, tenderloin in',
    operations: [standardLine(filletIn), longBoneLine(filletIn), wholePorchetta(filletIn)],
  },
];

const bellyRibbed: Primal = {
  kind: 'primal',
  id: 'belly-ribbed',
  name: 'Belly with its ribs',
  operations: [
    operation({
      id: 'sheet-ribs',
      name: 'Sheet the ribs',
      says: 'Take the ribs off in one sheet; the flap over the cartilage stays on the belly and is cured with it.',
      minutes: 4,
      outputs: [
        { ...item('spareribs', 2.9, 'nppc'), cvPercent: 13 },
        part('belly-slab', 9.5, 'nppc'),
        bulk('trim', 4.55, 'nppc'),
        bulk('fat-trim', 0.5, 'nppc'),
      ],
    }),
    operation({
      id: 'sheet-st-louis',
      name: 'Sheet the ribs, St Louis style',
      says: 'Sheet the ribs and square them: the tips come off as their own cut.',
      minutes: 6,
      outputs: [
        item('st-louis-ribs', 2, 'weighed-173'),
        item('rib-tips', 0.9, 'weighed-173'),
        part('belly-slab', 9.5, 'nppc'),
        bulk('trim', 4.55, 'nppc'),
        bulk('fat-trim', 0.5, 'nppc'),
      ],
    }),
    operation({
      id: 'leave-ribs-in',
      name: 'Leave the ribs in',
      says: 'Square the belly with its ribs on, cartilage strip out in one piece for stock or rillettes.',
      minutes: 3,
      outputs: [
        part('belly-rib-in', 12.6, 'practice'),
        bulk('cartilage', 0.4, 'practice'),
        bulk('trim', 3.9),
        bulk('fat-trim', 0.55),
      ],
    }),
    operation({
      id: 'roll-belly',
      name: 'Belly porchetta',
      says: 'Sheet the ribs, then roll the whole belly skin side out.',
      minutes: 10,
      needs: ['skin-on'],
      outputs: [
        item('spareribs', 2.9, 'nppc'),
        item('belly-porchetta', 11, 'practice'),
        bulk('trim', 3.05),
        bulk('fat-trim', 0.5, 'nppc'),
      ],
    }),
  ],
};

const bellyFront: Primal = {
  kind: 'primal',
  id: 'belly-front',
  name: 'Front of the belly with its ribs',
  operations: [
    operation({
      id: 'sheet-ribs',
      name: 'Sheet the ribs',
      says: 'Take the ribs off in one sheet; the sheet is short of the flank end but keeps its eleven ribs.',
      minutes: 3,
      outputs: [
        item('spareribs', 2.6, 'practice'),
        part('belly-short', 4.9, 'practice'),
        bulk('trim', 1.0, 'practice'),
        bulk('fat-trim', 0.225, 'practice'),
      ],
    }),
  ],
};

interface BellyForm {
  readonly id: string;
  readonly name: string;
  readonly stock: string;
  readonly lengthMm: number;
  readonly ribsLess: number;
}

const belly = ({ id, name, stock, lengthMm, ribsLess }: BellyForm): Bar => ({
  kind: 'bar',
  id,
  name,
  zones: [
    {
      id: 'belly',
      name,
      stations: { ribsLess },
      lengthMm,
      lengthSource: 'jas-2017-belly',
      mass: { parts: 1, source: 'nppc' },
      manners: [
        {
          id: 'across',
          name: 'Cut across',
          stock,
          tool: stock === 'belly-ribs-on' ? 'saw' : 'knife',
          joins: false,
          lengthPpm: 1_000_000,
          lengthSource: 'practice',
          keeps: { parts: 1, source: 'nppc' },
          releases: [],
          minutes: 1,
        },
      ],
      maySplit: false,
    },
  ],
});

const bellies: readonly Bar[] = [
  belly({ id: 'belly-slab', name: 'Belly, sheeted', stock: 'belly-slab', lengthMm: 707, ribsLess: 4 }),
  belly({
    id: 'belly-boneless',
    name: 'Belly, boneless with the rib meat on',
    stock: 'belly-slab',
    lengthMm: 707,
    ribsLess: 4,
  }),
  belly({ id: 'belly-rib-in', name: 'Belly, ribs in', stock: 'belly-ribs-on', lengthMm: 707, ribsLess: 4 }),
  belly({
    id: 'belly-short',
    name: 'Front of the belly, sheeted',
    stock: 'belly-slab',
    lengthMm: 353.5,
    ribsLess: 9,
  }),
  belly({
    id: 'belly-rear',
    name: 'Flank end of the belly',
    stock: 'belly-slab',
    lengthMm: 353.5,
    ribsLess: 9,
  }),
];

export const middleParts: readonly Part[] = [
  middle,
  middleOpen,
  ...middles,
  bellyRibbed,
  bellyFront,
  ...bellies,
  ...loinBars,
];

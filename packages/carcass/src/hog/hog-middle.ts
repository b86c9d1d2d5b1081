import type { Operation, Part, Primal } from '../species.ts';
import { onRequest, operation, primal } from '../tree-data.ts';
import { loinOf, loinPounds } from './hog-loin.ts';
import { bulk, item, type MiddleForm, middleForms, moves, part, regionsOfMiddle } from './hog-side.ts';

const cavityPounds = 1.72;
const filletPounds = 0.8;

const poundsOf = ({ firstRib, hip }: MiddleForm): number =>
  43.97 - (firstRib === 3 ? 0 : moves.blade) - (hip === 'loin' ? 0 : moves.hip);

const skin = bulk('skin', 1.5, 'nppc-split', { needs: ['skin-on'], otherwise: 'back-fat' });
const backFat = bulk('back-fat', 6.4, 'fat-lists');
const bellyRibbed = part('belly-ribbed', 17.45, 'nppc');

const middle = (form: MiddleForm): Primal =>
  primal(`middle${form.suffix}`, `Middle${form.name}`, regionsOfMiddle(form), [
    operation(
      'clear-cavity',
      'Clear the cavity',
      'Leaf fat first and kept apart, then the kidney at the end of the tenderloin, then the skirt, peeled of its film.',
      4,
      [
        bulk('leaf-fat', 1.1, 'fat-lists', { regions: ['cavity'] }),
        item('kidney', 0.37, 'memory', { needs: ['organs'], otherwise: 'leaf-fat' }),
        item('outside-skirt', 0.25, 'memory'),
        part(`middle-open${form.suffix}`, poundsOf(form) - cavityPounds),
      ],
    ),
  ]);

const without = (form: MiddleForm, ...gone: readonly string[]): readonly string[] =>
  regionsOfMiddle(form).filter((region) => !gone.includes(region));

const middleOpen = (form: MiddleForm): Primal =>
  primal(`middle-open${form.suffix}`, `Middle, cavity cleared${form.name}`, without(form, 'cavity'), [
    operation(
      'pull-tenderloin',
      'Pull the tenderloin',
      'Follow the backbone close: it saves a few ounces. Trim off the chain and the loose fat.',
      3,
      [
        { ...item('tenderloin', filletPounds, 'nppc'), cvPercent: 10 },
        part(`middle-fillet-out${form.suffix}`, poundsOf(form) - cavityPounds - filletPounds),
      ],
    ),
    operation(
      'leave-tenderloin',
      'Leave the tenderloin in',
      'The tenderloin stays under the loin: chops of the loin end carry it.',
      0,
      [part(`middle-fillet-in${form.suffix}`, 1)],
    ),
  ]);

/** The long leg comes off through the head of the fillet; if that was left in, it is trimmed. */
const filletHead = (form: MiddleForm, filletIn: boolean) =>
  filletIn && form.hip === 'leg' ? [bulk('trim', 0.24)] : [];

const lines = (form: MiddleForm, filletIn: boolean): readonly Operation[] => [
  operation(
    'standard-line',
    'Part loin and belly',
    'Just past the small eye of muscle under the loin eye, straight down to the bone; mark the ribs from one face, free them from the other.',
    5,
    [loinOf(form, filletIn, 'usual'), ...filletHead(form, filletIn), bellyRibbed, backFat, skin],
  ),
  operation(
    'long-bone-line',
    'Ribs long and bare on the loin',
    'Line 200 mm from the eye: free each rib from the belly along its length and leave it on the loin; the meat between the ribs stays on the belly.',
    9,
    [
      loinOf(form, filletIn, 'long'),
      ...filletHead(form, filletIn),
      part('belly-boneless', 8.2, 'practice'),
      bulk('trim', 6.2, 'practice'),
      bulk('fat-trim', 0.75, 'practice'),
      bulk('cartilage', 0.4, 'practice'),
      backFat,
      skin,
    ],
  ),
  operation(
    'fat-slab-line',
    'Part loin and belly, back fat in one slab',
    'The hard fat over the loin is lifted in one even slab before loin and belly are parted.',
    9,
    [
      loinOf(form, filletIn, 'usual'),
      ...filletHead(form, filletIn),
      bellyRibbed,
      item('back-fat-slab', 4, 'practice', { regions: ['loin'] }),
      bulk('back-fat', 2.4, 'practice'),
      skin,
    ],
    onRequest,
  ),
];

const rolled = ['blade', 'loin', 'sirloin', 'belly'];

const wholePorchetta = (filletIn: boolean): Operation =>
  operation(
    'porchetta-whole',
    'Porchetta of the whole middle',
    'Bone the middle in one sheet, skin on, and roll it: no loin, no slab; the ribs come away as one sheet.',
    25,
    [
      filletIn
        ? item('porchetta-fillet', 32, 'practice', { regions: [...rolled, 'fillet'] })
        : item('porchetta', 31.2, 'practice', { regions: rolled }),
      item('rib-sheet', 4.5, 'nppc-split', { regions: ['loin', 'spare-ribs'] }),
      bulk('bone', 2.2),
      bulk('fat-trim', 1.15),
      bulk('back-fat', 2.4),
    ],
    { needs: ['skin-on'] },
  );

const halfPorchettas: readonly Operation[] = [
  operation(
    'porchetta-front',
    'Porchetta of the front half',
    'The rib half of loin and belly is boned and rolled; the loin end, the sirloin and the flank end of the belly stay to be cut.',
    18,
    [
      item('porchetta-half', 16, 'practice', { regions: ['blade', 'loin', 'belly'] }),
      item('rib-sheet', 4.1, 'practice', { regions: ['loin', 'spare-ribs'] }),
      bulk('bone', 1.4, 'practice'),
      bulk('fat-trim', 0.565, 'practice'),
      bulk('back-fat', 4, 'practice'),
      part('loin-rear', loinPounds('loin-rear')),
      part('belly-rear', 8.725, 'practice'),
      bulk('skin', 0.75),
    ],
    { needs: ['skin-on'] },
  ),
  operation(
    'porchetta-rear',
    'Porchetta of the rear half',
    'The loin end, sirloin and flank end are boned and rolled; the rib half of loin and belly stays to be cut.',
    15,
    [
      item('porchetta-half', 14.4, 'practice', { regions: ['loin', 'sirloin', 'belly'] }),
      bulk('bone', 0.8, 'practice'),
      bulk('fat-trim', 0.585, 'practice'),
      bulk('back-fat', 6, 'practice'),
      part('loin-front', loinPounds('loin-front')),
      part('belly-front', 8.725, 'practice'),
      bulk('skin', 0.75),
    ],
    { needs: ['skin-on'] },
  ),
];

const rareLines: readonly Operation[] = [
  operation(
    'fat-cap-line',
    'Part loin and belly, fat left on the loin',
    'The loin keeps a thick cap of fat; that fat is on the chops and in no slab.',
    5,
    [
      part('loin-capped', loinPounds('loin-capped'), 'practice'),
      bellyRibbed,
      bulk('back-fat', 4.3, 'practice'),
      skin,
    ],
    onRequest,
  ),
  operation(
    'full-rack-line',
    'Lift the back ribs of the whole loin',
    'Blade end and rib end are boned in one: the back ribs leave as one long sheet, and no bone is left to chop through.',
    14,
    [
      item('back-ribs-full', 2.3, 'practice', { regions: ['blade', 'loin'] }),
      part('loin-ribless', loinPounds('loin-ribless')),
      bellyRibbed,
      backFat,
      skin,
    ],
    onRequest,
  ),
];

const filletOut = (form: MiddleForm): Primal =>
  primal(
    `middle-fillet-out${form.suffix}`,
    `Middle, tenderloin out${form.name}`,
    without(form, 'cavity', 'fillet'),
    form.suffix === ''
      ? [
          ...lines(form, false).slice(0, 2),
          wholePorchetta(false),
          ...halfPorchettas,
          ...lines(form, false).slice(2),
          ...rareLines,
        ]
      : lines(form, false),
  );

const filletIn = (form: MiddleForm): Primal =>
  primal(
    `middle-fillet-in${form.suffix}`,
    `Middle, tenderloin in${form.name}`,
    without(form, 'cavity'),
    form.suffix === '' ? [...lines(form, true), wholePorchetta(true)] : lines(form, true),
  );

export const middleParts: readonly Part[] = middleForms.flatMap((form) => [
  middle(form),
  middleOpen(form),
  filletOut(form),
  filletIn(form),
]);

import type { Bar, Part } from '../species.ts';
import { manner, onRequest, operation, primal } from '../tree-data.ts';
import { bulk, item, part } from './hog-side.ts';

const spareribs = { ...item('spareribs', 2.9, 'nppc'), cvPercent: 13 };
const trim = bulk('trim', 4.55, 'nppc');
const fatTrim = bulk('fat-trim', 0.5, 'nppc');

const bellyRibbed = primal(
  'belly-ribbed',
  'Belly with its ribs',
  ['belly', 'spare-ribs'],
  [
    operation(
      'sheet-ribs',
      'Sheet the ribs',
      'Take the ribs off in one sheet; the flap over the cartilage stays on the belly and is cured with it.',
      4,
      [spareribs, part('belly-slab', 9.5, 'nppc'), trim, fatTrim],
    ),
    operation(
      'sheet-st-louis',
      'Sheet the ribs, St Louis style',
      'Sheet the ribs and square them: the tips come off as their own cut.',
      6,
      [
        item('st-louis-ribs', 2, 'weighed-173'),
        item('rib-tips', 0.9, 'weighed-173'),
        part('belly-slab', 9.5, 'nppc'),
        trim,
        fatTrim,
      ],
    ),
    operation(
      'leave-ribs-in',
      'Leave the ribs in',
      'Square the belly with its ribs on, cartilage strip out in one piece for stock or rillettes.',
      3,
      [
        part('belly-rib-in', 12.6, 'practice'),
        bulk('cartilage', 0.4, 'practice'),
        bulk('trim', 3.9),
        bulk('fat-trim', 0.55),
      ],
    ),
    operation(
      'roll-belly',
      'Belly porchetta',
      'Sheet the ribs, then roll the whole belly skin side out.',
      10,
      [
        { ...spareribs, regions: ['spare-ribs'] },
        item('belly-porchetta', 11, 'practice', { regions: ['belly'] }),
        bulk('trim', 3.05),
        fatTrim,
      ],
      { needs: ['skin-on'] },
    ),
    operation(
      'slab-whole',
      'Sheet the ribs, keep the slab whole',
      'The ribs off in one sheet; the belly is squared and leaves in one piece at its full width.',
      4,
      [
        { ...spareribs, regions: ['spare-ribs'] },
        item('belly-whole', 9.5, 'nppc', { regions: ['belly'] }),
        trim,
        fatTrim,
      ],
      onRequest,
    ),
    operation(
      'sheet-ribs-meaty',
      'Sheet the ribs with meat left on',
      'The knife runs deep: meaty ribs, and a slab that is thin where they lay.',
      4,
      [item('meaty-spareribs', 3.9, 'practice'), part('belly-thin', 8.5, 'practice'), trim, fatTrim],
      onRequest,
    ),
    operation(
      'rind-apart',
      'Take the rind off in one piece',
      'Ribs off, then the rind in one piece for crackling: the slab is cured without it.',
      8,
      [
        spareribs,
        part('belly-rindless', 8.9, 'practice'),
        item('belly-rind', 0.6, 'practice', { regions: ['belly'] }),
        trim,
        fatTrim,
      ],
      { ...onRequest, needs: ['skin-on'] },
    ),
    operation(
      'belly-ground',
      'Bone the belly for the grinder',
      'Ribs off; all of the belly to trim.',
      5,
      [
        { ...spareribs, regions: ['spare-ribs'] },
        bulk('trim', 9.8, 'practice'),
        bulk('fat-trim', 4.75, 'practice'),
      ],
      onRequest,
    ),
  ],
);

const bellyFront = primal(
  'belly-front',
  'Front of the belly with its ribs',
  ['belly', 'spare-ribs'],
  [
    operation(
      'sheet-ribs',
      'Sheet the ribs',
      'Take the ribs off in one sheet; the sheet is short of the flank end but keeps its eleven ribs.',
      3,
      [
        item('spareribs', 2.6, 'practice'),
        part('belly-short', 4.9, 'practice'),
        bulk('trim', 1.0, 'practice'),
        bulk('fat-trim', 0.225, 'practice'),
      ],
    ),
  ],
);

interface BellyForm {
  readonly id: string;
  readonly name: string;
  readonly stock: string;
  readonly ribs: { readonly fromRib: number; readonly toRib?: number };
}

/** The first two ribs of the breast are trimmed off with the flap, whichever way the side is broken. */
const allRibs = { fromRib: 5 } as const;
const wholeMm = 707;

const belly = ({ id, name, stock, ribs }: BellyForm): Bar => ({
  kind: 'bar',
  id,
  name,
  regions: stock === 'belly-ribs-on' ? ['belly', 'spare-ribs'] : ['belly'],
  zones: [
    {
      id: 'belly',
      name,
      stations: ribs,
      lengthMm: ribs === allRibs ? wholeMm : wholeMm / 2,
      lengthSource: 'jas-2017-belly',
      mass: { parts: 1, source: 'nppc' },
      manners: [
        manner({
          id: 'across',
          name: 'Cut across',
          stock,
          tool: stock === 'belly-ribs-on' ? 'saw' : 'knife',
          keeps: { parts: 1, source: 'nppc' },
          releases: [],
          minutes: 1,
        }),
      ],
      maySplit: false,
    },
  ],
});

const slab = 'belly-slab';

export const bellyParts: readonly Part[] = [
  bellyRibbed,
  bellyFront,
  belly({ id: 'belly-slab', name: 'Belly, sheeted', stock: slab, ribs: allRibs }),
  belly({
    id: 'belly-boneless',
    name: 'Belly, narrow, boneless with the rib meat on',
    stock: slab,
    ribs: allRibs,
  }),
  belly({ id: 'belly-rib-in', name: 'Belly, ribs in', stock: 'belly-ribs-on', ribs: allRibs }),
  belly({ id: 'belly-thin', name: 'Belly, sheeted deep', stock: 'belly-thin', ribs: allRibs }),
  belly({ id: 'belly-rindless', name: 'Belly, rind off', stock: 'belly-rindless', ribs: allRibs }),
  belly({
    id: 'belly-short',
    name: 'Front of the belly, sheeted',
    stock: slab,
    ribs: { fromRib: 5, toRib: 9 },
  }),
  belly({ id: 'belly-rear', name: 'Flank end of the belly', stock: slab, ribs: { fromRib: 10 } }),
];

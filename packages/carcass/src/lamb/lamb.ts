import type { Bulk, Part, Species } from '../species.ts';
import { named } from '../tree-data.ts';
import { lambCuts, lambItems, lambStocks } from './lamb-cuts.ts';
import { foreParts } from './lamb-fore.ts';
import { rearParts } from './lamb-rear.ts';
import { lambRegions, lambSide } from './lamb-side.ts';

const lambBulks = named<Bulk>([
  { id: 'trim', name: 'Lean trim', worthMinorPerKg: 700 },
  { id: 'fat-trim', name: 'Fat trim', worthMinorPerKg: 40 },
  { id: 'bone', name: 'Bone', worthMinorPerKg: 60 },
  { id: 'loss', name: 'Saw dust', worthMinorPerKg: 0 },
  { id: 'lost', name: 'Set aside: damaged or condemned', worthMinorPerKg: 0 },
]);

/** The lamb. Masses are pounds of one side of the carcass of 100 lb of a cutting test for the US Army. */
export const lamb: Species = {
  id: 'lamb',
  name: 'Lamb',
  hangingGrams: { min: 7_000, max: 60_000, source: 'practice' },
  ribs: { min: 13, max: 14, usual: 13, source: 'memory' },
  lengthGrowth: { referenceGrams: 22_000, exponent: 0.33, source: 'practice' },
  sideRoot: 'side',
  regions: lambRegions,
  parts: named<Part>([lambSide, ...foreParts, ...rearParts]),
  bench: [],
  items: lambItems,
  stocks: lambStocks,
  bulks: lambBulks,
  singles: [
    { item: 'head', meanGrams: 1630, source: 'ahdb-lamb', needs: ['head'] },
    { item: 'liver', meanGrams: 690, source: 'ahdb-lamb', needs: ['organs'] },
    { item: 'heart', meanGrams: 220, source: 'ahdb-lamb', needs: ['organs'] },
    { item: 'caul', meanGrams: 700, source: 'ahdb-lamb', needs: ['organs'] },
  ],
  cuts: lambCuts,
};

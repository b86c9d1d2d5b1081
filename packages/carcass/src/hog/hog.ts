import type { Part, Species } from '../species.ts';
import { named } from '../tree-data.ts';
import { bellyParts } from './hog-belly.ts';
import { hogCuts } from './hog-cuts.ts';
import { legParts } from './hog-leg.ts';
import { loinBars } from './hog-loin.ts';
import { middleParts } from './hog-middle.ts';
import { hogBulks, hogItems, hogStocks } from './hog-pieces.ts';
import { shoulderParts } from './hog-shoulder.ts';
import { hogRegions, hogSide } from './hog-side.ts';

/**
 * Common practice, no source: leaf fat first and kept apart from the hard fat of the loin, then kidney and skirt, then the
 * tenderloin, then the line of loin and belly, then the ribs, and only then portions; the middle while the side is cold,
 * shoulder and leg after it.
 */
const benchOrder: readonly string[] = [
  hogSide,
  ...middleParts,
  ...bellyParts.filter(({ kind }) => kind === 'primal'),
  ...loinBars,
  ...bellyParts.filter(({ kind }) => kind === 'bar'),
  ...shoulderParts,
  ...legParts,
].map(({ id }) => id);

/** The hog. Masses are pounds of one side of the 184 lb carcass of the National Pork Producers Council. */
export const hog: Species = {
  id: 'hog',
  name: 'Hog',
  hangingGrams: { min: 20_000, max: 250_000, source: 'practice' },
  ribs: { min: 13, max: 17, usual: 15, source: 'ribs-2004' },
  lengthGrowth: { referenceGrams: 103_600, exponent: 0.415, source: 'length-growth' },
  sideRoot: 'side',
  regions: hogRegions,
  parts: named<Part>([hogSide, ...shoulderParts, ...middleParts, ...bellyParts, ...loinBars, ...legParts]),
  bench: benchOrder,
  items: hogItems,
  stocks: hogStocks,
  bulks: hogBulks,
  singles: [
    { item: 'hanging-tender', meanGrams: 150, source: 'memory', needs: ['organs'] },
    {
      item: 'head',
      meanGrams: 4400,
      source: 'ahdb-fifth-quarter',
      needs: ['head'],
      apart: [
        { item: 'tongue', meanGrams: 450, source: 'ahdb-fifth-quarter' },
        { item: 'cheeks', meanGrams: 400, source: 'memory' },
        { item: 'ears', meanGrams: 544, source: 'ears-2017' },
      ],
    },
    { item: 'tail', meanGrams: 517, source: 'weighed-173' },
    { item: 'liver', meanGrams: 1810, source: 'ahdb-fifth-quarter', needs: ['organs'] },
    { item: 'caul', meanGrams: 130, source: 'ahdb-fifth-quarter', needs: ['organs'] },
    { item: 'heart', meanGrams: 340, source: 'ahdb-fifth-quarter', needs: ['organs'] },
  ],
  cuts: hogCuts,
};

import type { Species } from '../species.ts';
import { hogBulks, hogCuts, hogItems, hogStocks } from './hog-cuts.ts';
import { endParts } from './hog-ends.ts';
import { middleParts } from './hog-middle.ts';

/** The hog. Masses are pounds of one side of the 184 lb carcass of the National Pork Producers Council. */
export const hog: Species = {
  id: 'hog',
  name: 'Hog',
  hangingGrams: { min: 20_000, max: 250_000 },
  ribs: { min: 13, max: 17, usual: 15, source: 'ribs-2004' },
  lengthGrowth: { referenceGrams: 103_600, exponent: 0.415, source: 'length-growth' },
  sideRoot: 'side',
  parts: Object.fromEntries([...endParts, ...middleParts].map((part) => [part.id, part])),
  items: hogItems,
  stocks: hogStocks,
  bulks: hogBulks,
  singles: [
    { item: 'hanging-tender', meanGrams: 150, source: 'memory', needs: ['organs'] },
    { item: 'head', meanGrams: 4400, source: 'ahdb-fifth-quarter', needs: ['head'] },
    { item: 'tongue', meanGrams: 450, source: 'ahdb-fifth-quarter', needs: ['head'] },
    { item: 'tail', meanGrams: 517, source: 'weighed-173' },
    { item: 'liver', meanGrams: 1810, source: 'ahdb-fifth-quarter', needs: ['organs'] },
    { item: 'heart', meanGrams: 340, source: 'ahdb-fifth-quarter', needs: ['organs'] },
  ],
  cuts: hogCuts,
};

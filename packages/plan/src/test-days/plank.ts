import type { Species } from '@flitchbook/carcass';

const from = 'practice';

/** A made-up animal with round figures, so that a test can be worked out by hand. Its side weighs 120 g of every 120. */
export const plank: Species = {
  id: 'plank',
  name: 'Plank',
  hangingGrams: { min: 100, max: 100_000 },
  ribs: { min: 4, max: 12, usual: 8, source: from },
  lengthGrowth: { referenceGrams: 1000, exponent: 0, source: from },
  sideRoot: 'side',
  regions: {},
  bench: [],
  parts: {
    side: {
      kind: 'primal',
      id: 'side',
      name: 'Side',
      operations: [
        {
          id: 'open',
          name: 'Open',
          says: 'Open it.',
          minutes: 2,
          minutesSource: from,
          outputs: [
            { to: 'part', id: 'log', parts: 100, source: from },
            { to: 'item', id: 'knob', parts: 15, source: from },
            { to: 'bulk', id: 'scrap', parts: 5, source: from },
          ],
        },
        {
          id: 'grind',
          name: 'Grind',
          says: 'Grind it.',
          minutes: 1,
          minutesSource: from,
          needs: ['feet'],
          outputs: [{ to: 'bulk', id: 'scrap', parts: 1, source: from }],
        },
      ],
    },
    log: {
      kind: 'bar',
      id: 'log',
      name: 'Log',
      zones: [
        {
          id: 'ribbed',
          name: 'Ribbed',
          stations: { fromRib: 1 },
          lengthMm: 80,
          lengthSource: from,
          mass: { parts: 80, source: from },
          maySplit: true,
          manners: [
            {
              id: 'bone-in',
              name: 'Bone in',
              stock: 'ribbed-bone-in',
              tool: 'saw',
              joins: false,
              lengthPpm: 1_000_000,
              lengthSource: from,
              keeps: { parts: 1, source: from },
              releases: [],
              minutes: 1,
            },
            {
              id: 'boned',
              name: 'Boned',
              stock: 'meat',
              tool: 'knife',
              joins: true,
              lengthPpm: 500_000,
              lengthSource: from,
              keeps: { parts: 6, source: from },
              releases: [
                { to: 'item', id: 'rack', parts: 3, source: from, stationsMin: 6, otherwise: 'scrap' },
                { to: 'bulk', id: 'scrap', parts: 1, source: from },
              ],
              minutes: 3,
            },
          ],
        },
        {
          id: 'plain',
          name: 'Plain',
          stations: { fixed: 2 },
          lengthMm: 20,
          lengthSource: from,
          mass: { parts: 20, source: from },
          maySplit: false,
          manners: [
            {
              id: 'boned',
              name: 'Boned',
              stock: 'meat',
              tool: 'knife',
              joins: true,
              lengthPpm: 1_000_000,
              lengthSource: from,
              keeps: { parts: 1, source: from },
              releases: [],
              minutes: 1,
            },
          ],
        },
      ],
    },
  },
  items: {
    knob: { id: 'knob', name: 'Knob', worthMinorPerKg: 100 },
    rack: { id: 'rack', name: 'Rack', worthMinorPerKg: 100 },
    crest: { id: 'crest', name: 'Crest', worthMinorPerKg: 100 },
  },
  stocks: {
    'ribbed-bone-in': { id: 'ribbed-bone-in', name: 'Ribbed, bone in', worthMinorPerKg: 100 },
    meat: { id: 'meat', name: 'Meat', worthMinorPerKg: 100 },
  },
  bulks: {
    scrap: { id: 'scrap', name: 'Scrap', worthMinorPerKg: 10 },
    loss: { id: 'loss', name: 'Loss', worthMinorPerKg: 0 },
    lost: { id: 'lost', name: 'Set aside', worthMinorPerKg: 0 },
  },
  singles: [
    { item: 'crest', meanGrams: 7, source: from },
    { item: 'knob', meanGrams: 3, source: from, needs: ['head'] },
  ],
  cuts: {
    slice: {
      id: 'slice',
      name: 'Slice',
      says: 'A slice with bone.',
      sources: [{ from: 'stock', id: 'ribbed-bone-in' }],
      portions: [
        { by: 'thickness', minUm: 1000, maxUm: 50_000 },
        { by: 'ribs', min: 1, max: 4 },
      ],
      usual: { by: 'ribs', ribs: 1 },
    },
    steak: {
      id: 'steak',
      name: 'Steak',
      says: 'A slice without.',
      sources: [{ from: 'stock', id: 'meat' }],
      portions: [
        { by: 'thickness', minUm: 1000, maxUm: 50_000 },
        { by: 'weight', minGrams: 1, maxGrams: 40 },
      ],
      usual: { by: 'thickness', um: 5000 },
    },
    knob: {
      id: 'knob',
      name: 'Knob',
      says: 'The knob.',
      sources: [{ from: 'item', id: 'knob' }],
      portions: [{ by: 'whole' }],
      usual: { by: 'whole' },
    },
    rack: {
      id: 'rack',
      name: 'Rack',
      says: 'The rack.',
      sources: [{ from: 'item', id: 'rack' }],
      portions: [{ by: 'whole' }],
      usual: { by: 'whole' },
    },
    mince: {
      id: 'mince',
      name: 'Mince',
      says: 'Loose.',
      sources: [{ from: 'bulk', id: 'scrap' }],
      portions: [{ by: 'bulk' }],
      usual: { by: 'bulk' },
    },
  },
};

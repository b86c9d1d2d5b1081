import type { NewAnimal, NewHold, NewLine, NewOrder } from '@flitchbook/contracts';

/** A hog of 184 lb (the carcass of the National Pork Producers Council's chart), everything kept. */
export const animal = (change: Partial<NewAnimal> = {}): NewAnimal => ({
  name: 'Hog 17',
  speciesId: 'hog',
  hanging: { text: '184', unit: 'lb' },
  hotOrCold: 'cold',
  facts: ['skin-on', 'head', 'feet', 'organs'],
  lostItems: [],
  ...change,
});

export const line = (change: Partial<NewLine> = {}): NewLine => ({
  cut: 'rib-chop',
  portion: { by: 'thickness', um: 25_400 },
  ask: { pieces: 2 },
  rank: 'promised',
  ...change,
});

export const order = (change: Partial<NewOrder> = {}): NewOrder => ({
  owner: 'Ines Okafor',
  lines: [line()],
  shares: [],
  ...change,
});

/** Little enough for a day to hold many of them. */
export const hold = (change: Partial<NewHold> = {}): NewHold => ({
  owner: 'Bram Castellane',
  lines: [{ cut: 'ground-pork', portion: { by: 'bulk' }, ask: { grams: 50 } }],
  shares: [],
  ...change,
});

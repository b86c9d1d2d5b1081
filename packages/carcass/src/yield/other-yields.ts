import type { YieldProfile } from './yield-profile.ts';

/** What no source prints of lambs, goats and beef: how animals and farms differ, taken from hogs. */
const asHogs = {
  concentration: { of: {}, otherwise: { value: 300, source: 'spread-assumed' } },
  lengthCvPercent: { value: 3.2, source: 'spread-assumed' },
  chopsCvPercent: { value: 7.8, source: 'spread-assumed' },
  betweenFarmsPercent: {
    share: { value: 10, source: 'spread-assumed' },
    length: { value: 4, source: 'spread-assumed' },
    ribs: { value: 3.1, source: 'spread-assumed' },
  },
  tapeCvPercent: { value: 5, source: 'tape-2016' },
} as const;

const thirteenRibs = { mean: 13, sd: 0, source: 'memory', sdSource: 'memory' } as const;

export const lambYields: YieldProfile = {
  ...asHogs,
  speciesId: 'lamb',
  dressingPercent: { mean: 51.5, sd: 2, source: 'kentucky-dressing', sdSource: 'spread-assumed' },
  dressingBand: { min: 40, max: 62, source: 'kentucky-dressing' },
  coolerPercent: { mean: 2, sd: 0.6, source: 'cooler-assumed', sdSource: 'cooler-assumed' },
  coolerBand: { min: 0, max: 8, source: 'cooler-assumed' },
  usualHangingGrams: { min: 13_000, max: 42_000, source: 'practice' },
  dressing: [
    {
      id: 'head',
      name: 'the head',
      usuallyOn: false,
      fact: 'head',
      takes: [],
      livePercent: { value: 4.07, source: 'ahdb-lamb' },
    },
  ],
  ribs: thirteenRibs,
};

/** Hide and head are off; a goat is seldom hung with either. */
export const goatYields: YieldProfile = {
  ...asHogs,
  speciesId: 'goat',
  dressingPercent: { mean: 48, sd: 2, source: 'kentucky-dressing', sdSource: 'spread-assumed' },
  dressingBand: { min: 36, max: 60, source: 'kentucky-dressing' },
  coolerPercent: { mean: 5, sd: 1.75, source: 'tennessee-goat', sdSource: 'tennessee-goat' },
  coolerBand: { min: 0, max: 12, source: 'tennessee-goat' },
  usualHangingGrams: { min: 7_000, max: 32_000, source: 'practice' },
  dressing: [],
  ribs: thirteenRibs,
};

/** Weights are those of both fore quarters together. */
export const beefForeYields: YieldProfile = {
  ...asHogs,
  speciesId: 'beef-fore',
  dressingPercent: { mean: 31.8, sd: 1.5, source: 'fore-of-live', sdSource: 'spread-assumed' },
  dressingBand: { min: 24, max: 38, source: 'fore-of-live' },
  coolerPercent: { mean: 1.5, sd: 0.25, source: 'purdue-beef', sdSource: 'purdue-beef' },
  coolerBand: { min: 0, max: 8, source: 'purdue-beef' },
  usualHangingGrams: { min: 80_000, max: 220_000, source: 'practice' },
  dressing: [],
  ribs: thirteenRibs,
};

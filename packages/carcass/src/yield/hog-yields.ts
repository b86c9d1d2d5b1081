import type { YieldProfile } from './yield-profile.ts';

/** How hogs yield and how they differ. Points of the side; the six measured cuts fix the concentrations. */
export const hogYields: YieldProfile = {
  speciesId: 'hog',
  dressingPercent: { mean: 73.01, sd: 2.11, source: 'herd-2011', sdSource: 'herd-2011' },
  dressingBand: { min: 58, max: 85, source: 'dressing-bands' },
  coolerPercent: { mean: 2, sd: 0.6, source: 'cooler-loss', sdSource: 'cooler-loss' },
  coolerBand: { min: 0, max: 6, source: 'cooler-loss' },
  usualHangingGrams: { min: 38_000, max: 150_000, source: 'hanging-met' },
  dressing: [
    {
      id: 'skin',
      name: 'the skin',
      usuallyOn: true,
      fact: 'skin-on',
      takes: [
        { id: 'skin', share: 1, source: 'nppc-split' },
        { id: 'ham', share: 0.053, source: 'skin-share' },
        { id: 'picnic', share: 0.072, source: 'skin-share' },
      ],
    },
    {
      id: 'head',
      name: 'the head',
      usuallyOn: false,
      fact: 'head',
      takes: [],
      livePercent: { value: 3.95, source: 'ahdb-fifth-quarter' },
    },
    {
      id: 'feet',
      name: 'the feet',
      usuallyOn: true,
      fact: 'feet',
      takes: [
        { id: 'front-foot', share: 1, source: 'oklahoma' },
        { id: 'hind-foot', share: 1, source: 'oklahoma' },
      ],
    },
    {
      id: 'leaf-fat',
      name: 'the leaf fat',
      usuallyOn: true,
      takes: [{ id: 'leaf-fat', share: 1, source: 'fat-lists' }],
    },
  ],
  concentration: {
    of: {
      side: { value: 450, source: 'herd-2011-fit' },
      shoulder: { value: 125, source: 'herd-2011-fit' },
      // The same law in two steps: an upper and a lower half of the shoulder, each with its share of the 125.
      'upper-shoulder': { value: 63, source: 'herd-2011-fit' },
      'lower-shoulder': { value: 62, source: 'herd-2011-fit' },
      'middle-fillet-out': { value: 180, source: 'herd-2011-fit' },
      'belly-ribbed': { value: 300, source: 'herd-2011-fit' },
      middle: { value: 100, source: 'spread-assumed' },
      'middle-open': { value: 7000, source: 'spread-assumed' },
      leg: { value: 450, source: 'spread-assumed' },
    },
    otherwise: { value: 200, source: 'spread-assumed' },
  },
  lastRibFatMm: {
    reference: { value: 20, source: 'slides-typical' },
    band: { min: 4, max: 80, source: 'slides-typical' },
    moves: [
      { ids: ['ham', 'loin-out', 'butt', 'picnic'], points: -0.178, source: 'cutout-fat-class' },
      { ids: ['belly-ribbed'], points: 0.078, source: 'cutout-fat-class' },
      { ids: ['back-fat', 'leaf-fat'], points: 0.1, source: 'cutout-fat-class' },
    ],
  },
  leanPercent: {
    reference: { value: 49.44, source: 'slides-lean' },
    band: { min: 25, max: 68, source: 'slides-lean' },
    moves: [
      { ids: ['ham', 'loin-out', 'butt', 'picnic'], points: 0.164, source: 'meta-2017' },
      { ids: ['belly-ribbed'], points: 0.144, source: 'meta-2017' },
      { ids: ['back-fat', 'leaf-fat'], points: -0.308, source: 'meta-2017' },
    ],
  },
  ribs: { mean: 15.5, sd: 0.6, source: 'ribs-2004', sdSource: 'ribs-2004' },
  lengthCvPercent: { value: 3.2, source: 'herd-2011-length' },
  chopsCvPercent: { value: 7.8, source: 'jas-2016' },
  betweenFarmsPercent: {
    share: { value: 10, source: 'between-herds' },
    length: { value: 4, source: 'spread-assumed' },
    ribs: { value: 3.1, source: 'between-rib-counts' },
  },
  tapeCvPercent: { value: 5, source: 'tape-2016' },
};

import type { TakeHomeProfile } from './cutting-style.ts';

const freezer = {
  loosestPoundsPerCubicFoot: 20,
  tightestPoundsPerCubicFoot: 40,
  source: 'freezer-reports',
} as const;
const coolBox = { litres: 94.6, source: 'cool-boxes' } as const;
const lost = ['loss', 'lost'];

/** No chart of servings was found for these species: none are told. */
const plain = (speciesId: string, says: string, declines: readonly string[]): TakeHomeProfile => ({
  speciesId,
  styles: [
    {
      id: 'usual',
      name: 'The usual way',
      says,
      operations: {},
      manners: {},
      declines,
    },
  ],
  servings: [],
  freezer,
  coolBox,
  lost,
});

export const lambTakeHome = plain('lamb', 'Each part the usual way, trim ground; loose bones and fat stay.', [
  'bone',
  'fat-trim',
]);
export const goatTakeHome = plain('goat', 'Each part the usual way; loose bones and fat stay.', ['bone']);
export const beefForeTakeHome = plain(
  'beef-fore',
  'Each part the usual way, trim ground; loose bones and fat stay.',
  ['bone', 'fat-trim'],
);

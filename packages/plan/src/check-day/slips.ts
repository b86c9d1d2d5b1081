/** Slips of the pen that turn a plausible figure into the one that was given. */
interface Slip {
  readonly times: number;
  readonly says: string;
}

const poundGrams = 453.592_37;

const weightSlips: readonly Slip[] = [
  { times: poundGrams / 1000, says: 'pounds were keyed as kilograms.' },
  { times: 1000 / poundGrams, says: 'kilograms were keyed as pounds.' },
  { times: 10, says: 'the decimal point slipped.' },
  { times: 0.1, says: 'the decimal point slipped.' },
  { times: 1000, says: 'kilograms were keyed as grams.' },
  { times: 0.001, says: 'grams were keyed as kilograms.' },
];

const lengthSlips: readonly Slip[] = [
  { times: 25.4, says: 'inches were keyed as millimetres.' },
  { times: 1 / 25.4, says: 'millimetres were keyed as inches.' },
  { times: 10, says: 'centimetres were keyed as millimetres.' },
  { times: 0.1, says: 'the decimal point slipped.' },
];

const explain = (
  slips: readonly Slip[],
  value: unknown,
  isPlausible: (value: number) => boolean,
): string | undefined =>
  typeof value === 'number' && Number.isFinite(value) && value > 0
    ? slips.find(({ times }) => isPlausible(value * times))?.says
    : undefined;

/** What may have gone wrong with a weight, as the end of a sentence that starts with "Maybe". */
export const weightSlip = (value: unknown, isPlausible: (value: number) => boolean): string | undefined =>
  explain(weightSlips, value, isPlausible);

/** What may have gone wrong with a length. */
export const lengthSlip = (value: unknown, isPlausible: (value: number) => boolean): string | undefined =>
  explain(lengthSlips, value, isPlausible);

import { parseArgs } from 'node:util';
import {
  type KnownCarcass,
  readingToGrams,
  type ScaleReading,
  usualConfidence,
  type WeightUnit,
  type YieldModel,
  yieldModelOf,
  yieldSpecies,
} from '@flitchbook/carcass';
import { readNumber } from './surroundings.ts';

export const yieldUsage = `       flitchbook yield --live|--hot|--cold WEIGHT --on PARTS --off PARTS [--tape] [--species hog|lamb|goat|beef-fore]
                 [--fat MM] [--lean PERCENT] [--ribs NUMBER] [--style STYLE] [--sides 1|2] [--confidence SHARE]
                 [--measured FILE --farm NAME] [--unit lb|kg] [--json]`;

function options(args: readonly string[]) {
  return parseArgs({
    args: [...args],
    options: {
      species: { type: 'string', default: 'hog' },
      live: { type: 'string' },
      hot: { type: 'string' },
      cold: { type: 'string' },
      tape: { type: 'boolean', default: false },
      on: { type: 'string', default: '' },
      off: { type: 'string', default: '' },
      fat: { type: 'string' },
      lean: { type: 'string' },
      ribs: { type: 'string' },
      style: { type: 'string' },
      sides: { type: 'string', default: '1' },
      confidence: { type: 'string', default: `${usualConfidence}` },
      measured: { type: 'string' },
      farm: { type: 'string' },
      unit: { type: 'string' },
      json: { type: 'boolean', default: false },
    },
  }).values;
}

type YieldOptions = ReturnType<typeof options>;

const weightForm = /^(\d{1,7}(?:\.\d{1,6})?) ?(kg|g|lb|oz)$/;

function readWeight(name: string, text: string): number {
  const [, digits, unit] = weightForm.exec(text.trim()) ?? [];
  if (digits === undefined)
    throw new RangeError(`--${name} must be a weight such as "184 lb" or "83.5 kg", got "${text}"`);
  const reading: ScaleReading = { text: digits, unit: unit as WeightUnit };
  return readingToGrams(reading);
}

/** `--on skin,feet --off head`: each element that hangs with the carcass, or does not. */
function readDressing({ on, off }: YieldOptions): Record<string, boolean> {
  const listed = (text: string): string[] => text.split(/[\s,]+/).filter((word) => word !== '');
  const twice = listed(on).find((word) => listed(off).includes(word));
  if (twice) throw new RangeError(`--on and --off both name ${twice}`);
  const entries = (text: string, hangs: boolean) => listed(text).map((word) => [word, hangs] as const);
  return Object.fromEntries([...entries(on, true), ...entries(off, false)]);
}

export interface YieldRequest {
  readonly values: YieldOptions;
  readonly model: YieldModel;
  readonly known: KnownCarcass;
  readonly sides: 1 | 2;
  readonly confidence: number;
}

/** @throws RangeError that names the option and its value */
export function readYieldRequest(args: readonly string[]): YieldRequest {
  const values = options(args);
  const model = yieldModelOf(values.species);
  if (!model)
    throw new RangeError(
      `--species: no yields are known of "${values.species}". Known: ${yieldSpecies.join(', ')}`,
    );
  const { live, hot, cold, fat, lean, ribs } = values;
  const known: KnownCarcass = {
    dressing: readDressing(values),
    liveBy: values.tape ? 'tape' : 'scale',
    ...(live === undefined ? {} : { liveGrams: readWeight('live', live) }),
    ...(hot === undefined ? {} : { hotGrams: readWeight('hot', hot) }),
    ...(cold === undefined ? {} : { coldGrams: readWeight('cold', cold) }),
    ...(fat === undefined ? {} : { lastRibFatMm: readNumber('fat', fat, 0, 1000) }),
    ...(lean === undefined ? {} : { leanPercent: readNumber('lean', lean, 0, 100) }),
    ...(ribs === undefined ? {} : { ribs: readNumber('ribs', ribs, 1, 30) }),
  };
  const sides = readNumber('sides', values.sides, 1, 2);
  if (sides !== 1 && sides !== 2) throw new RangeError(`--sides must be 1 or 2, got "${values.sides}"`);
  const confidence = readNumber('confidence', values.confidence, 0.5, 0.999);
  return { values, model, known, sides, confidence };
}

import { dividedBy, minus, plus, type Ratio, ratio, times } from '@flitchbook/carcass';
import { fraction, one } from '../quantities.ts';
import type { CureMethod } from './cure-rules.ts';

/**
 * What the nitrite is set against. Every method is nitrite over a base: the meat; meat and pickle as one; or the pickle
 * divided by what goes into the meat. Where the cure is not yet in the pickle, the base grows with it.
 */
export interface CureBase {
  readonly mass: Ratio;
  /** mass that each unit of cure adds */
  readonly growth: Ratio;
}

const zero = ratio(0);

/**
 * @param meat the meat that counts, over @param green all of it
 * @param uptake a fraction; a percentage is refused
 * @throws RangeError when the method lacks its pickle or its uptake
 */
export function cureBase(
  method: CureMethod,
  meat: Ratio,
  green: Ratio,
  pickle: { readonly weight: Ratio; readonly holdsCure: boolean } | null,
  uptake: Ratio | null,
): CureBase {
  if (method === 'mixed-in' || method === 'dry-rub') return { mass: meat, growth: zero };
  if (!pickle) throw new RangeError(`pickle is needed for ${method}`);
  const perPickle = method === 'long-soak' ? one : taken(method, meat, green, uptake);
  const mass = times(pickle.weight, perPickle);
  return {
    mass: method === 'long-soak' ? plus(mass, meat) : mass,
    growth: pickle.holdsCure ? zero : perPickle,
  };
}

function taken(method: CureMethod, meat: Ratio, green: Ratio, uptake: Ratio | null): Ratio {
  if (!uptake) throw new RangeError(`uptake is needed for ${method}`);
  return dividedBy(dividedBy(meat, green), fraction(uptake, 'uptake'));
}

export const baseWith = (base: CureBase, cure: Ratio): Ratio => plus(base.mass, times(base.growth, cure));

/** The fraction of something in the bag that goes in: nitrite of the cure, over the base. */
export function ingoing(base: CureBase, cure: Ratio, strength: Ratio): Ratio {
  return dividedBy(times(cure, fraction(strength, 'strength')), baseWith(base, cure));
}

/** The cure that reaches a level, or null where no amount of so weak a cure does. */
export function cureFor(base: CureBase, level: Ratio, strength: Ratio): Ratio | null {
  const rest = minus(fraction(strength, 'strength'), times(level, base.growth));
  return rest.over > 0n ? dividedBy(times(level, base.mass), rest) : null;
}

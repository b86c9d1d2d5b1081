import { compareRatios, dividedBy, type Ratio, ratio } from '@flitchbook/carcass';
import { million, ppmText, toPpb } from '../quantities.ts';
import type { CureLimit } from './cure-rules.ts';
import { convert, isSubstance, type Substance, substanceNames } from './substances.ts';

/** What goes in, each as a fraction of what it is reckoned on. */
export interface Ingoing {
  readonly nitrite: Ratio;
  readonly nitriteAs: Substance;
  readonly nitrate: Ratio;
  readonly nitrateAs: Substance;
  /** null where none was entered */
  readonly ascorbate: Ratio | null;
  /** from a laboratory */
  readonly residual: Ratio | null;
}

export interface Judgement {
  /** measure: only a laboratory can say */
  readonly verdict: 'within' | 'over' | 'under' | 'measure';
  readonly of: CureLimit['of'];
  readonly kind: CureLimit['kind'];
  readonly basis: CureLimit['basis'];
  /** what both figures are stated as */
  readonly as: string;
  readonly foundPpb: number | null;
  readonly limitPpb: number;
  readonly says: string;
  readonly source: string;
  readonly standing: CureLimit['standing'];
  readonly checkedOn: string;
}

const zero = ratio(0);
const names: Readonly<Record<string, string>> = { ...substanceNames, ascorbate: 'ascorbate or erythorbate' };

/** The figure of the limit that speaks of what is in the bag, or its first figure; and what was found, stated alike. */
function alike(limit: CureLimit, { found, as }: { found: Ratio; as: Substance }) {
  const own = limit.ppm[as];
  if (own !== undefined) return { as, found, ppm: own };
  const [first, ppm = 0] = Object.entries(limit.ppm)[0] ?? [];
  if (first === undefined || !isSubstance(first))
    throw new RangeError(`limit of ${limit.source} names no substance`);
  return { as: first, found: convert(found, as, first), ppm };
}

function setAgainst(limit: CureLimit, ingoing: Ingoing): { as: string; found: Ratio | null; ppm: number } {
  if (limit.of === 'ascorbate')
    return { as: 'ascorbate', found: ingoing.ascorbate ?? zero, ppm: limit.ppm.ascorbate ?? 0 };
  if (limit.basis === 'residual') {
    const [as = '', ppm = 0] = Object.entries(limit.ppm)[0] ?? [];
    return { as, found: ingoing.residual, ppm };
  }
  return limit.of === 'nitrate'
    ? alike(limit, { found: ingoing.nitrate, as: ingoing.nitrateAs })
    : alike(limit, { found: ingoing.nitrite, as: ingoing.nitriteAs });
}

const kindWords = { 'at-most': 'at most', 'at-least': 'at least', level: 'a level of' } as const;

function verdictOf(limit: CureLimit, found: Ratio | null, most: Ratio): Judgement['verdict'] {
  if (!found) return 'measure';
  const order = compareRatios(found, most);
  if (order > 0 && limit.kind !== 'at-least') return 'over';
  if (order < 0 && limit.kind !== 'at-most') return 'under';
  return 'within';
}

/** Exact figures in millionths: 2187.5 has no binary trouble, and neither has a shop's own 0.1. */
export const limitFraction = (ppm: number): Ratio => dividedBy(ratio(Math.round(ppm * 1000), 1000), million);

export function judge(limit: CureLimit, ingoing: Ingoing): Judgement {
  const { as, found, ppm } = setAgainst(limit, ingoing);
  const most = limitFraction(ppm);
  const verdict = verdictOf(limit, found, most);
  const rule = `${kindWords[limit.kind]} ${ppmText(most)} as ${names[as]}, ${limit.basis === 'residual' ? 'in the finished meat' : 'going in'}`;
  return {
    verdict,
    of: limit.of,
    kind: limit.kind,
    basis: limit.basis,
    as,
    foundPpb: found && toPpb(found),
    limitPpb: toPpb(most),
    says: found
      ? `${ppmText(found)}: the limit here is ${rule}.`
      : `Needs a laboratory: the limit here is ${rule}.`,
    source: limit.source,
    standing: limit.standing,
    checkedOn: limit.checkedOn,
  };
}

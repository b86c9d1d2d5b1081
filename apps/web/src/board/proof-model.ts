import type { Proof } from '@flitchbook/plan';

/** How sure it is that no better plan exists, goal by goal. Minor units that a better plan might still bring. */
export type Assurance =
  | { readonly sure: 'unproven' }
  | {
      readonly sure: 'proven' | 'nearly' | 'ran-out';
      readonly promisedMore: number;
      readonly wishedMore: number;
      readonly restMore: number;
      readonly gapPercent: number;
      readonly seconds: number;
    };

/** Reads a proof. Rounding of goals to whole minor units is not a gap. */
export function assuranceOf(proof: Proof | null): Assurance {
  if (proof === null) return { sure: 'unproven' };
  const { goals, bound, gap, status, seconds } = proof;
  const more = (best: number, got: number): number => (best - got > 1 ? Math.ceil(best - got) : 0);
  const promisedMore = more(bound.promised, goals.promised);
  const wishedMore = more(bound.wished, goals.wished);
  const restMore = more(bound.rest, goals.rest);
  const isTight = promisedMore + wishedMore + restMore === 0;
  return {
    sure: status === 'optimal' || isTight ? 'proven' : status === 'within-gap' ? 'nearly' : 'ran-out',
    promisedMore,
    wishedMore,
    restMore,
    gapPercent: Math.round(gap * 10_000) / 100,
    seconds,
  };
}

import type { Shortfall } from '@flitchbook/plan';
import type { Actor } from '../ctx.ts';
import type { Decision } from './decide.ts';

type Refused = Extract<Decision, { fits: false }>;

const plainly: Readonly<Record<Shortfall['kind'], string>> = {
  scarce: 'The animals of this day do not have as much of it.',
  clash: 'What is left of it stands promised to others, or would be cut another way.',
  lost: 'It is not on the animals of this day.',
  locked: 'The butcher has settled to cut these sides another way.',
  impossible: 'It cannot be cut so.',
};

/** A refusal without the names of others: those are for the shop's own people. */
export function forWhoAsks({ role }: Pick<Actor, 'role'>, refusal: Refused): Refused {
  if (role !== 'customer') return refusal;
  const says = plainly[refusal.why];
  return { ...refusal, says, instead: refusal.instead.map((line) => ({ ...line, says })) };
}

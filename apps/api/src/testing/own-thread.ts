import { knownSpecies } from '@flitchbook/contracts';
import { compareSplits, planDay } from '@flitchbook/solver';
import type { DaySolver } from '../solve/day-solver.ts';

/** The real solver, on the thread of the test: its days are small. */
export const ownThread: DaySolver = {
  solve: async (day, limits) => ({
    ok: true,
    plan: await planDay({ ...day, species: knownSpecies }, limits),
  }),
  advise: async (day, limits, _, { plan, question }) => ({
    ok: true,
    advice: await compareSplits({ ...day, species: knownSpecies }, plan, question, limits),
  }),
  close: async () => undefined,
};

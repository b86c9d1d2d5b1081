import { parentPort } from 'node:worker_threads';
import { knownSpecies } from '@flitchbook/contracts';
import type { CuttingDay } from '@flitchbook/plan';
import { type AdviceOptions, compareSplits, planDay } from '@flitchbook/solver';
import type { ThreadAnswer, ThreadQuestion } from './day-solver.ts';

type Answer = ThreadAnswer extends infer Each ? (Each extends unknown ? Omit<Each, 'number'> : never) : never;

async function advise(
  day: CuttingDay,
  { kind, asks }: NonNullable<ThreadQuestion['advice']>,
  options: AdviceOptions,
): Promise<Answer> {
  switch (kind) {
    case 'split':
      return { advice: await compareSplits(day, asks.plan, asks.question, options) };
  }
}

async function answer({ number, day, limits, advice }: ThreadQuestion): Promise<ThreadAnswer> {
  const known = { ...day, species: knownSpecies };
  try {
    if (advice) return { number, ...(await advise(known, advice, limits)) };
    return { number, plan: await planDay(known, limits) };
  } catch (error) {
    return { number, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

parentPort?.on('message', async (question: ThreadQuestion) =>
  parentPort?.postMessage(await answer(question)),
);

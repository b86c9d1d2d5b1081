import { parentPort } from 'node:worker_threads';
import { knownSpecies } from '@flitchbook/contracts';
import { planDay } from '@flitchbook/solver';
import type { ThreadAnswer, ThreadQuestion } from './day-solver.ts';

async function answer({ number, day, limits }: ThreadQuestion): Promise<ThreadAnswer> {
  try {
    return { number, plan: await planDay({ ...day, species: knownSpecies }, limits) };
  } catch (error) {
    return { number, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

parentPort?.on('message', async (question: ThreadQuestion) =>
  parentPort?.postMessage(await answer(question)),
);

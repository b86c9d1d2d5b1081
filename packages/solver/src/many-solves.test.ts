import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { planDay } from './index.ts';
import { tinyDay } from './testing/tiny-days.ts';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Bytes held once what is not needed is gone: objects, and the memory of the engine, which only ever grows. */
function heldBytes(): number {
  collect();
  const { heapUsed, external, arrayBuffers } = process.memoryUsage();
  return heapUsed + external + arrayBuffers;
}

const day = tinyDay([{ which: 6, pieces: 3, price: 900, promised: true }]);

// `npm run many-solves` does the same a thousand times, and looks at the memory of the whole process.
it('plans one day again and again, the same plan each time, and holds no more memory for it', async () => {
  const solve = async (times: number): Promise<ReadonlySet<string>> => {
    const plans = new Set<string>();
    for (let time = 0; time < times; time++) {
      const { proof, ...plan } = await planDay(day, { deadlineSeconds: 20, gap: 0.05, seed: 7 });
      plans.add(JSON.stringify([plan, proof?.goals, proof?.bound]));
    }
    return plans;
  };
  await solve(10);
  const before = heldBytes();
  const plans = await solve(20);
  expect(plans.size).toBe(1);
  expect(heldBytes() - before).toBeLessThan(1_000_000);
}, 120_000);

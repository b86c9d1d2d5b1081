import type { Database } from '@flitchbook/db';
import fc from 'fast-check';
import { commandsOf } from './commands.ts';
import { PromiseModel } from './promise-model.ts';
import { openRealShop, RealDay } from './real-shop.ts';

export interface SequencesWish {
  readonly sequences: number;
  readonly seed: number;
  readonly longest: number;
}

/**
 * Runs sequences of commands on the service and on the model side by side, each on a day of its own.
 * @throws with the shortest sequence found in which they differ, its seed and path
 */
export async function runSequences(
  owner: Database,
  { sequences, seed, longest }: SequencesWish,
): Promise<{ readonly commands: number; readonly orders: number }> {
  const shop = await openRealShop(owner);
  let [commands, orders] = [0, 0];
  const property = fc.asyncProperty(
    fc.integer({ min: 1, max: 3 }),
    commandsOf(longest),
    async (hogs, sequence) => {
      const model = new PromiseModel(hogs);
      const real = await RealDay.open(shop, hogs);
      await fc.asyncModelRun(() => ({ model, real }), sequence);
      const faults = await real.faults(model);
      if (faults.length > 0) throw new Error(faults.join('\n'));
      commands += [...sequence].length;
      orders += model.orders.length;
    },
  );
  await fc.assert(property, { numRuns: sequences, seed });
  return { commands, orders };
}

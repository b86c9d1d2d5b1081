import type { DayPacks } from '@flitchbook/contracts';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';
import { readBench } from './bench.ts';
import { packOnWire, toMakeOnWire } from './on-wire.ts';

/** What is left to weigh of a day, and what is weighed. */
export async function listDayPacks(ctx: Ctx, dayId: string): Promise<Outcome<DayPacks>> {
  const refusal = authorise(ctx, 'packs.list');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const bench = await readBench(tx, ctx, dayId);
    if (!bench.ok) return bench;
    const { stored, settings, toMake, packs } = bench.value;
    return done({
      dayId,
      date: stored.day.date,
      isClosed: stored.day.state === 'closed',
      tares: settings.tares,
      toMake: toMake.map((pack) => toMakeOnWire(bench.value, pack)),
      packs: packs.map(packOnWire),
    });
  });
}

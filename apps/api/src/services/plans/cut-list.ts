import { knownSpecies } from '@flitchbook/contracts';
import type { Shop } from '@flitchbook/db';
import { type CutList, cutList } from '@flitchbook/plan';
import { done, type Outcome, refused } from '../../refusals.ts';
import { readBoardIn } from '../boards/read.ts';
import type { Ctx } from '../ctx.ts';
import { authorise } from '../roles.ts';
import { look } from '../transact.ts';

/** What the bench works from, and whether the day has moved on since it was planned. */
export interface BenchList {
  readonly shop: Shop;
  readonly list: CutList;
  readonly stale: boolean;
  /** what customers said in words, by order number */
  readonly notes: readonly { readonly number: number; readonly owner: string; readonly note: string }[];
}

/** The day's cut list in the shop's units, from the stored plan. */
export async function readCutList(ctx: Ctx, dayId: string): Promise<Outcome<BenchList>> {
  const refusal = authorise(ctx, 'plans.cut-list');
  if (refusal) return refusal;
  const board = await look(ctx.db, (tx) => readBoardIn(tx, ctx, dayId));
  if (!board.ok) return board;
  const { shop, day, cuttingDay, orders, plan } = board.value;
  if (plan === null) return refused('plan.missing', 'The day has no plan yet. Wait a moment, or plan it.');
  const list = cutList({ ...cuttingDay, species: knownSpecies }, plan, {
    lengthUnit: shop.lengthUnit,
    weightUnit: shop.weightUnit,
  });
  const notes = orders
    .filter(({ note }) => note.trim() !== '')
    .map(({ number, owner, note }) => ({ number, owner, note }))
    .toSorted((a, b) => a.number - b.number);
  return done({ shop, list, stale: day.plannedVersion !== day.version, notes });
}

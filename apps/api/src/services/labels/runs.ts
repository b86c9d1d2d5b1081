import type { Measure } from '@flitchbook/books';
import type { LabelRunOnWire } from '@flitchbook/contracts';
import { appendAudit, confirmPrinted, findLabelRun, listPacks, startLabelRun, type Tx } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { packUnknown } from '../packs/undo.ts';
import { authorise } from '../roles.ts';
import { look, transact } from '../transact.ts';
import { type DrawnLabels, drawLabels } from './draw.ts';

async function runIn(tx: Tx, shopId: string, runId: string): Promise<Outcome<LabelRunOnWire>> {
  const run = await findLabelRun(tx, shopId, runId);
  return run ? done(run) : refused('label.run-unknown', `The shop has no batch of labels ${runId}.`);
}

/** Puts packs into a batch of labels. Serials are the packs' own: printing again makes no new ones. */
export async function startRun(
  ctx: Ctx,
  input: { readonly runId?: string; readonly packIds: readonly string[] },
  key: OnceKey,
): Promise<Outcome<OnceAnswer<LabelRunOnWire>>> {
  const refusal = authorise(ctx, 'labels.print');
  if (refusal) return refusal;
  const { shopId, personId } = ctx.actor;
  const packIds = [...new Set(input.packIds)];
  return transact(ctx.db, (tx) =>
    once(tx, ctx.actor, key, async () => {
      const known = new Set((await listPacks(tx, shopId, { packIds })).map(({ packId }) => packId));
      const faults = packIds.flatMap((packId, place) =>
        known.has(packId)
          ? []
          : [{ at: `packIds[${place}]`, value: packId, says: 'is not a pack of this shop' }],
      );
      if (packIds.length === 0)
        faults.push({ at: 'packIds', value: '', says: 'at least one label is printed' });
      if (faults.length > 0)
        return refused('label.invalid', 'These labels cannot be printed; errors says why.', { faults });
      const runId = input.runId ?? ctx.ids.newId();
      await startLabelRun(tx, { shopId, runId, startedBy: personId, packIds });
      await appendAudit(tx, {
        shopId,
        personId,
        action: 'label.start',
        subject: runId,
        facts: { packs: packIds.length },
      });
      return runIn(tx, shopId, runId);
    }),
  );
}

export async function readRun(ctx: Ctx, runId: string): Promise<Outcome<LabelRunOnWire>> {
  const refusal = authorise(ctx, 'labels.print');
  if (refusal) return refusal;
  return look(ctx.db, (tx) => runIn(tx, ctx.actor.shopId, runId));
}

/** Says which labels came out. What is not said is drawn again: a printer that stopped half-way goes on where it was. */
export async function confirmRun(
  ctx: Ctx,
  runId: string,
  packIds: readonly string[],
): Promise<Outcome<LabelRunOnWire>> {
  const refusal = authorise(ctx, 'labels.print');
  if (refusal) return refusal;
  return transact(ctx.db, async (tx) => {
    if (packIds.length > 0) await confirmPrinted(tx, ctx.actor.shopId, runId, packIds);
    return runIn(tx, ctx.actor.shopId, runId);
  });
}

/** Drawings of what has not come out of the printer yet, or of all. */
export async function drawRun(
  ctx: Ctx,
  runId: string,
  { all, measure }: { readonly all: boolean; readonly measure: Measure },
): Promise<Outcome<DrawnLabels>> {
  const refusal = authorise(ctx, 'labels.print');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const run = await runIn(tx, ctx.actor.shopId, runId);
    if (!run.ok) return run;
    const open = run.value.packs.filter(({ isPrinted }) => all || !isPrinted);
    return drawLabels(
      tx,
      ctx,
      open.map(({ packId }) => packId),
      measure,
    );
  });
}

export async function drawOne(ctx: Ctx, packId: string, measure: Measure): Promise<Outcome<DrawnLabels>> {
  const refusal = authorise(ctx, 'labels.print');
  if (refusal) return refusal;
  return look(ctx.db, async (tx) => {
    const [pack] = await listPacks(tx, ctx.actor.shopId, { packIds: [packId] });
    return pack ? drawLabels(tx, ctx, [packId], measure) : packUnknown(packId);
  });
}

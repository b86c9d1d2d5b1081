import type { Closing, NewClosingOnWire } from '@flitchbook/contracts';
import { addClosing, appendAudit, appendLedger, holdAnimal, type Tx } from '@flitchbook/db';
import { done, type Outcome, refused } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { type OnceAnswer, type OnceKey, once } from '../once.ts';
import { authorise } from '../roles.ts';
import { transact } from '../transact.ts';
import { closingIn } from './read.ts';

async function closeIn(
  tx: Tx,
  ctx: Ctx,
  animalId: string,
  input: NewClosingOnWire,
): Promise<Outcome<Closing>> {
  const { shopId, personId } = ctx.actor;
  await holdAnimal(tx, shopId, animalId);
  const said = {
    outs: input.outs,
    note: input.note ?? '',
    minutes: input.minutes,
    animalMinor: input.animalMinor,
  };
  const drawn = await closingIn(tx, ctx, animalId, said);
  if (!drawn.ok) return drawn;
  const { isClosed, name, dayId, hangingGrams, apartGrams, packedGrams, namedGrams, restGrams, flag } =
    drawn.value;
  if (isClosed) return refused('animal.closed', `${name} is closed already.`);
  if (flag !== 'none' && said.note.trim() === '') {
    const fault = {
      at: 'note',
      value: said.note,
      says: `${restGrams} g are ${restGrams < 0 ? 'more than came in' : 'not accounted for'}: say why, or name where they went`,
    };
    return refused('animal.unbalanced', `${name} is off its balance by more than the shop allows.`, {
      faults: [fault],
    });
  }
  const sums = { hangingGrams, apartGrams, packedGrams, namedGrams, restGrams };
  await addClosing(tx, { shopId, animalId, ...sums, ...said, flag, closedBy: personId });
  await appendLedger(tx, {
    shopId,
    kind: 'animal.closed',
    dayId,
    orderId: null,
    personId,
    facts: { animalId, ...sums },
  });
  await appendAudit(tx, {
    shopId,
    personId,
    action: 'animal.close',
    subject: animalId,
    facts: { ...sums, flag },
  });
  const after = await closingIn(tx, ctx, animalId);
  return after.ok ? done(after.value) : after;
}

/** Closes an animal: everything in is packs, named outs and a rest, to the gram. Its packs stand as they are from then on. */
export async function closeAnimal(
  ctx: Ctx,
  animalId: string,
  input: NewClosingOnWire,
  key: OnceKey,
): Promise<Outcome<OnceAnswer<Closing>>> {
  const refusal = authorise(ctx, 'closings.close');
  if (refusal) return refusal;
  return transact(ctx.db, (tx) => once(tx, ctx.actor, key, () => closeIn(tx, ctx, animalId, input)));
}

import { appendAudit, endSession } from '@flitchbook/db';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { transact } from '../transact.ts';
import { tokenHash } from './token.ts';

/** Ends the session on the server: its token is worth nothing afterwards. */
export async function signOut(ctx: Ctx, token: string): Promise<Outcome<null>> {
  const { shopId, personId } = ctx.actor;
  return transact(ctx.db, async (tx) => {
    const ended = await endSession(tx, shopId, tokenHash(token));
    if (ended && personId !== null) {
      await appendAudit(tx, { shopId, personId, action: 'session.end', subject: personId, facts: {} });
    }
    return done(null);
  });
}

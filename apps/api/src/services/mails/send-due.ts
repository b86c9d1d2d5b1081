import { endMail, type MailEnd, takeMails } from '@flitchbook/db';
import { errorFacts } from '../../log.ts';
import { done, type Outcome } from '../../refusals.ts';
import type { Ctx } from '../ctx.ts';
import { transact } from '../transact.ts';
import type { Post } from './post.ts';

const atOnce = 20;
/** Whoever takes a mail and dies leaves it to the next one after this. */
const leaseSeconds = 120;
const triesMax = 8;

/** Half a minute, then twice as long each time, an hour at most. */
const pauseSeconds = (tries: number): number => Math.min(3600, 30 * 2 ** (tries - 1));

/**
 * Sends what waits in the outbox. A mail goes out at least once: the post may have it when the note of that is lost. After
 * some tries it is given up and stays, with its fault, for a person to look at.
 * @returns how many went out
 */
export async function sendDueMails(ctx: Ctx, post: Post): Promise<Outcome<number>> {
  const { shopId } = ctx.actor;
  const taken = await transact(ctx.db, async (tx) =>
    done(await takeMails(tx, shopId, { limit: atOnce, leaseSeconds })),
  );
  if (!taken.ok) return taken;
  let sent = 0;
  for (const { tries, ...mail } of taken.value) {
    let end: MailEnd = { sent: true };
    try {
      await post.send(mail);
      sent += 1;
    } catch (error) {
      const facts = errorFacts(error);
      const fault = facts.code ?? facts.error;
      end = { sent: false, fault, retrySeconds: tries < triesMax ? pauseSeconds(tries) : null };
      ctx.log({
        level: end.retrySeconds === null ? 'error' : 'warning',
        event: 'mail-not-sent',
        mailId: mail.mailId,
        tries,
        fault,
      });
    }
    const noted = await transact(ctx.db, async (tx) => done(await endMail(tx, shopId, mail.mailId, end)));
    if (!noted.ok) return noted;
  }
  return done(sent);
}

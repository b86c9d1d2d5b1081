import { and, asc, eq, lte, sql } from 'drizzle-orm';
import type { Tx } from '../database.ts';
import { handleOf } from '../engines/engine.ts';
import { mails } from '../schema/index.ts';

export interface Mail {
  readonly mailId: string;
  /** what it tells, in small words joined by dots: order.reserved */
  readonly kind: string;
  readonly orderId: string | null;
  readonly toEmail: string;
  readonly subject: string;
  readonly body: string;
  /** the same as a page; null where there is only text */
  readonly html: string | null;
}

/** Puts a mail into the outbox, in the transaction of what it tells. */
export async function addMail(tx: Tx, shopId: string, mail: Mail): Promise<void> {
  await handleOf(tx)
    .insert(mails)
    .values({ shopId, ...mail, tryAt: sql`now()` });
}

/**
 * Takes mails that are due, oldest first, and puts each off by `leaseSeconds`: whoever dies while sending leaves them to
 * be sent again. Two takers never get the same one.
 */
export async function takeMails(
  tx: Tx,
  shopId: string,
  { limit, leaseSeconds }: { readonly limit: number; readonly leaseSeconds: number },
): Promise<readonly (Mail & { readonly tries: number })[]> {
  const handle = handleOf(tx);
  const due = handle
    .select({ mailId: mails.mailId })
    .from(mails)
    .where(and(eq(mails.shopId, shopId), lte(mails.tryAt, sql`now()`)))
    .orderBy(asc(mails.madeAt), asc(mails.mailId))
    .limit(limit)
    .for('update', { skipLocked: true });
  const taken = await handle
    .update(mails)
    .set({ tries: sql`${mails.tries} + 1`, tryAt: sql`now() + make_interval(secs => ${leaseSeconds})` })
    .where(and(eq(mails.shopId, shopId), sql`${mails.mailId} in ${due}`))
    .returning();
  return taken
    .toSorted((a, b) => a.madeAt.getTime() - b.madeAt.getTime() || (a.mailId < b.mailId ? -1 : 1))
    .map(({ mailId, kind, orderId, toEmail, subject, body, html, tries }) => ({
      mailId,
      kind,
      orderId,
      toEmail,
      subject,
      body,
      html,
      tries,
    }));
}

export type MailEnd =
  | { readonly sent: true }
  /** `retrySeconds` null: given up, for a person to look at */
  | { readonly sent: false; readonly fault: string; readonly retrySeconds: number | null };

/** What became of a mail that was taken. */
export async function endMail(tx: Tx, shopId: string, mailId: string, end: MailEnd): Promise<void> {
  const retry = !end.sent && end.retrySeconds !== null ? end.retrySeconds : undefined;
  await handleOf(tx)
    .update(mails)
    .set({
      sentAt: end.sent ? sql`now()` : null,
      fault: end.sent ? null : end.fault,
      tryAt: retry === undefined ? null : sql`now() + make_interval(secs => ${retry})`,
    })
    .where(and(eq(mails.shopId, shopId), eq(mails.mailId, mailId)));
}

/** Whether an order's customer was told something before. */
export async function wasTold(tx: Tx, shopId: string, orderId: string, kind: string): Promise<boolean> {
  const [found] = await handleOf(tx)
    .select({ mailId: mails.mailId })
    .from(mails)
    .where(and(eq(mails.shopId, shopId), eq(mails.orderId, orderId), eq(mails.kind, kind)))
    .limit(1);
  return found !== undefined;
}

import {
  forgetExpiredSessions,
  forgetOldAnswers,
  listDays,
  listDaysWaitedForInVain,
  listLapsed,
} from '@flitchbook/db';
import { done } from '../refusals.ts';
import type { Ctx } from '../services/ctx.ts';
import type { Post } from '../services/mails/post.ts';
import { sendDueMails } from '../services/mails/send-due.ts';
import { lapseDay } from '../services/reservations/lapse.ts';
import { promoteQueue } from '../services/reservations/promote.ts';
import { dismissQueue } from '../services/reservations/release.ts';
import { look, transact } from '../services/transact.ts';
import type { Job } from './timetable.ts';

/** Days for which an answer is kept for whoever sends the same request again. */
const answerDays = 30;

/** Holds that have run out go back, and what they had goes to the queue. */
async function lapse(ctx: Ctx): Promise<void> {
  const { shopId } = ctx.actor;
  const lapsed = await look(ctx.db, async (tx) => done(await listLapsed(tx, shopId)));
  for (const dayId of new Set((lapsed.ok ? lapsed.value : []).map((hold) => hold.dayId))) {
    await ctx.promises.turns.inTurn(dayId, async () => {
      await lapseDay(ctx, dayId);
      await promoteQueue(ctx, dayId);
    });
  }
}

/** Room that came free in some other way: another animal, an order that the shop cancelled. */
async function promote(ctx: Ctx): Promise<void> {
  const { shopId } = ctx.actor;
  const days = await look(ctx.db, async (tx) => done(await listDays(tx, shopId)));
  for (const { dayId, state } of days.ok ? days.value : []) {
    if (state === 'open') await ctx.promises.turns.inTurn(dayId, () => promoteQueue(ctx, dayId));
  }
}

async function dismiss(ctx: Ctx): Promise<void> {
  const { shopId } = ctx.actor;
  const days = await look(ctx.db, async (tx) => done(await listDaysWaitedForInVain(tx, shopId)));
  for (const dayId of days.ok ? days.value : []) await dismissQueue(ctx, dayId);
}

async function forget(ctx: Ctx): Promise<void> {
  const { shopId } = ctx.actor;
  await transact(ctx.db, async (tx) => {
    await forgetExpiredSessions(tx, shopId);
    await forgetOldAnswers(tx, shopId, answerDays);
    return done(null);
  });
}

/** What the service does by itself, without being asked. */
export const usualJobs = (post: Post): readonly Job[] => [
  { name: 'lapse', everySeconds: 5, run: lapse },
  { name: 'promote', everySeconds: 60, run: promote },
  { name: 'dismiss', everySeconds: 60, run: dismiss },
  { name: 'mail', everySeconds: 5, run: (ctx) => sendDueMails(ctx, post) },
  { name: 'forget', everySeconds: 3600, run: forget },
];

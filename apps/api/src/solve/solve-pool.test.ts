import { afterEach, describe, expect, test } from 'vitest';
import type { TravellingDay } from './day-solver.ts';
import { SolvePool } from './solve-pool.ts';

/** Threads that behave badly on demand: the pool must outlive them. What they do stands in the day's id. */
const unruly = new URL(
  `data:text/javascript,${encodeURIComponent(`
    import { parentPort } from 'node:worker_threads';
    parentPort.on('message', ({ number, day }) => {
      if (day.dayId === 'spin') for (;;);
      if (day.dayId === 'exit') process.exit(3);
      if (day.dayId === 'throw') throw new Error('thrown outside of any answer');
      if (day.dayId === 'fail') return parentPort.postMessage({ number, failed: 'it said no' });
      parentPort.postMessage({ number, plan: { dayId: day.dayId } });
    });
  `)}`,
);

const day = (dayId: string): TravellingDay => ({ dayId }) as TravellingDay;
const limits = { deadlineSeconds: 0.2, gap: 0.01, seed: 1 };

let pool: SolvePool;
const makePool = (more: { waitingMax?: number; onThreadEnd?: (says: string) => void } = {}): SolvePool => {
  pool = new SolvePool({
    threads: 1,
    waitingMax: 16,
    graceSeconds: 0.5,
    threadFile: unruly,
    execArgv: [],
    ...more,
  });
  return pool;
};
afterEach(() => pool.close());

describe('the pool of planning threads', () => {
  test('answers in the order asked', async () => {
    makePool();
    const answers = await Promise.all(['a', 'b', 'c'].map((id) => pool.solve(day(id), limits)));
    expect(answers.map((answer) => answer.ok && answer.plan.dayId)).toEqual(['a', 'b', 'c']);
  });

  test('a thread that never answers is ended after the grace, and the next question gets a new one', async () => {
    const ends: string[] = [];
    makePool({ onThreadEnd: (says) => ends.push(says) });
    const [stuck, next] = await Promise.all([pool.solve(day('spin'), limits), pool.solve(day('a'), limits)]);
    expect(stuck).toMatchObject({ ok: false, why: 'late' });
    expect(next).toMatchObject({ ok: true });
    expect(ends).toEqual(['no answer within 0.7 s']);
  });

  test.each(['exit', 'throw'])(
    'a thread that dies (%s) is an answer, and the next question gets a new one',
    async (how) => {
      makePool();
      expect(await pool.solve(day(how), limits)).toMatchObject({ ok: false, why: 'broken' });
      expect(await pool.solve(day('a'), limits)).toMatchObject({ ok: true });
    },
  );

  test('a failed solve keeps its thread', async () => {
    const ends: string[] = [];
    makePool({ onThreadEnd: (says) => ends.push(says) });
    expect(await pool.solve(day('fail'), limits)).toEqual({ ok: false, why: 'broken', says: 'it said no' });
    expect(await pool.solve(day('a'), limits)).toMatchObject({ ok: true });
    expect(ends).toEqual([]);
  });

  test('beyond the queue a question is refused at once', async () => {
    makePool({ waitingMax: 2 });
    const answers = ['a', 'b', 'c', 'd'].map((id) => pool.solve(day(id), limits));
    expect(await answers[3]).toMatchObject({ ok: false, why: 'full' });
    expect((await Promise.all(answers)).map((answer) => answer.ok)).toEqual([true, true, true, false]);
  });

  test('closing answers everyone', async () => {
    makePool();
    const answers = ['spin', 'a'].map((id) => pool.solve(day(id), { ...limits, deadlineSeconds: 60 }));
    await pool.close();
    expect(await Promise.all(answers)).toEqual([
      { ok: false, why: 'closed', says: 'the service is stopping' },
      { ok: false, why: 'closed', says: 'the service is stopping' },
    ]);
    expect(await pool.solve(day('a'), limits)).toMatchObject({ ok: false, why: 'closed' });
  });
});

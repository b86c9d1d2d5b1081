import { listShops } from '@flitchbook/db';
import { errorFacts } from '../log.ts';
import { done } from '../refusals.ts';
import { actAs, type Ctx, type Services } from '../services/ctx.ts';
import { look } from '../services/transact.ts';

export interface Job {
  /** small words joined by dashes */
  readonly name: string;
  readonly everySeconds: number;
  /** for one shop; another process may be at the same at this moment */
  run(ctx: Ctx): Promise<unknown>;
}

/**
 * Runs jobs over and over, each shop's one after another. Every process has one: each step of a job is a condition in the
 * database, so that two who do it at once do it once (docs/decisions/0007-jobs-on-a-timer.md).
 */
export class Timetable {
  readonly #services: Services;
  readonly #jobs: readonly Job[];
  readonly #timers = new Set<NodeJS.Timeout>();
  readonly #running = new Set<Promise<void>>();
  #stopped = false;

  constructor(services: Services, jobs: readonly Job[]) {
    this.#services = services;
    this.#jobs = jobs;
  }

  start(): void {
    for (const job of this.#jobs) this.#plan(job);
  }

  #plan(job: Job): void {
    if (this.#stopped) return;
    const timer = setTimeout(() => {
      this.#timers.delete(timer);
      const run = this.round(job).finally(() => {
        this.#running.delete(run);
        this.#plan(job);
      });
      this.#running.add(run);
    }, job.everySeconds * 1000);
    timer.unref();
    this.#timers.add(timer);
  }

  /** One round over all shops. What fails is logged and comes again with the next. */
  async round(job: Job): Promise<void> {
    const { db, log } = this.#services;
    try {
      const shops = await look(db, async (tx) => done(await listShops(tx)));
      for (const { shopId } of shops.ok ? shops.value : []) {
        if (this.#stopped) return;
        const ctx = actAs(this.#services, { shopId, personId: null, role: 'owner' });
        await job.run(ctx);
      }
    } catch (error) {
      log({ level: 'error', event: 'job-failed', job: job.name, ...errorFacts(error) });
    }
  }

  /** Starts nothing new and waits for what is running. */
  async stop(): Promise<void> {
    this.#stopped = true;
    for (const timer of this.#timers) clearTimeout(timer);
    await Promise.all(this.#running);
  }
}

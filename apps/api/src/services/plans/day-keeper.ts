import { forShop, listDays, listShops } from '@flitchbook/db';
import { errorFacts } from '../../log.ts';
import { done } from '../../refusals.ts';
import { actAs, type Services } from '../ctx.ts';
import { promoteQueue } from '../reservations/promote.ts';
import { look } from '../transact.ts';
import { keepPlanned } from './keep.ts';

const overtakenMax = 5;

interface Round {
  again: boolean;
  readonly over: Promise<void>;
}

/**
 * Plans days again after they changed, one round at a time for each day. Changes that come while a round is running are
 * taken together into the next: the latest state wins. What it cannot plan stays stale, and the board shows that.
 */
export class DayKeeper {
  readonly #services: Services;
  readonly #rounds = new Map<string, Round>();
  #closed = false;

  constructor(services: Omit<Services, 'dayChanged'>) {
    this.#services = { ...services, dayChanged: (shopId, dayId) => this.dayChanged(shopId, dayId) };
  }

  get services(): Services {
    return this.#services;
  }

  dayChanged(shopId: string, dayId: string): void {
    if (this.#closed) return;
    const round = this.#rounds.get(dayId);
    if (round) round.again = true;
    else this.#rounds.set(dayId, { again: false, over: this.#run(shopId, dayId) });
  }

  /** Resolves when no round is running for the day. */
  async settled(dayId: string): Promise<void> {
    await this.#rounds.get(dayId)?.over;
  }

  /** Plans what was left unplanned when the service ended last. */
  async catchUp(): Promise<void> {
    const { db } = this.#services;
    const shops = await look(db, async (tx) => done(await listShops(tx)));
    for (const { shopId } of shops.ok ? shops.value : []) {
      const days = await look(forShop(db, shopId), async (tx) => done(await listDays(tx, shopId)));
      const stale = (days.ok ? days.value : []).filter(
        (day) => day.state === 'open' && day.plannedVersion !== day.version,
      );
      for (const { dayId } of stale) this.dayChanged(shopId, dayId);
    }
  }

  async #run(shopId: string, dayId: string): Promise<void> {
    // The round must be in the map before its first step.
    await Promise.resolve();
    let overtaken = 0;
    for (let goOn = true; goOn && !this.#closed; ) {
      const round = this.#rounds.get(dayId);
      if (round) round.again = false;
      const lost = (await this.#step(shopId, dayId)) === 'overtaken';
      overtaken = lost ? overtaken + 1 : 0;
      goOn = round?.again === true || (lost && overtaken < overtakenMax);
    }
    this.#rounds.delete(dayId);
  }

  async #step(shopId: string, dayId: string): Promise<'over' | 'overtaken'> {
    const actor = { shopId, personId: null, role: 'owner' } as const;
    try {
      const ctx = actAs(this.#services, actor);
      const outcome = await keepPlanned(ctx, dayId);
      if (outcome.ok) {
        await ctx.promises.turns.inTurn(dayId, () => promoteQueue(ctx, dayId));
        return 'over';
      }
      if (outcome.type === 'plan.overtaken') return 'overtaken';
      this.#services.log({ level: 'warning', event: 'day-left-stale', dayId, refusal: outcome.type });
    } catch (error) {
      this.#services.log({ level: 'error', event: 'day-left-stale', dayId, ...errorFacts(error) });
    }
    return 'over';
  }

  /** Starts nothing new and waits for what is running. */
  async close(): Promise<void> {
    this.#closed = true;
    await Promise.all([...this.#rounds.values()].map((round) => round.over));
  }
}

// What promises come to, told anew and in the plainest way: counts on paper. It knows no plan, no solver and no database.

/** Pieces that a hog gives once. A head leaves whole, or is taken apart into the last three. */
export const cuts = ['liver', 'heart', 'tail', 'head', 'tongue', 'cheeks', 'ears'] as const;
type Cut = (typeof cuts)[number];
export interface Wish {
  readonly cut: Cut;
  readonly pieces: number;
}

/** The counter asks for whoever stands before it; the two others for themselves. */
export const askers = ['counter', 'Ann', 'Bea'] as const;
export type Asker = (typeof askers)[number];

export type State = 'queued' | 'held' | 'standing' | 'lapsed' | 'released' | 'cancelled';
interface Step {
  readonly kind: string;
  /** who was passed over, where the step is one that may pass over others */
  readonly overtakes?: readonly string[];
}

export interface Promised {
  readonly orderId: string;
  readonly who: Asker;
  readonly wishes: readonly Wish[];
  state: State;
  /** the time of the hold is over, and nobody has looked yet */
  due: boolean;
  version: number;
  readonly steps: Step[];
}

export const capOrders = 4;
export const capPieces = 6;

const sumOf = (wishes: readonly Wish[], cut: Cut): number =>
  wishes.reduce((sum, wish) => sum + (wish.cut === cut ? wish.pieces : 0), 0);

export class PromiseModel {
  readonly hogs: number;
  readonly orders: Promised[] = [];
  isClosed = false;
  /** after the last call customers are refused */
  isLate = false;

  constructor(hogs: number) {
    this.hogs = hogs;
  }

  /** Whether these wishes can be met beside everything that is held or stands. */
  fits(wishes: readonly Wish[]): boolean {
    const kept = this.orders.filter(({ state }) => state === 'held' || state === 'standing');
    const all = [...kept.flatMap((order) => order.wishes), ...wishes];
    const heads =
      sumOf(all, 'head') + Math.max(sumOf(all, 'tongue'), sumOf(all, 'cheeks'), sumOf(all, 'ears'));
    const most = Math.max(heads, sumOf(all, 'liver'), sumOf(all, 'heart'), sumOf(all, 'tail'));
    return most <= this.hogs;
  }

  get queue(): readonly Promised[] {
    return this.orders.filter(({ state }) => state === 'queued');
  }

  #step(order: Promised, state: State, kind: string, overtakes?: readonly Promised[]): void {
    order.state = state;
    order.due = false;
    order.version += 1;
    order.steps.push({ kind, ...(overtakes && { overtakes: overtakes.map(({ orderId }) => orderId) }) });
  }

  /** Room goes to the earliest in the queue whose whole demand fits, again and again. */
  promote(): void {
    if (this.isClosed) return;
    for (;;) {
      const passed: Promised[] = [];
      const next = this.queue.find((order) => {
        if (this.fits(order.wishes)) return true;
        passed.push(order);
        return false;
      });
      if (!next) return;
      this.#step(next, 'held', 'order.promoted', passed);
    }
  }

  sweep(): void {
    for (const order of this.orders.filter(({ due }) => due)) this.#step(order, 'lapsed', 'order.lapsed');
  }

  endHolds(): void {
    for (const order of this.orders) order.due ||= order.state === 'held';
  }

  /** What may be answered to a claim: the first is what a patient reader of the rules would say. */
  answersTo(who: Asker, wishes: readonly Wish[], orQueue: boolean): readonly string[] {
    const own = this.orders.filter(
      (order) => order.who === who && ['queued', 'held', 'standing'].includes(order.state),
    );
    const pieces = [...own.flatMap((order) => order.wishes), ...wishes].reduce(
      (sum, wish) => sum + wish.pieces,
      0,
    );
    const isOver = who !== 'counter' && (own.length + 1 > capOrders || pieces > capPieces);
    const fits = this.fits(wishes);
    if (this.isClosed) return ['day.closed'];
    const refused: string[] = [];
    if (this.isLate && who !== 'counter') refused.push('day.closed-to-customers');
    if (isOver) refused.push('reservation.not-yours-to-hold');
    // A proof that it cannot be had may be quicker than a look at who asks.
    if (!fits && !orQueue) refused.push('reservation.not-possible');
    if (refused.length > 0) return refused;
    return [fits ? 'held' : 'queued'];
  }

  /** A claim that was taken. */
  take(orderId: string, who: Asker, wishes: readonly Wish[], state: 'held' | 'queued'): void {
    const order: Promised = { orderId, who, wishes, state, due: false, version: 1, steps: [] };
    const overtakes = this.queue.map((queued) => queued.orderId);
    order.steps.push(state === 'held' ? { kind: 'order.held', overtakes } : { kind: 'order.queued' });
    this.orders.push(order);
  }

  /** @returns done, or the refusal */
  reserve(order: Promised, who: Asker): string {
    if (who !== 'counter' && who !== order.who) return 'order.unknown';
    if (this.isClosed) return 'day.closed';
    if (order.due || order.state === 'lapsed') return 'reservation.lapsed';
    if (order.state !== 'held') return 'reservation.not-held';
    this.#step(order, 'standing', 'order.reserved');
    return 'done';
  }

  release(order: Promised, who: Asker): string {
    if (who !== 'counter' && who !== order.who) return 'order.unknown';
    if (order.state !== 'held' && order.state !== 'queued') return 'reservation.not-held';
    this.#step(order, 'released', 'order.released');
    this.promote();
    return 'done';
  }

  cancel(order: Promised, who: Asker, version: number): string {
    if (who !== 'counter' && who !== order.who) return 'order.unknown';
    if (who !== 'counter' && (this.isLate || this.isClosed)) return 'day.closed-to-customers';
    if (this.isClosed) return 'day.closed';
    if (order.state === 'cancelled') return 'order.already-cancelled';
    if (order.state !== 'standing' || order.version !== version) return 'edit.version-stale';
    this.#step(order, 'cancelled', 'order.cancelled');
    return 'done';
  }
}

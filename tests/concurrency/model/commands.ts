import { isDeepStrictEqual } from 'node:util';
import type { NewHold } from '@flitchbook/contracts';
import type { OrderRecord } from '@flitchbook/db';
import fc from 'fast-check';
import type { Outcome } from '../../../apps/api/src/refusals.ts';
import type { OnceAnswer, OnceKey } from '../../../apps/api/src/services/once.ts';
import { cancelTaken } from '../../../apps/api/src/services/orders/cancel.ts';
import { listOwnOrders } from '../../../apps/api/src/services/orders/own.ts';
import { keepPlanned } from '../../../apps/api/src/services/plans/keep.ts';
import { holdOrder } from '../../../apps/api/src/services/reservations/hold.ts';
import { lapseDay } from '../../../apps/api/src/services/reservations/lapse.ts';
import { promoteQueue } from '../../../apps/api/src/services/reservations/promote.ts';
import { releaseOrder } from '../../../apps/api/src/services/reservations/release.ts';
import { reserveOrder } from '../../../apps/api/src/services/reservations/reserve.ts';
import { newId } from '../shop-on-postgres.ts';
import { type Asker, askers, cuts, type Promised, type PromiseModel, type Wish } from './promise-model.ts';
import type { RealDay } from './real-shop.ts';

type Command = fc.AsyncCommand<PromiseModel, RealDay>;
type Answer = Outcome<OnceAnswer<OrderRecord>>;

const saidBy = (answer: Outcome<unknown>): string => (answer.ok ? 'done' : answer.type);

function expectOne(rule: string, said: string, allowed: readonly string[]): void {
  if (!allowed.includes(said)) throw new Error(`${rule}: ${said}, not ${allowed.join(' or ')}`);
}

const keyOf = (route: string, request: unknown): OnceKey => ({
  key: newId(),
  route,
  request,
  status: 201,
});

const inputOf = (wishes: readonly Wish[], orQueue = false): NewHold => ({
  orderId: newId(),
  owner: 'Whoever comes',
  lines: wishes.map(({ cut, pieces }) => ({ cut, portion: { by: 'whole' }, ask: { pieces } })),
  shares: [],
  orQueue,
});

function remember(
  real: RealDay,
  answer: Answer,
  send: (request: unknown) => Promise<Answer>,
  request: unknown,
) {
  if (!answer.ok) return;
  real.sent.push({
    body: answer.value.body,
    again: () => send(request),
    otherwise: () => send({ request, and: 'more' }),
  });
}

class Hold implements Command {
  readonly #who: Asker;
  readonly #wishes: readonly Wish[];
  readonly #orQueue: boolean;

  constructor(who: Asker, wishes: readonly Wish[], orQueue: boolean) {
    this.#who = who;
    this.#wishes = wishes;
    this.#orQueue = orQueue;
  }

  check = () => true;

  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const input = inputOf(this.#wishes, this.#orQueue);
    const key = keyOf('holds', input);
    const send = (request: unknown) =>
      holdOrder(real.as(this.#who), { dayId: real.dayId, input, key: { ...key, request } });
    const answer = await send(input);
    const said = answer.ok ? answer.value.body.state : answer.type;
    // A refusal that is known already may be told before anybody looks at the queue; nothing may come of it then.
    model.sweep();
    model.promote();
    expectOne('R2, R3, R9', said, model.answersTo(this.#who, this.#wishes, this.#orQueue));
    if (said === 'held' || said === 'queued') model.take(input.orderId ?? '', this.#who, this.#wishes, said);
    remember(real, answer, send, input);
  }

  toString = () =>
    `hold(${this.#who}, ${this.#wishes.map(({ cut, pieces }) => `${pieces} ${cut}`).join(' + ')}${this.#orQueue ? ', or queue' : ''})`;
}

/** Several at once ask for the same, through two processes: as many are served as it is there for. */
class Race implements Command {
  readonly #wish: Wish;
  readonly #many: number;

  constructor(wish: Wish, many: number) {
    this.#wish = wish;
    this.#many = many;
  }

  check = () => true;

  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const inputs = Array.from({ length: this.#many }, () => inputOf([this.#wish]));
    const answers = await Promise.all(
      inputs.map((input, nth) =>
        holdOrder(real.as('counter', nth % 2 === 0 ? 0 : 1), {
          dayId: real.dayId,
          input,
          key: keyOf('holds', input),
        }),
      ),
    );
    model.sweep();
    model.promote();
    const held = answers.flatMap((answer) => (answer.ok ? [answer.value.body] : []));
    for (const order of held.toSorted((a, b) => a.number - b.number)) {
      expectOne('R2', order.state, model.answersTo('counter', [this.#wish], false));
      model.take(order.orderId, 'counter', [this.#wish], 'held');
    }
    for (const answer of answers.filter(({ ok }) => !ok))
      expectOne('R3', saidBy(answer), model.answersTo('counter', [this.#wish], false));
  }

  toString = () => `race(${this.#many} for ${this.#wish.pieces} ${this.#wish.cut})`;
}

/** The same request with the same key twice at once, through two processes. */
class Twins implements Command {
  readonly #wish: Wish;

  constructor(wish: Wish) {
    this.#wish = wish;
  }

  check = () => true;

  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const input = inputOf([this.#wish]);
    const key = keyOf('holds', input);
    const answers = await Promise.all(
      ([0, 1] as const).map((process) =>
        holdOrder(real.as('counter', process), { dayId: real.dayId, input, key }),
      ),
    );
    model.sweep();
    model.promote();
    const allowed = model.answersTo('counter', [this.#wish], false);
    const said = answers.map((answer) => (answer.ok ? answer.value.body.state : answer.type));
    for (const word of said) expectOne('R6', word, [...allowed, 'idempotency.still-running']);
    const fresh = answers.filter((answer) => answer.ok && !answer.value.replayed);
    if (said.includes('held')) {
      if (fresh.length !== 1) throw new Error(`R6: ${fresh.length} effects of one key`);
      model.take(input.orderId ?? '', 'counter', [this.#wish], 'held');
    }
  }

  toString = () => `twins(${this.#wish.pieces} ${this.#wish.cut})`;
}

abstract class OnOrder implements Command {
  readonly #nth: number;
  protected readonly who: Asker;

  constructor(nth: number, who: Asker) {
    this.#nth = nth;
    this.who = who;
  }

  check = (model: Readonly<PromiseModel>) => model.orders.length > 0;

  protected pick(model: PromiseModel): Promised {
    return model.orders[this.#nth % model.orders.length] as Promised;
  }

  abstract run(model: PromiseModel, real: RealDay): Promise<void>;
  toString = () => `${this.constructor.name.toLowerCase()}(${this.who}, order ${this.#nth})`;
}

class Reserve extends OnOrder {
  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const order = this.pick(model);
    const key = keyOf('reserve', order.orderId);
    const send = (request: unknown) => reserveOrder(real.as(this.who), order.orderId, { ...key, request });
    const answer = await send(order.orderId);
    expectOne('R4, R5, R10', saidBy(answer), [model.reserve(order, this.who)]);
    remember(real, answer, send, order.orderId);
  }
}

class Release extends OnOrder {
  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const order = this.pick(model);
    const key = keyOf('release', order.orderId);
    const send = (request: unknown) => releaseOrder(real.as(this.who), order.orderId, { ...key, request });
    const answer = await send(order.orderId);
    expectOne('R4, R10', saidBy(answer), [model.release(order, this.who)]);
    remember(real, answer, send, order.orderId);
  }
}

class Cancel extends OnOrder {
  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const order = this.pick(model);
    const { orderId, version } = order;
    const answer = await cancelTaken(real.as(this.who), { orderId, ifVersion: version });
    expectOne('R4, R10', saidBy(answer), [model.cancel(order, this.who, version)]);
  }
}

class CancelStale extends OnOrder {
  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const order = this.pick(model);
    const ifVersion = order.version + 1;
    const answer = await cancelTaken(real.as('counter'), { orderId: order.orderId, ifVersion });
    expectOne('R4', saidBy(answer), [model.cancel(order, 'counter', ifVersion)]);
  }
}

/** Two move one order on at once, through two processes: one of them does. */
class Both extends OnOrder {
  readonly #verbs: readonly ('reserve' | 'release')[];

  constructor(nth: number, verbs: readonly ('reserve' | 'release')[]) {
    super(nth, 'counter');
    this.#verbs = verbs;
  }

  async run(model: PromiseModel, real: RealDay): Promise<void> {
    const order = this.pick(model);
    const { orderId, due: wasOver } = order;
    const answers = await Promise.all(
      this.#verbs.map((verb, nth) => {
        const ctx = real.as('counter', nth === 0 ? 0 : 1);
        return verb === 'reserve'
          ? reserveOrder(ctx, orderId, keyOf(verb, orderId))
          : releaseOrder(ctx, orderId, keyOf(verb, orderId));
      }),
    );
    const winner = answers.findIndex(({ ok }) => ok);
    const others = this.#verbs.flatMap((verb, nth) => (nth === winner ? [] : [[verb, nth] as const]));
    const due = (verb: 'reserve' | 'release') =>
      verb === 'reserve' ? model.reserve(order, 'counter') : model.release(order, 'counter');
    if (winner >= 0) expectOne('R4', 'done', [due(this.#verbs[winner] as 'reserve' | 'release')]);
    // Whoever loses may have come before the winner: a hold that was over was over for him.
    for (const [verb, nth] of others)
      expectOne('R4', saidBy(answers[nth] as Answer), [
        due(verb),
        ...(wasOver ? ['reservation.lapsed'] : []),
      ]);
  }
}

/** What was sent is sent again with its key; or another request is, with that key. */
class Again implements Command {
  readonly #nth: number;
  readonly #otherwise: boolean;

  constructor(nth: number, otherwise: boolean) {
    this.#nth = nth;
    this.#otherwise = otherwise;
  }

  check = () => true;

  async run(_: PromiseModel, real: RealDay): Promise<void> {
    const sent = real.sent[this.#nth % Math.max(1, real.sent.length)];
    if (!sent) return;
    const answer = await (this.#otherwise ? sent.otherwise() : sent.again());
    expectOne('R6', saidBy(answer), [this.#otherwise ? 'idempotency.key-reused' : 'done']);
    // As texts of JSON are compared: members in any order.
    const asSent = (body: OrderRecord): unknown => JSON.parse(JSON.stringify(body));
    if (answer.ok && !isDeepStrictEqual(asSent(answer.value.body), asSent(sent.body)))
      throw new Error('R6: another answer to the same request');
  }

  toString = () => `again(${this.#nth}${this.#otherwise ? ', another request' : ''})`;
}

const command = (name: string, run: (model: PromiseModel, real: RealDay) => Promise<void>): Command => ({
  check: () => true,
  run,
  toString: () => name,
});

const endHolds = command('end-holds', async (model, real) => {
  model.endHolds();
  await real.endHolds();
});

/** Two sweepers at once: each hold lapses once. */
const sweep = command('sweep', async (model, real) => {
  model.sweep();
  await Promise.all([lapseDay(real.as('owner', 0), real.dayId), lapseDay(real.as('owner', 1), real.dayId)]);
});

const promote = command('promote', async (model, real) => {
  model.promote();
  await promoteQueue(real.as('owner'), real.dayId);
});

const replan = command('plan', async (_, real) => {
  expectOne('R1', saidBy(await keepPlanned(real.as('owner'), real.dayId)), ['done']);
});

const list = command('list', async (model, real) => {
  for (const who of ['Ann', 'Bea'] as const) {
    const found = await listOwnOrders(real.as(who));
    const ids = found.ok ? found.value.filter(({ dayId }) => dayId === real.dayId) : [];
    const due = model.orders.filter((order) => order.who === who).map(({ orderId }) => orderId);
    if (JSON.stringify(ids.map(({ orderId }) => orderId)) !== JSON.stringify(due))
      throw new Error(`R10: ${who} sees other orders than her own`);
  }
});

const close = command('close', async (model, real) => {
  if (!model.isClosed) await real.close();
  model.isClosed = true;
});

const lastCall = command('last-call', async (model, real) => {
  if (model.isClosed) return;
  await real.lastCall();
  model.isLate = true;
});

const asker = fc.constantFrom(...askers);
const wish = fc.record({ cut: fc.constantFrom(...cuts), pieces: fc.constantFrom(1, 1, 1, 1, 2, 3) });
const wishes = fc.oneof(
  { weight: 3, arbitrary: fc.tuple(wish) },
  { weight: 1, arbitrary: fc.array(wish, { minLength: 2, maxLength: 3 }) },
);
const nth = fc.nat(5);
const verb = fc.constantFrom('reserve' as const, 'release' as const);

const often = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(asker, wishes, fc.boolean()).map((claim) => new Hold(...claim)) },
  { weight: 2, arbitrary: fc.tuple(nth, asker).map((move) => new Reserve(...move)) },
  { weight: 2, arbitrary: fc.tuple(nth, asker).map((move) => new Release(...move)) },
  { weight: 1, arbitrary: fc.constant(endHolds) },
);
const seldom = fc.oneof(
  fc.tuple(wish, fc.integer({ min: 2, max: 3 })).map(([of, many]) => new Race(of, many)),
  wish.map((of) => new Twins(of)),
  fc.tuple(nth, asker).map((move) => new Cancel(...move)),
  nth.map((at) => new CancelStale(at, 'counter')),
  fc.tuple(nth, fc.tuple(verb, verb)).map(([at, verbs]) => new Both(at, verbs)),
  fc.tuple(nth, fc.boolean()).map(([at, otherwise]) => new Again(at, otherwise)),
  fc.constantFrom(sweep, promote, replan, list),
);
const once = fc.constantFrom(close, lastCall);

/** Of twenty commands eleven are claims and what becomes of them, and one ends something for good. */
export const commandsOf = (longest: number) =>
  fc.commands(
    [...Array.from({ length: 11 }, () => often), ...Array.from({ length: 8 }, () => seldom), once],
    {
      maxCommands: longest,
      size: 'max',
    },
  );

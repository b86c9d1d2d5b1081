import { Worker } from 'node:worker_threads';
import type {
  Advice,
  AdviceAnswer,
  AdviceKind,
  DaySolver,
  NoAnswer,
  SolveAnswer,
  SolveLimits,
  ThreadAnswer,
  ThreadQuestion,
  TravellingDay,
} from './day-solver.ts';

export interface SolvePoolOptions {
  readonly threads: number;
  /** questions that may wait; further ones are refused at once */
  readonly waitingMax: number;
  /** how long after its deadline a thread may stay silent before it is ended */
  readonly graceSeconds: number;
  readonly threadFile: URL;
  /** flags of Node for the thread; without them it takes this process's */
  readonly execArgv?: readonly string[];
  readonly onThreadEnd?: (says: string) => void;
}

interface Job {
  readonly question: ThreadQuestion;
  readonly settle: (answer: ThreadAnswer | NoAnswer) => void;
}

const failed = (why: NoAnswer['why'], says: string): NoAnswer => ({
  ok: false,
  why,
  says,
});

const noAnswer = (answer: ThreadAnswer | NoAnswer): NoAnswer =>
  'why' in answer ? answer : failed('broken', 'the thread answered something else');

/** One place of the pool: a thread that is started when first needed and again after it was ended. */
class Place {
  readonly #options: SolvePoolOptions;
  #worker: Worker | undefined;
  #job: Job | undefined;
  #timer: NodeJS.Timeout | undefined;

  constructor(options: SolvePoolOptions) {
    this.#options = options;
  }

  get free(): boolean {
    return this.#job === undefined;
  }

  start(): Worker {
    if (this.#worker) return this.#worker;
    const { threadFile, execArgv } = this.#options;
    const worker = new Worker(threadFile, execArgv === undefined ? {} : { execArgv: [...execArgv] });
    worker.on('message', (answer: ThreadAnswer) => this.#take(worker, answer));
    worker.on('error', (error) => this.#lost(worker, 'broken', `the thread broke: ${error.message}`));
    worker.on('exit', (code) => this.#lost(worker, 'broken', `the thread ended with ${code}`));
    worker.unref();
    this.#worker = worker;
    return worker;
  }

  run(job: Job): void {
    this.#job = job;
    const worker = this.start();
    const patienceSeconds = job.question.limits.deadlineSeconds + this.#options.graceSeconds;
    this.#timer = setTimeout(
      () => this.#lost(worker, 'late', `no answer within ${patienceSeconds} s`),
      patienceSeconds * 1000,
    );
    worker.postMessage(job.question);
  }

  #take(worker: Worker, answer: ThreadAnswer): void {
    if (worker !== this.#worker || answer.number !== this.#job?.question.number) return;
    this.#settle('failed' in answer ? failed('broken', answer.failed) : answer);
  }

  #lost(worker: Worker, why: 'late' | 'broken', says: string): void {
    if (worker !== this.#worker) return;
    this.#worker = undefined;
    void worker.terminate();
    this.#options.onThreadEnd?.(says);
    this.#settle(failed(why, says));
  }

  #settle(answer: ThreadAnswer | NoAnswer): void {
    clearTimeout(this.#timer);
    const job = this.#job;
    this.#job = undefined;
    job?.settle(answer);
  }

  async close(): Promise<void> {
    const worker = this.#worker;
    this.#worker = undefined;
    this.#settle(failed('closed', 'the service is stopping'));
    await worker?.terminate();
  }
}

/** Threads that plan days, a bounded queue before them, and a hard end for a thread that does not answer. */
export class SolvePool implements DaySolver {
  readonly #places: readonly Place[];
  readonly #waitingMax: number;
  readonly #waiting: Job[] = [];
  #asked = 0;
  #closed = false;

  constructor(options: SolvePoolOptions) {
    this.#places = Array.from({ length: options.threads }, () => new Place(options));
    this.#waitingMax = options.waitingMax;
  }

  /** Starts a thread ahead of the first question: loading the solver takes about a second. */
  warmUp(): void {
    this.#places[0]?.start();
  }

  async solve(day: TravellingDay, limits: SolveLimits): Promise<SolveAnswer> {
    const answer = await this.#ask({ day, limits });
    return 'plan' in answer ? { ok: true, plan: answer.plan } : noAnswer(answer);
  }

  async advise<Kind extends AdviceKind>(
    day: TravellingDay,
    limits: SolveLimits,
    kind: Kind,
    asks: Advice[Kind]['asks'],
  ): Promise<AdviceAnswer<Kind>> {
    const advice = { kind, asks } as NonNullable<ThreadQuestion['advice']>;
    const answer = await this.#ask({ day, limits, advice });
    return 'advice' in answer ? { ok: true, advice: answer.advice } : noAnswer(answer);
  }

  #ask(asked: Omit<ThreadQuestion, 'number'>): Promise<ThreadAnswer | NoAnswer> {
    if (this.#closed) return Promise.resolve(failed('closed', 'the service is stopping'));
    this.#asked += 1;
    const question = { number: this.#asked, ...asked };
    return new Promise((resolve) => {
      const job: Job = {
        question,
        settle: (answer) => {
          resolve(answer);
          this.#next();
        },
      };
      if (this.#waiting.length >= this.#waitingMax && !this.#places.some((place) => place.free)) {
        resolve(failed('full', `${this.#waiting.length} days wait to be planned already`));
        return;
      }
      this.#waiting.push(job);
      this.#next();
    });
  }

  #next(): void {
    if (this.#closed) return;
    const place = this.#places.find((candidate) => candidate.free);
    const job = place && this.#waiting.shift();
    if (place && job) place.run(job);
  }

  async close(): Promise<void> {
    this.#closed = true;
    for (const job of this.#waiting.splice(0)) job.settle(failed('closed', 'the service is stopping'));
    await Promise.all(this.#places.map((place) => place.close()));
  }
}

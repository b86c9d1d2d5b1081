import type { CuttingPlan, Lock } from '@flitchbook/plan';
import { computed, signal } from '@preact/signals';
import type { Rights } from '../session/rights.ts';
import type { Board } from '../wire/board.ts';
import type { Answer, Client, Problem } from '../wire/client.ts';
import { type BoardView, isStale, speciesSides, viewBoard, withSpecies } from './board-model.ts';
import { type Changes, changesBetween } from './changes-model.ts';
import { lockKey } from './choices-model.ts';
import { addEdits, applyEdits, type Edit } from './edits-model.ts';

/** How far the day itself has got. */
export type Reading =
  | { readonly at: 'loading' | 'no-network' }
  | { readonly at: 'refused'; readonly problem: Problem }
  | { readonly at: 'ready'; readonly board: Board };

/** Choices tried on the day, not kept yet. `plan` is the day planned with them, null until it has come. */
export interface Trial {
  readonly edits: readonly Edit[];
  readonly locks: readonly Lock[];
  readonly plan: CuttingPlan | null;
}

/** Something to tell the butcher, once. */
export type Notice =
  | { readonly says: 'kept' | 'planned'; readonly changes: Changes }
  | { readonly says: 'overtaken' | 'no-network' }
  | { readonly says: 'refused'; readonly problem: Problem };

export type Busy = 'trying' | 'keeping' | 'planning' | null;

const sameLocks = (one: readonly Lock[], other: readonly Lock[]): boolean => {
  const written = (locks: readonly Lock[]): string =>
    locks
      .map((lock) => `${lockKey(lock)}=${lock.lock === 'operation' ? lock.operation : lock.manner}`)
      .sort()
      .join();
  return written(one) === written(other);
};

type Failed = Exclude<Answer<unknown>, { readonly ok: true }>;

interface BoardDoor {
  readonly client: Client;
  readonly may: Rights;
  readonly dayId: string;
  /** a fresh key for a request that must not be done twice */
  readonly newKey: () => string;
}

/** Everything one day board remembers and can do. One signal each; the views read what they need. */
export class BoardStore {
  readonly dayId: string;
  readonly may: Rights;
  readonly reading = signal<Reading>({ at: 'loading' });
  readonly trial = signal<Trial | null>(null);
  readonly busy = signal<Busy>(null);
  readonly notice = signal<Notice | null>(null);
  readonly chosenPieceId = signal<string | null>(null);
  readonly chosenOrderId = signal<string | null>(null);
  readonly shortOnly = signal(false);
  readonly #client: Client;
  readonly #newKey: () => string;
  #trying: AbortController | null = null;

  readonly board = computed(() => (this.reading.value.at === 'ready' ? this.reading.value.board : null));
  readonly view = computed<BoardView | null>(() => {
    const board = this.board.value;
    if (!board) return null;
    const trial = this.trial.value;
    return viewBoard(board, trial?.plan ?? board.plan, trial?.locks ?? board.cuttingDay.locks);
  });
  readonly trialChanges = computed<Changes | null>(() => {
    const [board, plan] = [this.board.value, this.trial.value?.plan];
    return board && plan ? changesBetween(withSpecies(board), board.plan, plan) : null;
  });
  /** The order whose pieces are lit: the one chosen, or the one that has the chosen piece. */
  readonly litOrderId = computed(() => {
    const piece = this.view.value?.pieces.get(this.chosenPieceId.value ?? '');
    return piece ? (piece.holder?.orderId ?? null) : this.chosenOrderId.value;
  });

  constructor({ client, may, dayId, newKey }: BoardDoor) {
    this.may = may;
    this.#client = client;
    this.dayId = dayId;
    this.#newKey = newKey;
  }

  async load(): Promise<void> {
    if (this.reading.value.at !== 'ready') this.reading.value = { at: 'loading' };
    const answer = await this.#client.readBoard(this.dayId);
    if (answer.ok) this.#read(answer.value);
    else if (answer.why === 'refused') this.reading.value = { at: 'refused', problem: answer.problem };
    else if (this.reading.value.at === 'ready') this.notice.value = { says: 'no-network' };
    else this.reading.value = { at: 'no-network' };
  }

  /** Plans the day with some choices changed, and shows it without keeping it. The latest try wins. */
  async tryOut(more: readonly Edit[]): Promise<void> {
    const board = this.board.value;
    if (!board) return;
    const edits = addEdits(this.trial.value?.edits ?? [], more);
    const locks = applyEdits(speciesSides(board), board.cuttingDay.locks, edits);
    if (sameLocks(locks, board.cuttingDay.locks)) return this.putBack();
    const mine = this.#startTrying();
    this.trial.value = { edits, locks, plan: this.trial.value?.plan ?? null };
    const answer = await this.#client.tryLocks(this.dayId, locks, mine.signal);
    if (this.#trying !== mine) return;
    this.busy.value = null;
    if (answer.ok) {
      this.trial.value = { edits, locks, plan: answer.value.plan };
    } else {
      this.trial.value = null;
      this.#fail(answer);
    }
  }

  /** Forgets what was tried out. */
  putBack(): void {
    this.#stopTrying();
    this.trial.value = null;
    this.busy.value = null;
  }

  /** Stores choices and the plan that follows. When someone was faster, shows their day with the same choices tried on it. */
  async keep(edits: readonly Edit[] = this.trial.value?.edits ?? []): Promise<void> {
    const board = this.board.value;
    if (!board) return;
    this.#stopTrying();
    this.busy.value = 'keeping';
    this.notice.value = null;
    const locks = applyEdits(speciesSides(board), board.cuttingDay.locks, edits);
    const answer = await this.#client.keepLocks(this.dayId, locks, board.day.version);
    this.busy.value = null;
    if (answer.ok) return this.#take(answer.value, 'kept');
    if (answer.why !== 'refused' || answer.problem.status !== 412) return this.#fail(answer);
    this.trial.value = null;
    await this.load();
    await this.tryOut(edits);
    this.notice.value = { says: 'overtaken' };
  }

  /** Turns a lock. Joins what is being tried out, else it is kept at once. */
  turnLock(edit: Edit): Promise<void> {
    return this.trial.value ? this.tryOut([edit]) : this.keep([edit]);
  }

  async planAgain(): Promise<void> {
    this.putBack();
    this.busy.value = 'planning';
    this.notice.value = null;
    const answer = await this.#client.planDay(this.dayId, this.#newKey());
    this.busy.value = null;
    if (answer.ok) this.#take(answer.value, 'planned');
    else this.#fail(answer);
  }

  choosePiece(pieceId: string | null): void {
    this.chosenPieceId.value = pieceId;
    if (pieceId !== null) this.chosenOrderId.value = null;
  }

  chooseOrder(orderId: string | null): void {
    this.chosenPieceId.value = null;
    this.chosenOrderId.value = orderId;
  }

  #startTrying(): AbortController {
    this.#stopTrying();
    const mine = new AbortController();
    this.#trying = mine;
    this.busy.value = 'trying';
    this.notice.value = null;
    return mine;
  }

  #stopTrying(): void {
    this.#trying?.abort();
    this.#trying = null;
  }

  #fail(answer: Failed): void {
    this.notice.value =
      answer.why === 'refused' ? { says: 'refused', problem: answer.problem } : { says: 'no-network' };
  }

  /** A board as it was read. When the day has moved on since, and its plan with it, says what came of that. */
  #read(after: Board): void {
    const before = this.board.value;
    const movedOn = before?.plan && (isStale(before) || before.day.version !== after.day.version);
    if (movedOn && !isStale(after) && !this.trial.value) this.#take(after, 'planned');
    else this.reading.value = { at: 'ready', board: after };
  }

  #take(after: Board, says: 'kept' | 'planned'): void {
    const before = this.board.value?.plan ?? null;
    this.trial.value = null;
    this.reading.value = { at: 'ready', board: after };
    if (after.plan)
      this.notice.value = { says, changes: changesBetween(withSpecies(after), before, after.plan) };
  }
}

import type { Lock } from '@flitchbook/plan';
import { beforeEach, describe, expect, it } from 'vitest';
import { allRights } from '../session/rights.ts';
import { board, day, plan } from '../testing/two-hogs.ts';
import type { Board } from '../wire/board.ts';
import { createClient } from '../wire/client.ts';
import { BoardStore } from './board-store.ts';
import type { Edit } from './edits-model.ts';

// The other end of the wire, as far as the board needs it: one day with a version, and who else writes to it.
class Wire {
  stored: Board = board;
  requests: {
    readonly method: string;
    readonly path: string;
    readonly body: unknown;
    readonly ifMatch: string | null;
  }[] = [];
  isDown = false;
  /** answers held back until released, in turn */
  held: (() => void)[] | null = null;

  readonly fetch: typeof fetch = async (input, init) => {
    const headers = new Headers(init?.headers);
    const body: unknown = typeof init?.body === 'string' ? JSON.parse(init.body) : undefined;
    const request = {
      method: init?.method ?? 'GET',
      path: String(input),
      body,
      ifMatch: headers.get('If-Match'),
    };
    this.requests.push(request);
    if (this.held) {
      const { held } = this;
      await new Promise<void>((resolve, reject) => {
        held.push(resolve);
        init?.signal?.addEventListener('abort', () => reject(new DOMException('given up', 'AbortError')));
      });
    }
    if (this.isDown) throw new TypeError('no network');
    return this.#answer(request);
  };

  #answer({ path, body, ifMatch }: Wire['requests'][number]): Response {
    const locks = (body as { locks?: readonly Lock[] } | undefined)?.locks ?? [];
    if (path.endsWith('/what-if')) return Response.json({ plan: this.#planned(locks) });
    if (path.endsWith('/locks') && ifMatch !== `"${this.stored.day.version}"`) {
      return Response.json(
        { type: '/problems/edit.version-stale', title: 'Changed', status: 412, detail: 'Changed since.' },
        { status: 412 },
      );
    }
    if (path.endsWith('/locks')) {
      const { day: head, cuttingDay } = this.stored;
      const version = head.version + 1;
      this.stored = {
        ...this.stored,
        day: { ...head, version, plannedVersion: version },
        cuttingDay: { ...cuttingDay, locks },
        plan: this.#planned(locks),
      };
    }
    return Response.json(this.stored);
  }

  /** One chop of Marsh is lost for each lock more than the day had. */
  #planned(locks: readonly Lock[]) {
    const fewer = locks.length - day.locks.length;
    return {
      ...plan,
      lines: plan.lines.map((fill) =>
        fill.lineId === 'marsh-1' ? { ...fill, filled: fill.filled - fewer } : fill,
      ),
    };
  }
}

const settle = (part: string, operation: string): Edit => ({
  edit: 'settle',
  lock: { lock: 'operation', sideId: 'b-left', part, operation },
});
const halves = settle('ham', 'ham-halves');

let wire: Wire;
let store: BoardStore;
beforeEach(async () => {
  wire = new Wire();
  store = new BoardStore({
    client: createClient(wire.fetch),
    dayId: 'day-1',
    newKey: () => 'key',
    may: allRights,
  });
  await store.load();
});

describe('the board', () => {
  it('tries a choice out without keeping it, and puts it back', async () => {
    await store.tryOut([halves]);
    expect(store.trialChanges.value?.lost).toEqual([
      { orderId: 'marsh', lineId: 'marsh-1', shareId: null, before: 6, after: 5 },
    ]);
    expect(store.view.value?.plan).not.toBe(plan);
    expect(wire.stored).toBe(board);
    store.putBack();
    expect(store.trial.value).toBeNull();
    expect(store.view.value?.plan).toEqual(plan);
  });

  it('keeps what was tried out, against the version it was tried on', async () => {
    await store.tryOut([halves]);
    await store.keep();
    expect(wire.requests.at(-1)).toMatchObject({
      method: 'PUT',
      ifMatch: '"4"',
      body: { locks: [halves.lock, ...day.locks] },
    });
    expect(store.trial.value).toBeNull();
    expect(store.board.value?.day.version).toBe(5);
    expect(store.notice.value).toMatchObject({ says: 'kept', changes: { lost: [{ before: 6, after: 5 }] } });
  });

  it('shows the latest of two tries, whichever answer comes first', async () => {
    wire.held = [];
    const first = store.tryOut([halves]);
    const second = store.tryOut([settle('butt', 'butt-coppa')]);
    for (const release of wire.held.splice(0)) release();
    await Promise.all([first, second]);
    expect(store.trial.value?.edits).toHaveLength(2);
    expect(store.trialChanges.value?.lost[0]).toMatchObject({ before: 6, after: 4 });
    expect(store.busy.value).toBeNull();
  });

  it('ends a try that comes back to the choices of the day', async () => {
    await store.tryOut([halves]);
    await store.tryOut([{ edit: 'free', lock: halves.lock }]);
    expect(store.trial.value).toBeNull();
  });

  it('when someone was faster, shows their day and tries the same choice on it', async () => {
    await store.tryOut([halves]);
    wire.stored = { ...board, day: { ...board.day, version: 9, plannedVersion: 9 } };
    await store.keep();
    expect(store.notice.value).toEqual({ says: 'overtaken' });
    expect(store.board.value?.day.version).toBe(9);
    expect(store.trial.value?.edits).toEqual([halves]);
    expect(store.trial.value?.plan).not.toBeNull();
    await store.keep();
    expect(store.board.value?.day.version).toBe(10);
    expect(store.board.value?.cuttingDay.locks).toContainEqual(halves.lock);
  });

  it('keeps a lock at once when nothing is being tried out', async () => {
    await store.turnLock({ edit: 'free', lock: day.locks[0]! });
    expect(wire.stored.cuttingDay.locks).toEqual([]);
    expect(store.notice.value?.says).toBe('kept');
  });

  it('tells what came of it when the plan has caught up with the orders', async () => {
    wire.stored = { ...board, day: { ...board.day, version: 5 } };
    await store.load();
    expect(store.view.value?.isStale).toBe(true);
    expect(store.notice.value).toBeNull();
    const fewer = plan.lines.map((fill) => (fill.lineId === 'marsh-1' ? { ...fill, filled: 5 } : fill));
    wire.stored = {
      ...board,
      day: { ...board.day, version: 5, plannedVersion: 5 },
      plan: { ...plan, lines: fewer },
    };
    await store.load();
    expect(store.notice.value).toMatchObject({
      says: 'planned',
      changes: { lost: [{ lineId: 'marsh-1', before: 6, after: 5 }] },
    });
  });

  it('says that there is no network and loses nothing', async () => {
    await store.tryOut([halves]);
    wire.isDown = true;
    await store.keep();
    expect(store.notice.value).toEqual({ says: 'no-network' });
    expect(store.trial.value?.edits).toEqual([halves]);
    await store.load();
    expect(store.reading.value.at).toBe('ready');
  });

  it('lights the order of the piece that is looked at, or the order that is chosen', () => {
    const chop = [...store.view.value!.pieces.values()].find(({ holder }) => holder?.lineId === 'marsh-1')!;
    store.choosePiece(chop.pieceId);
    expect(store.litOrderId.value).toBe('marsh');
    store.chooseOrder('vance');
    expect(store.litOrderId.value).toBe('vance');
    expect(store.chosenPieceId.value).toBeNull();
    store.chooseOrder(null);
    expect(store.litOrderId.value).toBeNull();
  });
});

it('a day that cannot be reached or does not exist says so', async () => {
  wire.isDown = true;
  const fresh = new BoardStore({
    client: createClient(wire.fetch),
    dayId: 'day-1',
    newKey: () => 'key',
    may: allRights,
  });
  await fresh.load();
  expect(fresh.reading.value.at).toBe('no-network');
  const refused = new BoardStore({
    client: createClient(async () =>
      Response.json(
        { type: '/problems/day.unknown', title: 'No such day', status: 404, detail: 'There is none.' },
        { status: 404 },
      ),
    ),
    dayId: 'x',
    newKey: () => 'key',
    may: allRights,
  });
  await refused.load();
  expect(refused.reading.value).toMatchObject({ at: 'refused', problem: { title: 'No such day' } });
});

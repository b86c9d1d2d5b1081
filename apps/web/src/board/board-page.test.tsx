// @vitest-environment happy-dom
import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { allRights } from '../session/rights.ts';
import { board, plan } from '../testing/two-hogs.ts';
import type { Board } from '../wire/board.ts';
import { createClient } from '../wire/client.ts';
import { words } from '../words/english.ts';
import { BoardPage } from './board-page.tsx';
import { BoardStore } from './board-store.ts';

let place: HTMLElement;
let store: BoardStore;

async function show(answer: () => Promise<Response>, may = allRights): Promise<void> {
  store = new BoardStore({
    client: createClient(answer),
    dayId: 'day-1',
    newKey: () => 'key',
    may,
  });
  await act(async () => {
    render(<BoardPage store={store} />, place);
  });
  await act(async () => {
    await new Promise((resolve) => setTimeout(resolve, 20));
  });
}
const showDay = (shown: Board) => show(async () => Response.json(shown));

beforeEach(() => {
  place = document.body.appendChild(document.createElement('div'));
});
afterEach(() => {
  render(null, place);
  place.remove();
});

const all = (selector: string): Element[] => [...place.querySelectorAll(selector)];
const text = (element: Element | null | undefined): string =>
  (element?.textContent ?? '').replaceAll('\u00a0', ' ');
const bars = () => all('.bar svg');
const block = (pieceId: string) => place.querySelector<HTMLElement>(`g[data-piece="${pieceId}"]`)!;
const press = (element: Element, key: string) =>
  act(() => {
    element.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  });
const click = (element: Element | null | undefined) => act(() => (element as HTMLElement).click());
const focus = (element: HTMLElement) => act(() => element.focus());

describe('the day board', () => {
  beforeEach(() => showDay(board));

  it('shows each bar of each side, and its pieces by name', () => {
    const drawn = plan.sides.flatMap((side) => side.bars);
    expect(bars()).toHaveLength(drawn.length);
    const pieces = drawn.flatMap((bar) => bar.runs.flatMap((run) => run.pieces));
    for (const { pieceId } of pieces)
      expect(block(pieceId).getAttribute('aria-label')).toMatch(/order [A-G]$/);
  });

  it('is one stop of the tab key a bar', () => {
    for (const bar of bars()) expect(bar.querySelectorAll('[tabindex="0"]').length).toBeLessThanOrEqual(1);
    const shown = bars().filter((bar) => bar.querySelector('[data-piece]'));
    expect(shown).toHaveLength(6);
    for (const bar of shown) expect(bar.querySelectorAll('[tabindex="0"]')).toHaveLength(1);
  });

  it('goes along a bar by arrow keys and tells of each piece', async () => {
    const chops = plan.sides
      .find(({ sideId }) => sideId === 'b-left')!
      .bars.find(({ bar }) => bar === 'loin-out')!
      .runs.find(({ stock }) => stock === 'rib-bone-in')!.pieces;
    await focus(block(chops[0]!.pieceId));
    expect(text(place.querySelector('.tray'))).toContain('Bone-in rib chop');
    expect(text(place.querySelector('.tray'))).toContain('for Marsh, order A');
    expect(text(place.querySelector('.tray'))).toMatch(/rib 7\b/);
    await press(document.activeElement!, 'ArrowRight');
    expect(document.activeElement).toBe(block(chops[1]!.pieceId));
    expect(block(chops[1]!.pieceId).getAttribute('tabindex')).toBe('0');
    expect(block(chops[0]!.pieceId).getAttribute('tabindex')).toBe('-1');
    await press(document.activeElement!, 'Escape');
    expect(place.querySelector('.tray')).toBeNull();
  });

  it('lights all pieces of an order and dims the rest', async () => {
    const marsh = all('.order').find(
      (card) => text(card).includes('Marsh') && text(card).includes('No. 201'),
    );
    await click(marsh?.querySelector('.order-head'));
    expect(all('.block.lit')).toHaveLength(6);
    expect(all('.chip.lit')).toHaveLength(1);
    expect(all('.block.dim').length).toBeGreaterThan(10);
  });

  it('filters to what is short, with the reason and who else wants the meat', async () => {
    await click(all('.toggle')[0]);
    expect(all('.order')).toHaveLength(2);
    expect(text(all('.order')[0])).toContain('The loins that could be boned are sawn into chops.');
    expect(all('.order')[0]?.querySelectorAll('.order-link')).toHaveLength(3);
    await click(all('.order-link')[0]);
    expect(store.litOrderId.value).toBe('marsh');
  });

  it('stamps the side that is owned and offers no choice on it', () => {
    const [owned, other] = all('.side');
    expect(text(owned?.querySelector('.stamp'))).toContain('Corder');
    expect(owned?.querySelectorAll('.choice')).toHaveLength(0);
    expect(other?.querySelectorAll('.choice').length).toBeGreaterThan(4);
  });

  it('still shows a lock on a side that is owned, and opens it', async () => {
    const lock = { lock: 'operation', sideId: 'a-left', part: 'ham', operation: 'ham-whole' } as const;
    await showDay({ ...board, cuttingDay: { ...board.cuttingDay, locks: [lock] } });
    const unlock = all('.side')[0]?.querySelector('.lock');
    expect(unlock?.getAttribute('aria-label')).toBe('Unlock: Fresh ham');
  });

  it('opens a choice on all the ways the tree has', async () => {
    const button = all('.choice').find((each) => text(each).startsWith('Middle, tenderloin out'));
    await click(button);
    expect(all('.option-name').map(text)).toEqual(
      expect.arrayContaining(['Porchetta of the front half', 'Ribs long and bare on the loin']),
    );
    expect(button?.getAttribute('aria-expanded')).toBe('true');
  });
});

describe('what a person may not do', () => {
  it('is not offered: a counter hand takes orders and reads how sides are split', async () => {
    await show(async () => Response.json(board), { takeOrders: true, settle: false });
    expect(all('button.choice')).toHaveLength(0);
    expect(all('.choice.told').length).toBeGreaterThan(10);
    expect(all('.actions').map(text).join()).not.toContain(words.day.planAgain);
    expect(all('.actions').map(text).join()).toContain(words.day.addOrder);
  });

  it('is not offered: a butcher settles and takes no orders', async () => {
    await show(async () => Response.json(board), { takeOrders: false, settle: true });
    expect(all('button.choice').length).toBeGreaterThan(10);
    expect(all('.actions').map(text).join()).not.toContain(words.day.addOrder);
  });
});

describe('a day that has nothing to show says why', () => {
  it('no animals', async () => {
    await showDay({
      ...board,
      plan: null,
      cuttingDay: { ...board.cuttingDay, animals: [], locks: [], shares: [] },
    });
    expect(text(place.querySelector('.state'))).toContain(words.failures.emptyDay);
  });

  it('no plan yet', async () => {
    await showDay({ ...board, plan: null });
    expect(text(place.querySelector('.state'))).toContain(words.failures.noPlan);
    expect(bars()).toHaveLength(0);
    expect(all('.order')).toHaveLength(7);
  });

  it('a plan that is older than the orders', async () => {
    await showDay({ ...board, day: { ...board.day, version: 5 } });
    expect(text(place.querySelector('.stale'))).toBe(words.day.stale);
  });

  it('no network', async () => {
    await show(async () => {
      throw new TypeError('no network');
    });
    expect(text(place.querySelector('.state'))).toContain(words.failures.noNetwork);
  });

  it('no such day', async () => {
    await show(async () =>
      Response.json(
        { type: 't', title: 'No such day', status: 404, detail: 'There is none.' },
        { status: 404 },
      ),
    );
    expect(text(place.querySelector('.state'))).toBe('No such dayThere is none.');
  });
});

import { expect, it } from 'vitest';
import type { Answer } from '../wire/client.ts';
import type { NewHold, Order } from '../wire/customers-client.ts';
import { createOutbox } from './outbox.ts';

const chops: NewHold = {
  owner: 'Odile',
  lines: [{ cut: 'rib-chop', portion: { by: 'thickness', um: 31_750 }, ask: { pieces: 4 } }],
  shares: [],
};

/** A service that answers what it is told to, and a device that keeps one text. */
function device() {
  const sent: string[] = [];
  const answers: Answer<Order>[] = [];
  let text: string | null = null;
  let keys = 0;
  const keeping = {
    read: () => text,
    write: (next: string | null) => {
      text = next;
    },
  };
  const client = {
    hold: async (_day: string, _hold: NewHold, key: string): Promise<Answer<Order>> => {
      // The key is on the device before anything leaves it.
      expect(text).toContain(key);
      sent.push(key);
      return answers.shift() ?? { ok: true, value: {} as Order };
    },
  };
  const open = () => createOutbox(client, keeping, () => `key-${++keys}`);
  return { sent, answers, keeping, open };
}

const lost: Answer<Order> = { ok: false, why: 'no-network' };
const refused = (type: string, status: number): Answer<Order> => ({
  ok: false,
  why: 'refused',
  problem: { type: `/problems/${type}`, title: '', status, detail: '' },
});

it('a double tap is one request', async () => {
  const { open, sent } = device();
  const outbox = open();
  await Promise.all([outbox.send('p', 'd', chops), outbox.send('p', 'd', chops)]);
  expect(sent).toEqual(['key-1']);
  expect(outbox.state.value.at).toBe('held');
});

it('goes out again under its own key after a lost answer, even from a window opened anew', async () => {
  const { open, sent, answers, keeping } = device();
  answers.push(lost, refused('server.busy', 503));
  await open().send('p', 'd', chops);
  const again = open();
  await again.sendKept('p');
  expect(again.state.value.at).toBe('unsent');
  await again.sendKept('p');
  expect(sent).toEqual(['key-1', 'key-1', 'key-1']);
  expect(keeping.read()).toBeNull();
  await again.sendKept('p');
  expect(sent).toHaveLength(3);
});

it('a changed order is another request, a refused one is over, and nobody sends what another has left', async () => {
  const { open, sent, answers, keeping } = device();
  answers.push(lost, refused('reservation.not-possible', 409), lost);
  const outbox = open();
  await outbox.send('p', 'd', chops);
  await outbox.send('p', 'd', { ...chops, note: 'thick' });
  expect(outbox.state.value.at).toBe('refused');
  expect(keeping.read()).toBeNull();
  await outbox.send('p', 'd', chops);
  await open().sendKept('somebody else');
  expect(sent).toEqual(['key-1', 'key-2', 'key-3']);
  expect(keeping.read()).toBeNull();
});

it.each(['', '{', '[]', '{"key":1}', '{"key":"k","personId":"p","dayId":"d"}'])(
  'sends nothing that was kept as %j',
  async (text) => {
    const { open, sent, keeping } = device();
    keeping.write(text);
    await open().sendKept('p');
    expect(sent).toEqual([]);
  },
);

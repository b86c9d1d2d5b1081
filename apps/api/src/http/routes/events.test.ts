import { setTimeout as sleep } from 'node:timers/promises';
import { appendLedger, forShop, inTransaction, listLedger } from '@flitchbook/db';
import { describeOnBoth } from '@flitchbook/db/testing';
import { beforeAll, expect, it } from 'vitest';
import { openTestShop, type TestShop } from '../../testing/test-shop.ts';

interface Heard {
  readonly ids: number[];
  readonly kinds: string[];
  text: string;
  /** resolves when the stream has ended */
  readonly over: Promise<void>;
}

describeOnBoth('the stream of events', (db) => {
  let shop: TestShop;
  beforeAll(async () => {
    shop = await openTestShop(db());
  });

  async function listen(
    headers: Record<string, string> = {},
    as: 'counter' | { cookie: string } = 'counter',
  ) {
    const answer = await shop.ask({ method: 'GET', path: '/api/events', as, headers });
    expect(answer.headers.get('content-type')).toContain('text/event-stream');
    const read = async (heard: Heard): Promise<void> => {
      const decoder = new TextDecoder();
      for await (const bytes of answer.body as unknown as AsyncIterable<Uint8Array>) {
        heard.text += decoder.decode(bytes, { stream: true });
      }
      for (const block of heard.text.split('\n\n')) {
        const data = /^data: (\{.*\})$/m.exec(block)?.[1];
        if (data === undefined) continue;
        heard.ids.push(Number(/^id: (\d+)$/m.exec(block)?.[1]));
        heard.kinds.push(String((JSON.parse(data) as { kind: string }).kind));
      }
    };
    const heard = { ids: [], kinds: [], text: '', over: Promise.resolve() } as Heard;
    return Object.assign(heard, { over: read(heard) });
  }

  const happen = (kind: string, shopId = shop.own.shopId) =>
    inTransaction(forShop(shop.services.db, shopId), (tx) =>
      appendLedger(tx, {
        shopId,
        kind,
        dayId: null,
        orderId: null,
        personId: null,
        facts: { secret: 'note' },
      }),
    );
  const lastSeq = async (): Promise<number> => {
    const { shopId } = shop.own;
    const entries = await inTransaction(forShop(shop.services.db, shopId), (tx) =>
      listLedger(tx, shopId, { after: 0, limit: 100_000 }),
    );
    return entries.at(-1)?.seq ?? 0;
  };

  it('tells two who listen what happens from now on, in order, and of no other shop', async () => {
    shop.transport.streams = { maxSeconds: 3, stopping: () => false };
    const [one, two] = [await listen(), await listen()];
    const seq = await happen('test.first');
    await happen('test.elsewhere', shop.other.shopId);
    await sleep(1300);
    await happen('test.second');
    await Promise.all([one.over, two.over]);
    for (const heard of [one, two]) {
      expect(heard.kinds).toEqual(['test.first', 'test.second']);
      expect(heard.ids).toEqual([seq, seq + 1]);
      expect(heard.text).not.toContain('secret');
    }
  });

  it('goes on after the last one heard, with nothing missed and nothing twice', async () => {
    shop.transport.streams = { maxSeconds: 0, stopping: () => false };
    const before = await lastSeq();
    for (let nth = 0; nth < 5; nth++) await happen('test.missed');
    const heard = await listen({ 'Last-Event-ID': String(before + 2) });
    await heard.over;
    expect(heard.ids).toEqual([before + 3, before + 4, before + 5]);
    const all = await listen({ 'Last-Event-ID': '0' });
    await all.over;
    expect(all.ids).toEqual(Array.from({ length: before + 5 }, (_, nth) => nth + 1));
    const strange = await listen({ 'Last-Event-ID': '999999999999' });
    await strange.over;
    expect(strange.ids).toEqual([]);
  });

  // OWASP ASVS 5.0.0, 7.4.1: signing out counts for what is open, too.
  it('ends soon after its session, and at once when the service stops', async () => {
    shop.transport.streams = { maxSeconds: 60, stopping: () => false };
    const cookie = await shop.signIn('counter');
    const heard = await listen({}, { cookie });
    await shop.ask({ method: 'DELETE', path: '/api/session', as: { cookie } });
    const began = performance.now();
    await heard.over;
    expect(performance.now() - began).toBeLessThan(8000);
    let stops = false;
    shop.transport.streams = { maxSeconds: 60, stopping: () => stops };
    const other = await listen();
    stops = true;
    await other.over;
  });
});

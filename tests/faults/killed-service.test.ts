import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createDatabase, dropDatabase, freshName } from '@flitchbook/test-harness';
import { describeOnPostgres } from '@flitchbook/test-harness/vitest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CounterHand } from './counter-hand.ts';
import { ServiceProcess } from './service-process.ts';

const hands = 4;

/** The same service on the same data, killed and started again; then asked to stop. */
function keepsItsWord(
  environment: () => Record<string, string>,
  first: (running: () => { readonly pid: number | undefined; readonly address: string }) => void = () =>
    undefined,
): void {
  let service: ServiceProcess;
  let hand: CounterHand;
  let dayId = '';
  beforeAll(async () => {
    service = new ServiceProcess(environment());
    hand = new CounterHand(await service.ready());
    await hand.signIn();
    dayId = await hand.dayId();
  });
  afterAll(() => service.end('SIGKILL'));
  first(() => ({ pid: service.child.pid, address: hand.address }));

  it('has every acknowledged order, and none twice, after it was killed while orders were taken', async () => {
    const before = (await hand.orders(dayId)).length;
    const working = Promise.all(Array.from({ length: hands }, (_, index) => hand.takeOrders(dayId, index)));
    await expect.poll(() => hand.acknowledged.length, { timeout: 30_000, interval: 5 }).toBeGreaterThan(15);
    expect(await service.end('SIGKILL')).toMatchObject({ signal: 'SIGKILL' });
    await working;

    service = new ServiceProcess(environment());
    hand.address = await service.ready();
    const kept = await hand.orders(dayId);
    const ids = kept.map(({ orderId }) => orderId);
    expect(hand.acknowledged.filter(({ orderId }) => !ids.includes(orderId))).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
    // Nothing but what was acknowledged, and perhaps what was on its way.
    const sent = [...hand.acknowledged, ...hand.unknown].map(({ orderId }) => orderId);
    expect(ids.filter((id) => !sent.includes(id))).toHaveLength(before);
    const mine = kept.filter(({ orderId }) => sent.includes(orderId));
    expect(mine.filter(({ state, lines }) => state !== 'standing' || lines.length !== 1)).toEqual([]);
  });

  it('gives whoever sends again the same answer, or takes the order now: once in either case', async () => {
    expect(hand.unknown.length).toBeGreaterThan(0);
    for (const order of [...hand.unknown, ...hand.acknowledged.slice(0, 3)]) {
      const answer = await hand.send(dayId, order);
      expect(answer.status).toBe(201);
      expect(await answer.json()).toMatchObject({ orderId: order.orderId, owner: order.owner });
    }
    const owners = (await hand.orders(dayId)).map(({ owner }) => owner);
    for (const { owner } of [...hand.unknown, ...hand.acknowledged]) {
      expect(owners.filter((name) => name === owner)).toHaveLength(1);
    }
  });

  it('finishes what is running when it is asked to stop, takes nothing new, and ends with 0', async () => {
    const sendRest = await hand.beginOrder(dayId);
    // Its first half has to be there before the signal.
    await fetch(`${hand.address}/health`);
    const ended = service.end('SIGTERM');
    await expect
      .poll(
        () =>
          fetch(`${hand.address}/health`).then(
            () => 'taken',
            () => 'refused',
          ),
        { timeout: 5000, interval: 20 },
      )
      .toBe('refused');
    expect(await sendRest()).toBe(201);
    expect(await ended).toMatchObject({ code: 0, signal: null });
  });
}

const home = mkdtempSync(join(tmpdir(), 'flitchbook-faults-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** A start that ends with one sentence for people and no stack. */
async function refuses(environment: Record<string, string>, says: RegExp): Promise<void> {
  const { code, complained } = await new ServiceProcess(environment).ended;
  expect(complained).toMatch(says);
  expect(complained).not.toMatch(/^\s+at /m);
  expect(code).toBe(2);
}

describe('the service on its own folder', () => {
  const folder = join(home, 'shop');
  keepsItsWord(
    () => ({ DATA_DIR: folder }),
    (running) => {
      it('keeps another one away from its port, which makes nothing, and from its folder', async () => {
        const { pid, address } = running();
        const { port } = new URL(address);
        const elsewhere = join(home, 'elsewhere');
        await refuses(
          { DATA_DIR: elsewhere, PORT: port },
          new RegExp(`Port ${port} on 127\\.0\\.0\\.1 is taken`),
        );
        expect(existsSync(elsewhere)).toBe(false);
        await refuses({ DATA_DIR: folder }, new RegExp(`in use by process ${pid} `));
        expect((await fetch(`${address}/ready`)).status).toBe(200);
      });
    },
  );

  it('leaves no lock behind', () => {
    expect(readdirSync(folder).sort()).toEqual(['database', 'demo-password']);
  });

  it('names a folder that is damaged, and one that is none', async () => {
    writeFileSync(join(folder, 'database', 'global', 'pg_control'), 'x'.repeat(8192));
    await refuses({ DATA_DIR: folder }, /embedded database in \S+shop\/database can't be opened: .*damaged/);
    writeFileSync(join(home, 'file'), '');
    await refuses(
      { DATA_DIR: join(home, 'file') },
      /embedded database in \S+file\/database can't be opened: the system says E/,
    );
  });
});

describeOnPostgres('the service on a Postgres server', (server) => {
  const name = freshName('faults');
  let url = '';
  beforeAll(async () => {
    url = await createDatabase(server.url, name);
  });
  afterAll(() => dropDatabase(server.url, name));
  keepsItsWord(() => ({ DATABASE_URL: url, DATA_DIR: join(home, 'beside-postgres') }));
});

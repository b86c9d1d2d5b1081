import { readFileSync } from 'node:fs';
import { parseDayFile } from '@flitchbook/contracts';
import { describeOnBoth, tableStates } from '@flitchbook/db/testing';
import { expect, it } from 'vitest';
import { testServices } from '../../testing/test-shop.ts';
import { type DemoDay, seedDemo } from './seed.ts';
import { demoSignIns } from './sign-ins.ts';

const parsed = parseDayFile(
  readFileSync(new URL('../../../../../examples/two-hogs.json', import.meta.url), 'utf8'),
);
if ('faults' in parsed) throw new Error(JSON.stringify(parsed.faults));
const demo: DemoDay = { parsed, timeZone: 'America/New_York' };

describeOnBoth('the demo', (db) => {
  const rows = async () =>
    Object.fromEntries((await tableStates(db())).map(({ name, rows: count }) => [name, count]));

  it('goes on where it was cut short, and is there once', async () => {
    const services = testServices(db());
    let hashed = 0;
    const dying = {
      ...services,
      passwords: {
        ...services.passwords,
        hash: (word: string) =>
          hashed++ === 1 ? Promise.reject(new Error('the lights go out')) : services.passwords.hash(word),
      },
    };
    await expect(seedDemo(dying, demo, demoSignIns('some-word'))).rejects.toThrow('the lights go out');
    expect(await seedDemo(services, demo, demoSignIns('some-word'))).toBe(true);
    expect(await seedDemo(services, demo, demoSignIns('some-word'))).toBe(false);
    expect(await rows()).toMatchObject({
      shops: 1,
      people: 4,
      cutting_days: 1,
      animals: parsed.day.animals.length,
      sides: 4,
      orders: parsed.orders.length,
      order_lines: parsed.day.lines.length,
      carcass_shares: 1,
    });
  });
});

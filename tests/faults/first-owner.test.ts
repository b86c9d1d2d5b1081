import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { ServiceProcess } from './service-process.ts';

const home = mkdtempSync(join(tmpdir(), 'flitchbook-first-owner-'));
const environment = { DATA_DIR: home, DEMO: 'no' };
let service: ServiceProcess | undefined;
afterAll(async () => {
  await service?.end('SIGKILL');
  rmSync(home, { recursive: true, force: true });
});

const words = [
  'open-shop',
  '--shop',
  'Upper Croft Meats',
  '--owner',
  'Ida Vorst',
  '--email',
  'ida@croft.example',
];

it('opens a shop without the demo, once, and lets its owner in', async () => {
  const opened = await new ServiceProcess(environment, words).ended;
  expect(opened).toMatchObject({ code: 0, complained: '' });
  const [, password = ''] = /^ {2}(\S+)$/m.exec(opened.printed) ?? [];
  expect(password).toMatch(/^([a-z2-9]{4}-){3}[a-z2-9]{4}$/);

  const again = await new ServiceProcess(environment, words).ended;
  expect(again).toMatchObject({
    code: 2,
    printed: '',
    complained: 'There is a shop already: Upper Croft Meats.\n',
  });

  service = new ServiceProcess(environment);
  const address = await service.ready();
  const answer = await fetch(`${address}/api/session`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ email: 'ida@croft.example', password }),
  });
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({ person: { name: 'Ida Vorst', role: 'owner' } });

  // While the service runs, the folder is its own.
  const late = await new ServiceProcess(environment, words).ended;
  expect(late).toMatchObject({ code: 2, complained: expect.stringContaining('in use by process') });
});

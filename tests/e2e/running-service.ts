import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

interface DoorKey {
  readonly role: string;
  readonly email: string;
  readonly password: string;
}

/** The service as a shop runs it: its own process, its own folder of data, the built web app, the demo. */
export interface RunningShop {
  readonly address: string;
  readonly keys: readonly DoorKey[];
  stop(): Promise<void>;
}

const readyWithinMs = 90_000;

function readSignIns(output: string): DoorKey[] {
  return [...output.matchAll(/^ {2}(\w+) +(\S+@\S+) +(\S+)$/gm)].map(
    ([, role = '', email = '', password = '']) => ({
      role,
      email,
      password,
    }),
  );
}

async function ready(child: ChildProcess): Promise<{ address: string; keys: DoorKey[] }> {
  let output = '';
  return new Promise((resolve, reject) => {
    const late = setTimeout(
      () => reject(new Error(`The service did not say that it is ready:\n${output}`)),
      readyWithinMs,
    );
    const hear = (text: Buffer): void => {
      output += text.toString();
      const address = /Flitchbook is at (http:\/\/\S+)/.exec(output)?.[1];
      const keys = readSignIns(output);
      if (address === undefined || !keys.some(({ role }) => role === 'customer')) return;
      clearTimeout(late);
      resolve({ address, keys });
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', (text: Buffer) => {
      output += text.toString();
    });
    child.once('exit', (code) => reject(new Error(`The service ended with ${code}:\n${output}`)));
  });
}

/** Builds the web app if its sources changed, then starts the service on a free port. */
export async function startShop(): Promise<RunningShop> {
  const built = spawnSync(process.execPath, ['scripts/build-web.mjs'], { cwd: root, encoding: 'utf8' });
  if (built.status !== 0) throw new Error(`The web app was not built:\n${built.stderr}`);
  const dataFolder = mkdtempSync(join(tmpdir(), 'flitchbook-e2e-'));
  const child = spawn(process.execPath, ['--import', 'tsx', 'apps/api/src/main.ts'], {
    cwd: root,
    env: {
      PATH: process.env['PATH'],
      DATA_DIR: dataFolder,
      PORT: '0',
      HOST: '127.0.0.1',
      DEMO: 'yes',
      SOLVER_SECONDS: process.env['SOLVER_SECONDS'] ?? '3',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const { address, keys } = await ready(child);
  return {
    address,
    keys,
    async stop() {
      const ended = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGTERM');
      await ended;
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

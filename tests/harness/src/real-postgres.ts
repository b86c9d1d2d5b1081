import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { openSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import postgres from 'postgres';
import {
  type Account,
  findPostgresBinaries,
  type PostgresBinaries,
  prepareBinaries,
  serverAccount,
} from './postgres-binaries.ts';
import { makeServerFolder, sweepServerFolders, watchOver } from './server-folder.ts';

/** A running server. `url` names its maintenance database, with an account that may create databases. */
export interface RealPostgres {
  readonly url: string;
  /** As the server says it, for example `15.18`. */
  readonly version: string;
  /** Where it came from: `url` (TEST_DATABASE_URL), `named`, `system` or `npm`. */
  readonly origin: 'url' | PostgresBinaries['origin'];
  stop(): Promise<void>;
}

/** A server of our own, which a fault test may also break. */
export interface OwnPostgres extends RealPostgres {
  /** Ends the server at once, without a checkpoint, as when its process is killed. */
  crash(): Promise<void>;
  /** Starts it again on the same data and port; it recovers by itself. */
  revive(): Promise<void>;
  /** Stops the server and everything it has started where they stand, as on a machine that hangs. Linux only. */
  freeze(): void;
  thaw(): void;
}

const readyWithinMs = 20_000;
const stopWithinMs = 5_000;

// Durability against power loss is not under test here; everything else stays as the server ships it.
const settings = {
  listen_addresses: '127.0.0.1',
  unix_socket_directories: '',
  fsync: 'off',
  max_connections: '200',
  shared_buffers: '64MB',
  timezone: 'UTC',
};

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('No free port.');
  return address.port;
}

/** Nothing of the caller's PG* variables may reach the server. */
function cleanEnvironment(): NodeJS.ProcessEnv {
  return { PATH: process.env['PATH'], LC_ALL: 'C', TZ: 'UTC' };
}

async function askVersion(url: string): Promise<string> {
  const sql = postgres(url, { max: 1, connect_timeout: 2, onnotice: () => undefined });
  try {
    const [row] = await sql<{ server_version: string }[]>`show server_version`;
    return (row?.server_version ?? '').split(' ')[0] ?? '';
  } finally {
    await sql.end({ timeout: 1 });
  }
}

class Server implements OwnPostgres {
  readonly url: string;
  readonly origin: PostgresBinaries['origin'];
  version = '';
  readonly #program: string;
  readonly #folder: string;
  readonly #copy: string | undefined;
  readonly #port: number;
  readonly #account: Account;
  #child: ChildProcess | undefined;

  constructor(binaries: PostgresBinaries, port: number) {
    this.#account = serverAccount();
    this.#folder = makeServerFolder(this.#account);
    const { folder, copy } = prepareBinaries(binaries, this.#account);
    this.#copy = copy;
    this.#program = join(folder, 'postgres');
    this.#port = port;
    this.origin = binaries.origin;
    this.url = `postgres://flitchbook@127.0.0.1:${port}/postgres`;
    watchOver(copy === undefined ? [this.#folder] : [this.#folder, copy]);
  }

  initialise(): void {
    const args = ['-D', join(this.#folder, 'data'), '-U', 'flitchbook', '--auth=trust', '--no-sync'];
    const program = join(this.#program, '../initdb');
    const result = spawnSync(program, [...args, '--encoding=UTF8', '--no-locale'], {
      ...this.#account,
      cwd: '/',
      env: cleanEnvironment(),
      encoding: 'utf8',
    });
    if (result.status !== 0) {
      throw new Error(`${program} failed: ${result.error?.message ?? `${result.stdout}${result.stderr}`}`);
    }
  }

  async revive(): Promise<void> {
    // A file, not a pipe: a server that outlives us must never block on one, nor keep a caller waiting.
    const log = openSync(join(this.#folder, 'log'), 'a');
    const args = Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
    const child = spawn(
      this.#program,
      ['-D', join(this.#folder, 'data'), '-p', String(this.#port), ...args],
      {
        ...this.#account,
        cwd: '/',
        env: cleanEnvironment(),
        detached: true, // Ctrl-C is ours to handle
        stdio: ['ignore', log, log],
      },
    );
    child.unref();
    child.once('error', () => undefined); // seen below as an early end
    this.#child = child;
    await this.#untilReady(child);
  }

  async #untilReady(child: ChildProcess): Promise<void> {
    const deadline = performance.now() + readyWithinMs;
    while (child.exitCode === null && child.signalCode === null && performance.now() < deadline) {
      try {
        this.version = await askVersion(this.url);
        return;
      } catch {
        await sleep(25);
      }
    }
    child.kill('SIGKILL');
    throw new Error(`The test server did not start:\n${readFileSync(join(this.#folder, 'log'), 'utf8')}`);
  }

  async #end(signal: NodeJS.Signals): Promise<void> {
    const child = this.#child;
    this.#child = undefined;
    if (child === undefined || child.exitCode !== null || child.signalCode !== null) return;
    child.ref();
    const ended = once(child, 'exit');
    child.kill(signal);
    const patience = new AbortController();
    const late = sleep(stopWithinMs, 'late', { signal: patience.signal }).catch(() => undefined);
    if ((await Promise.race([ended, late])) === 'late') child.kill('SIGKILL');
    await ended;
    patience.abort();
  }

  async crash(): Promise<void> {
    await this.#end('SIGQUIT');
  }

  #signalAll(signal: NodeJS.Signals): void {
    const pid = this.#child?.pid;
    if (pid === undefined) return;
    const offspring = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ');
    // The server itself first: what stands still starts nobody new.
    for (const each of [pid, ...offspring.filter(Boolean).map(Number)]) process.kill(each, signal);
  }

  freeze(): void {
    this.#signalAll('SIGSTOP');
  }

  thaw(): void {
    this.#signalAll('SIGCONT');
  }

  async stop(): Promise<void> {
    await this.#end('SIGINT');
    for (const folder of [this.#folder, this.#copy]) {
      if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
    }
  }
}

/**
 * Starts a server of our own from `binaries`, by default the first that findPostgresBinaries lists.
 * Data lies in memory where there is room. Undefined when this machine has no server to start.
 */
export async function startOwnPostgres(
  binaries = findPostgresBinaries()[0],
): Promise<OwnPostgres | undefined> {
  if (binaries === undefined || process.platform === 'win32') return undefined;
  sweepServerFolders();
  const server = new Server(binaries, await freePort());
  try {
    server.initialise();
    await server.revive();
    return server;
  } catch (error) {
    await server.stop();
    throw error;
  }
}

/**
 * The server that tests use: TEST_DATABASE_URL, or one of our own. When there is none, undefined,
 * or an error where CI=true, so that a safety test is never left out unnoticed.
 */
export async function startRealPostgres(): Promise<RealPostgres | undefined> {
  const given = process.env['TEST_DATABASE_URL'];
  if (given !== undefined) {
    return { url: given, version: await askVersion(given), origin: 'url', stop: async () => undefined };
  }
  const server = await startOwnPostgres();
  if (server === undefined && process.env['CI'] === 'true') {
    throw new Error('No Postgres server was found. Maybe set TEST_DATABASE_URL or TEST_POSTGRES_BIN.');
  }
  return server;
}

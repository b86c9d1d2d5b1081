import type { TestProject } from 'vitest/node';
import { startRealPostgres } from './real-postgres.ts';

/** What describeOnPostgres hands to a test: the one server that all test files of a run share. */
export interface SharedPostgres {
  readonly url: string;
  readonly version: string;
}

declare module 'vitest' {
  interface ProvidedContext {
    realPostgres: SharedPostgres | null;
  }
}

type Shared = Promise<Awaited<ReturnType<typeof startRealPostgres>>>;
const store = globalThis as { flitchbookPostgres?: { server: Shared; users: number } | undefined };

/** Projects that need a server name this file; the first starts it, the last stops it. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  store.flitchbookPostgres ??= { server: startRealPostgres(), users: 0 };
  const shared = store.flitchbookPostgres;
  shared.users += 1;
  const server = await shared.server;
  project.provide('realPostgres', server === undefined ? null : { url: server.url, version: server.version });
  return async () => {
    shared.users -= 1;
    if (shared.users > 0) return;
    store.flitchbookPostgres = undefined;
    await server?.stop();
  };
}

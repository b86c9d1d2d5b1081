import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseDayFile } from '@flitchbook/contracts';
import { type Database, inTransaction, listShops, migrate } from '@flitchbook/db';
import { getConnInfo } from '@hono/node-server/conninfo';
import type { Config } from './config.ts';
import { createApp } from './http/create-app.ts';
import type { Transport } from './http/http-env.ts';
import { listen } from './http/listen.ts';
import { sessionCookie } from './http/session-cookie.ts';
import type { Ids } from './ids.ts';
import { folderPost, smtpPost } from './jobs/post-office.ts';
import { Timetable } from './jobs/timetable.ts';
import { usualJobs } from './jobs/usual-jobs.ts';
import type { Log } from './log.ts';
import { openConfigured } from './open-configured.ts';
import type { Services } from './services/ctx.ts';
import { createLinkLimits } from './services/customers/link-limits.ts';
import { KnownOffers } from './services/days/offers.ts';
import { seedDemo } from './services/demo/seed.ts';
import { type DemoSignIn, demoSignIns } from './services/demo/sign-ins.ts';
import type { Post } from './services/mails/post.ts';
import { createPasswords } from './services/passwords.ts';
import { DayKeeper } from './services/plans/day-keeper.ts';
import { DayTurns } from './services/reservations/day-turns.ts';
import { KnownRefusals } from './services/reservations/known-refusals.ts';
import { createSignInLimits } from './services/sessions/sign-in.ts';
import { networkOf } from './services/try-limits.ts';
import { SolvePool } from './solve/solve-pool.ts';

/** What only the entry point may know. */
export interface World {
  readonly clock: () => Date;
  /** milliseconds on a clock that only runs forward */
  readonly nowMs: () => number;
  readonly ids: Ids;
  /** an unguessable word, for the people of the invented shop and for a first owner */
  readonly newPassword: () => string;
  readonly log: Log;
  readonly projectFolder: string;
}

export interface RunningService {
  /** as a person types it */
  readonly address: string;
  readonly engine: string;
  readonly warnings: readonly string[];
  readonly demoSignIns: readonly DemoSignIn[];
  stop(): Promise<void>;
}

const stopWithinSeconds = 20;
const streamSeconds = 900;
const readyWithinMs = 500;

/** The password of the demo: made once, kept beside the data, readable by this user only. */
function demoPassword(config: Config, world: World): string {
  const file = join(config.dataFolder, 'demo-password');
  if (!existsSync(file)) {
    mkdirSync(config.dataFolder, { recursive: true, mode: 0o700 });
    writeFileSync(file, `${world.newPassword()}\n`, { mode: 0o600 });
  }
  return readFileSync(file, 'utf8').trim();
}

async function seed(config: Config, world: World, services: Services): Promise<readonly DemoSignIn[]> {
  if (!config.demo) return [];
  const file = join(world.projectFolder, 'examples/two-hogs.json');
  const parsed = parseDayFile(readFileSync(file, 'utf8'));
  if ('faults' in parsed)
    throw new Error(`examples/two-hogs.json is faulty: ${JSON.stringify(parsed.faults)}`);
  const signIns = demoSignIns(demoPassword(config, world));
  const shops = await inTransaction(services.db, listShops, { reading: true });
  if (shops.length > 0 && shops[0]?.name !== parsed.shop.name) return [];
  if (await seedDemo(services, { parsed, timeZone: 'America/New_York' }, signIns)) {
    world.log({ level: 'info', event: 'demo-seeded' });
  }
  return signIns;
}

async function answers(db: Database): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<boolean>((resolve) => {
    timer = setTimeout(() => resolve(false), readyWithinMs);
  });
  const asked = inTransaction(db, listShops, { reading: true }).then(
    () => true,
    () => false,
  );
  try {
    return await Promise.race([asked, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Nobody can sign in before there is a shop. */
async function shopWarnings(db: Database): Promise<readonly string[]> {
  const shops = await inTransaction(db, listShops, { reading: true });
  return shops.length > 0 ? [] : ['There is no shop yet. Open one: npm start -- open-shop --help'];
}

const loopback = new Set(['127.0.0.1', '::1', 'localhost']);

function createServices(
  config: Config,
  world: World,
  db: Database,
  shopAddress: string,
): { pool: SolvePool; keeper: DayKeeper } {
  const pool = new SolvePool({
    threads: config.solverThreads,
    waitingMax: 16,
    graceSeconds: 10,
    threadFile: new URL('./solve/solve-thread-entry.mjs', import.meta.url),
    onThreadEnd: (says) => world.log({ level: 'error', event: 'planning-thread-ended', says }),
  });
  const keeper = new DayKeeper({
    db,
    clock: world.clock,
    ids: world.ids,
    passwords: createPasswords(),
    solver: pool,
    solveLimits: { deadlineSeconds: config.solverSeconds, gap: 0.01, seed: 1 },
    log: world.log,
    promises: { turns: new DayTurns(), refusals: new KnownRefusals(), offers: new KnownOffers() },
    shopAddress,
  });
  return { pool, keeper };
}

/** Mails go where the shop says, and into a folder until it says so. */
function postOf({ smtpUrl, mailFrom, dataFolder }: Config): Post {
  return smtpUrl === null ? folderPost(join(dataFolder, 'mails'), mailFrom) : smtpPost(smtpUrl, mailFrom);
}

function createTransport(
  config: Config,
  world: World,
  demo: readonly DemoSignIn[],
  state: { readonly isReady: () => Promise<boolean>; readonly stopping: () => boolean },
): Transport {
  const webFolder = join(world.projectFolder, 'apps/web/dist');
  return {
    cookie: sessionCookie(config.publicOrigin?.startsWith('https:') ?? false),
    signInLimits: createSignInLimits(world.nowMs),
    linkLimits: createLinkLimits(world.nowMs),
    networkOf: (c) => networkOf(getConnInfo(c).remote.address ?? ''),
    isReady: state.isReady,
    streams: { maxSeconds: streamSeconds, stopping: state.stopping },
    demoSignIns: loopback.has(config.host) && config.publicOrigin === null ? demo : [],
    publicOrigin: config.publicOrigin,
    webFolder: existsSync(webFolder) ? webFolder : null,
    log: world.log,
    nowMs: world.nowMs,
    newRequestId: world.ids.newId,
  };
}

/**
 * Listens, opens the database, brings it up to date, fills an empty one with the demo, and answers.
 * @throws PortTaken, FolderBusy, FolderUnusable, EngineRefused, DatabaseUnavailable
 */
export async function startService(config: Config, world: World): Promise<RunningService> {
  const listening = await listen(config.port, config.host);
  let db: Database | undefined;
  try {
    db = await openConfigured(config, world);
    await migrate(db);
    const host = config.host.includes(':') ? `[${config.host}]` : config.host;
    const address = config.publicOrigin ?? `http://${host}:${listening.port}`;
    const { pool, keeper } = createServices(config, world, db, address);
    const demo = await seed(config, world, keeper.services);
    const opened = db;
    let stopping = false;
    const transport = createTransport(config, world, demo, {
      isReady: async () => !stopping && (await answers(opened)),
      stopping: () => stopping,
    });
    const app = createApp(keeper.services, transport);
    listening.answerWith((request, env) => app.fetch(request, env));
    pool.warmUp();
    const timetable = new Timetable(keeper.services, usualJobs(postOf(config)));
    timetable.start();
    await keeper.catchUp();
    return {
      address,
      engine: `${opened.engine} ${opened.version}`,
      warnings: [...opened.warnings, ...(await shopWarnings(opened))],
      demoSignIns: transport.demoSignIns,
      async stop() {
        stopping = true;
        await listening.stop(stopWithinSeconds);
        await timetable.stop();
        // What is being planned in the background is planned again after the next start.
        await pool.close();
        await keeper.close();
        await opened.close();
      },
    };
  } catch (error) {
    await listening.stop(0);
    await db?.close();
    throw error;
  }
}

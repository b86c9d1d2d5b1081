import { randomBytes } from 'node:crypto';
import { createPerson, createShop, type Database, inTransaction, type Role } from '@flitchbook/db';
import { createApp } from '../http/create-app.ts';
import type { Transport } from '../http/http-env.ts';
import { sessionCookie } from '../http/session-cookie.ts';
import { createIds } from '../ids.ts';
import type { LogLine } from '../log.ts';
import type { Ctx, Services } from '../services/ctx.ts';
import { createPasswords } from '../services/passwords.ts';
import { DayKeeper } from '../services/plans/day-keeper.ts';
import { createSignInLimits } from '../services/sessions/sign-in.ts';
import type { DaySolver } from '../solve/day-solver.ts';
import { SolvePool } from '../solve/solve-pool.ts';

export const ids = createIds(randomBytes, () => Date.now());

/** Real threads with the real solver. One for a whole test file: each takes a second to load. */
export const createSolver = (): SolvePool =>
  new SolvePool({
    threads: 1,
    waitingMax: 64,
    graceSeconds: 20,
    threadFile: new URL('../solve/solve-thread-entry.mjs', import.meta.url),
  });

export const password = 'a long enough password';
let hashed: Promise<string> | undefined;

export interface Bench {
  readonly services: Services;
  readonly keeper: DayKeeper;
  readonly shopId: string;
  readonly log: readonly LogLine[];
  readonly app: ReturnType<typeof createApp>;
  readonly transport: Transport;
  ctx(role: Role): Ctx;
  emailOf(role: Role): string;
}

const roles = ['customer', 'counter', 'butcher', 'owner'] as const;

/** A shop of its own in `db`, with one person of each role, and the whole service before it. */
export async function openBench(
  db: Database,
  solver: DaySolver,
  change: Partial<Transport> = {},
): Promise<Bench> {
  const shopId = ids.newId();
  const log: LogLine[] = [];
  const passwords = createPasswords();
  hashed ??= passwords.hash(password);
  const passwordHash = await hashed;
  const people = roles.map((role) => ({
    shopId,
    personId: ids.newId(),
    email: `${role}@${shopId}.example`,
    name: `A ${role}`,
    role,
    passwordHash,
  }));
  await inTransaction(db, async (tx) => {
    const place = {
      currency: 'USD',
      timeZone: 'America/New_York',
      weightUnit: 'lb',
      lengthUnit: 'in',
    } as const;
    await createShop(tx, { shopId, name: 'The Ninth Rib', ...place });
    for (const person of people) await createPerson(tx, person);
  });
  const keeper = new DayKeeper({
    db,
    clock: () => new Date('2026-11-25T12:00:00Z'),
    ids,
    passwords,
    solver,
    solveLimits: { deadlineSeconds: 5, gap: 0.01, seed: 1 },
    log: (line) => log.push(line),
  });
  const transport: Transport = {
    cookie: sessionCookie(false),
    signInLimits: createSignInLimits(() => performance.now()),
    networkOf: () => '203.0.113.9',
    isReady: async () => true,
    demoSignIns: [],
    publicOrigin: null,
    webFolder: null,
    log: (line) => log.push(line),
    nowMs: () => performance.now(),
    newRequestId: ids.newId,
    ...change,
  };
  const ctx = (role: Role): Ctx => ({
    ...keeper.services,
    actor: { shopId, personId: people.find((person) => person.role === role)?.personId ?? null, role },
  });
  const emailOf = (role: Role): string => `${role}@${shopId}.example`;
  const app = createApp(keeper.services, transport);
  return { services: keeper.services, keeper, shopId, log, app, transport, ctx, emailOf };
}

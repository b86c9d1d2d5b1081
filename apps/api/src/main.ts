import { randomBytes } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { type Config, readConfig, variableNotes } from './config.ts';
import { createIds } from './ids.ts';
import { errorFacts, jsonLog } from './log.ts';
import type { RunningService, World } from './start-service.ts';

const projectFolder = fileURLToPath(new URL('../../..', import.meta.url));

const help = `The Flitchbook service: its API and its web app on one port.

  npm start
  npm start -- open-shop --help   opens the shop of an empty database
  npm start -- check              reads all that is stored and says which rules it breaks

These environment variables set it up:

${Object.entries(variableNotes)
  .map(([name, note]) => `  ${name.padEnd(24)}${note}`)
  .join('\n')}
`;

// Exit status: 0 stopped when asked to, 1 a fault, 2 it cannot start like this and says why.
const faultStatus = 1;
const cannotStart = 2;

// Four groups of four from 32 signs that are not mistaken for each other: 80 random bits.
const signs = 'abcdefghijkmnpqrstuvwxyz23456789';
const newPassword = (): string =>
  [...randomBytes(16)]
    .map((byte, index) => `${index > 0 && index % 4 === 0 ? '-' : ''}${signs[byte % signs.length]}`)
    .join('');

const log = jsonLog(
  (text) => process.stderr.write(text),
  () => new Date(),
);

function sayReady(service: RunningService): void {
  console.log(`Flitchbook is at ${service.address} (database: ${service.engine}).`);
  for (const warning of service.warnings) console.log(warning);
  if (service.demoSignIns.length > 0) {
    console.log('The invented shop. Sign in as:');
    for (const { role, email, password } of service.demoSignIns) {
      console.log(`  ${role.padEnd(10)}${email.padEnd(26)}${password}`);
    }
  }
}

function stopOn(signal: NodeJS.Signals, service: RunningService): void {
  let asked = false;
  process.on(signal, () => {
    if (asked) process.exit(130);
    asked = true;
    service.stop().then(
      () => process.exit(0),
      (error: unknown) => {
        log({ level: 'error', event: 'stop-failed', ...errorFacts(error) });
        process.exit(faultStatus);
      },
    );
  });
}

/** Errors that say themselves what to do, to whoever starts the service. */
const forPeople = new Set([
  'PortTaken',
  'FolderBusy',
  'FolderUnusable',
  'EngineRefused',
  'DatabaseUnavailable',
]);

const world: World = {
  clock: () => new Date(),
  nowMs: () => performance.now(),
  ids: createIds(randomBytes, () => Date.now()),
  newPassword,
  log,
  projectFolder,
};

const isHelp = (word: string | undefined): boolean => word === '--help' || word === '-h';

function complain(says: readonly string[]): number {
  for (const line of says) console.error(line);
  return cannotStart;
}

async function openShop(args: readonly string[], config: Config): Promise<number> {
  const { openingHelp, readOpening } = await import('./open-shop/read-opening.ts');
  if (isHelp(args[0])) {
    console.log(openingHelp);
    return 0;
  }
  const read = readOpening(args);
  if (!read.ok) return complain([...read.says, 'See npm start -- open-shop --help']);
  const { openFirstShop } = await import('./open-shop/open-first-shop.ts');
  const opened = await openFirstShop(config, world, read.opening);
  if (!opened.ok) return complain([opened.says]);
  const { shop, owner } = read.opening;
  console.log(
    `${shop.name} is open. ${owner.name} signs in as ${owner.email} with this password, shown only now:`,
  );
  console.log(`  ${opened.value}`);
  return 0;
}

/** Minutes: a shop of many years is read whole. */
const checkLimits = { deadlineMs: 1_200_000, statementMs: 120_000, idleMs: 300_000 };

async function check(config: Config): Promise<number> {
  const { checkStored } = await import('./check-stored/check-stored.ts');
  const { openConfigured } = await import('./open-configured.ts');
  const db = await openConfigured(config, world, checkLimits);
  try {
    const report = await checkStored(db);
    console.log(JSON.stringify(report));
    return report.faults.length === 0 ? 0 : faultStatus;
  } finally {
    await db.close();
  }
}

async function main(): Promise<number | undefined> {
  const [first, ...rest] = process.argv.slice(2);
  if (isHelp(first)) {
    console.log(help);
    return 0;
  }
  if (first !== undefined && first !== 'open-shop' && first !== 'check')
    return complain([`Unknown argument ${first}. Maybe --help.`]);
  const read = readConfig(process.env, projectFolder);
  if (!read.ok) return complain(read.says);
  if (first === 'open-shop') return openShop(rest, read.config);
  if (first === 'check') return check(read.config);
  const { startService } = await import('./start-service.ts');
  const service = await startService(read.config, world);
  for (const signal of ['SIGTERM', 'SIGINT'] as const) stopOn(signal, service);
  sayReady(service);
  return undefined;
}

try {
  const status = await main();
  if (status !== undefined) process.exit(status);
} catch (error) {
  if (error instanceof Error && forPeople.has(error.constructor.name)) {
    console.error(error.message);
    process.exit(cannotStart);
  }
  console.error(error);
  process.exit(faultStatus);
}

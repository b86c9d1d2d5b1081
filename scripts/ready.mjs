// Brings a bare clone to the point where it can run: packages installed, web part built.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root, runNode } from './process.mjs';

const lockFile = join(root, 'package-lock.json');
// npm's own record of what it put into node_modules.
const installedFile = join(root, 'node_modules/.package-lock.json');
const webFolder = join(root, 'apps/web');
const webStamp = join(webFolder, 'dist/.built-from');

function packagesOf(file) {
  return JSON.parse(readFileSync(file, 'utf8')).packages;
}

/** The first locked package that node_modules lacks or holds in another version, or undefined. */
function firstDifference() {
  if (!existsSync(installedFile)) return 'node_modules';
  const installed = packagesOf(installedFile);
  for (const [path, wanted] of Object.entries(packagesOf(lockFile))) {
    if (!path.startsWith('node_modules/') && !path.includes('/node_modules/')) continue;
    const found = installed[path];
    if (found === undefined && wanted.optional) continue; // a binary for another platform
    if (found === undefined || found.version !== wanted.version) return path;
  }
  return undefined;
}

function npmCli() {
  if (process.env.npm_execpath?.endsWith('.js')) return process.env.npm_execpath;
  const beside = join(process.execPath, '../../lib/node_modules/npm/bin/npm-cli.js');
  if (existsSync(beside)) return beside;
  throw new Error('npm was not found. Start this through npm: npm start, npm test, npm run check.');
}

/** Runs `npm ci` when the installed packages are not the locked ones. Its output goes to standard error. */
export async function install() {
  const difference = firstDifference();
  if (difference === undefined) return;
  console.error(`Installing packages (${difference} is missing or differs from package-lock.json) ...`);
  const code = await runNode([npmCli(), 'ci', '--include=dev', '--include=optional'], {
    stdio: ['ignore', process.stderr, process.stderr],
  });
  if (code !== 0) {
    console.error('Installing failed. Maybe there is no network; npm printed the reason above.');
    process.exit(code);
  }
}

function* filesUnder(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.name === 'node_modules' || entry.name === 'dist') continue;
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* filesUnder(path);
    else if (!/\.test\.tsx?$/.test(entry.name)) yield path;
  }
}

/** A hash over everything that the web part is built from. */
function webSources() {
  const hash = createHash('sha256');
  const files = [lockFile, ...filesUnder(webFolder), ...filesUnder(join(root, 'packages'))].sort();
  for (const file of files) hash.update(`${relative(root, file)}\n`).update(readFileSync(file));
  return hash.digest('hex');
}

/** Builds apps/web/dist when its sources are not those of the last build. */
export async function buildWeb() {
  const sources = webSources();
  if (existsSync(webStamp) && readFileSync(webStamp, 'utf8') === sources) return;
  console.error('Building the web part ...');
  const code = await runNode([join(root, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn'], {
    cwd: webFolder,
    stdio: ['ignore', process.stderr, process.stderr],
  });
  if (code !== 0) process.exit(code);
  writeFileSync(webStamp, sources);
}

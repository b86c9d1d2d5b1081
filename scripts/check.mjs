// npm run check [-- name ...]: the one check before a commit. No browser, no network. Names pick single steps.
import { readdirSync } from 'node:fs';
import { join, relative } from 'node:path';
import { captureNode, root } from './process.mjs';
import { install } from './ready.mjs';

const tsc = (project) => ['node_modules/typescript-native/bin/tsc', '--noEmit', '-p', project];

const steps = [
  {
    name: 'style',
    says: 'format and lint',
    args: ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'],
  },
  { name: 'types', says: 'types of packages, API and command line', args: tsc('.') },
  { name: 'types-web', says: 'types of the web part', args: tsc('apps/web') },
  { name: 'types-tests', says: 'types of the tests', args: tsc('tests') },
  { name: 'layers', says: 'who may import whom', run: layers },
  {
    name: 'dead',
    says: 'unused files, exports and dependencies',
    args: ['node_modules/knip/bin/knip.js', '--no-progress'],
  },
  {
    name: 'tests',
    says: 'unit, service and architecture tests',
    args: [
      'node_modules/vitest/vitest.mjs',
      'run',
      '--project',
      'unit',
      '--project',
      'service',
      '--project',
      'architecture',
    ],
  },
];

function* modulesUnder(folder) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory() && entry.name !== 'node_modules' && entry.name !== 'dist')
      yield* modulesUnder(path);
    else if (/\.tsx?$/.test(entry.name) && !entry.name.endsWith('.d.ts')) yield relative(root, path);
  }
}

/** The cruiser reports success when it cannot read TypeScript, so what it saw is compared with what is on disk. */
function blindSpots(modules) {
  const seen = new Set(modules.map((module) => module.source));
  const unseen = ['packages', 'apps']
    .flatMap((folder) => [...modulesUnder(join(root, folder))])
    .filter((path) => !seen.has(path));
  const crossings = modules.flatMap((module) =>
    module.dependencies.filter(
      (to) =>
        /^packages\/[^/]+\/src\//.test(to.resolved) &&
        to.resolved.split('/')[1] !== module.source.split('/')[1],
    ),
  );
  const faults = unseen.map((path) => `not seen by the cruiser: ${path}`);
  if (crossings.length === 0) faults.push('the cruiser saw no import from one package into another');
  return faults;
}

async function layers() {
  const { code, stdout, output } = await captureNode([
    'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
    '--config',
    '.dependency-cruiser.cjs',
    '--output-type',
    'json',
    'packages',
    'apps',
    'tests',
  ]);
  if (!stdout.startsWith('{')) return { code: code || 1, output };
  const { modules, summary } = JSON.parse(stdout);
  const faults = [
    ...summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`),
    ...blindSpots(modules),
  ];
  return { code: faults.length === 0 ? 0 : 1, output: faults.join('\n') };
}

async function take({ name, says, args, run }) {
  const start = performance.now();
  const { code, output } = await (run ? run() : captureNode(args));
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(`${code === 0 ? 'ok    ' : 'FAILED'} ${name.padEnd(12)} ${seconds.padStart(5)} s  ${says}`);
  if (code !== 0) console.log(output.trimEnd());
  return code === 0;
}

await install();
const wanted = process.argv.slice(2);
const chosen = wanted.length === 0 ? steps : steps.filter((step) => wanted.includes(step.name));
if (chosen.length === 0) {
  console.error(`Unknown step. Maybe one of: ${steps.map((step) => step.name).join(', ')}.`);
  process.exit(2);
}
const failed = [];
for (const step of chosen) if (!(await take(step))) failed.push(step.name);
console.log(failed.length === 0 ? 'All checks passed.' : `Failed: ${failed.join(', ')}.`);
process.exit(failed.length === 0 ? 0 : 1);

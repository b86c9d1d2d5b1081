// npm run test:mutants [-- words of a name ...]: plants one mistake at a time in a copy of the tree and runs the tests that
// have to see it. Prints one line of JSON for each and ends with 1 if one was not seen.
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Mutant, mutants } from './planted.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ownScope = '@flitchbook';

/** What git knows of, with the packages that are installed; the workspaces are those of the copy. */
function copyTree(): string {
  const copy = mkdtempSync(join(tmpdir(), 'flitchbook-mutants-'));
  const listed = spawnSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' });
  if (listed.status !== 0) throw new Error(`git does not list the tree: ${listed.stderr}`);
  for (const path of listed.stdout.split('\0').filter((name) => name !== '')) {
    mkdirSync(dirname(join(copy, path)), { recursive: true });
    cpSync(join(root, path), join(copy, path));
  }
  const [from, to] = [join(root, 'node_modules'), join(copy, 'node_modules')];
  mkdirSync(join(to, ownScope), { recursive: true });
  for (const name of readdirSync(from)) if (name !== ownScope) symlinkSync(join(from, name), join(to, name));
  // Links of npm are relative: they lead to the copy by themselves.
  cpSync(join(from, ownScope), join(to, ownScope), { recursive: true, verbatimSymlinks: true });
  return copy;
}

/** @returns the first of the suites that fails, or undefined */
function seenBy(copy: string, suites: readonly string[]): string | undefined {
  return suites.find((suite) => {
    const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--bail', '1', '--reporter', 'dot', suite];
    const run = spawnSync(process.execPath, vitest, { cwd: copy, encoding: 'utf8', timeout: 300_000 });
    return run.status !== 0;
  });
}

function plant(copy: string, { file, find, put, name }: Mutant): () => void {
  const path = join(copy, file);
  const sound = readFileSync(path, 'utf8');
  const places = sound.split(find).length - 1;
  if (places !== 1) throw new Error(`"${name}": what it replaces stands ${places} times in ${file}`);
  writeFileSync(
    path,
    sound.replace(find, () => put),
  );
  return () => writeFileSync(path, sound);
}

const say = (line: object): void => void process.stdout.write(`${JSON.stringify(line)}\n`);

const wanted = process.argv.slice(2);
const chosen = mutants.filter(
  ({ name }) => wanted.length === 0 || wanted.some((word) => name.includes(word)),
);
const copy = copyTree();
try {
  // A suite that fails anyway sees nothing.
  for (const suite of new Set(chosen.flatMap(({ suites }) => suites))) {
    if (seenBy(copy, [suite]) !== undefined) throw new Error(`${suite} fails on the tree as it is`);
  }
  let missed = 0;
  for (const mutant of chosen) {
    const began = performance.now();
    const mend = plant(copy, mutant);
    const by = seenBy(copy, mutant.suites);
    mend();
    if (by === undefined) missed += 1;
    say({
      mutant: mutant.name,
      file: mutant.file,
      seenBy: by ?? null,
      seconds: Math.round((performance.now() - began) / 1000),
    });
  }
  say({ test: 'mutants', planted: chosen.length, seen: chosen.length - missed, missed });
  process.exitCode = missed === 0 ? 0 : 1;
} finally {
  rmSync(copy, { recursive: true, force: true });
}

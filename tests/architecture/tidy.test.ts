import { describe, expect, it } from 'vitest';
import { linesWith, readTree, type SourceFile } from './tree.ts';

const { folders, files } = readTree();
const here = 'tests/architecture/';
const code = files.filter(({ path }) => /\.(ts|tsx|mjs|cjs)$/.test(path));
const isTest = (path: string): boolean =>
  path.startsWith('tests/') || /(\.test|\/testing\/[^/]+)\.tsx?$/.test(path);

/** Where time, chance, ids and settings come in. */
const entryPoints = [
  /^apps\/[^/]+\/src\/main\.tsx?$/,
  /^scripts\//,
  /^infra\//,
  /^[^/]+\.config\.ts$/,
  /^packages\/db\/drizzle\.config\.ts$/,
];

/** Tables that are long because the trade is; logic never belongs here. */
const longDataFiles: readonly string[] = [];

/** The glossary may name a word in order to reject it. */
const mayNameRejectedWords = ['docs/glossary.md'];

const longestFile = 400;

function without(path: string, list: readonly RegExp[]): boolean {
  return !list.some((pattern) => pattern.test(path));
}

function isComment(line: string): boolean {
  return /^\s*(\/\/|\*|\/\*)/.test(line);
}

/** The words of a line; `cartLines` and `CART_LINES` both hold `cart` and `lines`. */
function words(line: string): string[] {
  return line
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z]+/);
}

describe('the tidy rules', () => {
  it('reads the tree at all', () => {
    expect(code.length).toBeGreaterThan(50);
    expect(folders).toContain('packages/carcass/src');
  });

  it('lets time, chance and settings in only through the entry points', () => {
    const banned = /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bprocess\.env\b|\bimport\.meta\.env\b/;
    const inner = code.filter(({ path }) => !isTest(path) && without(path, entryPoints));
    expect(linesWith(inner, (line) => banned.test(line) && !isComment(line))).toEqual([]);
  });

  it(`keeps files to ${longestFile} lines`, () => {
    const long = code.filter(({ content }) => content.split('\n').length > longestFile + 1);
    expect(long.map(({ path }) => path).filter((path) => !longDataFiles.includes(path))).toEqual([]);
    const paths = files.map(({ path }) => path);
    expect(longDataFiles.filter((path) => !paths.includes(path))).toEqual([]);
  });

  it('names folders for what they hold', () => {
    const vague = new Set(['utils', 'util', 'helpers', 'helper', 'common', 'misc', 'shared', 'lib']);
    expect(folders.filter((path) => vague.has(path.split('/').at(-1) ?? ''))).toEqual([]);
  });

  it('speaks the words of the trade', () => {
    const rejected = new Set(
      'cart carts sku skus widget widgets workflow workflows inventory ticket tickets'.split(' '),
    );
    const spoken = files.filter(
      ({ path }) =>
        !path.startsWith(here) && path !== 'package-lock.json' && !mayNameRejectedWords.includes(path),
    );
    expect(linesWith(spoken, (line) => words(line).some((word) => rejected.has(word)))).toEqual([]);
  });

  it('holds no path of one machine and no registry address', () => {
    const machine = /(["'`(=\s]|^)\/(root|home|work|Users)\/|[A-Z]:\\Users\\/;
    const registry = /"resolved": *"http|registry\.[a-z]+\.(org|com)/;
    expect(linesWith(files, (line) => machine.test(line) || registry.test(line))).toEqual([]);
  });

  it('says in each sheet of the API which JSX it is', () => {
    // The web part sees these files through the type of its client, and its own JSX is another.
    const sheets = code.filter(({ path }) => /^apps\/api\/.*\.tsx$/.test(path));
    const first = '/** @jsxImportSource hono/jsx */';
    expect(sheets.filter(({ content }) => !content.startsWith(first)).map(({ path }) => path)).toEqual([]);
  });

  it('leaves no test out', () => {
    const left = /\b(it|test|describe)\.(skip|only|todo)\b/;
    const conditional = /\b(it|test|describe)\.(skipIf|runIf)\b/;
    const outsideHarness = ({ path }: SourceFile): boolean => !path.startsWith('tests/harness/');
    const tests = code.filter(({ path }) => isTest(path) && !path.startsWith(here));
    expect(linesWith(tests, (line) => left.test(line))).toEqual([]);
    expect(linesWith(tests.filter(outsideHarness), (line) => conditional.test(line))).toEqual([]);
  });

  it('leaves no marker of unfinished work', () => {
    const marker = /\b(TODO|FIXME|XXX|HACK)\b/;
    expect(linesWith(files, (line) => marker.test(line) && !line.includes('marker ='))).toEqual([]);
  });
});

import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTree, root, type SourceFile } from './tree.ts';

const docs = readTree().files.filter(({ path }) =>
  /^(README\.md|DEVELOPERS\.md|docs\/.*\.md|[^/]+\.md)$/.test(path),
);

const topFolders = /^(packages|apps|docs|tests|infra|scripts|\.ci)(\/|$)/;
const fileName = /^[\w@.-]+(\/[\w@.-]+)*\.(ts|tsx|mjs|cjs|json|md|yml|sql|sh|css|html)$/;
const generated = /(^|\/)(dist|node_modules|coverage)(\/|$)|^data(\/|$)/;

/** Paths in backticks: those below a folder of the root, and names with an ending of ours. Patterns are not paths. */
function quotedPaths(content: string): string[] {
  const prose = content.replace(/^```[\s\S]*?^```/gm, '');
  return [...prose.matchAll(/`([^`\n]+)`/g)]
    .map(([, quoted]) => quoted ?? '')
    .filter((path) => !/[*<>{}\s:]/.test(path) && (topFolders.test(path) || fileName.test(path)));
}

function linkedPaths(content: string): string[] {
  return [...content.matchAll(/\]\(([^)\s]+)\)/g)]
    .map(([, target]) => (target ?? '').split('#')[0] ?? '')
    .filter((target) => target !== '' && !/^[a-z]+:/.test(target));
}

function missing({ path, content }: SourceFile): string[] {
  const folder = join(root, dirname(path));
  const quoted = quotedPaths(content).filter(
    (name) => !generated.test(name) && !existsSync(join(root, name)) && !existsSync(join(folder, name)),
  );
  const linked = linkedPaths(content).filter((name) => !existsSync(join(folder, name)));
  return [...quoted, ...linked].map((name) => `${path}: ${name}`);
}

describe('the documents', () => {
  it('name only paths that exist', () => {
    expect(docs.flatMap(missing)).toEqual([]);
  });

  it('name only npm scripts that exist', () => {
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { scripts: object };
    const named = docs.flatMap(({ path, content }) =>
      [...content.matchAll(/npm run (?:-s |--silent )?([a-z][\w:-]*)/g)].map(([, name]) => ({
        path,
        name: name ?? '',
      })),
    );
    expect(named.filter(({ name }) => !(name in scripts))).toEqual([]);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';

export const root = join(import.meta.dirname, '../..');

const notOurs = new Set(['node_modules', 'dist', '.git', '.scratch', 'coverage']);
const text = new Set(
  '.ts .tsx .mjs .cjs .json .md .sql .css .html .yml .yaml .sh .conf .webmanifest .svg .txt'.split(' '),
);

export interface SourceFile {
  /** Relative to the root, with forward slashes. */
  readonly path: string;
  readonly content: string;
}

export interface Tree {
  readonly folders: readonly string[];
  readonly files: readonly SourceFile[];
}

function isText(name: string): boolean {
  return text.has(extname(name)) || ['Dockerfile', '.npmrc', '.gitignore', 'run'].includes(name);
}

/** Everything of the project that a person wrote, plus the lock file. */
export function readTree(): Tree {
  const folders: string[] = [];
  const files: SourceFile[] = [];
  const visit = (folder: string): void => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const full = join(folder, entry.name);
      const path = relative(root, full).split(sep).join('/');
      if (notOurs.has(entry.name) || path === 'data' || path === '.data') continue;
      if (entry.isDirectory()) {
        folders.push(path);
        visit(full);
      } else if (entry.isFile() && isText(entry.name)) {
        files.push({ path, content: readFileSync(full, 'utf8') });
      }
    }
  };
  visit(root);
  return { folders, files };
}

/** `path:line: text` for each line of `files` in which `hit` finds something. */
export function linesWith(files: readonly SourceFile[], hit: (line: string) => boolean): string[] {
  return files.flatMap(({ path, content }) =>
    content.split('\n').flatMap((line, index) => (hit(line) ? [`${path}:${index + 1}: ${line.trim()}`] : [])),
  );
}

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTree, root } from './tree.ts';

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly link?: boolean;
  readonly integrity?: string;
}

const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
  packages: Record<string, Locked>;
};
const installed = Object.entries(lock.packages).filter(
  ([path, entry]) => path.includes('node_modules/') && entry.link !== true,
);

/** Licences under which a shop may run, change and pass on the whole program without further duties. */
const permissive = new Set([
  'MIT',
  'MIT-0',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Unlicense',
  'BlueOak-1.0.0',
  '(MIT OR WTFPL)',
]);

describe('the packages of others', () => {
  it('come with a hash each', () => {
    expect(installed.length).toBeGreaterThan(100);
    expect(installed.filter(([, entry]) => entry.integrity === undefined).map(([path]) => path)).toEqual([]);
  });

  it('may be shipped, or serve development only', () => {
    const shipped = installed.filter(([, entry]) => entry.dev !== true);
    // Its package.json names no licence; the licence file that it brings is the MIT licence, and is read here.
    const ownFile = readFileSync(join(root, 'node_modules/png-js/LICENSE'), 'utf8');
    expect(ownFile).toMatch(/MIT|Permission is hereby granted, free of charge/);
    const barred = shipped.filter(
      ([path, entry]) => path !== 'node_modules/png-js' && !permissive.has(entry.license ?? 'none'),
    );
    expect(barred.map(([path, entry]) => `${path}: ${entry.license}`)).toEqual([]);
  });

  it('are named by exact version', () => {
    const manifests = readTree().files.filter(({ path }) => /(^|\/)package\.json$/.test(path));
    const loose = manifests.flatMap(({ path, content }) => {
      const manifest = JSON.parse(content) as Record<string, Record<string, string> | undefined>;
      return ['dependencies', 'devDependencies', 'optionalDependencies'].flatMap((kind) =>
        Object.entries(manifest[kind] ?? {})
          .filter(
            ([name, version]) =>
              !name.startsWith('@flitchbook/') && !/^(npm:[\w-]+@)?\d[\w.-]*$/.test(version),
          )
          .map(([name, version]) => `${path}: ${name} ${version}`),
      );
    });
    expect(loose).toEqual([]);
  });
});

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { variableNotes } from '../../apps/api/src/config.ts';
import { root } from './tree.ts';

interface Service {
  readonly build?: { readonly context: string; readonly dockerfile: string };
  readonly environment?: Record<string, string>;
  readonly volumes?: readonly string[];
  readonly ports?: readonly string[];
  readonly depends_on?: Record<string, { readonly condition: string }>;
  readonly healthcheck?: unknown;
}

const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const compose = parse(read('docker-compose.yml')) as {
  readonly services: Record<string, Service>;
  readonly volumes: Record<string, unknown>;
};
const services = Object.entries(compose.services);

// No container engine is needed here: this checks that the pieces name each other rightly, not that they run.
describe('docker-compose.yml', () => {
  it('sets only variables that the API reads', () => {
    const known = new Set([...Object.keys(variableNotes), 'NODE_ENV']);
    const set = Object.keys(compose.services['api']?.environment ?? {});
    const inImage = [...read('infra/Dockerfile').matchAll(/^ENV (.*)$/gm)].flatMap(([, pairs]) =>
      (pairs ?? '').split(' ').map((pair) => pair.split('=')[0] ?? ''),
    );
    expect(set.length).toBeGreaterThan(0);
    expect([...set, ...inImage].filter((name) => !known.has(name))).toEqual([]);
  });

  it('asks for nothing that infra/example.env leaves out', () => {
    const offered = new Set([...read('infra/example.env').matchAll(/^([A-Z_]+)=/gm)].map(([, name]) => name));
    const asked = [...read('docker-compose.yml').matchAll(/\$\{([A-Z_]+)/g)].map(([, name]) => name);
    expect(asked.filter((name) => !offered.has(name))).toEqual([]);
  });

  it('names files, volumes and services that exist', () => {
    for (const [, service] of services) {
      if (service.build) expect(existsSync(join(root, service.build.dockerfile))).toBe(true);
      for (const volume of service.volumes ?? []) {
        const source = volume.split(':')[0] ?? '';
        if (source.startsWith('./')) expect(existsSync(join(root, source)), source).toBe(true);
        else expect(compose.volumes).toHaveProperty(source);
      }
      for (const name of Object.keys(service.depends_on ?? {})) {
        expect(compose.services[name]).toHaveProperty('healthcheck');
      }
    }
  });

  it('opens no port to other machines', () => {
    const ports = services.flatMap(([, service]) => service.ports ?? []);
    expect(ports.length).toBeGreaterThan(0);
    expect(ports.filter((port) => !port.startsWith('127.0.0.1:'))).toEqual([]);
  });
});

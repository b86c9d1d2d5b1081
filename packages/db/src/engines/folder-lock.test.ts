import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { lockFolder } from './folder-lock.ts';

const clock = { now: () => new Date('2027-03-04T05:06:07Z') };

describe('the lock of a folder', () => {
  let home = '';
  let folder = '';
  beforeEach(() => {
    home = mkdtempSync(join(tmpdir(), 'flitchbook-lock-'));
    folder = join(home, 'data');
  });
  afterEach(() => rmSync(home, { recursive: true, force: true }));

  const write = (holder: object): void => writeFileSync(`${folder}.lock`, JSON.stringify(holder));
  const read = (): unknown => JSON.parse(readFileSync(`${folder}.lock`, 'utf8'));
  const deadPid = (): number => spawnSync(process.execPath, ['-e', '']).pid;
  const since = '2027-01-01T00:00:00.000Z';

  it('says who has it since when, and goes when it is released', () => {
    const lock = lockFolder(folder, clock);
    expect(read()).toMatchObject({ pid: process.pid, host: hostname(), since: '2027-03-04T05:06:07.000Z' });
    expect(() => lockFolder(folder, clock)).toThrow(`process ${process.pid}`);
    lock.release();
    lock.release();
    expect(readdirSync(home)).toEqual([]);
    lockFolder(folder, clock).release();
  });

  it('is taken over from a process that is dead, and only from one', () => {
    write({ pid: deadPid(), host: hostname(), since, mark: null });
    const lock = lockFolder(folder, clock);
    expect(read()).toMatchObject({ pid: process.pid });
    lock.release();
    write({ pid: process.ppid, host: hostname(), since, mark: null });
    expect(() => lockFolder(folder, clock)).toThrow(`process ${process.ppid} since ${since}`);
  });

  it('is taken over when another process has got the number since, where the system can tell', () => {
    // As after a restart of a container, where every server is process 1.
    write({ pid: process.pid, host: hostname(), since, mark: 'an earlier boot:123' });
    const take = () => lockFolder(folder, clock);
    if (existsSync('/proc/self/stat')) take().release();
    else expect(take).toThrow(`process ${process.pid}`);
    expect(existsSync(`${folder}.lock`)).toBe(!existsSync('/proc/self/stat'));
  });

  it('is never judged from another machine', () => {
    write({ pid: deadPid(), host: 'another-machine.example', since, mark: null });
    expect(() => lockFolder(folder, clock)).toThrow('on another-machine.example');
  });

  it.each(['', '{', '{"pid":0}', '7'])('that says "%s" is busy', (text) => {
    writeFileSync(`${folder}.lock`, text);
    expect(() => lockFolder(folder, clock)).toThrow('does not say who holds it');
    expect(readFileSync(`${folder}.lock`, 'utf8')).toBe(text);
  });
});

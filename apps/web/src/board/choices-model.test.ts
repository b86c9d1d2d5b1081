import { hog } from '@flitchbook/carcass';
import type { Lock } from '@flitchbook/plan';
import { describe, expect, it } from 'vitest';
import { board, day, plan } from '../testing/two-hogs.ts';
import { speciesSides } from './board-model.ts';
import { type BarChoice, choicesOf, type PartChoice } from './choices-model.ts';
import { addEdits, applyEdits, type Edit, reachableLocks } from './edits-model.ts';

const side = (sideId: string) =>
  day.animals.flatMap(({ sides }) => sides).find((each) => each.sideId === sideId)!;
const choices = (sideId: string, locks: readonly Lock[] = []) =>
  choicesOf(hog, side(sideId), plan.sides.find((each) => each.sideId === sideId)!, locks);
const part = (sideId: string, key: string, locks?: readonly Lock[]) =>
  choices(sideId, locks).find((choice) => choice.key === key) as PartChoice;
const bar = (sideId: string, key: string) =>
  choices(sideId).find((choice) => choice.key === key) as BarChoice;

const operation = (sideId: string, partId: string, id: string): Lock => ({
  lock: 'operation',
  sideId,
  part: partId,
  operation: id,
});
const manner = (sideId: string, zone: string, id: string): Lock => ({
  lock: 'manner',
  sideId,
  zone,
  manner: id,
});
const settle = (lock: Lock): Edit => ({ edit: 'settle', lock });

describe('the choices of a side', () => {
  it('follow the plan down the tree and leave out what has one way only', () => {
    expect(choices('b-left').map(({ key }) => key)).toEqual([
      'side',
      'upper-shoulder',
      'butt',
      'lower-shoulder',
      'picnic',
      'middle-open',
      'middle-fillet-out',
      'loin-out',
      'belly-ribbed',
      'leg',
      'ham',
    ]);
    expect(choices('b-right').map(({ key }) => key)).toEqual([
      'side',
      'upper-shoulder',
      'butt',
      'lower-shoulder',
      'picnic',
      'middle-open',
      'middle-fillet-out',
      'leg',
      'ham',
    ]);
  });

  it('offer every way the tree has for the middle', () => {
    expect(part('b-left', 'middle-fillet-out').options.map(({ id }) => id)).toEqual([
      'standard-line',
      'long-bone-line',
      'porchetta-whole',
      'porchetta-front',
      'porchetta-rear',
      'fat-slab-line',
      'fat-cap-line',
      'full-rack-line',
    ]);
    expect(part('a-right', 'middle-fillet-in').options.map(({ id }) => id)).not.toContain('porchetta-front');
    expect(part('b-left', 'belly-ribbed').options).toHaveLength(8);
  });

  it('offer no porchetta without skin', () => {
    const skinned = { ...side('b-left'), facts: [] };
    const found = choicesOf(hog, skinned, plan.sides.find(({ sideId }) => sideId === 'b-left')!, []);
    const middle = found.find(({ key }) => key === 'middle-fillet-out') as PartChoice;
    expect(middle.options.map(({ id }) => id)).toEqual([
      'standard-line',
      'long-bone-line',
      'fat-slab-line',
      'fat-cap-line',
      'full-rack-line',
    ]);
  });

  it('say which way is planned, and that a zone is parted', () => {
    expect(part('b-right', 'middle-fillet-out').chosen).toBe('porchetta-whole');
    const rib = bar('b-left', 'loin-out').zones.find(({ zoneId }) => zoneId === 'rib')!;
    expect(rib.chosen.map(({ manner: id, stations }) => [id, stations])).toEqual([
      ['bone-in', 7],
      ['boned', 2],
    ]);
  });

  it('name the manners that can run all along a bar', () => {
    const loin = bar('a-right', 'loin-in');
    expect(loin.allAlong.map(({ manner: id, isNow }) => [id, isNow])).toEqual([
      ['bone-in', true],
      ['boned', false],
    ]);
    expect(loin.allAlong[1]?.locks.map((lock) => lock.lock === 'manner' && lock.zone)).toEqual([
      'blade',
      'rib',
      'lumbar',
      'sirloin',
    ]);
  });

  it('know what is locked', () => {
    expect(part('b-right', 'middle-fillet-out', day.locks).locked).toBe(true);
    expect(part('b-left', 'middle-fillet-out', day.locks).locked).toBe(false);
  });
});

describe('edits of locks', () => {
  const sides = speciesSides(board);

  it('replace a lock on the same part and leave others alone', () => {
    const edits = [
      settle(operation('b-right', 'middle-fillet-out', 'standard-line')),
      settle(operation('a-left', 'ham', 'ham-whole')),
    ];
    expect(applyEdits(sides, day.locks, edits)).toEqual([
      operation('a-left', 'ham', 'ham-whole'),
      operation('b-right', 'middle-fillet-out', 'standard-line'),
    ]);
  });

  it('free a lock', () => {
    expect(applyEdits(sides, day.locks, [{ edit: 'free', lock: day.locks[0]! }])).toEqual([]);
  });

  it('drop locks on a part that a choice above has cut off', () => {
    const front = operation('b-left', 'middle-fillet-out', 'porchetta-front');
    const ribs = manner('b-left', 'rib', 'boned');
    expect(reachableLocks(hog, side('b-left'), [front, ribs])).toEqual([front, ribs]);
    const left = operation('b-left', 'middle-open', 'leave-tenderloin');
    expect(applyEdits(sides, [front, ribs], [settle(left)])).toEqual([ribs, left]);
    const pulled = operation('b-left', 'middle-open', 'pull-tenderloin');
    const rolled = operation('b-left', 'middle-fillet-out', 'porchetta-whole');
    expect(applyEdits(sides, [ribs], [settle(pulled), settle(rolled)])).toEqual([pulled, rolled]);
  });

  it('keep only the last edit of one choice', () => {
    const first = settle(operation('a-left', 'ham', 'ham-whole'));
    const second = settle(operation('a-left', 'ham', 'ham-halves'));
    expect(addEdits([first], [second])).toEqual([second]);
  });
});

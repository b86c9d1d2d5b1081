import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../check-plan.ts';
import type { CuttingPlan } from '../cutting-plan.ts';
import { busyDay, busyPlan } from '../test-days/busy-day.ts';
import { mendPlan } from './mend-plan.ts';
import type { KnifeWork } from './on-the-block.ts';

const none = new Set<string>();
const work = (gone: readonly string[], settled: readonly string[] = []): KnifeWork => ({
  begunSides: none,
  begunSingles: none,
  gone: new Set(gone),
  settled: new Set(settled),
});

const piecesOf = ({ sides, singles }: CuttingPlan) => [
  ...sides.flatMap(({ items, bars }) => [
    ...items,
    ...bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces)),
  ]),
  ...singles,
];
const ids = piecesOf(busyPlan).map(({ pieceId }) => pieceId);
const ownerOf = (plan: CuttingPlan, pieceId: string) =>
  piecesOf(plan).find((piece) => piece.pieceId === pieceId)?.owner;
const fillOf = (plan: CuttingPlan, lineId: string) => plan.lines.find((fill) => fill.lineId === lineId);
const firstOf = (lineId: string): string => fillOf(busyPlan, lineId)?.pieceIds[0] ?? '';

describe('a plan mended after the knife', () => {
  it('cuts a spoiled chop again from what is free, and leaves the rest as it lies', () => {
    const spoiled = firstOf('chops');
    const mended = mendPlan(busyDay, busyPlan, work([spoiled]));
    expect(checkPlan(busyDay, mended)).toEqual([]);
    expect(fillOf(mended, 'chops')).toMatchObject({ asked: 4, filled: 4, shortfall: null });
    expect(ownerOf(mended, spoiled)).toBe(null);
    for (const pieceId of ids.filter((id) => id !== spoiled))
      expect(ownerOf(mended, pieceId)).toEqual(ownerOf(busyPlan, pieceId));
  });

  it('says who is short where nothing free is like it', () => {
    const mended = mendPlan(busyDay, busyPlan, work([firstOf('rack')]));
    expect(checkPlan(busyDay, mended)).toEqual([]);
    expect(fillOf(mended, 'rack')).toMatchObject({ filled: 0, shortfall: { kind: 'lost' } });
  });

  it('gives a piece back that was not spoiled after all', () => {
    const spoiled = firstOf('rack');
    const without = mendPlan(busyDay, busyPlan, work([spoiled]));
    const again = mendPlan(busyDay, without, work([]));
    expect(fillOf(again, 'rack')).toEqual(fillOf(busyPlan, 'rack'));
    expect(ownerOf(again, spoiled)).toEqual({ lineId: 'rack' });
    expect(checkPlan(busyDay, again)).toEqual([]);
  });

  it('keeps every rule of a plan, and gives nobody what is gone or packed, whatever was spoiled and packed', () => {
    fc.assert(
      fc.property(fc.subarray(ids, { maxLength: 12 }), fc.subarray(ids), (gone, packed) => {
        const settled = packed.filter((pieceId) => !gone.includes(pieceId));
        const mended = mendPlan(busyDay, busyPlan, work(gone, settled));
        expect(checkPlan(busyDay, mended)).toEqual([]);
        for (const pieceId of settled) expect(ownerOf(mended, pieceId)).toEqual(ownerOf(busyPlan, pieceId));
        for (const pieceId of gone) expect(ownerOf(mended, pieceId) ?? {}).not.toHaveProperty('lineId');
      }),
      { numRuns: 60 },
    );
  });
});

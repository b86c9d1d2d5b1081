import { beefFore, hog, lamb } from '@flitchbook/carcass';
import type { CarcassShare } from '@flitchbook/plan';
import { describe, expect, it } from 'vitest';
import { beefConflicts } from './beef-conflicts.ts';
import type { Conflict } from './conflict.ts';
import { lambConflicts } from './lamb-conflicts.ts';
import { type Ask, ask, type Carcass, dayOf, missing, planned } from './one-side.ts';
import { middleConflicts } from './pork-conflicts.ts';
import { endConflicts } from './pork-end-conflicts.ts';

const hogSide: Carcass = {
  species: hog,
  carcassGrams: 83_552,
  ribs: 15,
  facts: ['skin-on', 'head', 'feet', 'organs'],
  sides: 1,
};

const alone = new Map<string, Promise<string[]>>();

/** Whether an ask can be met at all; asked once for each carcass. */
function missingAlone(carcass: Carcass, each: Ask): Promise<string[]> {
  const key = JSON.stringify([carcass.species.id, carcass.facts, carcass.sides, carcass.lostParts, each]);
  const known = alone.get(key) ?? missing(carcass, [each]);
  alone.set(key, known);
  return known;
}

async function expectConflict(usual: Carcass, { can, cannot, never = [], ...more }: Conflict): Promise<void> {
  const carcass: Carcass = { ...usual, ...more };
  for (const asks of can) expect(await missing(carcass, asks)).toEqual([]);
  for (const asks of cannot) {
    for (const each of asks) expect(await missingAlone(carcass, each)).toEqual([]);
    expect(await missing(carcass, asks), asks.map(({ cut }) => cut).join(' and ')).not.toEqual([]);
  }
  for (const each of never) expect(await missing(carcass, [each])).toHaveLength(1);
}

const lambSide: Carcass = { species: lamb, carcassGrams: 22_000, ribs: 13, facts: ['organs'], sides: 1 };
const foreQuarter: Carcass = {
  species: beefFore,
  carcassGrams: 127_006,
  ribs: 13,
  facts: ['organs'],
  sides: 1,
};

describe('lamb cuts that take from one another', () => {
  it.each(lambConflicts.map((row) => [row.id, row.says, row] as const))('%s: %s', async (_, __, row) => {
    await expectConflict(lambSide, row);
  });
});

describe('cuts of the fore quarter of beef that take from one another', () => {
  it.each(beefConflicts.map((row) => [row.id, row.says, row] as const))('%s: %s', async (_, __, row) => {
    await expectConflict(foreQuarter, row);
  });
});

describe('pork cuts that take from one another, on one side', () => {
  it.each([...middleConflicts, ...endConflicts].map((row) => [row.id, row.says, row] as const))(
    '%s: %s',
    async (_, __, row) => {
      await expectConflict(hogSide, row);
    },
  );

  it('P37: a whole hog for one buyer leaves nothing for anyone else', async () => {
    const share: CarcassShare = {
      shareId: 'roast',
      orderId: 'roast',
      owner: 'Customer of the roast',
      speciesId: 'hog',
      size: 'whole',
      rank: 'promised',
      priceMinorPerKg: 2_000_000,
      instructions: { operations: {}, manners: {}, portions: {} },
    };
    const plan = await planned(dayOf({ ...hogSide, sides: 2 }, [ask('jowl'), ask('liver')], [share]));
    expect(plan.shares[0]?.sideIds).toHaveLength(2);
    expect(plan.lines.map(({ filled }) => filled)).toEqual([0, 0]);
  });
});

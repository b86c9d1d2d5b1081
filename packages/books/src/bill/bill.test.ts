import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accountOf, checkMovement, type Movement } from './account.ts';
import { drawBill, type PackOnBill, type ToBill } from './draw-bill.ts';
import { estimate } from './estimate.ts';
import { partOf } from './money-rules.ts';

const taxClasses = [
  { id: 'food', name: 'Food', ratePpm: 0 },
  { id: 'work', name: 'Work', ratePpm: 82_500 },
];
const chops: PackOnBill = {
  packId: 'p1',
  lineId: 'chops',
  name: 'Rib chop',
  pieces: 4,
  net: { text: '2.45', unit: 'lb' },
  price: { minor: 599, per: 'lb' },
  amountMinor: 1468,
  taxClass: 'food',
};
const smoking = {
  id: 'smoking',
  name: 'Smoking',
  by: 'piece',
  minor: 1250,
  per: 'lb',
  taxClass: 'work',
} as const;
const cutting = {
  id: 'cutting',
  name: 'Cutting and wrapping',
  by: 'hanging-weight',
  minor: 110,
  per: 'lb',
  taxClass: 'work',
} as const;
const toBill: ToBill = {
  packs: [chops],
  hanging: [],
  fees: [],
  taxClasses,
  tolerance: { overPpm: 100_000, whenOver: 'charge' },
  estimatedToMinor: {},
  hasConsent: false,
};
const bill = (change: Partial<ToBill> = {}) => {
  const drawn = drawBill({ ...toBill, ...change });
  if (!drawn.ok) throw new Error(JSON.stringify(drawn.slips));
  return drawn.value;
};

describe('a bill', () => {
  it('counts pieces and charges weight', () => {
    expect(bill().lines[0]).toMatchObject({ count: 4, amountMinor: 1468 });
  });

  it('taxes each class once, on the sum of its lines', () => {
    const drawn = bill({ fees: [{ fee: smoking, count: 3, hanging: null }] });
    // 37.50 at 8.25 percent is 3.09375.
    expect(drawn.taxes).toMatchObject([
      { taxClass: 'food', netMinor: 1468, taxMinor: 0 },
      { taxClass: 'work', netMinor: 3750, taxMinor: 309 },
    ]);
    expect(drawn).toMatchObject({ netMinor: 5218, taxMinor: 309, totalMinor: 5527 });
  });

  // 180 lb scalded with the head on and 157.5 lb skinned without it are the same meat: dressing figures of the National
  // Center for Appropriate Technology (ATTRA), answers on hog dressing.
  it('prices a share by its hanging weight, hot or cold as agreed, never the other', () => {
    const hanging = (text: string, weighed: 'hot' | 'cold') => ({
      shareId: 's',
      name: 'Half hog',
      weight: { text, unit: 'lb' as const },
      weighed,
      price: { minor: 450, per: 'lb' as const, on: 'hot' as const },
      taxClass: 'food',
    });
    expect(bill({ packs: [], hanging: [hanging('180', 'hot')] }).totalMinor).toBe(81_000);
    expect(bill({ packs: [], hanging: [hanging('157.5', 'hot')] }).totalMinor).toBe(70_875);
    expect(drawBill({ ...toBill, hanging: [hanging('180', 'cold')] })).toMatchObject({
      ok: false,
      slips: [{ at: 'weighed', value: 'cold' }],
    });
  });

  it('charges work by the weight that hangs, and refuses it where nothing does', () => {
    const hanging = { text: '92', unit: 'lb' } as const;
    expect(bill({ packs: [], fees: [{ fee: cutting, count: 1, hanging }] }).netMinor).toBe(10_120);
    expect(drawBill({ ...toBill, fees: [{ fee: cutting, count: 1, hanging: null }] })).toMatchObject({
      ok: false,
      slips: [{ at: 'fees.cutting' }],
    });
    expect(drawBill({ ...toBill, fees: [{ fee: smoking, count: 0, hanging: null }] }).ok).toBe(false);
    expect(drawBill({ ...toBill, packs: [{ ...chops, taxClass: 'wine' }] })).toMatchObject({
      ok: false,
      slips: [{ value: 'wine' }],
    });
  });

  it('keeps to the tolerance that the shop has set', () => {
    const over = { estimatedToMinor: { chops: 1200 } };
    const limit = 1320;
    expect(bill(over)).toMatchObject({
      totalMinor: 1468,
      needsConsent: false,
      over: [{ lineId: 'chops', limitMinor: limit }],
    });
    expect(bill({ ...over, tolerance: { overPpm: 100_000, whenOver: 'cap' } }).totalMinor).toBe(limit);
    const ask = { overPpm: 100_000, whenOver: 'ask' } as const;
    expect(bill({ ...over, tolerance: ask }).needsConsent).toBe(true);
    expect(bill({ ...over, tolerance: ask, hasConsent: true })).toMatchObject({
      needsConsent: false,
      totalMinor: 1468,
    });
    expect(bill({ estimatedToMinor: { chops: 1400 } }).over).toEqual([]);
  });

  it('adds up: lines to net, net and tax to the total, whatever is on it', () => {
    const pack = fc.record({ amountMinor: fc.nat(1_000_000), taxClass: fc.constantFrom('food', 'work') });
    fc.assert(
      fc.property(fc.array(pack, { maxLength: 30 }), (packs) => {
        const drawn = bill({
          packs: packs.map((each, index) => ({ ...chops, ...each, packId: `p${index}` })),
        });
        expect(drawn.netMinor).toBe(drawn.lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0));
        expect(drawn.netMinor).toBe(drawn.taxes.reduce((sum, { netMinor }) => sum + netMinor, 0));
        expect(drawn.totalMinor).toBe(
          drawn.netMinor + drawn.taxes.reduce((sum, { taxMinor }) => sum + taxMinor, 0),
        );
      }),
    );
  });
});

it('an estimate is a range around what the plan expects', () => {
  expect(estimate(1000, 2000, 100_000)).toEqual({ fromMinor: 1800, toMinor: 2200 });
  expect(partOf(5, 100_000)).toBe(1);
  expect(partOf(-5, 100_000)).toBe(-1);
});

describe('an account', () => {
  const move = (kind: Movement['kind'], amountMinor: number): Movement => ({
    kind,
    method: 'cash',
    amountMinor,
  });

  it('takes the deposit off and says who owes whom', () => {
    expect(accountOf(null, [move('deposit', 2000)])).toMatchObject({ dueMinor: -2000, paidMinor: 2000 });
    expect(accountOf(5527, [move('deposit', 2000)])).toMatchObject({ dueMinor: 3527 });
    expect(accountOf(5527, [move('deposit', 6000)])).toMatchObject({ dueMinor: -473 });
    expect(accountOf(5527, [move('deposit', 6000), move('refund', 473)])).toMatchObject({ dueMinor: 0 });
    expect(accountOf(5527, [move('credit', 527), move('payment', 5000)])).toMatchObject({ dueMinor: 0 });
  });

  it.each([
    ['a refund above what was paid', accountOf(5000, [move('payment', 1000)]), move('refund', 1001)],
    ['a payment above what is due', accountOf(5000, []), move('payment', 5001)],
    ['a payment before the bill', accountOf(null, []), move('payment', 100)],
    ['a deposit after the bill', accountOf(5000, []), move('deposit', 100)],
    ['a credit above the bill', accountOf(5000, [move('credit', 4000)]), move('credit', 1001)],
    ['nothing', accountOf(5000, []), move('payment', 0)],
    ['a negative amount', accountOf(5000, []), move('payment', -5)],
    ['half a cent', accountOf(5000, []), move('payment', 0.5)],
  ])('refuses %s', (_, account, movement) => {
    expect(checkMovement(account, movement).ok).toBe(false);
  });

  it('never goes below nothing paid, in whatever order money moves', () => {
    const movement = fc.record({
      kind: fc.constantFrom('deposit', 'payment', 'refund', 'credit'),
      amountMinor: fc.integer({ min: 1, max: 3000 }),
    });
    fc.assert(
      fc.property(fc.array(movement, { maxLength: 20 }), fc.option(fc.nat(5000)), (wishes, billed) => {
        const moved: Movement[] = [];
        for (const { kind, amountMinor } of wishes)
          if (checkMovement(accountOf(billed, moved), move(kind as Movement['kind'], amountMinor)).ok)
            moved.push(move(kind as Movement['kind'], amountMinor));
        const { paidMinor, creditedMinor } = accountOf(billed, moved);
        expect(paidMinor).toBeGreaterThanOrEqual(0);
        expect(creditedMinor).toBeLessThanOrEqual(billed ?? 0);
      }),
    );
  });
});

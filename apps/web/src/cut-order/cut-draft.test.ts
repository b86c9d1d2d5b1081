import { hog } from '@flitchbook/carcass';
import { newHoldShape } from '@flitchbook/contracts';
import { describe, expect, it } from 'vitest';
import type { Coming, OfferedCut } from '../wire/customers-client.ts';
import { alternativesTo } from './alternatives.ts';
import { bonePairOf, draftFor, nextThickness, readCutDraft, stepsFor } from './cut-draft.ts';

const units = { weightUnit: 'lb', lengthUnit: 'in' } as const;
const offers: OfferedCut[] = Object.values(hog.cuts).map(
  ({ id, name, says, portions, usual, bothSides }) => ({
    speciesId: 'hog',
    cut: id,
    name,
    says,
    portions,
    usual,
    bothSides: bothSides ?? false,
    priceMinorPerKg: 1500,
    eachGrams: 300,
    more: id === 'rib-chop' ? 2 : 5,
  }),
);
const offer = (cut: string): OfferedCut => {
  const found = offers.find((each) => each.cut === cut);
  if (!found) throw new Error(`no ${cut}`);
  return found;
};
const day = { dayId: 'd1', date: '2026-11-26', customersUntil: null, animals: [], farms: [], offers };
const given = { day, owner: 'Odile', units };

describe('an order for a cut', () => {
  it('of every cut of the hog is one the service can read, as it is usually asked for', () => {
    for (const each of offers) {
      const read = readCutDraft(draftFor(each, units), each, given);
      expect([each.cut, read.ok]).toEqual([each.cut, true]);
      if (read.ok) expect(newHoldShape.safeParse(read.value).error).toBeUndefined();
    }
  });

  it('tells the bench what was ticked, and keeps names with angle brackets and other scripts as they are', () => {
    const draft = {
      ...draftFor(offer('rib-rack'), units),
      steps: ['french', 'chine'] as const,
      pack: 2,
      note: ' <b>مرحبا</b> 🐖 ',
      instead: ['rib-chop', 'liver'],
    };
    const read = readCutDraft(draft, offer('rib-rack'), given);
    if (!read.ok) throw new Error(read.fault);
    expect(read.value.note).toBe('Please: french the bones, chine off.\nPack: 2 to a pack.\n<b>مرحبا</b> 🐖');
    expect(read.value.lines[0]?.substitutes).toEqual([
      { cut: 'rib-chop', portion: { by: 'ribs', ribs: 8 } },
      { cut: 'liver', portion: { by: 'whole' } },
    ]);
  });

  it.each([
    [{ pieces: 0 }, 'rib-chop', 'count'],
    [{ pieces: Number.NaN }, 'rib-chop', 'count'],
    [{ pieces: 100 }, 'rib-chop', 'count'],
    [{ from: 'x' }, 'slab-bacon', 'weights'],
    [{ from: '4', to: '3' }, 'slab-bacon', 'weights'],
    [{ from: '0.1', to: '3' }, 'slab-bacon', 'limits'],
    [{ ribs: 12 }, 'rib-rack', 'limits'],
    [{ loose: '-1' }, 'ground-pork', 'loose'],
  ] as const)('with %j of %s is to be put right: %s', (part, cut, fault) => {
    expect(readCutDraft({ ...draftFor(offer(cut), units), ...part }, offer(cut), given)).toEqual({
      ok: false,
      fault,
    });
  });

  it('goes by eighths of an inch, and no further than the cut allows', () => {
    const rule = { by: 'thickness', minUm: 9525, maxUm: 101_600 } as const;
    expect(nextThickness(25_400, true, rule, units)).toBe(28_575);
    expect(nextThickness(26_000, false, rule, units)).toBe(25_400);
    expect(nextThickness(101_600, true, rule, units)).toBe(101_600);
    expect(nextThickness(9525, false, rule, units)).toBe(9525);
  });

  it('offers only the steps and the bone that a cut can have', () => {
    expect(stepsFor(offer('rib-rack'))).toEqual(['french', 'chine', 'tie']);
    expect(stepsFor(offer('tenderloin'))).toEqual([]);
    expect(stepsFor(offer('fresh-belly'))).toEqual(['tie', 'score']);
    expect(bonePairOf(day, offer('rib-chop'))).toEqual({ boneIn: 'rib-chop', boneless: 'boneless-chop' });
    expect(bonePairOf(day, offer('liver'))).toBeNull();
  });
});

describe('in place of what cannot be promised', () => {
  const coming: Coming = {
    shop: { shopId: 's', name: 'S', currency: 'USD', timeZone: 'UTC', ...units },
    days: [day, { ...day, dayId: 'd2', date: '2026-12-03', offers: [{ ...offer('rib-chop'), more: 9 }] }],
  };
  const refused = (possible: number) => ({ instead: [{ lineId: 'l', asked: 4, possible, says: '' }] });

  it('is less of it, the same another day, then another cut for the same dish that is free', () => {
    const found = alternativesTo({ by: 'thickness', pieces: 4 }, offer('rib-chop'), {
      quote: refused(2),
      coming,
      dayId: 'd1',
    });
    expect(found.map(({ kind }) => kind)).toEqual(['fewer', 'day', 'other']);
  });

  it('never names what there is not enough of', () => {
    const found = alternativesTo({ by: 'thickness', pieces: 50 }, offer('rib-chop'), {
      quote: refused(0),
      coming,
      dayId: 'd1',
    });
    expect(found).toEqual([]);
  });
});

import { previewHalf, yieldModelOf } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import { answered, askedOf, freshDraft, keepDraft, keptDraft } from './half-draft.ts';

const model = yieldModelOf('hog')!;
const tools = { saw: true, kerfUm: 2000 };
const [, mixed] = model.takeHome.styles;
const begun = freshDraft(model.species, mixed!, null);
const side = {
  massMg: { mean: 41_730_500, sd: 0 },
  carcassGrams: 83_461,
  ribs: 15,
  facts: ['skin-on', 'feet'],
} as const;

function storage(): Storage {
  const kept = new Map<string, string>();
  return {
    length: 0,
    clear: () => kept.clear(),
    key: () => null,
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, value) => void kept.set(name, value),
    removeItem: (name) => void kept.delete(name),
  };
}

const question = (id: string) =>
  previewHalf(model, side, { sheet: begun.left, leaves: [] }, tools)
    .steps.flatMap(({ questions }) => questions)
    .find((each) => each.id === id)!;

describe('a half that is being put together', () => {
  it('goes on where it stopped, and lets go of what cannot be read', () => {
    const device = storage();
    keepDraft(device, 'day-1', begun);
    expect(keptDraft(device, 'day-1')).toEqual(begun);
    expect(keptDraft(device, 'day-2')).toBeNull();
    for (const text of [
      '',
      '{',
      '[]',
      '{"size":"half"}',
      JSON.stringify({ ...begun, left: { operations: 7 } }),
    ]) {
      device.setItem('flitchbook.half.day-1', text);
      expect(keptDraft(device, 'day-1')).toBeNull();
    }
    const full = {
      ...storage(),
      setItem: () => {
        throw new Error('quota');
      },
    };
    expect(() => keepDraft(full, 'day-1', begun)).not.toThrow();
    keepDraft(device, 'day-1', null);
    expect(keptDraft(device, 'day-1')).toBeNull();
  });

  it('asks for what was answered, each side by itself once they part', () => {
    const whole = { ...begun, size: 'whole', right: begun.left, sharedWith: '  ', leaves: [] } as const;
    const apart = answered(whole, 'right', question('ham'), 'ham-seamed');
    expect(apart.left.operations['ham']).toBe('ham-halves');
    expect(askedOf(apart).instructions.right?.operations['ham']).toBe('ham-seamed');
    const half = answered(begun, 'right', question('ham'), 'ham-seamed');
    expect(half.left.operations['ham']).toBe('ham-seamed');
    expect(askedOf(half).instructions).not.toHaveProperty('right');
    expect(askedOf(whole).instructions).not.toHaveProperty('sharedWith');
  });

  it('takes a thickness, and leaves a stretch in one piece', () => {
    const rib = question('rib-bone-in');
    const thick = answered(begun, 'left', rib, 'thickness-38100');
    expect(thick.left.portions['rib-bone-in']).toEqual({ by: 'thickness', um: 38_100 });
    expect(answered(thick, 'left', rib, 'left-whole').left.portions).not.toHaveProperty('rib-bone-in');
  });
});

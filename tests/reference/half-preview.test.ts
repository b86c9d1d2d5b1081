import { type CutSheet, hog, previewHalf, yieldModelOf } from '@flitchbook/carcass';
import { usualCounter, usualTools } from '@flitchbook/contracts';
import { type CuttingDay, checkDay, checkPlan } from '@flitchbook/plan';
import { planDay } from '@flitchbook/solver';
import { describe, expect, it } from 'vitest';

const model = yieldModelOf('hog')!;
const facts = ['skin-on', 'head', 'feet', 'organs'] as const;
const carcassGrams = 83_461;
const massMg = 41_730_500;

const chops: CutSheet = {
  operations: { ham: 'ham-centre', butt: 'butt-across', picnic: 'picnic-boned' },
  manners: { rib: 'bone-in', lumbar: 'bone-in', sirloin: 'bone-in', blade: 'country' },
  portions: {
    'rib-bone-in': { by: 'thickness', um: 31_750 },
    'lumbar-bone-in': { by: 'thickness', um: 25_400 },
    'sirloin-bone-in': { by: 'thickness', um: 25_400 },
    'country-ribs': { by: 'weight', fromGrams: 650, toGrams: 900 },
    'butt-bone-in': { by: 'thickness', um: 19_050 },
    'picnic-boneless': { by: 'weight', fromGrams: 1000, toGrams: 1500 },
    'ham-centre': { by: 'thickness', um: 12_700 },
    'belly-slab': { by: 'weight', fromGrams: 1360, toGrams: 1600 },
  },
};
const roasts: CutSheet = {
  operations: { 'belly-ribbed': 'leave-ribs-in', ham: 'ham-seamed', butt: 'butt-coppa' },
  manners: { rib: 'boned', lumbar: 'boned', sirloin: 'boned', blade: 'boned' },
  portions: {
    'loin-boned': { by: 'weight', fromGrams: 900, toGrams: 1400 },
    'belly-ribs-on': { by: 'ribs', ribs: 3 },
  },
};

const day: CuttingDay = {
  dayId: 'day',
  date: '2026-11-27',
  species: { hog },
  animals: [
    {
      animalId: 'hog-1',
      name: 'Hog 1',
      speciesId: 'hog',
      lostItems: [],
      sides: (['left', 'right'] as const).map((hand) => ({
        sideId: hand,
        animalId: 'hog-1',
        hand,
        massMg,
        carcassGrams,
        ribs: 15,
        facts,
        lostParts: [],
      })),
    },
  ],
  lines: [],
  shares: [
    {
      shareId: 'share',
      orderId: 'order',
      owner: 'Odalys Finch',
      speciesId: 'hog',
      size: 'whole',
      rank: 'promised',
      priceMinorPerKg: 800,
      instructions: { ...chops, right: roasts, leaves: ['leaf-fat'] },
    },
  ],
  locks: [],
  tools: usualTools,
  counter: usualCounter,
};

describe('what a customer is shown before he asks for it', () => {
  it('is what the plan then cuts for him, each side its own way: the same pieces, to the gram', async () => {
    expect(checkDay(day)).toEqual([]);
    const plan = await planDay(day, { deadlineSeconds: 5, gap: 0.01, seed: 1 });
    expect(checkPlan(day, plan)).toEqual([]);
    const alike = day.shares.map((share) => ({ ...share, instructions: chops }));
    const rules = checkPlan({ ...day, shares: alike }, plan).map(
      ({ rule, at }) => `${rule} ${at.split('.')[0]}`,
    );
    expect(new Set(rules)).toEqual(new Set(['P23 sides[right]']));
    for (const [sideId, sheet] of [
      ['left', chops],
      ['right', roasts],
    ] as const) {
      const side = plan.sides.find((each) => each.sideId === sideId)!;
      const shown = previewHalf(
        model,
        { massMg: { mean: massMg, sd: 0 }, carcassGrams, ribs: 15, facts },
        { sheet, leaves: [] },
        usualTools,
      );
      const gives = shown.steps.flatMap((step) => step.gives);
      const shownGrams = (kind: string, id: string): number =>
        gives
          .filter((line) => line.kind === kind && line.id === id)
          .reduce((sum, line) => sum + line.massMg.mean / 1000, 0);
      for (const { item, massMg: mg } of side.items)
        expect(shownGrams('item', item)).toBeCloseTo(mg / 1000, 0);
      // Saw dust, and the loss of the whole side, are told apart from what a primal gives.
      for (const [bulk, mg] of Object.entries(side.bulkMg))
        if (bulk !== 'loss') expect(shownGrams('bulk', bulk)).toBeCloseTo(mg / 1000, 0);
      const runs = side.bars.flatMap((bar) => bar.runs);
      expect(runs.length).toBeGreaterThan(3);
      for (const { stock, pieces } of runs) {
        const line = gives.find((each) => each.kind === 'stock' && each.id === stock)!;
        expect(line.pieces?.likely ?? 0).toBe(pieces.length);
        for (const piece of pieces) expect(piece.cut).toBe(line.cut);
      }
    }
  });
});

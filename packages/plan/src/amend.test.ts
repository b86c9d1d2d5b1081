import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layIn } from './amend/lay-in.ts';
import { takeOut } from './amend/take-out.ts';
import { checkPlan } from './check-plan.ts';
import type { CuttingPlan } from './cutting-plan.ts';
import type { CuttingDay, DemandLine } from './day.ts';
import { busyDay, busyPlan, inch } from './test-days/busy-day.ts';
import { layPlan } from './test-days/lay-plan.ts';
import { animal, day, line } from './test-days/test-day.ts';

const lineIds = busyDay.lines.map(({ lineId }) => lineId);
const without = (of: CuttingDay, gone: readonly string[]): CuttingDay => ({
  ...of,
  lines: of.lines.filter(({ lineId }) => !gone.includes(lineId)),
  shares: of.shares.filter(({ shareId }) => !gone.includes(shareId)),
});
const whole = { by: 'whole' } as const;
const chops = (lineId: string, um: number, pieces: number, more: Partial<DemandLine> = {}): DemandLine =>
  line({ lineId, cut: 'rib-chop', portion: { by: 'thickness', um }, ask: { pieces }, ...more });

const freeUm = (plan: CuttingPlan): number =>
  plan.sides
    .flatMap(({ bars }) => bars.flatMap(({ runs }) => runs))
    .reduce((sum, run) => sum + run.freeUm, 0);

describe('lines laid in and taken out', () => {
  it('leave a plan that the check passes, whatever goes and comes back', () => {
    fc.assert(
      fc.property(fc.subarray(lineIds), fc.boolean(), (gone, shareGoes) => {
        const shareIds = shareGoes ? ['half'] : [];
        const less = without(busyDay, [...gone, ...shareIds]);
        const thinner = takeOut(busyDay, busyPlan, { lineIds: gone, shareIds });
        expect(checkPlan(less, thinner)).toEqual([]);
        const back = { ...busyDay, shares: less.shares };
        const again = layIn({ ...back, lines: [...less.lines, ...goneLines(gone)] }, thinner, gone);
        if (again) {
          expect(checkPlan(back, again)).toEqual([]);
          const before = new Map(busyPlan.lines.map((fill) => [fill.lineId, fill.filled]));
          const due = again.lines.map(({ lineId, asked }) =>
            gone.includes(lineId) ? asked : before.get(lineId),
          );
          expect(again.lines.map(({ filled }) => filled)).toEqual(due);
        }
        // What leaves whole and is loose finds its old place free, or a better one.
        if (gone.every((lineId) => ['mince', 'liver', 'back-ribs'].includes(lineId)))
          expect(again).not.toBeNull();
      }),
      { numRuns: 60 },
    );
  });

  it('move nothing of anybody else: every piece of the plan before lies where it lay', () => {
    const late = chops('late', inch, 1);
    const after = layIn({ ...busyDay, lines: [...busyDay.lines, late] }, busyPlan, ['late']);
    const spans = (plan: CuttingPlan) =>
      plan.sides.flatMap(({ items, bars }) => [
        ...items.map(({ pieceId, owner }) => JSON.stringify([pieceId, owner])),
        ...bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces.map((p) => JSON.stringify(p)))),
      ]);
    expect(after).not.toBeNull();
    if (after) expect(spans(after)).toEqual(expect.arrayContaining(spans(busyPlan)));
  });
});

// One hog, nothing taken, its rib ends cut bone-in: what is free of them is known to the micrometre.
const bare = day({ animals: [animal({ animalId: 'a' })] });
const barePlan = layPlan(bare);
const leftRibs = barePlan.sides
  .filter(({ sideId }) => sideId === 'a-left')
  .flatMap(({ bars }) => bars.flatMap(({ runs }) => runs.filter(({ stock }) => stock === 'rib-bone-in')));

describe('chops of mixed thickness', () => {
  const kerfUm = bare.tools.kerfUm;

  it('fill a run to its last micrometre and not beyond', () => {
    expect(leftRibs).toHaveLength(1);
    const fits = Math.floor((leftRibs[0]?.usableUm ?? 0) / (inch + kerfUm));
    const ask = (pieces: number) => {
      const asking = { ...bare, lines: [chops('chops', inch, pieces, { onlyHand: 'left' })] };
      const plan = layIn(asking, barePlan, ['chops']);
      if (plan) expect(checkPlan(asking, plan)).toEqual([]);
      return plan !== null;
    };
    expect([ask(fits), ask(fits + 1)]).toEqual([true, false]);
  });

  // A hold that lapses gives length back, not pieces: thin chops come out of the room of thick ones.
  it('give length back to the run', () => {
    const thick = { ...bare, lines: [chops('thick', 2 * inch, 2, { onlyHand: 'left' })] };
    const laid = layIn(thick, barePlan, ['thick']);
    expect(laid).not.toBeNull();
    if (!laid) return;
    expect(freeUm(laid)).toBe(freeUm(barePlan) - 2 * (2 * inch + kerfUm));
    const emptied = takeOut(thick, laid, { lineIds: ['thick'], shareIds: [] });
    expect(freeUm(emptied)).toBe(freeUm(barePlan));
    expect(checkPlan(bare, emptied)).toEqual([]);
  });

  it('are laid whole or not at all', () => {
    const both = { ...bare, lines: [chops('some', inch, 2), chops('far-too-many', inch, 400)] };
    expect(layIn(both, barePlan, ['some', 'far-too-many'])).toBeNull();
  });
});

describe('pieces that leave whole', () => {
  it('come from the animal or side that is asked for, and each goes once', () => {
    const livers = {
      ...bare,
      lines: ['one', 'two'].map((lineId) => line({ lineId, cut: 'liver', portion: whole })),
    };
    expect(layIn({ ...livers, lines: livers.lines.slice(0, 1) }, barePlan, ['one'])).not.toBeNull();
    expect(layIn(livers, barePlan, ['one', 'two'])).toBeNull();
    const elsewhere = {
      ...bare,
      lines: [line({ lineId: 'one', cut: 'liver', portion: whole, onlyAnimal: 'b' })],
    };
    expect(layIn(elsewhere, barePlan, ['one'])).toBeNull();
  });
});

const goneLines = (gone: readonly string[]): DemandLine[] =>
  busyDay.lines.filter(({ lineId }) => gone.includes(lineId));

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { yieldModelOf, yieldSpecies } from '../take-home/yield-models.ts';
import type { CutSheet, HalfSide } from './cut-sheet.ts';
import { sheetOfStyle } from './cut-sheet.ts';
import { leftWhole } from './half-questions.ts';
import { type HalfPreview, previewHalf, type QuestionShown } from './preview-half.ts';
import { previewShare, type ShareWish } from './preview-share.ts';

const tools = { saw: true, kerfUm: 2000 };
const everyFact = ['skin-on', 'head', 'feet', 'organs', 'unsplit'] as const;
const nothingSaid: CutSheet = { operations: {}, manners: {}, portions: {} };
const hogs = yieldModelOf('hog')!;

/** The reference hog of the National Pork Producers Council: 184 lb, a side of 92. */
const side: HalfSide = {
  massMg: { mean: 41_730_498, sd: 1_500_000 },
  carcassGrams: 83_461,
  ribs: 15,
  facts: everyFact,
};

const seen = (sheet: CutSheet, of: HalfSide = side, leaves: readonly string[] = []): HalfPreview =>
  previewHalf(hogs, of, { sheet, leaves }, tools);

const allQuestions = (preview: HalfPreview): readonly QuestionShown[] => [
  ...preview.first,
  ...preview.steps.flatMap(({ questions }) => questions),
];
const ask = (preview: HalfPreview, id: string) => allQuestions(preview).find((each) => each.id === id)!;
const answerTo = (preview: HalfPreview, id: string, answer: string) =>
  ask(preview, id).answers.find((each) => each.id === answer)!;
const given = (lines: HalfPreview['steps'][number]['gives'], id: string) =>
  lines.find((line) => line.id === id);

/** A sheet as somebody would fill it in, one random answer after the other, to the last question. */
function filledIn(model: typeof hogs, of: HalfSide, picks: readonly number[]): CutSheet {
  let sheet = nothingSaid;
  for (const [turn, pick] of picks.entries()) {
    const question = allQuestions(previewHalf(model, of, { sheet, leaves: [] }, tools))[turn];
    const possible = question?.answers.filter(({ lacks }) => lacks.length === 0) ?? [];
    const answer = possible[pick % possible.length];
    if (!question || !answer) return sheet;
    const value = question.about === 'portions' ? answer.portion : answer.id;
    if (value === undefined || answer.id === leftWhole) continue;
    sheet = { ...sheet, [question.about]: { ...sheet[question.about], [question.id]: value } };
  }
  return sheet;
}

describe('a half cut as somebody asks', () => {
  it('gives what the side has and no more, whatever is answered, for every species', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...yieldSpecies),
        fc.array(fc.nat(30), { minLength: 1, maxLength: 9 }),
        fc.integer({ min: 0, max: 100 }),
        fc.subarray([...everyFact]),
        (speciesId, picks, spread, facts) => {
          const model = yieldModelOf(speciesId)!;
          const { min, max } = model.species.hangingGrams;
          const carcassGrams = Math.round(min + ((max - min) * spread) / 100);
          const { ribs } = model.species;
          const of: HalfSide = {
            massMg: { mean: carcassGrams * 500, sd: 0 },
            carcassGrams,
            ribs: spread % 2 === 0 ? ribs.min : ribs.max,
            facts,
          };
          const preview = previewHalf(model, of, { sheet: filledIn(model, of, picks), leaves: [] }, tools);
          const { lines, lost } = preview.home;
          const sum = [...lines, ...lost].reduce((running, { massMg }) => running + massMg.mean, 0);
          expect(Math.abs(sum - of.massMg.mean)).toBeLessThanOrEqual(lines.length + lost.length + 1);
          for (const { gives } of preview.steps) {
            for (const { pieces, usedPercent = 0, massMg } of gives) {
              expect(massMg.mean).toBeGreaterThanOrEqual(0);
              if (!pieces) continue;
              expect(pieces.low).toBeLessThanOrEqual(pieces.likely);
              expect(pieces.likely).toBeLessThanOrEqual(pieces.high);
              expect(usedPercent).toBeLessThanOrEqual(100);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('adds up in each primal, and never takes one cut away and gives it by the same answer', () => {
    const preview = seen(sheetOfStyle(hogs.species, hogs.takeHome.styles[1]!));
    const inSteps = preview.steps
      .flatMap(({ gives }) => gives)
      .reduce((sum, line) => sum + line.massMg.mean, 0);
    // The side's own loss, 0.9 of 92.1 lb, belongs to no primal.
    expect(inSteps / side.massMg.mean).toBeCloseTo(1 - 0.9 / 92.1, 4);
    for (const { answers } of allQuestions(preview))
      for (const { rulesOut, onlySo } of answers)
        expect(rulesOut.filter((cut) => onlySo.includes(cut))).toEqual([]);
  });

  it('leaves with the shop what is said, and only that', () => {
    const preview = seen(nothingSaid, side, ['leaf-fat', 'skin']);
    expect(preview.home.declined.map(({ id }) => id).sort()).toEqual(['leaf-fat', 'skin']);
  });
});

describe('both sides of an animal', () => {
  it('come to twice a half where they are cut alike, and to one of each where not', () => {
    const boned = { ...nothingSaid, manners: { rib: 'boned', lumbar: 'boned' } };
    const of = (wish: ShareWish, size: 'half' | 'whole') => previewShare(hogs, side, wish, { tools, size });
    const half = of(nothingSaid, 'half');
    const alike = of(nothingSaid, 'whole');
    expect(alike.sides.map(({ hand }) => hand)).toEqual(['alike']);
    expect(alike.boxedMg.low).toBe(2 * half.boxedMg.low);
    const apart = of({ ...nothingSaid, right: boned }, 'whole');
    expect(apart.sides.map(({ hand }) => hand)).toEqual(['left', 'right']);
    expect(apart.boxedMg.low).toBe(half.boxedMg.low + of(boned, 'half').boxedMg.low);
    // One farm asks for a cool box of 100 qt a half, everything taken; 2 for a whole are 200 of its 225 qt.
    expect(half.coolBoxes.low).toBe(1);
    expect(half.freezerLitres.low).toBeLessThan(half.freezerLitres.high);
  });
});

// The either/or of the trade, each as the forms of farms and mobile butchers state it; common practice, no source.
describe('what an answer takes away and what it leaves', () => {
  const usual = seen(nothingSaid);

  it('bone-in rib chops or back ribs', () => {
    expect(answerTo(usual, 'rib', 'bone-in').rulesOut).toContain('back-ribs');
    const boned = answerTo(usual, 'rib', 'boned');
    expect(boned.rulesOut).toEqual(expect.arrayContaining(['rib-chop', 'rib-rack', 'crown']));
    expect(boned.onlySo).toContain('back-ribs');
    expect(given(boned.gives, 'back-ribs')?.massMg.mean).toBeGreaterThan(500_000);
  });

  it('a whole tenderloin or T-bone chops, and bone-in loin chops beside the tenderloin', () => {
    expect(answerTo(usual, 'middle-open', 'leave-tenderloin').rulesOut).toContain('tenderloin');
    const pulled = answerTo(usual, 'middle-open', 'pull-tenderloin');
    expect(pulled.rulesOut).toContain('t-bone-chop');
    expect(pulled.onlySo).toEqual(expect.arrayContaining(['tenderloin', 'loin-chop']));
    // 0.8 lb a side of the 92.1 lb reference side.
    expect(given(pulled.gives, 'tenderloin')!.massMg.mean / side.massMg.mean).toBeCloseTo(0.8 / 92.1, 3);
  });

  it('porchetta of the whole middle ends chops, loin roast, slab and spareribs, and sets a rib sheet free', () => {
    const porchetta = answerTo(usual, 'middle-fillet-out', 'porchetta-whole');
    expect(porchetta.rulesOut).toEqual(
      expect.arrayContaining([
        'rib-chop',
        'boneless-chop',
        'loin-roast',
        'slab-bacon',
        'spareribs',
        'back-ribs',
      ]),
    );
    expect(porchetta.gives.map(({ id }) => id)).toContain('rib-sheet');
    expect(porchetta.rulesOut).not.toContain('tenderloin');
  });

  it('belly with its ribs in or spareribs and a slab', () => {
    const ribsIn = answerTo(usual, 'belly-ribbed', 'leave-ribs-in');
    expect(ribsIn.rulesOut).toEqual(expect.arrayContaining(['spareribs', 'slab-bacon']));
    expect(given(answerTo(usual, 'belly-ribbed', 'sheet-ribs').gives, 'spareribs')).toBeDefined();
  });

  it('centre steaks leave no whole leg; a whole leg leaves no steaks', () => {
    expect(answerTo(usual, 'ham', 'ham-centre').rulesOut).toContain('ham-whole');
    expect(answerTo(usual, 'ham', 'ham-whole').rulesOut).toContain('ham-steak');
  });

  it('says what a skinned hog cannot give any more', () => {
    const skinned = seen(nothingSaid, { ...side, facts: ['feet'] });
    expect(answerTo(skinned, 'middle-fillet-out', 'porchetta-whole').lacks).toEqual(['skin-on']);
    expect(skinned.home.lines.map(({ id }) => id)).not.toContain('skin');
    expect(skinned.home.lines.map(({ id }) => id)).not.toContain('kidney');
  });

  it('gives no rack of back ribs where there are too few ribs for one', () => {
    const boned = { ...nothingSaid, manners: { rib: 'boned' } };
    const names = (ribs: number): readonly string[] =>
      seen(boned, { ...side, ribs }).home.lines.map(({ id }) => id);
    expect(names(15)).toContain('back-ribs');
    expect(names(13)).not.toContain('back-ribs');
  });

  it('shows when chops take the whole of a loin: no roast is left of it', () => {
    const oneInch = { by: 'thickness', um: 25_400 } as const;
    const preview = seen({
      ...nothingSaid,
      manners: { rib: 'boned', lumbar: 'boned' },
      portions: { 'loin-boned': oneInch },
    });
    const chops = answerTo(preview, 'loin-boned', 'thickness-25400');
    expect(chops.rulesOut).toContain('loin-roast');
    const [line] = chops.gives;
    expect(line?.usedPercent).toBeGreaterThan(90);
    expect(line!.pieces!.low).toBeLessThan(line!.pieces!.high);
  });
});

import { hog } from '@flitchbook/carcass';
import { newOrderShape } from '@flitchbook/contracts';
import { describe, expect, it } from 'vitest';
import { portionText } from '../words/measures.ts';
import { typedGrams } from '../words/typed-weight.ts';
import { groupCuts } from './cut-groups.ts';
import { answer, answerOf, noInstructions, questionsOf } from './instructions-model.ts';
import { type LineDraft, lineFor, type OrderDraft, readDraft } from './order-draft.ts';

const us = { weightUnit: 'lb', lengthUnit: 'in' } as const;
const metric = { weightUnit: 'kg', lengthUnit: 'mm' } as const;
const cut = (id: string) => hog.cuts[id]!;
const lineOf = (id: string, part: Partial<LineDraft> = {}): LineDraft => ({
  ...lineFor(cut(id), us, { key: 'k' }),
  ...part,
});
const draftOf = (...lines: LineDraft[]): OrderDraft => ({
  owner: 'Bess Harlow',
  note: '',
  lines,
  share: null,
});
const faultsOf = (draft: OrderDraft) => {
  const read = readDraft(draft, hog, us);
  return read.ok ? [] : read.faults.map(({ field, fault }) => `${field}: ${fault}`);
};

describe('an order on the form', () => {
  it('becomes an order that the service can read', () => {
    const read = readDraft(
      draftOf(
        lineOf('rib-chop', { pieces: 6, thicknessUm: 31_750, substitute: 'loin-chop', sameAnimal: true }),
        lineOf('slab-bacon', { from: '3', to: '3.5', rank: 'wished', onlyHand: 'left' }),
        lineOf('rib-rack', { ribs: 8 }),
        lineOf('ground-pork', { loose: '10' }),
        lineOf('tenderloin'),
      ),
      hog,
      us,
    );
    if (!read.ok) throw new Error('refused');
    expect(newOrderShape.safeParse(read.order).success).toBe(true);
    expect(read.order.lines).toEqual([
      {
        cut: 'rib-chop',
        portion: { by: 'thickness', um: 31_750 },
        ask: { pieces: 6 },
        rank: 'promised',
        sameAnimal: true,
        substitutes: [{ cut: 'loin-chop', portion: { by: 'thickness', um: 31_750 } }],
      },
      // 1 lb = 453.592 37 g: NIST Handbook 44, appendix C.
      {
        cut: 'slab-bacon',
        portion: { by: 'weight', fromGrams: 1361, toGrams: 1588 },
        ask: { pieces: 1 },
        rank: 'wished',
        onlyHand: 'left',
      },
      { cut: 'rib-rack', portion: { by: 'ribs', ribs: 8 }, ask: { pieces: 1 }, rank: 'promised' },
      { cut: 'ground-pork', portion: { by: 'bulk' }, ask: { grams: 4536 }, rank: 'promised' },
      { cut: 'tenderloin', portion: { by: 'whole' }, ask: { pieces: 1 }, rank: 'promised' },
    ]);
  });

  it('takes the usual portion of a substitute that is not cut the same way', () => {
    const read = readDraft(draftOf(lineOf('rib-chop', { substitute: 'loin-roast' })), hog, us);
    expect(read.ok && read.order.lines[0]?.substitutes).toEqual([
      { cut: 'loin-roast', portion: cut('loin-roast').usual },
    ]);
  });

  it.each([
    ['nobody’s name', { ...draftOf(lineOf('tenderloin')), owner: '  ' }, ['owner: owner']],
    ['nothing ordered', draftOf(), ['add-line: empty']],
    ['a weight that is none', draftOf(lineOf('slab-bacon', { from: 'x' })), ['k-from: weight']],
    ['a weight of 0', draftOf(lineOf('ground-pork', { loose: '0' })), ['k-loose: weight']],
    ['weights the wrong way round', draftOf(lineOf('slab-bacon', { from: '4', to: '3' })), ['k-to: range']],
    [
      'a roast of half an ounce',
      draftOf(lineOf('slab-bacon', { from: '0.03', to: '3' })),
      ['k-from: limits'],
    ],
    ['a rack of 12 ribs', draftOf(lineOf('rib-rack', { ribs: 12 })), ['k-ribs: limits']],
    ['0 pieces', draftOf(lineOf('tenderloin', { pieces: 0 })), ['k-pieces: pieces']],
    ['no number of pieces', draftOf(lineOf('tenderloin', { pieces: Number.NaN })), ['k-pieces: pieces']],
    ['a thousand pieces', draftOf(lineOf('tenderloin', { pieces: 1000 })), ['k-pieces: pieces']],
  ])('refuses %s', (_, draft, faults) => {
    expect(faultsOf(draft)).toEqual(faults);
  });

  it('reads a decimal comma as a point, and nothing else that is not plain', () => {
    expect(typedGrams(' 1,5 ', metric)).toBe(1500);
    for (const text of ['1e3', '-2', '', 'NaN', '1.2.3']) expect(typedGrams(text, metric)).toBeNull();
  });

  it('starts a line the way the cut is usually asked for', () => {
    expect(lineOf('rib-rack')).toMatchObject({ by: 'ribs', ribs: 8, pieces: 1, rank: 'promised' });
    expect(lineOf('ham-steak')).toMatchObject({ by: 'thickness', thicknessUm: 12_700 });
  });
});

describe('the cuts to choose from', () => {
  const groups = groupCuts(hog, { animal: 'Animal', loose: 'Loose' });

  it('stand by the primal they come from, each once', () => {
    expect(groups.map(({ name }) => name)).toEqual(['Shoulder', 'Middle', 'Leg', 'Animal', 'Loose']);
    const ids = groups.flatMap(({ cuts }) => cuts.map(({ id }) => id));
    expect([...ids].sort()).toEqual(Object.keys(hog.cuts).sort());
    const has = (name: string) => groups.find((group) => group.name === name)!.cuts.map(({ id }) => id);
    expect(has('Shoulder')).toEqual(expect.arrayContaining(['coppa', 'blade-steak', 'front-hock']));
    expect(has('Middle')).toEqual(
      expect.arrayContaining(['back-ribs', 'porchetta', 't-bone-chop', 'tenderloin']),
    );
    expect(has('Animal')).toEqual(expect.arrayContaining(['liver', 'head']));
    expect(has('Loose')).toContain('leaf-fat');
  });
});

describe('cutting instructions', () => {
  const say = (portion: Parameters<typeof portionText>[0]) => portionText(portion, us);
  const ids = (given = noInstructions) =>
    questionsOf(hog, given, say).map(({ about, id }) => `${about}/${id}`);
  const question = (id: string, given = noInstructions) =>
    questionsOf(hog, given, say).find((each) => each.id === id)!;

  it('ask only what the answers so far lead to', () => {
    expect(ids()).toEqual([
      'operations/butt',
      'operations/picnic',
      'operations/middle-open',
      'operations/ham',
    ]);
    const pulled = answer(hog, noInstructions, question('middle-open'), 'pull-tenderloin', say);
    expect(ids(pulled)).toContain('operations/middle-fillet-out');
    const parted = answer(hog, pulled, question('middle-fillet-out', pulled), 'standard-line', say);
    expect(ids(parted)).toEqual(
      expect.arrayContaining(['manners/rib', 'manners/blade', 'operations/belly-ribbed']),
    );
    const sawn = answer(hog, parted, question('rib', parted), 'bone-in', say);
    expect(ids(sawn)).toContain('portions/rib-bone-in');
  });

  it('keep an answer, and drop those below it when it changes', () => {
    const open = question('middle-open');
    const pulled = answer(hog, noInstructions, open, 'pull-tenderloin', say);
    const rolled = answer(hog, pulled, question('middle-fillet-out', pulled), 'porchetta-whole', say);
    expect(answerOf(rolled, question('middle-fillet-out', rolled))).toBe('porchetta-whole');
    expect(answer(hog, rolled, open, 'leave-tenderloin', say).operations).toEqual({
      'middle-open': 'leave-tenderloin',
    });
    expect(answer(hog, rolled, open, '', say)).toEqual(noInstructions);
  });

  it('set the portion of a stretch', () => {
    const across = answer(hog, noInstructions, question('butt'), 'butt-across', say);
    const butt = question('butt-bone-in', across);
    const inch = butt.answers.find(({ portion }) => portion?.by === 'thickness' && portion.um === 25_400)!;
    const given = answer(hog, across, butt, inch.id, say);
    expect(given.portions).toEqual({ 'butt-bone-in': { by: 'thickness', um: 25_400 } });
    expect(answerOf(given, butt)).toBe(inch.id);
  });
});

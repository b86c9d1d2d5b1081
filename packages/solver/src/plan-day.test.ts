import { hog, type Portion } from '@flitchbook/carcass';
import {
  type CarcassShare,
  type CuttingDay,
  checkPlan,
  type DemandLine,
  goalsOf,
  type Lock,
} from '@flitchbook/plan';
import { describe, expect, it } from 'vitest';
import { planDay, type SolveOptions } from './index.ts';

const options: SolveOptions = { deadlineSeconds: 4, gap: 0.01, seed: 1 };
const inches = (count: number): Portion => ({ by: 'thickness', um: Math.round(count * 25_400) });
const whole: Portion = { by: 'whole' };

function line(
  lineId: string,
  cut: string,
  portion: Portion,
  pieces: number,
  more: Partial<DemandLine> = {},
): DemandLine {
  return {
    lineId,
    orderId: `order ${lineId}`,
    owner: `customer ${lineId}`,
    speciesId: 'hog',
    cut,
    portion,
    ask: { pieces },
    rank: 'promised',
    priceMinorPerKg: 1200,
    sameAnimal: false,
    substitutes: [],
    ...more,
  };
}

function dayOf(
  animals: number,
  lines: readonly DemandLine[],
  shares: readonly CarcassShare[] = [],
  locks: readonly Lock[] = [],
): CuttingDay {
  return {
    dayId: 'a day',
    date: '2026-11-26',
    species: { hog },
    animals: Array.from({ length: animals }, (_, nth) => ({
      animalId: `hog ${nth + 1}`,
      name: `hog ${nth + 1}`,
      speciesId: 'hog',
      lostItems: [],
      sides: (['left', 'right'] as const).map((hand) => ({
        sideId: `hog ${nth + 1} ${hand}`,
        animalId: `hog ${nth + 1}`,
        hand,
        massMg: 41_776_000,
        carcassGrams: 83_552,
        ribs: 15,
        facts: ['skin-on', 'head', 'feet', 'organs'] as const,
        lostParts: [],
      })),
    })),
    lines,
    shares,
    locks,
    tools: { saw: true, kerfUm: 1000 },
    counter: {
      itemSteps: [
        { pieces: 4, worthPercent: 100 },
        { pieces: null, worthPercent: 40 },
      ],
      stockSteps: [
        { grams: 6000, worthPercent: 100 },
        { grams: null, worthPercent: 40 },
      ],
      worthMinorPerKg: {},
      labourMinorPerHour: 3000,
    },
  };
}

async function planned(day: CuttingDay) {
  const plan = await planDay(day, options);
  expect(checkPlan(day, plan)).toEqual([]);
  expect(plan.proof?.goals).toEqual(goalsOf(day, plan));
  const filled = (lineId: string): number => plan.lines.find((fill) => fill.lineId === lineId)?.filled ?? -1;
  const shortfall = (lineId: string) => plan.lines.find((fill) => fill.lineId === lineId)?.shortfall ?? null;
  return { plan, filled, shortfall };
}

describe('facts of the animal (common practice, no source, unless said)', () => {
  it('keeps two of five tenderloins a hog and says that there are two', async () => {
    const { filled, shortfall } = await planned(dayOf(1, [line('five', 'tenderloin', whole, 5)]));
    expect(filled('five')).toBe(2);
    expect(shortfall('five')).toMatchObject({ kind: 'scarce', mostPossible: 2 });
  });

  it('gives no whole tenderloin from a side that gives T-bone chops', async () => {
    const { plan } = await planned(
      dayOf(1, [
        line('chops', 't-bone-chop', inches(1.25), 4),
        line('fillets', 'tenderloin', whole, 2, { rank: 'wished' }),
      ]),
    );
    for (const side of plan.sides) {
      const tBones = side.bars
        .flatMap((bar) => bar.runs)
        .flatMap((run) => run.pieces.filter((piece) => piece.cut === 't-bone-chop'));
      const fillets = side.items.filter((item) => item.item === 'tenderloin');
      expect(tBones.length > 0 && fillets.length > 0).toBe(false);
    }
  });

  it('pulls the tenderloin and still cuts bone-in rib chops from one side (field practice)', async () => {
    const onLeft = { onlyHand: 'left', onlyAnimal: 'hog 1' } as const;
    const { filled } = await planned(
      dayOf(1, [
        line('fillet', 'tenderloin', whole, 1, onLeft),
        line('chops', 'rib-chop', inches(1), 8, onLeft),
      ]),
    );
    expect(filled('fillet')).toBe(1);
    expect(filled('chops')).toBe(8);
  });

  // IMPS Series 400: back ribs have at least 8 ribs. Nine ribs lie in the rib end of a loin of a 15-rib hog cut after rib 2.
  it('takes back ribs only from eight boned ribs, never with chops over the same ones', async () => {
    const onLeft = { onlyHand: 'left' } as const;
    const one = await planned(
      dayOf(1, [
        line('ribs', 'back-ribs', whole, 1, onLeft),
        line('chop', 'rib-rack', { by: 'ribs', ribs: 3 }, 1, { ...onLeft, rank: 'wished' }),
      ]),
    );
    expect(one.filled('ribs')).toBe(1);
    expect(one.filled('chop')).toBe(0);
    expect(one.shortfall('chop')?.withLines).toContain('ribs');
  });

  it('gives neither slab nor chops from a side rolled for porchetta', async () => {
    const { filled, shortfall } = await planned(
      dayOf(1, [
        line('roll', 'porchetta', whole, 2, { priceMinorPerKg: 3000 }),
        line('slab', 'slab-bacon', { by: 'weight', fromGrams: 1360, toGrams: 1600 }, 1, { rank: 'wished' }),
      ]),
    );
    expect(filled('roll')).toBe(2);
    expect(filled('slab')).toBe(0);
    expect(shortfall('slab')?.says).toContain('customer roll');
  });
});

describe('the solver', () => {
  it('answers an empty day, and a day without animals', async () => {
    await planned(dayOf(1, []));
    const { shortfall } = await planned(dayOf(0, [line('chops', 'rib-chop', inches(1), 4)]));
    expect(shortfall('chops')).toMatchObject({ kind: 'impossible' });
  });

  it('cuts a half to its instructions and gives every piece of it to its owner', async () => {
    const half: CarcassShare = {
      shareId: 'half',
      orderId: 'order half',
      owner: 'customer half',
      speciesId: 'hog',
      size: 'half',
      rank: 'promised',
      priceMinorPerKg: 700,
      instructions: {
        operations: { ham: 'ham-halves' },
        manners: { rib: 'bone-in' },
        portions: { 'rib-bone-in': inches(1) },
      },
    };
    const { plan } = await planned(dayOf(1, [line('chops', 'rib-chop', inches(1), 4)], [half]));
    const [side] = plan.sides.filter(({ shareId }) => shareId === 'half');
    expect(side?.operations['ham']).toBe('ham-halves');
    expect(side?.items.every(({ owner }) => owner !== null && 'shareId' in owner)).toBe(true);
  });

  it('keeps what is locked, and what leads to it', async () => {
    const locks: Lock[] = [
      { lock: 'operation', sideId: 'hog 1 right', part: 'middle-fillet-in', operation: 'long-bone-line' },
    ];
    const { plan } = await planned(dayOf(1, [line('fillets', 'tenderloin', whole, 2)], [], locks));
    expect(plan.sides.find(({ sideId }) => sideId === 'hog 1 right')?.operations['middle-fillet-in']).toBe(
      'long-bone-line',
    );
  });

  it('takes a line from one animal when it asks for that', async () => {
    const { plan, filled } = await planned(
      dayOf(2, [line('coppas', 'coppa', whole, 2, { sameAnimal: true })]),
    );
    expect(filled('coppas')).toBe(2);
    const from = plan.sides
      .filter((side) => side.items.some(({ owner }) => owner && 'lineId' in owner))
      .map(({ animalId }) => animalId);
    expect(new Set(from).size).toBe(1);
  });

  it('gives the same plan for the same seed', async () => {
    const day = dayOf(1, [
      line('a', 'rib-chop', inches(1), 5),
      line('b', 'loin-roast', { by: 'weight', fromGrams: 900, toGrams: 1400 }, 1),
    ]);
    const { proof: first, ...left } = await planDay(day, { ...options, deadlineSeconds: 30 });
    const { proof: second, ...right } = await planDay(day, { ...options, deadlineSeconds: 30 });
    expect(left).toEqual(right);
    expect(first?.goals).toEqual(second?.goals);
  });
});

import { hog, type SlaughterFact } from '@flitchbook/carcass';
import { type CuttingDay, checkPlan, type DemandLine, type Lock } from '@flitchbook/plan';
import { describe, expect, it } from 'vitest';
import { planDay } from './index.ts';

const whole = { by: 'whole' } as const;
const ask = (cut: string, portion: DemandLine['portion'] = whole): DemandLine => ({
  lineId: cut,
  orderId: cut,
  owner: cut,
  speciesId: 'hog',
  cut,
  portion,
  ask: { pieces: 1 },
  rank: 'promised',
  priceMinorPerKg: 2000,
  sameAnimal: false,
  substitutes: [],
});

interface SideCase {
  readonly lines: readonly DemandLine[];
  readonly lostParts?: readonly string[];
  readonly facts?: readonly SlaughterFact[];
  readonly locks?: readonly Lock[];
}

const dayOf = ({
  lines,
  lostParts = [],
  facts = ['skin-on', 'head', 'feet', 'organs'],
  locks = [],
}: SideCase): CuttingDay => ({
  dayId: 'one side',
  date: '2031-03-14',
  species: { hog },
  animals: [
    {
      animalId: 'a',
      name: 'Hog 1',
      speciesId: 'hog',
      lostItems: [],
      sides: [
        {
          sideId: 'left',
          animalId: 'a',
          hand: 'left',
          massMg: 41_776_000,
          carcassGrams: 83_552,
          ribs: 15,
          facts,
          lostParts,
        },
      ],
    },
  ],
  lines,
  shares: [],
  locks,
  tools: { saw: true, kerfUm: 2000 },
  counter: {
    itemSteps: [{ pieces: null, worthPercent: 80 }],
    stockSteps: [{ grams: null, worthPercent: 80 }],
    worthMinorPerKg: {},
    labourMinorPerHour: 2000,
  },
});

async function filled(side: SideCase): Promise<string[]> {
  const day = dayOf(side);
  const plan = await planDay(day, { deadlineSeconds: 5, gap: 0.01, seed: 1 });
  expect(checkPlan(day, plan)).toEqual([]);
  return plan.lines.filter(({ filled: pieces }) => pieces > 0).map(({ lineId }) => lineId);
}

const slab = ask('slab-bacon', { by: 'weight', fromGrams: 1000, toGrams: 1300 });

// A bruise is where it is, whatever the butcher calls the piece (field practice).
describe('damage', () => {
  it.each(['belly', 'belly-ribbed', 'belly-slab', 'belly-boneless'])(
    'named as %s leaves no belly by any way of cutting, and the other side of the line is free',
    async (lost) => {
      for (const belly of [slab, ask('belly-porchetta'), ask('porchetta'), ask('belly-whole')])
        expect(await filled({ lines: [belly], lostParts: [lost] })).toEqual([]);
      expect(await filled({ lines: [ask('tenderloin')], lostParts: [lost] })).toEqual(['tenderloin']);
    },
  );

  it('to the slab leaves the spareribs, to the jowl leaves the butt, to the fillet leaves rib chops', async () => {
    expect(await filled({ lines: [ask('spareribs')], lostParts: ['belly'] })).toEqual(['spareribs']);
    expect(await filled({ lines: [ask('jowl'), ask('coppa')], lostParts: ['jowl'] })).toEqual(['coppa']);
    const chop = ask('rib-chop', { by: 'thickness', um: 25_400 });
    expect(await filled({ lines: [chop, ask('tenderloin')], lostParts: ['fillet'] })).toEqual(['rib-chop']);
  });
});

describe('facts of slaughter', () => {
  it('switch off what needs them and nothing else', async () => {
    const lines = [ask('front-foot'), ask('kidney'), ask('belly-rind'), ask('coppa')];
    expect(await filled({ lines })).toEqual(['front-foot', 'kidney', 'belly-rind', 'coppa']);
    expect(await filled({ lines, facts: ['skin-on', 'head', 'organs'] })).not.toContain('front-foot');
    expect(await filled({ lines, facts: ['skin-on', 'head', 'feet'] })).not.toContain('kidney');
    expect(await filled({ lines, facts: ['head', 'feet', 'organs'] })).not.toContain('belly-rind');
    expect(await filled({ lines, facts: [] })).toEqual(['coppa']);
  });
});

describe('what is done on request only', () => {
  it('is planned for who asks for it, and for a lock, and for nobody else', async () => {
    const operations = async (side: SideCase) =>
      (await planDay(dayOf(side), { deadlineSeconds: 5, gap: 0.01, seed: 1 })).sides[0]?.operations['side'];
    expect(await operations({ lines: [] })).toBe('break-side');
    expect(await operations({ lines: [ask('ham-long')] })).toBe('leg-long');
    const lock: Lock = { lock: 'operation', sideId: 'left', part: 'side', operation: 'shoulder-at-rib-5' };
    expect(await operations({ lines: [], locks: [lock] })).toBe('shoulder-at-rib-5');
  });
});

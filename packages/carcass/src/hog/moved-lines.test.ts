import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SideShape, shapeSide } from '../side-shape.ts';
import { hog } from './hog.ts';

const anySide = fc.record({
  carcassGrams: fc.integer({ min: 20_000, max: 250_000 }),
  ribs: fc.integer({ min: 13, max: 17 }),
});

const shaped = ({
  carcassGrams,
  ribs,
}: {
  readonly carcassGrams: number;
  readonly ribs: number;
}): SideShape =>
  shapeSide(hog, {
    sideId: 'side',
    animalId: 'hog',
    hand: 'left',
    massMg: carcassGrams * 500,
    carcassGrams,
    ribs,
    facts: ['skin-on', 'head', 'feet', 'organs'],
    lostParts: [],
  });

// Shoulder off between ribs 4 and 5: AHDB cutting specifications. The long leg takes the sirloin and the last lumbar
// vertebra: common practice, no source.
describe('a moved line', () => {
  it('gives one neighbour what the other loses: mass to the milligram, length by the bone', () => {
    fc.assert(
      fc.property(anySide, (side) => {
        const { partMassMg, bars } = shaped(side);
        const mg = (id: string): number => partMassMg.get(id) as number;
        const zoneUm = (bar: string, zone: string): number =>
          bars.get(bar)?.zones.find((each) => each.zone.id === zone)?.lengthUm ?? 0;
        for (const end of ['out', 'in', 'long-out', 'long-in']) {
          const usual = `loin-${end}`;
          expect(mg('shoulder-long') - mg('shoulder')).toBeCloseTo(mg(usual) - mg(`${usual}-from-5`), 3);
          expect(zoneUm(`${usual}-from-5`, 'blade') * 2).toBe(zoneUm(usual, 'blade'));
          expect(zoneUm(`${usual}-hipless`, 'lumbar') * 5).toBe(zoneUm(usual, 'lumbar') * 4);
          expect(zoneUm(`${usual}-hipless`, 'sirloin')).toBe(0);
        }
        expect(mg('leg-long') - mg('leg')).toBeCloseTo(mg('loin-out') - mg('loin-out-hipless'), 3);
        expect(mg('shoulder-long') + mg('middle-from-5')).toBeCloseTo(mg('shoulder') + mg('middle'), 3);
        expect(mg('middle-hipless') + mg('leg-long')).toBeCloseTo(mg('middle') + mg('leg'), 3);
      }),
    );
  });
});

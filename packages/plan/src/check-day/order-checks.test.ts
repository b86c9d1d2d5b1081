import type { Portion } from '@flitchbook/carcass';
import { describe, expect, it } from 'vitest';
import { checkDay } from '../check-day.ts';
import type { CarcassShare, CuttingDay, DemandLine } from '../day.ts';
import { animal, day, line, share } from '../test-days/test-day.ts';

const hogs = [animal({ animalId: 'a' }), animal({ animalId: 'b' })];
const withLine = (wish: Partial<DemandLine>): CuttingDay =>
  day({
    animals: hogs,
    lines: [{ ...line({ lineId: 'l', cut: 'rib-chop', portion: { by: 'thickness', um: 25_400 } }), ...wish }],
  });
const withShare = (wish: Partial<CarcassShare>): CuttingDay =>
  day({ animals: hogs, shares: [share({ shareId: 's', size: 'half', ...wish })] });
const brief = (of: CuttingDay): string[] => checkDay(of).map(({ level, at }) => `${level} ${at}`);
const instructions = (wish: Partial<CarcassShare['instructions']>): Partial<CarcassShare> => ({
  instructions: { operations: {}, manners: {}, portions: {}, ...wish },
});

describe('names and counts of a line', () => {
  it.each<[string, Partial<DemandLine>, string[]]>([
    ['an unknown cut', { cut: 'wing' }, ['error lines[0].cut']],
    ['a cut named like a built-in', { cut: 'constructor' }, ['error lines[0].cut']],
    ['an unknown species', { speciesId: 'ox' }, ['error lines[0].speciesId']],
    ['no pieces', { ask: { pieces: 0 } }, ['error lines[0].ask.pieces']],
    ['fewer than none', { ask: { pieces: -3 } }, ['error lines[0].ask.pieces']],
    ['half a piece', { ask: { pieces: 1.5 } }, ['error lines[0].ask.pieces']],
    ['10 000 pieces', { ask: { pieces: 10_000 } }, []],
    ['10 001 pieces', { ask: { pieces: 10_001 } }, ['error lines[0].ask.pieces']],
    ['not a number of pieces', { ask: { pieces: Number.NaN } }, ['error lines[0].ask.pieces']],
    ['endless pieces', { ask: { pieces: Number.POSITIVE_INFINITY } }, ['error lines[0].ask.pieces']],
    ['chops by weight', { ask: { grams: 2000 } }, ['error lines[0].ask']],
    ['mince by count', { cut: 'ground-pork', portion: { by: 'bulk' } }, ['error lines[0].ask']],
    [
      'mince of no weight',
      { cut: 'ground-pork', portion: { by: 'bulk' }, ask: { grams: 0 } },
      ['error lines[0].ask.grams'],
    ],
    ['an unknown rank', { rank: 'hoped' as never }, ['error lines[0].rank']],
    ['no price at all', { priceMinorPerKg: Number.NaN }, ['error lines[0].priceMinorPerKg']],
    ['a price below nothing', { priceMinorPerKg: -1 }, ['error lines[0].priceMinorPerKg']],
    ['a price in parts of a cent', { priceMinorPerKg: 0.5 }, ['error lines[0].priceMinorPerKg']],
    ['an animal of another day', { onlyAnimal: 'c' }, ['error lines[0].onlyAnimal']],
    ['a third hand', { onlyHand: 'middle' as never }, ['error lines[0].onlyHand']],
    ['a name of 201 letters', { owner: 'x'.repeat(201) }, ['error lines[0].owner']],
    ['no name', { owner: ' ' }, ['error lines[0].owner']],
    [
      'an unknown substitute',
      { substitutes: [{ cut: 'wing', portion: { by: 'whole' } }] },
      ['error lines[0].substitutes[0].cut'],
    ],
    [
      'loose meat for a chop',
      { substitutes: [{ cut: 'ground-pork', portion: { by: 'bulk' } }] },
      ['error lines[0].substitutes[0]'],
    ],
    [
      'a crown of one rack',
      { cut: 'crown', portion: { by: 'ribs', ribs: 8 }, ask: { pieces: 1 } },
      ['error lines[0].ask.pieces'],
    ],
    [
      'a left crown',
      { cut: 'crown', portion: { by: 'ribs', ribs: 8 }, ask: { pieces: 2 }, onlyHand: 'left' },
      ['error lines[0].onlyHand'],
    ],
    [
      'a rack for a crown',
      {
        cut: 'crown',
        portion: { by: 'ribs', ribs: 8 },
        ask: { pieces: 2 },
        substitutes: [{ cut: 'rib-rack', portion: { by: 'ribs', ribs: 8 } }],
      },
      ['error lines[0].substitutes[0]'],
    ],
    [
      'a left liver',
      { cut: 'liver', portion: { by: 'whole' }, onlyHand: 'left' },
      ['warning lines[0].onlyHand'],
    ],
    [
      'a species that is not there that day',
      { speciesId: 'plank', cut: 'slice', portion: { by: 'ribs', ribs: 1 } },
      ['warning lines[0].speciesId'],
    ],
  ])('%s', (_, wish, faults) => expect(brief(withLine(wish))).toEqual(faults));

  it('names the place, the value and what may have been meant', () => {
    expect(checkDay(withLine({ cut: 'Rib chops' }))).toEqual([
      {
        at: 'lines[0].cut',
        value: 'Rib chops',
        level: 'error',
        says: 'There is no cut of the hog called "Rib chops". Maybe "rib-chop" was meant.',
      },
    ]);
    expect(checkDay(withLine({ onlyAnimal: 'c' }))[0]).toMatchObject({
      at: 'lines[0].onlyAnimal',
      value: 'c',
      says: 'There is no animal "c" that day.',
    });
  });
});

describe('portions', () => {
  const slab = { cut: 'slab-bacon' };
  it.each<[string, Portion, Partial<DemandLine>, string[]]>([
    ['0 thick', { by: 'thickness', um: 0 }, {}, ['error lines[0].portion.um']],
    ['1 mm thick', { by: 'thickness', um: 1000 }, {}, ['error lines[0].portion.um']],
    ['300 mm thick', { by: 'thickness', um: 300_000 }, {}, ['error lines[0].portion.um']],
    ['thickness that is no number', { by: 'thickness', um: Number.NaN }, {}, ['error lines[0].portion.um']],
    [
      'endless thickness',
      { by: 'thickness', um: Number.POSITIVE_INFINITY },
      {},
      ['error lines[0].portion.um'],
    ],
    ['half a micrometre', { by: 'thickness', um: 25_400.5 }, {}, ['error lines[0].portion.um']],
    ['the thinnest', { by: 'thickness', um: 9525 }, {}, []],
    ['the thickest', { by: 'thickness', um: 101_600 }, {}, []],
    [
      'three ribs thick, where two are the most',
      { by: 'ribs', ribs: 3 },
      {},
      ['error lines[0].portion.ribs'],
    ],
    ['a whole one of what is cut to size', { by: 'whole' }, {}, ['error lines[0].portion.by']],
    ['a way nobody knows', { by: 'slice' } as never, {}, ['error lines[0].portion.by']],
    [
      'a weight range turned round',
      { by: 'weight', fromGrams: 1600, toGrams: 1360 },
      slab,
      ['error lines[0].portion.toGrams'],
    ],
    [
      'a weight below the least',
      { by: 'weight', fromGrams: 200, toGrams: 1600 },
      slab,
      ['error lines[0].portion.fromGrams'],
    ],
    [
      'a weight that is no number',
      { by: 'weight', fromGrams: Number.NaN, toGrams: 1600 },
      slab,
      ['error lines[0].portion.fromGrams'],
    ],
  ])('%s', (_, portion, wish, faults) => expect(brief(withLine({ ...wish, portion }))).toEqual(faults));

  it('suspects inches behind 1 mm and kilograms behind 2 g', () => {
    expect(checkDay(withLine({ portion: { by: 'thickness', um: 1000 } }))[0]?.says).toBe(
      'Bone-in rib chop is cut 9.525 mm to 101.6 mm thick, in whole micrometres; got 1000. Maybe inches were keyed as millimetres.',
    );
    expect(
      checkDay(withLine({ ...slab, portion: { by: 'weight', fromGrams: 2, toGrams: 3000 } }))[0]?.says,
    ).toMatch(/Maybe kilograms were keyed as grams\.$/);
  });
});

describe('ids', () => {
  const chop = line({ lineId: 'l', cut: 'rib-chop', portion: { by: 'thickness', um: 25_400 } });
  it('are there once', () => {
    expect(brief(day({ animals: [hogs[0]!, hogs[0]!] }))).toEqual([
      'error animals[1].animalId',
      'error animals[1].sides[0].sideId',
      'error animals[1].sides[1].sideId',
    ]);
    expect(brief(day({ animals: hogs, lines: [chop, { ...chop, ask: { pieces: 2 } }] }))).toEqual([
      'error lines[1].lineId',
    ]);
    const half = share({ shareId: 's', size: 'half' });
    expect(brief(day({ animals: hogs, shares: [half, half] }))).toEqual(['error shares[1].shareId']);
  });

  it('warns of a line that was keyed twice', () => {
    expect(brief(day({ animals: hogs, lines: [chop, { ...chop, lineId: 'm' }] }))).toEqual([
      'warning lines[1]',
    ]);
    expect(
      brief(day({ animals: hogs, lines: [chop, { ...chop, lineId: 'm', orderId: 'another' }] })),
    ).toEqual([]);
  });
});

describe('shares', () => {
  it.each<[string, Partial<CarcassShare>, string[]]>([
    ['a third of an animal', { size: 'third' as never }, ['error shares[0].size']],
    [
      'an unknown part',
      instructions({ operations: { wing: 'pluck' } }),
      ['error shares[0].instructions.operations.wing'],
    ],
    [
      'a bar broken down',
      instructions({ operations: { 'belly-slab': 'sheet-ribs' } }),
      ['error shares[0].instructions.operations.belly-slab'],
    ],
    [
      'an unknown operation',
      instructions({ operations: { butt: 'pluck' } }),
      ['error shares[0].instructions.operations.butt'],
    ],
    [
      'an unknown zone',
      instructions({ manners: { wing: 'boned' } }),
      ['error shares[0].instructions.manners.wing'],
    ],
    [
      'an unknown manner',
      instructions({ manners: { rib: 'country' } }),
      ['error shares[0].instructions.manners.rib'],
    ],
    [
      'an unknown stock',
      instructions({ portions: { wing: { by: 'whole' } } }),
      ['error shares[0].instructions.portions.wing'],
    ],
    [
      'a loin in slices of 1 mm',
      instructions({ portions: { 'loin-boned': { by: 'thickness', um: 1000 } } }),
      ['error shares[0].instructions.portions.loin-boned.um'],
    ],
    [
      'a boned loin by ribs',
      instructions({ portions: { 'loin-boned': { by: 'ribs', ribs: 2 } } }),
      ['error shares[0].instructions.portions.loin-boned.by'],
    ],
    ['racks of 8', instructions({ portions: { 'rib-bone-in': { by: 'ribs', ribs: 8 } } }), []],
    ['an animal of another day', { onlyAnimal: 'c' }, ['error shares[0].onlyAnimal']],
    ['a species that is not there', { speciesId: 'plank' }, ['warning shares[0].speciesId']],
  ])('%s', (_, wish, faults) => expect(brief(withShare(wish))).toEqual(faults));
});

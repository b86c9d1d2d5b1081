import { describe, expect, it } from 'vitest';
import { cutList } from '../cut-list.ts';
import { busyDay, busyPlan } from '../test-days/busy-day.ts';
import { byPerson, byStation } from './arrange.ts';
import { packRows } from './pack-rows.ts';

const shown = { lengthUnit: 'in', weightUnit: 'lb' } as const;
const list = cutList(busyDay, busyPlan, shown);
const steps = list.animals.flatMap(({ sides, singles }) => [
  ...sides.flatMap((side) => side.steps),
  ...(singles ? [singles] : []),
]);
const pieceIds = steps.flatMap(({ pieces }) => pieces.map(({ pieceId }) => pieceId)).toSorted();

describe('the cut list, arranged', () => {
  it('wraps together what is alike and for one owner, and says where it lies', () => {
    const rib = steps.find(({ action }) => action === 'Rib: Bone-in rib chops and racks');
    expect(packRows(rib ?? { pieces: [] }, shown)).toMatchObject([
      {
        name: 'Rack of pork',
        size: '3 ribs',
        count: 1,
        place: '~5 3/8 in to ~9 1/4 in',
        owner: 'Customer rack',
      },
      { name: 'Bone-in rib chop', size: '1 in', count: 4, owner: 'Customer chops' },
    ]);
  });

  it.each([
    ['pack', steps.flatMap((step) => packRows(step, shown).flatMap((row) => row.pieceIds))],
    [
      'station',
      byStation(list).flatMap((station) =>
        station.steps.flatMap(({ step }) => step.pieces.map(({ pieceId }) => pieceId)),
      ),
    ],
    ['person', byPerson(list, shown).flatMap(({ rows }) => rows.flatMap((row) => row.pieceIds))],
  ])('has every piece of the day once by %s', (_, ids) => {
    expect(ids.toSorted()).toEqual(pieceIds);
  });

  it('keeps the tasks in bench order and puts the counter last', () => {
    const actions = byStation(list).map(({ action }) => action);
    expect(actions.indexOf('Clear the cavity')).toBeLessThan(actions.indexOf('Pull the tenderloin'));
    expect(actions.indexOf('Pull the tenderloin')).toBeLessThan(actions.indexOf('Gather lean trim'));
    expect(byPerson(list, shown).at(-1)?.owner).toBe(null);
  });
});

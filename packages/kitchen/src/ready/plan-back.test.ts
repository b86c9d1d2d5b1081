import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../dates.ts';
import { pickUps } from './pick-ups.ts';
import { planBack, type ReadyJob, type ReadyPlan, type Room } from './plan-back.ts';

const kg = 1_000_000;
const room = (roomId: string, holdsKg: number): Room => ({
  roomId,
  name: `The ${roomId}`,
  holdsMg: holdsKg * kg,
});
const ham: ReadyJob = {
  jobId: 'hams',
  name: 'Holiday ham',
  pieces: 60,
  pieceMg: 8 * kg,
  readyBy: '2026-12-22',
  cutOn: '2026-07-20',
  steps: [
    { what: 'thaw', roomId: null, days: 3 },
    { what: 'cure', roomId: 'tank', days: 14 },
    { what: 'smoke', roomId: 'smoker', days: 2 },
  ],
  waitsIn: 'freezer',
  keepsFreshDays: 4,
  keepsReadyDays: 40,
};
const rooms = (tank: number, smoker = 1000, freezer = 1000) => [
  room('tank', tank),
  room('smoker', smoker),
  room('freezer', freezer),
];

function plan(held: readonly Room[], jobs: readonly ReadyJob[]): ReadyPlan {
  const made = planBack(held, jobs);
  if ('faults' in made) throw new Error(JSON.stringify(made.faults));
  return made;
}

describe('case 33: Christmas hams are planned in July', () => {
  it('goes back from the feast: 60 hams in a tank of 20 are three waves, frozen until they start', () => {
    const { waves, late } = plan(rooms(160), [ham]);
    expect(late).toEqual([]);
    expect(waves.map(({ start, pieces }) => [start, pieces])).toEqual([
      ['2026-11-05', 20],
      ['2026-11-19', 20],
      ['2026-12-03', 20],
    ]);
    expect(waves.map(({ ready }) => ready).at(-1)).toBe('2026-12-22');
    expect(waves.every(({ frozenFrom }) => frozenFrom === '2026-07-20')).toBe(true);
  });

  it('says which room is full: the freezer that holds fewer legs than wait', () => {
    const { waves, late } = plan(rooms(160, 1000, 320), [ham]);
    expect(waves.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(40);
    expect(late[0]).toMatchObject({
      pieces: 20,
      says: expect.stringMatching(/No room: The tank, The freezer/),
    });
  });

  it('says when the animal comes too late', () => {
    const { waves, late } = plan(rooms(1000), [{ ...ham, cutOn: '2026-12-10' }]);
    expect(waves).toEqual([]);
    expect(late[0]!.says).toMatch(/would have to start on 2026-12-03, and are cut on 2026-12-10/);
  });

  it('starts fresh what is cut in time, and freezes nothing', () => {
    const { waves } = plan(rooms(1000), [{ ...ham, cutOn: '2026-12-01' }]);
    expect(waves).toMatchObject([{ start: '2026-12-03', frozenFrom: null, pieces: 60 }]);
  });

  it('keeps what is due first out of the way of what is due last', () => {
    const easter = { ...ham, jobId: 'easter', pieces: 20, readyBy: '2026-12-10' };
    const { waves, late } = plan(rooms(160), [easter, { ...ham, pieces: 20 }]);
    expect(late).toEqual([]);
    expect(waves.map(({ jobId, start }) => [jobId, start])).toEqual([
      ['easter', '2026-11-19'],
      ['hams', '2026-12-03'],
    ]);
  });

  it.each([
    ['a day that does not exist', { readyBy: '2026-12-32' }, 'jobs[0].readyBy'],
    ['no pieces', { pieces: 0 }, 'jobs[0].pieces'],
    ['a piece of no weight', { pieceMg: 0 }, 'jobs[0].pieceMg'],
    ['an unknown room', { waitsIn: 'garage' }, 'jobs[0].waitsIn'],
    ['a negative step', { steps: [{ what: 'cure', roomId: 'tank', days: -1 }] }, 'jobs[0].steps[0].days'],
  ])('refuses %s by name', (_, change, at) => {
    const made = planBack(rooms(1), [{ ...ham, ...change }]);
    expect('faults' in made && made.faults.map((fault) => fault.at)).toContain(at);
  });

  it('never overfills a room, never is late, and loses no piece', () => {
    const job = fc.record({
      pieces: fc.integer({ min: 1, max: 30 }),
      pieceMg: fc.integer({ min: 1, max: 9 }),
      wait: fc.integer({ min: 0, max: 40 }),
      cure: fc.integer({ min: 1, max: 9 }),
    });
    fc.assert(
      fc.property(
        fc.array(job, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 5, max: 60 }),
        (made, holdsMg) => {
          const jobs = made.map(
            ({ pieces, pieceMg, wait, cure }, index): ReadyJob => ({
              ...ham,
              jobId: `job-${index}`,
              pieces,
              pieceMg,
              cutOn: '2026-11-01',
              readyBy: addDays('2026-11-01', wait),
              steps: [{ what: 'cure', roomId: 'tank', days: cure }],
            }),
          );
          const held = ['tank', 'freezer'].map((roomId) => ({ roomId, name: roomId, holdsMg }));
          const { waves, late } = plan(held, jobs);
          for (const { jobId, pieces, readyBy } of jobs) {
            const own = waves.filter((wave) => wave.jobId === jobId);
            const missing = late.filter((entry) => entry.jobId === jobId);
            expect([...own, ...missing].reduce((sum, entry) => sum + entry.pieces, 0)).toBe(pieces);
            for (const { ready, start } of own) expect(ready <= readyBy && start >= '2026-11-01').toBe(true);
          }
          for (let day = '2026-11-01'; day < '2026-12-31'; day = addDays(day, 1)) {
            const mass = (wave: (typeof waves)[number]): number =>
              wave.pieces * jobs.find(({ jobId }) => jobId === wave.jobId)!.pieceMg;
            const cured = waves.filter(({ steps }) =>
              steps.some(({ from, until }) => from <= day && day < until),
            );
            const frozen = waves.filter(
              ({ frozenFrom, start }) => frozenFrom !== null && frozenFrom <= day && day < start,
            );
            for (const inside of [cured, frozen])
              expect(inside.reduce((sum, wave) => sum + mass(wave), 0)).toBeLessThanOrEqual(holdsMg);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('cases 75 and 76: fresh now, smoked later', () => {
  const lines = [
    { lineId: 'chops', name: 'Chops', ready: '2026-11-27', state: 'fresh', keepsDays: 4 },
    { lineId: 'bacon', name: 'Bacon', ready: '2026-12-20', state: 'cured', keepsDays: 30 },
    { lineId: 'sausage', name: 'Sausage', ready: '2026-12-20', state: 'frozen', keepsDays: 90 },
  ] as const;

  it('makes one pick-up when all is there, and freezes what would not keep', () => {
    expect(pickUps(lines, 'one')).toEqual([
      { date: '2026-12-20', lineIds: ['chops', 'bacon', 'sausage'], frozen: ['chops'] },
    ]);
  });

  it('or two, and freezes nothing', () => {
    expect(pickUps(lines, 'as-ready')).toEqual([
      { date: '2026-11-27', lineIds: ['chops'], frozen: [] },
      { date: '2026-12-20', lineIds: ['bacon', 'sausage'], frozen: [] },
    ]);
  });

  it('has none for an empty order', () => expect(pickUps([], 'one')).toEqual([]));
});

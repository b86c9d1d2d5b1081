import type { Tools } from '@flitchbook/carcass';
import type { ItemPiece, SidePlan } from '../cutting-plan.ts';
import type { PairedRun } from './bar-rules.ts';
import { grossMg, stationsIn } from './measure-bar.ts';
import { kerfOf } from './piece-rules.ts';
import { massSlackMg, type Note } from './plan-rules.ts';
import { addTo, type Expected, lossBulk, shareOfList } from './walk-operations.ts';

/** Adds what boning and trimming a run sets free. A rack needs its stations in one stretch: ribs of two stretches are two racks. */
export function addReleases({ bar, measured }: PairedRun, expected: Expected): void {
  for (const stretch of measured.stretches) {
    const { manner } = stretch;
    const shares = [manner.keeps, ...manner.releases];
    for (const release of manner.releases) {
      const massMg = grossMg(stretch) * shareOfList(release, shares);
      const enough = release.stationsMin === undefined || stationsIn(stretch) >= release.stationsMin;
      if (release.to === 'item' && enough) expected.items.push({ item: release.id, from: bar, massMg });
      else addTo(expected.bulkMg, enough ? release.id : (release.otherwise ?? release.id), massMg);
    }
    expected.minutesTo += manner.minutes;
  }
}

const differs = (planned: number, expected: number): boolean =>
  !(Math.abs(planned - expected) <= massSlackMg);

/** Masses along a run are spread evenly over its usable length; what the saw takes goes to the loss. */
export function checkRunMasses(
  { at, planned, measured }: PairedRun,
  tools: Tools,
  expected: Expected,
  note: Note,
): void {
  const mgPerUm = measured.usableUm === 0 ? 0 : measured.keptMg / measured.usableUm;
  let takenMg = 0;
  for (const [index, piece] of planned.pieces.entries()) {
    const pieceMg = (piece.toUm - piece.fromUm) * mgPerUm;
    const kerfMg = kerfOf(measured, tools) * mgPerUm;
    addTo(expected.bulkMg, lossBulk, kerfMg);
    takenMg += pieceMg + kerfMg;
    if (differs(piece.massMg, pieceMg))
      note(
        'P14',
        `${at}.pieces[${index}].massMg`,
        `is ${piece.massMg} mg, its length gives ${Math.round(pieceMg)} mg`,
      );
  }
  const freeMg = measured.keptMg - takenMg;
  if (differs(planned.freeMg, freeMg))
    note('P14', `${at}.freeMg`, `is ${planned.freeMg} mg, ${Math.round(freeMg)} mg is left`);
}

/** Items that operations and manners give, each matched with one of the plan's. */
export function checkItems(planned: SidePlan, expected: Expected, at: string, note: Note): void {
  const unmatched = new Map<string, ItemPiece[]>();
  const keyOf = (item: { readonly item: string; readonly from: string }): string =>
    JSON.stringify([item.item, item.from]);
  for (const item of planned.items) unmatched.set(keyOf(item), [...(unmatched.get(keyOf(item)) ?? []), item]);
  for (const wanted of expected.items) {
    const found = unmatched.get(keyOf(wanted))?.shift();
    if (!found) note('P11', `${at}.items`, `${wanted.item} comes from ${wanted.from} and is not in the plan`);
    else if (differs(found.massMg, wanted.massMg))
      note(
        'P14',
        `${at}.items[${found.pieceId}].massMg`,
        `is ${found.massMg} mg, its share is ${Math.round(wanted.massMg)} mg`,
      );
  }
  for (const item of [...unmatched.values()].flat())
    note(
      'P11',
      `${at}.items[${item.pieceId}]`,
      `${item.item} from ${item.from} is not given by the operations and manners chosen`,
    );
}

export function checkBulk(planned: SidePlan, expected: Expected, at: string, note: Note): void {
  for (const bulk of new Set([...Object.keys(planned.bulkMg), ...expected.bulkMg.keys()])) {
    const plannedMg = Object.hasOwn(planned.bulkMg, bulk) ? (planned.bulkMg[bulk] ?? 0) : 0;
    const expectedMg = expected.bulkMg.get(bulk) ?? 0;
    if (differs(plannedMg, expectedMg))
      note('P14', `${at}.bulkMg.${bulk}`, `is ${plannedMg} mg, the shares give ${Math.round(expectedMg)} mg`);
  }
}

/** The books of one side: nothing of it vanishes and nothing is added. */
export function checkSum(planned: SidePlan, at: string, note: Note): void {
  const runs = planned.bars.flatMap((bar) => bar.runs);
  const masses = [
    ...planned.items.map((item) => item.massMg),
    ...runs.flatMap((run) => [run.freeMg, ...run.pieces.map((piece) => piece.massMg)]),
    ...Object.values(planned.bulkMg),
  ];
  const sum = masses.reduce((running, massMg) => running + massMg, 0);
  if (sum !== planned.massMg)
    note('P13', `${at}.massMg`, `is ${planned.massMg} mg, its pieces and bulk add up to ${sum} mg`);
}

export function checkMinutes(planned: SidePlan, expected: Expected, at: string, note: Note): void {
  const slack = 1e-6;
  if (planned.minutes < expected.minutesFrom - slack || planned.minutes > expected.minutesTo + slack)
    note(
      'P25',
      `${at}.minutes`,
      `is ${planned.minutes}, the choices take ${expected.minutesFrom} to ${expected.minutesTo}`,
    );
}

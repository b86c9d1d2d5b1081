import type { CutSheet, Portion, Tools } from '@flitchbook/carcass';
import type { CuttingPlan, ShareFill, SidePlan } from '../cutting-plan.ts';
import { type CarcassShare, sheetFor } from '../day.ts';
import type { PairedRun } from './bar-rules.ts';
import { type DayIndex, entryOf } from './day-index.ts';
import type { Holding } from './holdings.ts';
import { checkShortfall, samePortion } from './line-rules.ts';
import { kerfOf, pitchOf } from './piece-rules.ts';
import type { Note } from './plan-rules.ts';

function sizeFault(index: DayIndex, share: CarcassShare, sideIds: readonly string[]): string | undefined {
  if (sideIds.length === 0) return undefined;
  if (new Set(sideIds).size < sideIds.length) return 'has a side twice';
  const sides = sideIds.map((sideId) => index.sides.get(sideId));
  if (sides.some((side) => side === undefined)) return 'has a side that the day does not have';
  const animals = new Set(sides.map((side) => side?.animal.animalId));
  if (animals.size > 1) return 'has sides of more than one animal';
  if (share.size === 'half' && sideIds.length !== 1) return `is a half and has ${sideIds.length} sides`;
  if (share.size === 'whole' && sideIds.length !== 2)
    return `is a whole animal and has ${sideIds.length} side`;
  const [first] = sides;
  if (first?.animal.speciesId !== share.speciesId)
    return `is of ${first?.animal.speciesId}, ${share.speciesId} is asked`;
  if (share.onlyAnimal !== undefined && first.animal.animalId !== share.onlyAnimal)
    return `is of animal ${first.animal.animalId}, ${share.onlyAnimal} is asked`;
  return undefined;
}

function checkFill(index: DayIndex, plan: CuttingPlan, fill: ShareFill, note: Note): void {
  const at = `shares[${fill.shareId}]`;
  const share = index.shares.get(fill.shareId);
  if (!share) {
    note('P21', at, 'is not a share of the day');
    return;
  }
  const size = sizeFault(index, share, fill.sideIds);
  if (size) note('P21', at, size);
  checkShortfall(index, fill.sideIds.length === 0, fill.shortfall, at, (_, place, says) =>
    note('P21', place, says),
  );
  const marked = plan.sides.filter((side) => side.shareId === fill.shareId).map((side) => side.sideId);
  if (marked.length !== fill.sideIds.length || marked.some((sideId) => !fill.sideIds.includes(sideId)))
    note(
      'P21',
      at,
      `lists sides ${fill.sideIds.join(', ') || 'none'}; marked with it are ${marked.join(', ') || 'none'}`,
    );
}

/** Every share's account of itself, and which sides are taken. */
export function checkShares(index: DayIndex, plan: CuttingPlan, note: Note): void {
  const seen = new Set<string>();
  for (const fill of plan.shares) {
    if (seen.has(fill.shareId)) note('P21', `shares[${fill.shareId}]`, 'stands in the plan twice');
    seen.add(fill.shareId);
    checkFill(index, plan, fill, note);
  }
  for (const shareId of index.shares.keys())
    if (!seen.has(shareId)) note('P21', `shares[${shareId}]`, 'is missing from the plan');
  for (const side of plan.sides)
    if (side.shareId !== null && !seen.has(side.shareId))
      note('P21', `sides[${side.sideId}].shareId`, `share ${side.shareId} is not in the plan`);
}

/** Who a piece must be for by the side it comes from: a share, or nobody's share. */
export function checkShareOwns(
  index: DayIndex,
  plan: CuttingPlan,
  holdings: readonly Holding[],
  note: Note,
): void {
  const wholeShareOf = new Map<string, string>();
  for (const side of plan.sides) {
    if (side.shareId !== null && index.shares.get(side.shareId)?.size === 'whole')
      wholeShareOf.set(side.animalId, side.shareId);
  }
  for (const { at, owner, side, animalId } of holdings) {
    const must = side ? side.shareId : (wholeShareOf.get(animalId) ?? null);
    const is = owner && 'shareId' in owner ? owner.shareId : null;
    if (must !== null && is !== must)
      note('P22', at, `belongs with share ${must} and is for ${owner ? 'someone else' : 'the counter'}`);
    if (must === null && is !== null) note('P22', at, `is for share ${is}, which does not have it`);
  }
}

/** Length that one more portion would need; undefined when the run can't give such a portion at all. */
function needsUm(portion: Portion, { measured }: PairedRun, tools: Tools): number | undefined {
  const kerfUm = kerfOf(measured, tools);
  const pitchUm = pitchOf(measured);
  if (portion.by === 'ribs') return pitchUm === 0 ? undefined : portion.ribs * pitchUm;
  if (measured.tool === 'saw' && !tools.saw) return undefined;
  if (portion.by === 'thickness') return portion.um + kerfUm;
  if (portion.by !== 'weight' || measured.keptMg <= 0) return undefined;
  // A length is set in steps of 50 um: one that fits by less than a step may not fit once it is set.
  return (portion.fromGrams * 1000 * measured.usableUm) / measured.keptMg + 50 + kerfUm;
}

interface SideAsked {
  readonly share: CarcassShare;
  readonly sheet: CutSheet;
}

function checkPortions(
  { share, sheet }: SideAsked,
  runs: readonly PairedRun[],
  tools: Tools,
  note: Note,
): void {
  for (const run of runs) {
    const { planned, at } = run;
    const portion = entryOf(sheet.portions, planned.stock);
    if (!portion) {
      if (planned.pieces.length > 0)
        note('P23', at, `share ${share.shareId} does not say how to cut ${planned.stock}: it stays whole`);
      continue;
    }
    if (planned.pieces.some((piece) => !samePortion(piece.portion, portion)))
      note('P23', at, `share ${share.shareId} asks for another portion of ${planned.stock}`);
    const needs = needsUm(portion, run, tools);
    if (needs !== undefined && planned.freeUm >= needs)
      note('P23', at, `${planned.freeUm} um are free and one more portion takes ${Math.ceil(needs)} um`);
  }
}

/** What the owner of a share's side said about cutting it. */
export function checkInstructions(
  index: DayIndex,
  side: SidePlan,
  runs: readonly PairedRun[],
  note: Note,
): void {
  const share = side.shareId === null ? undefined : index.shares.get(side.shareId);
  if (!share) return;
  const at = `sides[${side.sideId}]`;
  const sheet = sheetFor(share, index.sides.get(side.sideId)?.side.hand);
  for (const [part, operation] of Object.entries(side.operations)) {
    const said = entryOf(sheet.operations, part);
    if (said !== undefined && said !== operation)
      note('P23', `${at}.operations.${part}`, `is "${operation}", share ${share.shareId} says "${said}"`);
  }
  for (const bar of side.bars) {
    for (const { zone, manner } of bar.runs.flatMap((run) => run.stretches)) {
      const said = entryOf(sheet.manners, zone);
      if (said !== undefined && said !== manner)
        note(
          'P23',
          `${at}.bars[${bar.bar}]`,
          `zone ${zone} is cut "${manner}", share ${share.shareId} says "${said}"`,
        );
    }
  }
  checkPortions({ share, sheet }, runs, index.day.tools, note);
}

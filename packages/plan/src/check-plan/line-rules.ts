import type { Portion } from '@flitchbook/carcass';
import type { CuttingPlan, LineFill, Shortfall } from '../cutting-plan.ts';
import { acceptable, askedGrams, askedPieces, type DemandLine, type Wanted, wantsBothSides } from '../day.ts';
import { type DayIndex, entryOf } from './day-index.ts';
import { type Holding, heldByLines } from './holdings.ts';
import type { Note } from './plan-rules.ts';

/** One portion is the other: same kind, same figures. */
export function samePortion(left: Portion, right: Portion): boolean {
  if (left.by === 'thickness') return right.by === 'thickness' && left.um === right.um;
  if (left.by === 'ribs') return right.by === 'ribs' && left.ribs === right.ribs;
  if (left.by === 'weight')
    return right.by === 'weight' && left.fromGrams === right.fromGrams && left.toGrams === right.toGrams;
  return left.by === right.by;
}

export function checkIds(holdings: readonly Holding[], note: Note): void {
  const seen = new Set<string>();
  for (const { pieceId, at } of holdings) {
    if (seen.has(pieceId)) note('P16', at, `piece ${pieceId} stands in the plan twice`);
    seen.add(pieceId);
  }
}

function answers({ what }: Holding, wanted: Wanted, index: DayIndex, speciesId: string): boolean {
  const species = entryOf(index.day.species, speciesId);
  const cut = species && entryOf(species.cuts, wanted.cut);
  if (!cut) return false;
  if (what.kind === 'item')
    return (
      wanted.portion.by === 'whole' &&
      cut.sources.some((source) => source.from === 'item' && source.id === what.item)
    );
  const fits = wanted.cut === what.cut && samePortion(wanted.portion, what.portion);
  return fits && cut.sources.some((source) => source.from === 'stock' && source.id === what.stock);
}

/** Each piece that is for a line is one the line would take. */
export function checkMatches(index: DayIndex, holdings: readonly Holding[], note: Note): void {
  for (const holding of holdings) {
    const { owner, at } = holding;
    if (!owner || !('lineId' in owner)) continue;
    const line = index.lines.get(owner.lineId);
    const speciesId = index.animals.get(holding.animalId)?.animal.speciesId;
    if (!line) note('P17', at, `is for line ${owner.lineId}, which the day does not have`);
    else if (line.speciesId !== speciesId)
      note('P17', at, `is of species ${speciesId}, line ${line.lineId} asks for ${line.speciesId}`);
    else if (!acceptable(line).some((wanted) => answers(holding, wanted, index, line.speciesId)))
      note('P17', at, `is not what line ${line.lineId} asks for: ${line.cut}`);
  }
}

/** Animal and hand. A single piece belongs to no side, so a wish for left or right can't be broken by it. */
function checkWishes(index: DayIndex, line: DemandLine, held: readonly Holding[], note: Note): void {
  const animals = new Set(held.map((holding) => holding.animalId));
  if (line.sameAnimal && animals.size > 1)
    note('P18', `lines[${line.lineId}]`, `wants one animal and has pieces of ${animals.size}`);
  for (const { at, animalId, side } of held) {
    if (line.onlyAnimal !== undefined && animalId !== line.onlyAnimal)
      note('P18', at, `is of animal ${animalId}, line ${line.lineId} wants ${line.onlyAnimal}`);
    const hand = side && index.sides.get(side.sideId)?.side.hand;
    if (line.onlyHand !== undefined && hand && hand !== line.onlyHand)
      note('P18', at, `is of a ${hand} side, line ${line.lineId} wants ${line.onlyHand}`);
  }
}

/** A crown of two racks: each rack has its fellow from the other side of the animal. */
function checkPairs(index: DayIndex, line: DemandLine, held: readonly Holding[], note: Note): void {
  if (!wantsBothSides(index.day, line)) return;
  const odds = new Map<string, number>();
  for (const { animalId, side } of held) {
    const hand = side && index.sides.get(side.sideId)?.side.hand;
    odds.set(animalId, (odds.get(animalId) ?? 0) + (hand === 'left' ? 1 : -1));
  }
  for (const [animalId, odd] of odds)
    if (odd !== 0)
      note('P26', `lines[${line.lineId}]`, `has a piece of animal ${animalId} without its fellow`);
}

/** A shortfall is there exactly when something is short, and names only what the day has. */
export function checkShortfall(
  index: DayIndex,
  short: boolean,
  shortfall: Shortfall | null,
  at: string,
  note: Note,
): void {
  if (short && shortfall === null) note('P19', at, 'is short and gives no reason');
  if (!short && shortfall !== null) note('P19', at, 'is filled and gives a reason for being short');
  const unknownLine = shortfall?.withLines.find((lineId) => !index.lines.has(lineId));
  if (unknownLine !== undefined) note('P19', at, `blames line ${unknownLine}, which the day does not have`);
  const unknownShare = shortfall?.withShares.find((shareId) => !index.shares.has(shareId));
  if (unknownShare !== undefined)
    note('P19', at, `blames share ${unknownShare}, which the day does not have`);
}

function checkFill(line: DemandLine, fill: LineFill, held: readonly Holding[], note: Note): void {
  const at = `lines[${line.lineId}]`;
  const loose = 'grams' in line.ask;
  const asked = loose ? askedGrams(line) : askedPieces(line);
  const filled = loose ? fill.bulkGrams : held.length;
  if (fill.asked !== asked) note('P19', `${at}.asked`, `is ${fill.asked}, the line asks for ${asked}`);
  if (fill.filled !== filled) note('P19', `${at}.filled`, `is ${fill.filled}, the plan has ${filled} for it`);
  if (filled > asked) note('P19', at, `gets ${filled} and asks for ${asked}`);
  if (loose && held.length > 0) note('P19', at, `asks for loose weight and gets ${held.length} pieces`);
  if (!loose && fill.bulkGrams > 0)
    note('P19', at, `asks for pieces and gets ${fill.bulkGrams} g of loose meat`);
  const listed = new Set(fill.pieceIds);
  const owned = new Set(held.map((holding) => holding.pieceId));
  const strange = fill.pieceIds.find((pieceId) => !owned.has(pieceId));
  const left = held.find((holding) => !listed.has(holding.pieceId));
  if (listed.size < fill.pieceIds.length) note('P19', `${at}.pieceIds`, 'lists a piece twice');
  if (strange !== undefined) note('P19', `${at}.pieceIds`, `lists ${strange}, which is not for it`);
  if (left) note('P19', `${at}.pieceIds`, `does not list ${left.pieceId}, which is for it`);
}

/** Every line's account of itself. */
export function checkLines(
  index: DayIndex,
  plan: CuttingPlan,
  holdings: readonly Holding[],
  note: Note,
): void {
  const held = heldByLines(holdings);
  const seen = new Set<string>();
  for (const fill of plan.lines) {
    const at = `lines[${fill.lineId}]`;
    const line = index.lines.get(fill.lineId);
    if (seen.has(fill.lineId)) note('P19', at, 'stands in the plan twice');
    if (!line) note('P19', at, 'is not a line of the day');
    seen.add(fill.lineId);
    if (!line) continue;
    const pieces = held.get(line.lineId) ?? [];
    checkFill(line, fill, pieces, note);
    checkShortfall(index, fill.filled < fill.asked, fill.shortfall, at, note);
    checkWishes(index, line, pieces, note);
    checkPairs(index, line, pieces, note);
  }
  for (const lineId of index.lines.keys())
    if (!seen.has(lineId)) note('P19', `lines[${lineId}]`, 'is missing from the plan');
}

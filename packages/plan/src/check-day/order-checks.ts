import type { Cut, Species } from '@flitchbook/carcass';
import { entryOf } from '../check-plan/day-index.ts';
import { show } from '../check-plan/plan-shape.ts';
import type { CarcassShare, CuttingDay, DemandLine, Wanted } from '../day.ts';
import { checkInstructions } from './choice-checks.ts';
import { type DayNotes, dayLimits } from './day-faults.ts';
import { checkPortion } from './portion-checks.ts';
import { weightSlip } from './slips.ts';

/** @returns the cut, where species and cut are known and the portion could be looked at */
function checkWanted(notes: DayNotes, at: string, wanted: Wanted, species: Species): Cut | undefined {
  if (!notes.known(`${at}.cut`, wanted.cut, species.cuts, `cut of the ${species.name.toLowerCase()}`))
    return undefined;
  const cut = entryOf(species.cuts, wanted.cut);
  if (cut) checkPortion(notes, `${at}.portion`, wanted.portion, cut);
  return cut;
}

function checkAsk(notes: DayNotes, at: string, line: DemandLine): void {
  const loose = line.portion.by === 'bulk';
  if ('grams' in line.ask) {
    if (!loose)
      notes.error(
        `${at}.ask`,
        line.ask,
        'Pieces are ordered by count, not by weight.',
        'a weight for each piece was meant.',
      );
    const fits = (grams: number): boolean => grams >= 100 && grams <= 50_000;
    notes.whole(`${at}.ask.grams`, line.ask.grams, 1, dayLimits.grams, weightSlip(line.ask.grams, fits));
    return;
  }
  if (loose) notes.error(`${at}.ask`, line.ask, 'Loose meat is ordered by weight, not by count.');
  notes.whole(`${at}.ask.pieces`, line.ask.pieces, 1, dayLimits.pieces);
}

function checkOwner(
  notes: DayNotes,
  at: string,
  order: DemandLine | CarcassShare,
  day: CuttingDay,
): Species | undefined {
  notes.text(`${at}.orderId`, order.orderId);
  notes.text(`${at}.owner`, order.owner);
  notes.oneOf(`${at}.rank`, order.rank, ['promised', 'wished']);
  notes.whole(`${at}.priceMinorPerKg`, order.priceMinorPerKg, 0, dayLimits.priceMinorPerKg);
  const animal =
    order.onlyAnimal === undefined
      ? undefined
      : day.animals.find(({ animalId }) => animalId === order.onlyAnimal);
  if (order.onlyAnimal !== undefined && !animal)
    notes.error(
      `${at}.onlyAnimal`,
      order.onlyAnimal,
      `There is no animal ${show(order.onlyAnimal)} that day.`,
    );
  if (animal && animal.speciesId !== order.speciesId)
    notes.error(
      `${at}.onlyAnimal`,
      order.onlyAnimal,
      `Animal ${show(animal.animalId)} is a ${animal.speciesId}.`,
    );
  if (!notes.known(`${at}.speciesId`, order.speciesId, day.species, 'species')) return undefined;
  if (!day.animals.some(({ speciesId }) => speciesId === order.speciesId))
    notes.warn(
      `${at}.speciesId`,
      order.speciesId,
      `No ${order.speciesId} is there that day, so nothing of it can be filled.`,
      'another day was meant.',
    );
  return entryOf(day.species, order.speciesId);
}

/** An item that no side gives has no left and right. */
function onlySingle(species: Species, cut: Cut): boolean {
  const fromSides = Object.values(species.parts).flatMap((part) =>
    part.kind === 'bar'
      ? part.zones.flatMap((zone) => zone.manners.flatMap((manner) => manner.releases.map(({ id }) => id)))
      : part.operations.flatMap((operation) => operation.outputs.map(({ id }) => id)),
  );
  return cut.sources.every((source) => source.from === 'item' && !fromSides.includes(source.id));
}

/** A crown is a piece of each side: two pieces for each, and no wish for a hand. */
function checkBothSides(notes: DayNotes, at: string, line: DemandLine, cut: Cut): void {
  if ('pieces' in line.ask && line.ask.pieces % 2 !== 0)
    notes.error(
      `${at}.ask.pieces`,
      line.ask.pieces,
      `${cut.name} is made of a piece from each side: ask for two pieces for each.`,
    );
  if (line.onlyHand !== undefined)
    notes.error(`${at}.onlyHand`, line.onlyHand, `${cut.name} is made of a piece from each side.`);
}

function checkLine(notes: DayNotes, at: string, line: DemandLine, day: CuttingDay): void {
  notes.text(`${at}.lineId`, line.lineId);
  notes.trueOrFalse(`${at}.sameAnimal`, line.sameAnimal);
  checkAsk(notes, at, line);
  notes.atMost(`${at}.substitutes`, line.substitutes, dayLimits.substitutes);
  const species = checkOwner(notes, at, line, day);
  if (line.onlyHand !== undefined) notes.oneOf(`${at}.onlyHand`, line.onlyHand, ['left', 'right']);
  if (!species) return;
  const cut = checkWanted(notes, at, line, species);
  if (cut?.bothSides) checkBothSides(notes, at, line, cut);
  if (cut && line.onlyHand !== undefined && onlySingle(species, cut))
    notes.warn(
      `${at}.onlyHand`,
      line.onlyHand,
      `${cut.name} belongs to no side, so the wish for one changes nothing.`,
    );
  for (const [index, substitute] of line.substitutes.entries()) {
    const place = `${at}.substitutes[${index}]`;
    const other = checkWanted(notes, place, substitute, species);
    if (cut && other && cut.bothSides !== other.bothSides)
      notes.error(
        place,
        substitute.cut,
        'What is made of both sides and what is not cannot stand for one another.',
      );
    if (substitute.portion.by === 'bulk' || line.portion.by === 'bulk')
      notes.error(place, substitute.cut, 'Loose meat neither stands in for anything nor is replaced.');
  }
}

const sameAsk = (line: DemandLine): string =>
  JSON.stringify([
    line.orderId,
    line.owner,
    line.speciesId,
    line.cut,
    line.portion,
    line.ask,
    line.rank,
    line.onlyAnimal,
    line.onlyHand,
  ]);

function checkRepeats(notes: DayNotes, lines: readonly DemandLine[]): void {
  const first = new Map<string, number>();
  for (const [index, line] of lines.entries()) {
    const earlier = first.get(sameAsk(line));
    if (earlier === undefined) first.set(sameAsk(line), index);
    else
      notes.warn(
        `lines[${index}]`,
        line.lineId,
        `The line asks for the same as lines[${earlier}] of the same order.`,
        'it was keyed twice.',
      );
  }
}

/** Lines of orders. */
export function checkLines(notes: DayNotes, day: CuttingDay): void {
  notes.atMost('lines', day.lines, dayLimits.lines);
  for (const [index, line] of day.lines.entries()) checkLine(notes, `lines[${index}]`, line, day);
  notes.unique(
    day.lines.map(({ lineId }, index) => ({ at: `lines[${index}].lineId`, id: lineId })),
    'line',
  );
  checkRepeats(notes, day.lines);
}

/** Sides and whole animals reserved by one customer. */
export function checkShares(notes: DayNotes, day: CuttingDay): void {
  notes.atMost('shares', day.shares, dayLimits.shares);
  for (const [index, share] of day.shares.entries()) {
    const at = `shares[${index}]`;
    notes.text(`${at}.shareId`, share.shareId);
    notes.oneOf(`${at}.size`, share.size, ['half', 'whole']);
    const species = checkOwner(notes, at, share, day);
    if (!species) continue;
    const { instructions, size } = share;
    checkInstructions(notes, `${at}.instructions`, instructions, species);
    if (instructions.right && size === 'half')
      notes.error(
        `${at}.instructions.right`,
        size,
        'A half has one side: only a whole animal is cut two ways.',
      );
  }
  notes.unique(
    day.shares.map(({ shareId }, index) => ({ at: `shares[${index}].shareId`, id: shareId })),
    'share',
  );
}

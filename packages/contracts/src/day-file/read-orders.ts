import type { Cut, CutSheet, Portion, Species } from '@flitchbook/carcass';
import {
  type CarcassShare,
  type CuttingDay,
  counterWorth,
  type DemandLine,
  type Instructions,
  type Wanted,
} from '@flitchbook/plan';
import { fieldPath } from '../field-path.ts';
import { maybeName } from '../near-name.ts';
import type { LineParts, OrderParts, PortionParts, ShareParts } from './day-file-shape.ts';
import type { DayFileNotes } from './day-notes.ts';
import { type DayFileOrder, entryOf, knownSpecies } from './parsed-day.ts';
import { readPrice } from './quantities.ts';
import { findAnimal } from './read-animals.ts';

/** What lines and shares are read against. */
export interface Bench {
  readonly notes: DayFileNotes;
  readonly currency: string;
  /** the day without its orders */
  readonly day: CuttingDay;
}

interface Whose {
  readonly orderId: string;
  readonly owner: string;
}

const tables = { item: 'items', stock: 'stocks', bulk: 'bulks' } as const;

/** The species that is meant where none is named: one of the day's that has the cut, or any. */
function speciesMeant({ day }: Bench, cut?: string): string {
  const booked = day.animals.map(({ speciesId }) => speciesId);
  const all = [...booked, ...Object.keys(knownSpecies)];
  const has = (id: string): boolean =>
    cut !== undefined && entryOf(entryOf(knownSpecies, id)?.cuts ?? {}, cut) !== undefined;
  return all.find(has) ?? all.find((id) => entryOf(knownSpecies, id)) ?? '';
}

function findCut({ notes }: Bench, species: Species | undefined, cut: string, at: string): Cut | undefined {
  const found = species && entryOf(species.cuts, cut);
  if (species && !found) {
    const near = maybeName(cut, Object.keys(species.cuts)) || ' The command "cuts" lists them all.';
    notes.error(`${at}.cut`, `No cut of the ${species.name.toLowerCase()} is called that.${near}`);
  }
  return found;
}

/** The portion as written; undefined when nothing is written. */
function readPortion(notes: DayFileNotes, parts: PortionParts, at: string): Portion | undefined {
  const { thickness, ribs, weight } = parts;
  if ([thickness, ribs, weight].filter((given) => given !== undefined).length > 1) {
    notes.error(at, 'Give one of thickness, ribs and weight');
  }
  if (thickness) {
    if (thickness.remark) notes.warn(`${at}.thickness`, thickness.remark);
    return { by: 'thickness', um: thickness.value };
  }
  if (ribs !== undefined) return { by: 'ribs', ribs };
  return weight && { by: 'weight', ...weight.value };
}

function readPriceAt({ notes, currency }: Bench, text: string, at: string): number {
  const price = readPrice(text, currency);
  if ('value' in price) return price.value;
  notes.error(at, price.says);
  return 0;
}

function usualPrice({ day }: Bench, speciesId: string, cut: Cut | undefined): number {
  const source = cut?.sources[0];
  return source ? counterWorth(day, speciesId, tables[source.from], source.id) : 0;
}

/** A person counts crowns, the plan counts the pieces that they are made of. */
function readAsk(
  { notes }: Bench,
  parts: LineParts,
  cut: Cut,
  loose: boolean,
  at: string,
): DemandLine['ask'] {
  if (loose) {
    if (parts.count !== undefined)
      notes.error(`${at}.count`, 'This is sold by weight: give an amount such as "5 lb"');
    else if (!parts.amount) notes.error(`${at}.amount`, 'Is missing: this is sold by weight, such as "5 lb"');
    return { grams: parts.amount?.value ?? 1 };
  }
  if (parts.amount) {
    notes.error(
      `${at}.amount`,
      'This is sold by the piece: give a count, and a weight such as "3-4 lb" for each piece',
    );
  }
  return { pieces: (parts.count ?? 1) * (cut.bothSides ? 2 : 1) };
}

function readOnlyAnimal({ notes, day }: Bench, wanted: string | undefined, at: string) {
  if (wanted === undefined) return {};
  const animal = findAnimal(notes, day.animals, wanted, `${at}.onlyAnimal`);
  return animal ? { onlyAnimal: animal.animalId } : {};
}

function readWanted(
  bench: Bench,
  species: Species | undefined,
  parts: LineParts['substitutes'][number],
  at: string,
): Wanted {
  const cut = findCut(bench, species, parts.cut, at);
  const portion = readPortion(bench.notes, parts, at) ?? cut?.usual ?? { by: 'whole' };
  return { cut: parts.cut, portion };
}

function readLine(bench: Bench, parts: LineParts, lineId: string, at: string, whose: Whose): DemandLine {
  const speciesId = parts.species ?? speciesMeant(bench, parts.cut);
  const species = entryOf(knownSpecies, speciesId);
  const { cut, portion } = readWanted(bench, species, parts, at);
  const known = species && entryOf(species.cuts, cut);
  return {
    lineId,
    ...whose,
    speciesId,
    cut,
    portion,
    // An unknown cut has been noted: what it is asked by says nothing more.
    ask: known ? readAsk(bench, parts, known, portion.by === 'bulk', at) : { pieces: 1 },
    rank: parts.rank,
    priceMinorPerKg:
      parts.price === undefined
        ? usualPrice(bench, speciesId, known)
        : readPriceAt(bench, parts.price, `${at}.price`),
    sameAnimal: parts.sameAnimal,
    ...readOnlyAnimal(bench, parts.onlyAnimal, at),
    ...(parts.onlyHand === undefined ? {} : { onlyHand: parts.onlyHand }),
    substitutes: parts.substitutes.map((entry, index) =>
      readWanted(bench, species, entry, `${at}.substitutes[${index}]`),
    ),
  };
}

type SheetParts = NonNullable<NonNullable<ShareParts['instructions']>['right']>;

function readSheet(bench: Bench, { operations, manners, portions }: SheetParts, at: string): CutSheet {
  const inPortions = `${at}.portions`;
  const read = Object.entries(portions).flatMap(([stock, portion]) => {
    const place = fieldPath(inPortions, stock);
    const found = readPortion(bench.notes, portion, place);
    if (!found)
      bench.notes.error(
        place,
        'Give one of thickness, ribs and weight; a stock that is not named is left whole',
      );
    return found ? [[stock, found] as const] : [];
  });
  return { operations, manners, portions: Object.fromEntries(read) };
}

function readInstructions(bench: Bench, parts: ShareParts['instructions'], at: string): Instructions {
  if (!parts) return { operations: {}, manners: {}, portions: {} };
  const { right, leaves, sharedWith, ...left } = parts;
  return {
    ...readSheet(bench, left, at),
    ...(right === undefined ? {} : { right: readSheet(bench, right, `${at}.right`) }),
    ...(leaves === undefined ? {} : { leaves }),
    ...(sharedWith === undefined ? {} : { sharedWith }),
  };
}

function readShare(bench: Bench, parts: ShareParts, shareId: string, at: string, whose: Whose): CarcassShare {
  return {
    shareId,
    ...whose,
    speciesId: parts.species ?? speciesMeant(bench),
    size: parts.size,
    rank: parts.rank,
    priceMinorPerKg: readPriceAt(bench, parts.price, `${at}.price`),
    ...readOnlyAnimal(bench, parts.onlyAnimal, at),
    instructions: readInstructions(bench, parts.instructions, `${at}.instructions`),
  };
}

const sameWish = ({ lineId: _, ask: __, ...wish }: DemandLine): string => JSON.stringify(wish);

const together = (first: DemandLine['ask'], second: DemandLine['ask']): DemandLine['ask'] =>
  'pieces' in first && 'pieces' in second
    ? { pieces: first.pieces + second.pieces }
    : { grams: ('grams' in first ? first.grams : 0) + ('grams' in second ? second.grams : 0) };

interface PlacedLine {
  readonly line: DemandLine;
  readonly at: string;
}

/** Lines of one order that ask for the same are one line. Those with an id of their own are somebody's record and stay. */
function joinRepeats(
  notes: DayFileNotes,
  order: OrderParts,
  lines: readonly PlacedLine[],
): readonly PlacedLine[] {
  const joined: PlacedLine[] = [];
  const first = new Map<string, number>();
  lines.forEach((placed, index) => {
    if (order.lines[index]?.id !== undefined) {
      joined.push(placed);
      return;
    }
    const wish = sameWish(placed.line);
    const earlier = first.get(wish);
    const before = earlier === undefined ? undefined : joined[earlier];
    if (earlier === undefined || !before) {
      first.set(wish, joined.length);
      joined.push(placed);
      return;
    }
    const ask = together(before.line.ask, placed.line.ask);
    joined[earlier] = { ...before, line: { ...before.line, ask } };
    const sum = 'pieces' in ask ? `${ask.pieces} pieces` : `${ask.grams} g`;
    notes.warn(placed.at, `Asks for the same as ${before.at}: both are taken as one line of ${sum}`);
  });
  return joined;
}

export interface ReadOrders {
  readonly orders: readonly DayFileOrder[];
  readonly lines: readonly DemandLine[];
  readonly shares: readonly CarcassShare[];
}

/** The orders of the file; ids that are not given are made from the place. */
export function readOrders(bench: Bench, parts: readonly OrderParts[]): ReadOrders {
  const lines: DemandLine[] = [];
  const shares: CarcassShare[] = [];
  const placeOfOrder = new Map<string, string>();
  const orders = parts.map((order, turn): DayFileOrder => {
    const at = `orders[${turn}]`;
    const orderId = order.id ?? `order-${turn + 1}`;
    const earlier = placeOfOrder.get(orderId);
    if (earlier === undefined) placeOfOrder.set(orderId, at);
    else
      bench.notes.error(
        order.id === undefined ? at : `${at}.id`,
        `The order "${orderId}" stands at ${earlier} already`,
      );
    if (order.lines.length + order.shares.length === 0) bench.notes.warn(at, 'The order asks for nothing');
    const whose = { orderId, owner: order.owner };
    const placed = order.lines.map((line, index) => {
      const place = `${at}.lines[${index}]`;
      return {
        at: place,
        line: readLine(bench, line, line.id ?? `${orderId}-line-${index + 1}`, place, whose),
      };
    });
    const own = joinRepeats(bench.notes, order, placed);
    for (const { line, at: place } of own) {
      bench.notes.place(`lines[${lines.length}]`, place);
      lines.push(line);
    }
    const mine = order.shares.map((share, index) => {
      const place = `${at}.shares[${index}]`;
      bench.notes.place(`shares[${shares.length + index}]`, place);
      return readShare(bench, share, share.id ?? `${orderId}-share-${index + 1}`, place, whose);
    });
    shares.push(...mine);
    return {
      orderId,
      owner: order.owner,
      note: order.note,
      lineIds: own.map(({ line }) => line.lineId),
      shareIds: mine.map(({ shareId }) => shareId),
    };
  });
  return { orders, lines, shares };
}

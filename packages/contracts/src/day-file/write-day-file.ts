import type { Cut, CutSheet, Portion } from '@flitchbook/carcass';
import {
  type CarcassShare,
  type Counter,
  type DayAnimal,
  type DemandLine,
  inchesText,
  type Lock,
  type Wanted,
} from '@flitchbook/plan';
import type { z } from 'zod';
import type { dayFileShape } from './day-file-shape.ts';
import {
  type DayFileOrder,
  entryOf,
  knownSpecies,
  type ParsedDay,
  usualCounter,
  usualTools,
  type WeighedAnimal,
} from './parsed-day.ts';
import { moneyText, type Read, readLength, readPrice, readWeight, readWeightRange } from './quantities.ts';

/** A day file as JSON. */
export type DayFile = z.input<typeof dayFileShape>;
type Entry<List extends 'animals' | 'orders' | 'locks'> = NonNullable<DayFile[List]>[number];
type LineEntry = NonNullable<Entry<'orders'>['lines']>[number];
type ShareEntry = NonNullable<Entry<'orders'>['shares']>[number];
type PortionEntry = Pick<LineEntry, 'thickness' | 'ribs' | 'weight'>;

type Writable = Omit<ParsedDay, 'warnings'>;

/** The first text that reads back to exactly this value; the last one always does. */
function firstExact(texts: readonly string[], isIt: (text: string) => boolean): string {
  const text = texts.find(isIt);
  if (text === undefined)
    throw new RangeError(`no text of a day file reads as exactly this: ${texts.at(-1)}`);
  return text;
}

const readsAs =
  <T>(read: (text: string) => Read<T>, isIt: (value: T) => boolean) =>
  (text: string): boolean => {
    const found = read(text);
    return 'value' in found && found.remark === undefined && isIt(found.value);
  };

const poundGrams = 453.59237;

/** Texts of the amounts and prices of one shop, in its own units where these are exact. */
class Texts {
  readonly #shop: Writable['shop'];

  constructor(shop: Writable['shop']) {
    this.#shop = shop;
  }

  length(um: number): string {
    const texts = [...(this.#shop.lengthUnit === 'in' ? [inchesText(um, 8)] : []), `${um / 1000} mm`];
    return firstExact(
      texts,
      readsAs(readLength, (read) => read === um),
    );
  }

  #pounds(grams: number): readonly string[] {
    return this.#shop.weightUnit === 'lb' ? [`${Math.round((grams / poundGrams) * 4) / 4}`] : [];
  }

  weight(grams: number): string {
    const texts = [...this.#pounds(grams).map((pounds) => `${pounds} lb`), `${grams} g`];
    return firstExact(
      texts,
      readsAs(readWeight, (read) => read === grams),
    );
  }

  range(fromGrams: number, toGrams: number): string {
    const pounds = this.#pounds(fromGrams).map((from) => `${from}-${this.#pounds(toGrams)[0]} lb`);
    const isIt = readsAs(readWeightRange, (read) => read.fromGrams === fromGrams && read.toGrams === toGrams);
    return firstExact([...pounds, `${fromGrams}-${toGrams} g`], isIt);
  }

  price(minorPerKg: number): string {
    const { currency, weightUnit } = this.#shop;
    const perPound = Math.round((minorPerKg * poundGrams) / 1000);
    const texts = [
      ...(weightUnit === 'lb' ? [`${moneyText(perPound, currency)}/lb`] : []),
      `${moneyText(minorPerKg, currency)}/kg`,
    ];
    const read = (text: string): Read<number> => readPrice(text, currency);
    return firstExact(
      texts,
      readsAs(read, (value) => value === minorPerKg),
    );
  }

  money(minor: number): string {
    return moneyText(minor, this.#shop.currency);
  }

  portion(portion: Portion): PortionEntry {
    switch (portion.by) {
      case 'thickness':
        return { thickness: this.length(portion.um) };
      case 'ribs':
        return { ribs: portion.ribs };
      case 'weight':
        return { weight: this.range(portion.fromGrams, portion.toGrams) };
      case 'whole':
      case 'bulk':
        return {};
    }
  }
}

const same = (left: unknown, right: unknown): boolean => JSON.stringify(left) === JSON.stringify(right);

function animalEntry(animal: DayAnimal, weighed: WeighedAnimal | undefined, turn: number): Entry<'animals'> {
  const { animalId, name, speciesId, lostItems } = animal;
  if (!weighed) throw new RangeError(`animal ${animalId} was never weighed`);
  const [first] = animal.sides;
  const sides = animal.sides.map(({ sideId, hand, lostParts }) => {
    const weight = weighed.sides.find((side) => side.sideId === sideId)?.weight;
    return {
      hand,
      ...(sideId === `${animalId}-${hand}` ? {} : { id: sideId }),
      ...(weight ? { weight: `${weight.text} ${weight.unit}` } : {}),
      ...(lostParts.length === 0 ? {} : { lostParts }),
    };
  });
  return {
    ...(animalId === `animal-${turn + 1}` ? {} : { id: animalId }),
    name,
    species: speciesId,
    hanging: `${weighed.hanging.text} ${weighed.hanging.unit}`,
    hotOrCold: weighed.hotOrCold,
    ...(first && first.ribs !== entryOf(knownSpecies, speciesId)?.ribs.usual ? { ribs: first.ribs } : {}),
    ...(first && first.facts.length > 0 ? { facts: first.facts } : {}),
    ...(sides.every((side) => Object.keys(side).length === 1) ? {} : { sides }),
    ...(lostItems.length === 0 ? {} : { lostItems }),
  };
}

const cutOf = (speciesId: string, cut: string): Cut | undefined =>
  entryOf(entryOf(knownSpecies, speciesId)?.cuts ?? {}, cut);

/** What is left out of an order is what the reader takes by itself. */
class OrderWriter {
  readonly #texts: Texts;
  readonly #animals: readonly DayAnimal[];

  constructor(texts: Texts, animals: readonly DayAnimal[]) {
    this.#texts = texts;
    this.#animals = animals;
  }

  #species(speciesId: string): { readonly species?: string } {
    const meant = this.#animals.length > 0 && this.#animals.every((animal) => animal.speciesId === speciesId);
    return meant ? {} : { species: speciesId };
  }

  #wanted({ cut, portion }: Wanted, speciesId: string) {
    const usual = cutOf(speciesId, cut)?.usual;
    return { cut, ...(same(usual, portion) ? {} : this.#texts.portion(portion)) };
  }

  #line(line: DemandLine, id: { readonly id?: string }): LineEntry {
    const { speciesId, ask, rank, onlyAnimal, onlyHand, substitutes } = line;
    return {
      ...id,
      ...this.#species(speciesId),
      ...this.#wanted(line, speciesId),
      ...('grams' in ask
        ? { amount: this.#texts.weight(ask.grams) }
        : { count: ask.pieces / (cutOf(speciesId, line.cut)?.bothSides ? 2 : 1) }),
      price: this.#texts.price(line.priceMinorPerKg),
      ...(rank === 'promised' ? {} : { rank }),
      ...(line.sameAnimal ? { sameAnimal: true } : {}),
      ...(onlyAnimal === undefined ? {} : { onlyAnimal }),
      ...(onlyHand === undefined ? {} : { onlyHand }),
      ...(substitutes.length === 0
        ? {}
        : { substitutes: substitutes.map((entry) => this.#wanted(entry, speciesId)) }),
    };
  }

  #share(share: CarcassShare, usualId: string): ShareEntry {
    const { shareId, speciesId, size, rank, onlyAnimal, instructions } = share;
    const { right, leaves = [], sharedWith } = instructions;
    const said = {
      ...this.#sheet(instructions),
      ...(right && { right: this.#sheet(right) }),
      ...(leaves.length > 0 && { leaves }),
      ...(sharedWith !== undefined && { sharedWith }),
    };
    return {
      ...(shareId === usualId ? {} : { id: shareId }),
      ...this.#species(speciesId),
      size,
      price: this.#texts.price(share.priceMinorPerKg),
      ...(rank === 'promised' ? {} : { rank }),
      ...(onlyAnimal === undefined ? {} : { onlyAnimal }),
      ...(Object.keys(said).length === 0 ? {} : { instructions: said }),
    };
  }

  /** Without the tables that say nothing. */
  #sheet({ operations, manners, portions }: CutSheet) {
    const texts = Object.entries(portions).map(
      ([stock, portion]) => [stock, this.#texts.portion(portion)] as const,
    );
    const written = { operations, manners, portions: Object.fromEntries(texts) };
    return Object.fromEntries(Object.entries(written).filter(([, table]) => Object.keys(table).length > 0));
  }

  order(order: DayFileOrder, lines: readonly DemandLine[], shares: readonly CarcassShare[], turn: number) {
    const { orderId, owner, note } = order;
    // Two lines for one cut keep their ids: without, the reader would take them for one.
    const once = new Set(lines.map(({ cut }) => cut)).size === lines.length;
    const idOf = (lineId: string, index: number) =>
      once && lineId === `${orderId}-line-${index + 1}` ? {} : { id: lineId };
    return {
      ...(orderId === `order-${turn + 1}` ? {} : { id: orderId }),
      owner,
      ...(note === '' ? {} : { note }),
      ...(lines.length === 0
        ? {}
        : { lines: lines.map((line, index) => this.#line(line, idOf(line.lineId, index))) }),
      ...(shares.length === 0
        ? {}
        : { shares: shares.map((share, index) => this.#share(share, `${orderId}-share-${index + 1}`)) }),
    };
  }
}

function lockEntry(lock: Lock, animals: readonly DayAnimal[]): Entry<'locks'> {
  const side = animals.flatMap(({ sides }) => sides).find(({ sideId }) => sideId === lock.sideId);
  if (!side) throw new RangeError(`no side ${lock.sideId} for a lock`);
  const place = { animal: side.animalId, hand: side.hand };
  return lock.lock === 'operation'
    ? { ...place, part: lock.part, operation: lock.operation }
    : { ...place, zone: lock.zone, manner: lock.manner };
}

function counterEntry(counter: Counter, texts: Texts): NonNullable<DayFile['counter']> {
  const { itemSteps, stockSteps, worthMinorPerKg, labourMinorPerHour } = counter;
  const worth = Object.entries(worthMinorPerKg).map(([id, price]) => [id, texts.price(price)] as const);
  return {
    ...(same(itemSteps, usualCounter.itemSteps)
      ? {}
      : {
          itemSteps: itemSteps.map(({ pieces, worthPercent: percent }) =>
            pieces === null ? { percent } : { pieces, percent },
          ),
        }),
    ...(same(stockSteps, usualCounter.stockSteps)
      ? {}
      : {
          stockSteps: stockSteps.map(({ grams, worthPercent: percent }) =>
            grams === null ? { percent } : { amount: texts.weight(grams), percent },
          ),
        }),
    ...(worth.length === 0 ? {} : { worth: Object.fromEntries(worth) }),
    ...(labourMinorPerHour === usualCounter.labourMinorPerHour
      ? {}
      : { labourPerHour: texts.money(labourMinorPerHour) }),
  };
}

/**
 * A day as a day file: `readDayFile` makes the same day of it again. Lengths, weights and prices are in the shop's units
 * where these are exact, else metric; what the reader takes by itself is left out.
 * @throws RangeError where a day has what no file says: an animal never weighed, a lock on a side that is not there
 */
export function dayFileOf({ shop, day, weighed, orders }: Writable): DayFile {
  const texts = new Texts(shop);
  const writer = new OrderWriter(texts, day.animals);
  const { dayId, date, tools } = day;
  const counter = counterEntry(day.counter, texts);
  const linesOf = (ids: readonly string[]) => day.lines.filter(({ lineId }) => ids.includes(lineId));
  const sharesOf = (ids: readonly string[]) => day.shares.filter(({ shareId }) => ids.includes(shareId));
  return {
    flitchbook: 1,
    ...(dayId === `day-${date}` ? {} : { id: dayId }),
    date,
    shop,
    ...(same(tools, usualTools) ? {} : { tools: { saw: tools.saw, kerfMm: tools.kerfUm / 1000 } }),
    animals: day.animals.map((animal, turn) =>
      animalEntry(
        animal,
        weighed.find(({ animalId }) => animalId === animal.animalId),
        turn,
      ),
    ),
    orders: orders.map((order, turn) =>
      writer.order(order, linesOf(order.lineIds), sharesOf(order.shareIds), turn),
    ),
    ...(day.locks.length === 0 ? {} : { locks: day.locks.map((lock) => lockEntry(lock, day.animals)) }),
    ...(Object.keys(counter).length === 0 ? {} : { counter }),
  };
}

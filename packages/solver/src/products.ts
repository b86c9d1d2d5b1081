import type { CutSource, Portion } from '@flitchbook/carcass';
import {
  acceptable,
  askedGrams,
  askedPieces,
  type CuttingDay,
  type DemandLine,
  type Nominal,
  pieceWorth,
  wantsBothSides,
} from '@flitchbook/plan';
import type { Demand, DemandOption, Product } from './problem.ts';

function portionKey(portion: Portion): string {
  switch (portion.by) {
    case 'thickness':
      return `t${portion.um}`;
    case 'ribs':
      return `r${portion.ribs}`;
    case 'weight':
      return `w${portion.fromGrams}-${portion.toGrams}`;
    default:
      return portion.by;
  }
}

/** A product with what a unit must be to yield it. */
export interface ProductSpec extends Product {
  readonly portion: Portion;
  readonly onlyAnimal: string | null;
  readonly onlyHand: 'left' | 'right' | null;
}

interface Restriction {
  readonly privateTo: string | null;
  readonly onlyAnimal: string | null;
  readonly onlyHand: 'left' | 'right' | null;
}

const unrestricted: Restriction = { privateTo: null, onlyAnimal: null, onlyHand: null };

/** The products of a day, each once, in the order they are first asked for. */
export class ProductTable {
  readonly specs: ProductSpec[] = [];
  readonly #indexOf = new Map<string, number>();

  item(speciesId: string, item: string, restriction: Restriction = unrestricted): number {
    return this.#index({ speciesId, from: item, isItem: true, portion: { by: 'whole' }, ...restriction });
  }

  stock(speciesId: string, stock: string, portion: Portion, restriction: Restriction = unrestricted): number {
    return this.#index({ speciesId, from: stock, isItem: false, portion, ...restriction });
  }

  #index(spec: Omit<ProductSpec, 'key'>): number {
    const kind = spec.isItem ? 'item' : portionKey(spec.portion);
    const limits = [spec.privateTo ?? '', spec.onlyAnimal ?? '', spec.onlyHand ?? ''].join('@');
    const key = [spec.speciesId, spec.from, kind, limits].join('|');
    const known = this.#indexOf.get(key);
    if (known !== undefined) return known;
    this.#indexOf.set(key, this.specs.length);
    this.specs.push({ key, ...spec });
    return this.specs.length - 1;
  }
}

interface Place {
  readonly animalId: string | null;
  readonly hand: 'left' | 'right' | null;
  readonly restriction: Restriction;
}

/** Where the pieces of a line may come from, one entry for each place that the model must tell apart. */
function placesOf(day: CuttingDay, line: DemandLine): readonly Place[] {
  const onlyHand = line.onlyHand ?? null;
  const animals = day.animals.filter(
    ({ animalId, speciesId }) =>
      speciesId === line.speciesId && (line.onlyAnimal === undefined || animalId === line.onlyAnimal),
  );
  const on = (animalId: string, hand: 'left' | 'right' | null): Place => ({
    animalId,
    hand,
    restriction: { privateTo: line.lineId, onlyAnimal: animalId, onlyHand: hand ?? onlyHand },
  });
  if (wantsBothSides(day, line)) {
    const pairs = animals.filter(({ sides }) => sides.length === 2);
    return pairs.flatMap(({ animalId }) => [on(animalId, 'left'), on(animalId, 'right')]);
  }
  if (line.sameAnimal && askedPieces(line) > 1) return animals.map(({ animalId }) => on(animalId, null));
  if (line.onlyAnimal === undefined && onlyHand === null)
    return [{ animalId: null, hand: null, restriction: unrestricted }];
  return [
    {
      animalId: null,
      hand: null,
      restriction: { privateTo: line.lineId, onlyAnimal: line.onlyAnimal ?? null, onlyHand },
    },
  ];
}

function optionsOf(day: CuttingDay, table: ProductTable, line: DemandLine): DemandOption[] {
  const cuts = day.species[line.speciesId]?.cuts ?? {};
  return placesOf(day, line).flatMap(({ animalId, hand, restriction }) =>
    acceptable(line).flatMap(({ cut, portion }, step) =>
      (cuts[cut]?.sources ?? []).flatMap((source: CutSource): DemandOption[] => {
        if (source.from === 'bulk' || (source.from === 'item') !== (portion.by === 'whole')) return [];
        const product =
          source.from === 'item'
            ? table.item(line.speciesId, source.id, restriction)
            : table.stock(line.speciesId, source.id, portion, restriction);
        return [{ product, step, animalId, hand }];
      }),
    ),
  );
}

/** Demand by the piece, lines that ask for the same thing taken together, in the order of their first line. */
export function compileDemands(
  day: CuttingDay,
  nominals: ReadonlyMap<string, Nominal>,
  table: ProductTable,
): Demand[] {
  const groups = new Map<string, Demand & { lines: DemandLine[] }>();
  for (const line of day.lines) {
    if (askedGrams(line) > 0 || askedPieces(line) === 0) continue;
    const options = optionsOf(day, table, line);
    const worth = pieceWorth(day, nominals.get(line.speciesId), line);
    const oneAnimal = line.sameAnimal && askedPieces(line) > 1;
    const bothSides = wantsBothSides(day, line);
    const key = oneAnimal || bothSides ? `line ${line.lineId}` : JSON.stringify([line.rank, worth, options]);
    const group = groups.get(key);
    if (group)
      groups.set(key, { ...group, pieces: group.pieces + askedPieces(line), lines: [...group.lines, line] });
    else
      groups.set(key, {
        lines: [line],
        tier: line.rank,
        pieces: askedPieces(line),
        worth,
        options,
        oneAnimal,
        bothSides,
      });
  }
  return [...groups.values()];
}

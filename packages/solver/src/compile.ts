import type { SideFacts, Species } from '@flitchbook/carcass';
import {
  askedGrams,
  type CuttingDay,
  counterWorth,
  type DayAnimal,
  itemSteps,
  itemWorth,
  type Nominal,
  nominalsOf,
  shareSideWorth,
  sheetFor,
  stockSteps,
} from '@flitchbook/plan';
import type {
  BulkDemand,
  ItemOut,
  Node,
  OperationChoice,
  Outlets,
  Problem,
  ShareChoice,
  Unit,
  UnitClass,
} from './problem.ts';
import { compileDemands, ProductTable } from './products.ts';
import { Requests } from './requests.ts';
import { minutesOf, wayOfShare } from './share-way.ts';
import { allows, compileSide, productsOfItem, type TreeContext } from './tree.ts';

/** Gives each key a number in the order first seen. */
class Numbering {
  readonly keys: string[] = [];
  readonly #at = new Map<string, number>();

  of(key: string): number {
    const known = this.#at.get(key);
    if (known !== undefined) return known;
    this.#at.set(key, this.keys.length);
    this.keys.push(key);
    return this.keys.length - 1;
  }
}

const outletKey = (speciesId: string, id: string): string => `${speciesId}:${id}`;

function compileOutlets(
  day: CuttingDay,
  nominals: ReadonlyMap<string, Nominal>,
  table: ProductTable,
): { outlets: Outlets; stocks: Numbering; bulks: Numbering } {
  const stocks = new Numbering();
  const bulks = new Numbering();
  const items: Outlets['items'][number][] = [];
  for (const [speciesId, nominal] of nominals) {
    const species = day.species[speciesId] as Species;
    for (const item of Object.keys(species.items)) {
      const worth = itemWorth(day, nominal, speciesId, item);
      items.push({
        product: table.item(speciesId, item),
        steps: itemSteps(day).map((step) => ({ size: step.size, worth: (worth * step.worthPercent) / 100 })),
      });
    }
    for (const stock of Object.keys(species.stocks)) stocks.of(outletKey(speciesId, stock));
    for (const bulk of Object.keys(species.bulks)) bulks.of(outletKey(speciesId, bulk));
  }
  const worthOf = (key: string, kind: 'stocks' | 'bulks'): number => {
    const at = key.indexOf(':');
    return counterWorth(day, key.slice(0, at), kind, key.slice(at + 1)) / 1000;
  };
  const outlets: Outlets = {
    items,
    stocks: stocks.keys.map((key) => ({
      key,
      steps: stockSteps(day).map((step) => ({
        size: step.size,
        worthPerGram: (worthOf(key, 'stocks') * step.worthPercent) / 100,
      })),
    })),
    bulks: bulks.keys.map((key) => ({ key, worthPerGram: worthOf(key, 'bulks') })),
  };
  return { outlets, stocks, bulks };
}

function compileBulkDemands(day: CuttingDay, bulks: Numbering): BulkDemand[] {
  return day.lines.flatMap((line): BulkDemand[] => {
    const source = day.species[line.speciesId]?.cuts[line.cut]?.sources.find(({ from }) => from === 'bulk');
    const grams = askedGrams(line);
    if (!source || grams === 0) return [];
    return [
      {
        line,
        tier: line.rank,
        bulk: bulks.of(outletKey(line.speciesId, source.id)),
        grams,
        worthPerGram: line.priceMinorPerKg / 1000,
      },
    ];
  });
}

function orderOf(nodes: readonly Node[]): number[] {
  const order: number[] = [];
  const seen = new Set<number>();
  const visit = (index: number): void => {
    if (seen.has(index)) return;
    seen.add(index);
    const node = nodes[index];
    if (node?.kind === 'singles') node.opens.forEach(visit);
    if (node?.kind === 'primal')
      for (const choice of node.choices) for (const child of choice.opens) visit(child);
    order.push(index);
  };
  visit(0);
  return order;
}

/** Units are alike when nothing the solver looks at tells them apart. */
function likenessOf(day: CuttingDay, table: ProductTable, animal: DayAnimal, side: SideFacts | null): string {
  const privates = table.specs.flatMap((spec, index) =>
    spec.privateTo !== null &&
    spec.speciesId === animal.speciesId &&
    allows(spec, animal.animalId, side?.hand ?? null)
      ? [index]
      : [],
  );
  const shares = day.shares
    .filter((share) => share.onlyAnimal === animal.animalId)
    .map((share) => share.shareId);
  if (!side)
    return JSON.stringify(['singles', animal.speciesId, animal.lostItems, factsOf(animal), privates, shares]);
  const locks = day.locks.filter((lock) => lock.sideId === side.sideId).map(({ sideId: _, ...lock }) => lock);
  const { massMg, carcassGrams, ribs, facts, lostParts } = side;
  return JSON.stringify([
    'side',
    animal.speciesId,
    massMg,
    carcassGrams,
    ribs,
    facts,
    lostParts,
    locks,
    privates,
    shares,
  ]);
}

const factsOf = (animal: DayAnimal): readonly string[] => animal.sides[0]?.facts ?? [];

function singlesNodes(table: ProductTable, species: Species, animal: DayAnimal): readonly Node[] {
  const facts = factsOf(animal);
  const there = species.singles.filter(
    (single) =>
      !animal.lostItems.includes(single.item) && (single.needs ?? []).every((need) => facts.includes(need)),
  );
  const out = ({ item }: { readonly item: string }): ItemOut => ({
    item,
    products: productsOfItem(table, species.id, item, animal.animalId, null),
  });
  const way = (id: string, items: readonly ItemOut[]): OperationChoice => ({
    operation: { id, name: id, says: '', minutes: 0, minutesSource: 'practice', outputs: [] },
    opens: [],
    items,
    bulks: [],
  });
  const choices = there.flatMap((single): Node[] => {
    const apart = (single.apart ?? []).filter(({ item }) => !animal.lostItems.includes(item));
    const ways = [way('whole', [out(single)]), way('apart', apart.map(out))];
    return apart.length === 0 ? [] : [{ kind: 'primal', partId: single.item, choices: ways }];
  });
  const whole = there.filter(({ item }) => !choices.some((node) => 'partId' in node && node.partId === item));
  return [{ kind: 'singles', items: whole.map(out), opens: choices.map((_, at) => at + 1) }, ...choices];
}

function compileClasses(
  day: CuttingDay,
  context: Omit<TreeContext, 'species' | 'nominal' | 'requests'>,
  nominals: ReadonlyMap<string, Nominal>,
  apart: boolean,
): UnitClass[] {
  const groups = new Map<string, UnitClass & { units: Unit[] }>();
  const requests = new Map(
    Object.values(day.species).map((species) => [species.id, new Requests(day, species)]),
  );
  for (const animal of day.animals) {
    const species = day.species[animal.speciesId];
    const nominal = nominals.get(animal.speciesId);
    if (!species || !nominal) continue;
    for (const side of [...animal.sides, null]) {
      const unit: Unit = { unitId: side?.sideId ?? animal.animalId, animalId: animal.animalId, side };
      const key = apart
        ? `${side ? 'side' : 'singles of'} ${unit.unitId}`
        : likenessOf(day, context.table, animal, side);
      const group = groups.get(key);
      if (group) {
        group.units.push(unit);
        continue;
      }
      const nodes = side
        ? compileSide(
            {
              ...context,
              species,
              nominal,
              requests: requests.get(species.id) ?? new Requests(day, species),
            },
            side,
          )
        : singlesNodes(context.table, species, animal);
      groups.set(key, {
        index: groups.size,
        speciesId: species.id,
        isSide: side !== null,
        units: [unit],
        nodes,
        order: orderOf(nodes),
      });
    }
  }
  return [...groups.values()];
}

function compileShares(day: CuttingDay, classes: readonly UnitClass[]): ShareChoice[] {
  const classOf = new Map(
    classes.flatMap((group) =>
      group.units.map(
        (unit) => [unit.side ? unit.unitId : `singles of ${unit.animalId}`, group.index] as const,
      ),
    ),
  );
  return day.shares.flatMap((share) => {
    const choices = new Map<string, ShareChoice & { animalIds: string[] }>();
    for (const animal of day.animals) {
      if (
        animal.speciesId !== share.speciesId ||
        (share.onlyAnimal !== undefined && share.onlyAnimal !== animal.animalId)
      )
        continue;
      if (share.size === 'whole' && animal.sides.length !== 2) continue;
      const sideSets = share.size === 'half' ? animal.sides.map((side) => [side]) : [animal.sides];
      for (const sides of sideSets) {
        const sideClasses = sides.map((side) => classOf.get(side.sideId) as number);
        const ways = sides.map(({ hand }, at) =>
          wayOfShare((classes[sideClasses[at] as number] as UnitClass).nodes, sheetFor(share, hand)),
        );
        if (ways.some((way) => way === undefined)) continue;
        const takes =
          share.size === 'half'
            ? sideClasses
            : [...sideClasses, classOf.get(`singles of ${animal.animalId}`) as number];
        const known = choices.get(takes.join());
        if (known) {
          if (!known.animalIds.includes(animal.animalId)) known.animalIds.push(animal.animalId);
          continue;
        }
        choices.set(takes.join(), {
          share,
          tier: share.rank,
          takes,
          animalIds: [animal.animalId],
          worth: sides.reduce((sum, side) => sum + shareSideWorth(side.massMg, share.priceMinorPerKg), 0),
          minutes: ways.reduce(
            (sum, way, at) =>
              sum + minutesOf((classes[sideClasses[at] as number] as UnitClass).nodes, way ?? new Map()),
            0,
          ),
        });
      }
    }
    return [...choices.values()];
  });
}

/**
 * Compiles a day. Pure; the same day gives the same problem.
 * @param apart each unit is a class of its own, alike or not
 */
export function compile(day: CuttingDay, apart = false): Problem {
  const nominals = nominalsOf(day);
  const table = new ProductTable();
  const { outlets, stocks, bulks } = compileOutlets(day, nominals, table);
  const demands = compileDemands(day, nominals, table);
  const context = {
    day,
    table,
    stockOutlet: (speciesId: string, stock: string) => stocks.of(outletKey(speciesId, stock)),
    bulkOutlet: (speciesId: string, bulk: string) => bulks.of(outletKey(speciesId, bulk)),
  };
  const classes = compileClasses(day, context, nominals, apart);
  const bulkDemands = compileBulkDemands(day, bulks);
  return {
    day,
    nominals,
    products: table.specs,
    classes,
    demands,
    bulkDemands,
    shares: compileShares(day, classes),
    outlets,
  };
}

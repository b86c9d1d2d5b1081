import {
  type BarShape,
  footprint,
  layRuns,
  type Portion,
  type SideFacts,
  type SideShape,
  type Species,
  shapeSide,
  shareOf,
} from '@flitchbook/carcass';
import type { CuttingDay, DemandLine, Wanted } from './day.ts';
import { sidesOf } from './day.ts';

/**
 * Masses of pieces on the day's average side of a species. Goals count worth by these, so that a piece is worth the
 * same whichever side it comes from; bills never use them.
 */
export interface Nominal {
  readonly itemGrams: ReadonlyMap<string, number>;
  /** "bar/stock" to mg for each um of usable length */
  readonly densityMgPerUm: ReadonlyMap<string, number>;
  /** stock to the first site that gives it */
  readonly sites: ReadonlyMap<
    string,
    { readonly tool: 'saw' | 'knife'; readonly pitchUm: number; readonly densityMgPerUm: number }
  >;
}

export const siteKey = (bar: string, stock: string): string => `${bar}/${stock}`;

const everyFact = ['skin-on', 'head', 'feet', 'organs', 'unsplit'] as const;

function averageSide(day: CuttingDay, speciesId: string): SideFacts | undefined {
  const sides = day.animals
    .filter((animal) => animal.speciesId === speciesId)
    .flatMap((animal) => animal.sides);
  const [first] = sides;
  if (!first) return undefined;
  const mean = (pick: (side: SideFacts) => number): number =>
    Math.round(sides.reduce((sum, side) => sum + pick(side), 0) / sides.length);
  return {
    ...first,
    massMg: mean((side) => side.massMg),
    carcassGrams: mean((side) => side.carcassGrams),
    ribs: mean((side) => side.ribs),
    facts: everyFact,
    lostParts: [],
  };
}

function keepLargest(into: Map<string, number>, key: string, value: number): void {
  into.set(key, Math.max(value, into.get(key) ?? 0));
}

function weighItems(species: Species, shape: SideShape): Map<string, number> {
  const singles = species.singles.flatMap((single) => [single, ...(single.apart ?? [])]);
  const itemGrams = new Map(singles.map(({ item, meanGrams }) => [item, meanGrams]));
  for (const [partId, massMg] of shape.partMassMg) {
    const part = species.parts[partId];
    if (part?.kind !== 'primal') continue;
    for (const operation of part.operations) {
      operation.outputs.forEach((output, index) => {
        if (output.to === 'item')
          keepLargest(itemGrams, output.id, (massMg * shareOf(operation.outputs, index)) / 1000);
      });
    }
  }
  for (const bar of shape.bars.values()) {
    for (const zone of bar.zones) {
      for (const manner of zone.zone.manners) {
        manner.releases.forEach((release, index) => {
          if (release.to === 'item')
            keepLargest(
              itemGrams,
              release.id,
              (zone.massMg * shareOf([manner.keeps, ...manner.releases], index + 1)) / 1000,
            );
        });
      }
    }
  }
  return itemGrams;
}

function sitesOfBar(bar: BarShape) {
  return bar.zones.flatMap((zone) =>
    zone.ways
      .filter((way) => way.length === 1)
      .flatMap((way) => layRuns([{ zone, way }]) ?? [])
      .map((run) => ({
        bar: bar.bar.id,
        stock: run.stock,
        tool: run.tool,
        pitchUm: run.pitchUm,
        densityMgPerUm: run.usableUm === 0 ? 0 : run.massMg / run.usableUm,
      })),
  );
}

/** @returns undefined when the day has no side of the species */
export function nominalOf(day: CuttingDay, speciesId: string): Nominal | undefined {
  const side = averageSide(day, speciesId);
  const species = day.species[speciesId];
  if (!side || !species) return undefined;
  const shape = shapeSide(species, side);
  const densityMgPerUm = new Map<string, number>();
  const sites = new Map<string, { tool: 'saw' | 'knife'; pitchUm: number; densityMgPerUm: number }>();
  for (const bar of shape.bars.values()) {
    for (const site of sitesOfBar(bar)) {
      if (!densityMgPerUm.has(siteKey(site.bar, site.stock)))
        densityMgPerUm.set(siteKey(site.bar, site.stock), site.densityMgPerUm);
      if (!sites.has(site.stock)) sites.set(site.stock, site);
    }
  }
  return { itemGrams: weighItems(species, shape), densityMgPerUm, sites };
}

/** All nominals of a day, by species. */
export function nominalsOf(day: CuttingDay): ReadonlyMap<string, Nominal> {
  const speciesIds = new Set(sidesOf(day).length === 0 ? [] : day.animals.map((animal) => animal.speciesId));
  return new Map(
    [...speciesIds].flatMap((id) => {
      const nominal = nominalOf(day, id);
      return nominal ? [[id, nominal] as const] : [];
    }),
  );
}

function portionGrams(
  nominal: Nominal,
  stocks: readonly string[],
  portion: Portion,
  day: CuttingDay,
): number {
  if (portion.by === 'weight') return portion.fromGrams;
  const site = stocks.map((stock) => nominal.sites.get(stock)).find((candidate) => candidate !== undefined);
  if (!site) return 0;
  const print = footprint(site, portion, { ...day.tools, saw: true });
  return print ? (print.pieceUm * site.densityMgPerUm) / 1000 : 0;
}

/** What one piece as ordered is expected to weigh, grams; 0 when the species is not there. */
export function expectedGrams(
  day: CuttingDay,
  nominal: Nominal | undefined,
  speciesId: string,
  wanted: Wanted,
): number {
  const cut = day.species[speciesId]?.cuts[wanted.cut];
  if (!nominal || !cut) return 0;
  const [item] = cut.sources.filter((source) => source.from === 'item');
  if (wanted.portion.by === 'whole' && item) return nominal.itemGrams.get(item.id) ?? 0;
  return portionGrams(
    nominal,
    cut.sources.filter((source) => source.from === 'stock').map((source) => source.id),
    wanted.portion,
    day,
  );
}

/** Worth of one filled piece of a line in whole minor units, at least 1: the cut as ordered, at its expected mass. */
export function pieceWorth(day: CuttingDay, nominal: Nominal | undefined, line: DemandLine): number {
  return Math.max(
    1,
    Math.round((expectedGrams(day, nominal, line.speciesId, line) * line.priceMinorPerKg) / 1000),
  );
}

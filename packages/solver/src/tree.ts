import {
  allowedOperations,
  type BarShape,
  footprint,
  isOutputLost,
  isPartLost,
  layRuns,
  lostRegions,
  mannerShares,
  type Operation,
  type Output,
  type PortionSite,
  type Primal,
  type Run,
  type RunStretch,
  type SideFacts,
  type SideShape,
  type Species,
  shapeSide,
  shareOf,
  stretchMassMg,
  type ZoneWay,
} from '@flitchbook/carcass';
import { type CuttingDay, type Lock, type Nominal, siteKey } from '@flitchbook/plan';
import type {
  Amount,
  BarNode,
  ItemOut,
  Layout,
  Node,
  OperationChoice,
  RunChoice,
  RunOption,
} from './problem.ts';
import type { ProductSpec, ProductTable } from './products.ts';
import type { Requests } from './requests.ts';

/** Everything needed to compile one side's tree. */
export interface TreeContext {
  readonly day: CuttingDay;
  readonly species: Species;
  readonly nominal: Nominal;
  readonly table: ProductTable;
  readonly requests: Requests;
  readonly stockOutlet: (speciesId: string, stock: string) => number;
  readonly bulkOutlet: (speciesId: string, bulk: string) => number;
}

export function allows(spec: ProductSpec, animalId: string, hand: 'left' | 'right' | null): boolean {
  return (
    (spec.onlyAnimal === null || spec.onlyAnimal === animalId) &&
    (spec.onlyHand === null || spec.onlyHand === hand)
  );
}

/** The products an item of this unit may be counted as. */
export function productsOfItem(
  table: ProductTable,
  speciesId: string,
  item: string,
  animalId: string,
  hand: 'left' | 'right' | null,
): number[] {
  return table.specs.flatMap((spec, index) =>
    spec.isItem && spec.speciesId === speciesId && spec.from === item && allows(spec, animalId, hand)
      ? [index]
      : [],
  );
}

/** A portion site with the heavier end of its density: a joined stock differs a little from zone to zone. */
interface Site extends PortionSite {
  readonly densestMgPerUm: number;
}
type Sites = ReadonlyMap<string, Site>;

class SideCompiler {
  readonly nodes: Node[] = [];
  readonly #nodeOf = new Map<string, number>();
  readonly #belowOf = new Map<string, ReadonlySet<string>>();
  readonly #shape: SideShape;
  readonly #locks: readonly Lock[];
  readonly #context: TreeContext;
  readonly #side: SideFacts;
  readonly #lost: ReadonlySet<string>;

  constructor(context: TreeContext, side: SideFacts) {
    this.#context = context;
    this.#side = side;
    this.#shape = shapeSide(context.species, side);
    this.#lost = lostRegions(context.species, side.lostParts);
    this.#locks = context.day.locks.filter((lock) => lock.sideId === side.sideId);
  }

  compile(): readonly Node[] {
    this.#place(this.#context.species.sideRoot);
    return this.nodes;
  }

  #place(partId: string): number {
    const known = this.#nodeOf.get(partId);
    if (known !== undefined) return known;
    const index = this.nodes.length;
    this.#nodeOf.set(partId, index);
    this.nodes.push({ kind: 'lost', partId });
    this.nodes[index] = this.#node(partId);
    return index;
  }

  #node(partId: string): Node {
    const part = this.#context.species.parts[partId];
    if (!part || isPartLost(part, this.#lost)) return { kind: 'lost', partId };
    if (part.kind === 'bar') return this.#bar(this.#shape.bars.get(partId) as BarShape);
    const allowed = this.#settledOperations(part);
    const massMg = this.#shape.partMassMg.get(partId) as number;
    const choices = allowed.map((operation): OperationChoice => {
      const outputs = operation.outputs.map((output, at) => ({
        output,
        grams: (massMg * shareOf(operation.outputs, at)) / 1000,
        lost: isOutputLost(this.#context.species, part, operation, output, this.#lost),
      }));
      const of = (to: Output['to']) => outputs.filter(({ output, lost }) => output.to === to && !lost);
      return {
        operation,
        opens: of('part').map(({ output }) => this.#place(output.id)),
        items: of('item').map(({ output }) => this.#item(output.id)),
        bulks: of('bulk').map(({ output, grams }) => this.#bulk(output.id, grams)),
      };
    });
    return choices.length === 0 ? { kind: 'lost', partId } : { kind: 'primal', partId, choices };
  }

  /** Operations that the locks leave: the one settled for the part, and only such as still lead to what is settled below. */
  #settledOperations(part: Primal): readonly Operation[] {
    const possible = allowedOperations(part, this.#side);
    const asked = this.#context.requests.operationsOf(part, possible);
    const allowed = asked.length > 0 ? asked : possible;
    const own = this.#locks.flatMap((lock) =>
      lock.lock === 'operation' && lock.part === part.id ? [lock.operation] : [],
    );
    const settled = this.#locks.map((lock) => (lock.lock === 'operation' ? lock.part : `zone ${lock.zone}`));
    const leads = (operation: Operation): ReadonlySet<string> =>
      new Set(
        operation.outputs.flatMap((output) => (output.to === 'part' ? [...this.#below(output.id)] : [])),
      );
    const ahead = settled.filter((place) => allowed.some((operation) => leads(operation).has(place)));
    const kept = allowed.filter(
      (operation) =>
        (own.length === 0 || own.includes(operation.id)) &&
        ahead.every((place) => leads(operation).has(place)),
    );
    return kept.length > 0 ? kept : allowed;
  }

  /** A part and everything it could become: part ids, and "zone ID" for zones of bars. */
  #below(partId: string): ReadonlySet<string> {
    const known = this.#belowOf.get(partId);
    if (known) return known;
    const part = this.#context.species.parts[partId];
    const below = new Set([partId]);
    if (part?.kind === 'bar') for (const zone of part.zones) below.add(`zone ${zone.id}`);
    if (part?.kind === 'primal' && !isPartLost(part, this.#lost)) {
      for (const operation of allowedOperations(part, this.#side)) {
        for (const output of operation.outputs) {
          if (output.to === 'part') for (const place of this.#below(output.id)) below.add(place);
        }
      }
    }
    this.#belowOf.set(partId, below);
    return below;
  }

  #item(item: string): ItemOut {
    return {
      item,
      products: productsOfItem(
        this.#context.table,
        this.#context.species.id,
        item,
        this.#side.animalId,
        this.#side.hand,
      ),
    };
  }

  #bulk(bulk: string, grams: number): Amount {
    return { index: this.#context.bulkOutlet(this.#context.species.id, bulk), grams };
  }

  #bar(shape: BarShape): BarNode {
    const runs: RunChoice[] = [];
    const runAt = new Map<string, number>();
    const sites = this.#sites(shape);
    const layouts = this.#lockedWays(shape).flatMap((ways): Layout[] => {
      const laid = layRuns(
        ways.map((way, at) => ({ zone: shape.zones[at] as BarShape['zones'][number], way })),
      );
      if (!laid) return [];
      const indices = laid.map((run) => {
        const key = [
          run.stock,
          ...run.stretches.map(
            (stretch) => `${stretch.zone.zone.id}${stretch.fromStation}-${stretch.toStation}`,
          ),
        ].join(' ');
        const known = runAt.get(key);
        if (known !== undefined) return known;
        runAt.set(key, runs.length);
        runs.push(this.#run(shape.bar.id, run, sites));
        return runs.length - 1;
      });
      return [{ ways, runs: indices, ...this.#released(laid) }];
    });
    return {
      kind: 'bar',
      partId: shape.bar.id,
      zones: shape.zones.map(({ zone }) => zone.id),
      runs,
      layouts,
    };
  }

  #lockedWays(shape: BarShape): ZoneWay[][] {
    const perZone = shape.zones.map((zone) => {
      const locked = this.#locks.flatMap((lock) =>
        lock.lock === 'manner' && lock.zone === zone.zone.id ? [lock.manner] : [],
      );
      const manners = this.#context.requests.mannersOf(zone.zone);
      const asked = zone.ways.filter((way) => way.every(({ manner }) => manners.includes(manner)));
      const kept = asked.filter(
        (way) => locked.length === 0 || (way.length === 1 && locked.includes(way[0]?.manner.id ?? '')),
      );
      return kept.length > 0 ? kept : asked;
    });
    return perZone.reduce<ZoneWay[][]>(
      (combinations, ways) => combinations.flatMap((head) => ways.map((way) => [...head, way])),
      [[]],
    );
  }

  /** One site for each stock of a bar. A joined stock takes its leaner density, so that no piece is cut short. */
  #sites(shape: BarShape): Sites {
    const sites = new Map<string, Site>();
    for (const zone of shape.zones) {
      for (const run of zone.ways
        .filter((way) => way.length === 1)
        .flatMap((way) => layRuns([{ zone, way }]) ?? [])) {
        const density = run.usableUm === 0 ? 0 : run.massMg / run.usableUm;
        const known = sites.get(run.stock);
        sites.set(run.stock, {
          tool: run.tool,
          pitchUm: known && known.pitchUm !== run.pitchUm ? 0 : run.pitchUm,
          densityMgPerUm: Math.min(density, known?.densityMgPerUm ?? density),
          densestMgPerUm: Math.max(density, known?.densestMgPerUm ?? density),
        });
      }
    }
    return sites;
  }

  #run(bar: string, run: Run, sites: Sites): RunChoice {
    const { day, species, nominal, table, stockOutlet } = this.#context;
    const site = sites.get(run.stock) as Site;
    const options = table.specs.flatMap((spec, product): RunOption[] => {
      if (
        spec.isItem ||
        spec.speciesId !== species.id ||
        spec.from !== run.stock ||
        !allows(spec, this.#side.animalId, this.#side.hand)
      )
        return [];
      const print = footprint(site, spec.portion, day.tools);
      if (!print || print.pieceUm <= 0) return [];
      const tooHeavy =
        spec.portion.by === 'weight' && print.pieceUm * site.densestMgPerUm > spec.portion.toGrams * 1000;
      return tooHeavy ? [] : [{ product, ...print }];
    });
    return {
      run,
      outlet: stockOutlet(species.id, run.stock),
      freeGramsPerUm: (nominal.densityMgPerUm.get(siteKey(bar, run.stock)) ?? 0) / 1000,
      options,
      tableKey: `${run.stock}|${options.map(({ product, takesUm }) => `${product}:${takesUm}`).join(',')}`,
    };
  }

  #released(runs: readonly Run[]): Pick<Layout, 'items' | 'bulks' | 'minutes'> {
    const items: ItemOut[] = [];
    const bulks: Amount[] = [];
    let minutes = 0;
    for (const stretch of runs.flatMap((run) => run.stretches)) {
      minutes += stretch.manner.minutes;
      for (const release of releasesOf(stretch)) {
        if (release.to === 'item') items.push(this.#item(release.id));
        else bulks.push(this.#bulk(release.id, release.massMg / 1000));
      }
    }
    return { items, bulks, minutes };
  }
}

/** What a stretch sets free: back ribs from a run that is long enough, else what they are worth as bones. */
export function releasesOf(
  stretch: RunStretch,
): readonly { readonly to: 'item' | 'bulk'; readonly id: string; readonly massMg: number }[] {
  const massMg = stretchMassMg(stretch);
  const stations = stretch.toStation - stretch.fromStation;
  const shares = mannerShares(stretch.manner);
  return stretch.manner.releases.map((release, at) => {
    const short = release.stationsMin !== undefined && stations < release.stationsMin;
    return {
      to: short ? 'bulk' : release.to,
      id: short ? (release.otherwise ?? release.id) : release.id,
      massMg: massMg * shareOf(shares, at + 1),
    };
  });
}

/** Compiles a side's tree, locks applied. A lock that the side cannot keep is left for `checkPlan` to name. */
export const compileSide = (context: TreeContext, side: SideFacts): readonly Node[] =>
  new SideCompiler(context, side).compile();

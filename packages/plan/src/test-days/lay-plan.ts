import {
  allowedOperations,
  type BarShape,
  footprint,
  layRuns,
  mannerShares,
  type Portion,
  type Run,
  type SideFacts,
  type SideShape,
  type Species,
  shapeSide,
  shareOf,
  splitExactly,
  stretchMassMg,
  type ZoneShape,
  type ZoneWay,
} from '@flitchbook/carcass';
import type { BarPlan, CuttingPlan, LineFill, Owner, RunPlan, Shortfall, SidePlan } from '../cutting-plan.ts';
import { askedGrams, askedPieces, type CuttingDay, type DayAnimal } from '../day.ts';

export interface PieceWish {
  readonly stock: string;
  readonly cut: string;
  readonly portion: Portion;
  readonly owner?: Owner;
}

/** What a test decides about a side. What it leaves open is the first way that the data allows. */
export interface SideWish {
  readonly operations?: Readonly<Record<string, string>>;
  /** zone to manner, or to two manners parted at a station */
  readonly zones?: Readonly<Record<string, string | readonly [string, number, string]>>;
  readonly pieces?: readonly PieceWish[];
  /** item to owner */
  readonly items?: Readonly<Record<string, Owner>>;
  readonly shareId?: string;
}

export interface PlanWish {
  readonly sides?: Readonly<Record<string, SideWish>>;
  /** "animal/item" to owner */
  readonly singles?: Readonly<Record<string, Owner>>;
  readonly bulkGrams?: Readonly<Record<string, number>>;
}

type Entry = { readonly weight: number; readonly put: (massMg: number) => void };
type Draft<T> = { -readonly [K in keyof T]: T[K] };

const scarce: Shortfall = {
  kind: 'scarce',
  says: 'The day has fewer.',
  withLines: [],
  withShares: [],
  withLocks: [],
  mostPossible: 0,
};

/** Lays one side with the measures of the carcass package; weights are rounded together, so that they add up. */
class SideLayer {
  readonly #shape: SideShape;
  readonly #day: CuttingDay;
  readonly #wish: SideWish;
  readonly #entries: Entry[] = [];
  readonly #bulk = new Map<string, number>();
  readonly #plan: Draft<SidePlan> & {
    items: Draft<SidePlan['items'][number]>[];
    bars: BarPlan[];
    operations: Record<string, string>;
  };

  constructor(day: CuttingDay, species: Species, side: SideFacts, wish: SideWish) {
    this.#day = day;
    this.#wish = wish;
    this.#shape = shapeSide(species, side);
    this.#plan = {
      sideId: side.sideId,
      animalId: side.animalId,
      shareId: wish.shareId ?? null,
      massMg: side.massMg,
      operations: {},
      items: [],
      bars: [],
      bulkMg: {},
      minutes: 0,
    };
  }

  lay(): SidePlan {
    this.#visit(this.#shape.species.sideRoot, this.#shape.side.massMg);
    const bulks = [...this.#bulk];
    const masses = splitExactly(this.#plan.massMg, [
      ...this.#entries.map(({ weight }) => weight),
      ...bulks.map(([, mg]) => mg),
    ]);
    this.#entries.forEach(({ put }, index) => put(masses[index]!));
    this.#plan.bulkMg = Object.fromEntries(
      bulks.map(([bulk], index) => [bulk, masses[this.#entries.length + index]!]),
    );
    return this.#plan;
  }

  #owner(wished: Owner | undefined): Owner {
    return wished ?? (this.#plan.shareId === null ? null : { shareId: this.#plan.shareId });
  }

  #addBulk(bulk: string, massMg: number): void {
    this.#bulk.set(bulk, (this.#bulk.get(bulk) ?? 0) + massMg);
  }

  #addItem(item: string, from: string, weight: number): void {
    const piece = {
      pieceId: `${this.#plan.sideId}/${item}`,
      item,
      from,
      massMg: 0,
      owner: this.#owner(this.#wish.items?.[item]),
    };
    this.#plan.items.push(piece);
    this.#entries.push({ weight, put: (massMg) => void (piece.massMg = massMg) });
  }

  #visit(partId: string, massMg: number): void {
    if (this.#shape.side.lostParts.includes(partId)) return this.#addBulk('lost', massMg);
    const part = this.#shape.species.parts[partId]!;
    if (part.kind === 'bar') return this.#layBar(this.#shape.bars.get(partId)!);
    const allowed = allowedOperations(part, this.#shape.side);
    const operation = allowed.find(({ id }) => id === this.#wish.operations?.[partId]) ?? allowed[0]!;
    this.#plan.operations[partId] = operation.id;
    this.#plan.minutes += operation.minutes;
    operation.outputs.forEach((output, index) => {
      const outputMg = massMg * shareOf(operation.outputs, index);
      if (output.to === 'part') this.#visit(output.id, outputMg);
      else if (output.to === 'item') this.#addItem(output.id, partId, outputMg);
      else this.#addBulk(output.id, outputMg);
    });
  }

  #wayOf({ zone, stations, ways }: ZoneShape): ZoneWay {
    const wish = this.#wish.zones?.[zone.id];
    if (wish === undefined) return ways[0]!;
    const [first, at, second] = typeof wish === 'string' ? [wish, stations, undefined] : wish;
    return ways.find(
      (way) => way[0]!.manner.id === first && way[0]!.toStation === at && way[1]?.manner.id === second,
    )!;
  }

  #layBar(bar: BarShape): void {
    const runs = layRuns(bar.zones.map((zone) => ({ zone, way: this.#wayOf(zone) })))!;
    this.#plan.bars.push({ bar: bar.bar.id, runs: runs.map((run) => this.#layRun(bar.bar.id, run)) });
  }

  #release(bar: string, run: Run): void {
    for (const stretch of run.stretches) {
      const stations = stretch.toStation - stretch.fromStation;
      this.#plan.minutes += (stretch.manner.minutes * stations) / stretch.zone.stations;
      stretch.manner.releases.forEach((release, index) => {
        const massMg = stretchMassMg(stretch) * shareOf(mannerShares(stretch.manner), index + 1);
        const enough = stations >= (release.stationsMin ?? 0);
        if (release.to === 'item' && enough) this.#addItem(release.id, bar, massMg);
        else this.#addBulk(enough ? release.id : release.otherwise!, massMg);
      });
    }
  }

  #layRun(bar: string, run: Run): RunPlan {
    this.#release(bar, run);
    const density = run.massMg / run.usableUm;
    const pieces: Draft<RunPlan['pieces'][number]>[] = [];
    let nextUm = run.fromUm;
    for (const wish of this.#wish.pieces?.filter(({ stock }) => stock === run.stock) ?? []) {
      const print = footprint(
        { tool: run.tool, pitchUm: run.pitchUm, densityMgPerUm: density },
        wish.portion,
        this.#day.tools,
      )!;
      const piece = {
        pieceId: `${this.#plan.sideId}/${bar}/${nextUm}`,
        cut: wish.cut,
        portion: wish.portion,
        fromUm: nextUm,
        toUm: nextUm + print.pieceUm,
        massMg: 0,
        owner: this.#owner(wish.owner),
      };
      pieces.push(piece);
      this.#entries.push({ weight: print.pieceUm * density, put: (massMg) => void (piece.massMg = massMg) });
      if (print.takesUm > print.pieceUm) this.#addBulk('loss', (print.takesUm - print.pieceUm) * density);
      nextUm += print.takesUm;
    }
    const freeUm = run.fromUm + run.usableUm - nextUm;
    const plan: Draft<RunPlan> = {
      stock: run.stock,
      stretches: run.stretches.map(({ zone, manner, fromStation, toStation }) => ({
        zone: zone.zone.id,
        manner: manner.id,
        fromStation,
        toStation,
      })),
      fromUm: run.fromUm,
      toUm: run.toUm,
      usableUm: run.usableUm,
      pieces,
      freeUm,
      freeMg: 0,
    };
    this.#entries.push({ weight: freeUm * density, put: (massMg) => void (plan.freeMg = massMg) });
    return plan;
  }
}

function singlesOf(day: CuttingDay, animal: DayAnimal, wish: PlanWish): CuttingPlan['singles'] {
  const species = day.species[animal.speciesId]!;
  const facts = animal.sides[0]?.facts ?? [];
  return species.singles
    .filter(
      ({ item, needs }) =>
        !animal.lostItems.includes(item) && (needs ?? []).every((need) => facts.includes(need)),
    )
    .map(({ item, meanGrams }) => ({
      pieceId: `${animal.animalId}/${item}`,
      animalId: animal.animalId,
      item,
      massMg: meanGrams * 1000,
      owner: wish.singles?.[`${animal.animalId}/${item}`] ?? null,
    }));
}

function fillsOf(day: CuttingDay, plan: Pick<CuttingPlan, 'sides' | 'singles'>, wish: PlanWish): LineFill[] {
  const spans = plan.sides.flatMap(({ bars }) =>
    bars.flatMap(({ runs }) => runs.flatMap(({ pieces }) => pieces)),
  );
  const pieces = [...plan.sides.flatMap(({ items }) => items), ...spans, ...plan.singles];
  return day.lines.map((line) => {
    const pieceIds = pieces
      .filter(({ owner }) => owner && 'lineId' in owner && owner.lineId === line.lineId)
      .map(({ pieceId }) => pieceId);
    const asked = askedPieces(line) + askedGrams(line);
    const bulkGrams = wish.bulkGrams?.[line.lineId] ?? 0;
    const filled = pieceIds.length + bulkGrams;
    return {
      lineId: line.lineId,
      asked,
      filled,
      pieceIds,
      bulkGrams,
      shortfall: filled < asked ? scarce : null,
    };
  });
}

/** A plan laid by hand for a test. It keeps every rule as long as the wishes do. */
export function layPlan(day: CuttingDay, wish: PlanWish = {}): CuttingPlan {
  const sides = day.animals.flatMap((animal) =>
    animal.sides.map((side) =>
      new SideLayer(day, day.species[animal.speciesId]!, side, wish.sides?.[side.sideId] ?? {}).lay(),
    ),
  );
  const singles = day.animals.flatMap((animal) => singlesOf(day, animal, wish));
  const shares = day.shares.map(({ shareId }) => {
    const sideIds = sides.filter((side) => side.shareId === shareId).map(({ sideId }) => sideId);
    return { shareId, sideIds, shortfall: sideIds.length === 0 ? scarce : null };
  });
  return {
    dayId: day.dayId,
    sides,
    singles,
    lines: fillsOf(day, { sides, singles }, wish),
    shares,
    proof: null,
  };
}

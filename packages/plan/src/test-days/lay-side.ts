import {
  allowedOperations,
  type BarShape,
  footprint,
  isOutputLost,
  isPartLost,
  layRuns,
  lostRegions,
  mannerShares,
  type Portion,
  type Primal,
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
import type { BarPlan, Owner, RunPlan, SidePlan } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';

export interface PieceWish {
  readonly stock: string;
  readonly cut: string;
  readonly portion: Portion;
  readonly owner?: Owner;
}

/** What a hand-laid plan can't do without. */
export function must<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`no ${what}`);
  return value;
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

type Entry = { readonly weight: number; readonly put: (massMg: number) => void };
type Draft<T> = { -readonly [K in keyof T]: T[K] };

/** Lays one side with the measures of the carcass package; weights are rounded together, so that they add up. */
export class SideLayer {
  readonly #shape: SideShape;
  readonly #lost: ReadonlySet<string>;
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
    this.#lost = lostRegions(species, side.lostParts);
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
    for (const [index, { put }] of this.#entries.entries()) put(masses[index] ?? 0);
    this.#plan.bulkMg = Object.fromEntries(
      bulks.map(([bulk], index) => [bulk, masses[this.#entries.length + index] ?? 0]),
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
    this.#entries.push({
      weight,
      put: (massMg) => {
        piece.massMg = massMg;
      },
    });
  }

  #visit(partId: string, massMg: number): void {
    const part = must(this.#shape.species.parts[partId], partId);
    if (isPartLost(part, this.#lost)) this.#addBulk('lost', massMg);
    else if (part.kind === 'bar') this.#layBar(must(this.#shape.bars.get(partId), partId));
    else this.#breakDown(part, massMg);
  }

  #breakDown(part: Primal, massMg: number): void {
    const partId = part.id;
    const allowed = allowedOperations(part, this.#shape.side);
    const wished = this.#wish.operations?.[partId] ?? allowed[0]?.id;
    const operation = must(
      allowed.find(({ id }) => id === wished),
      `operation ${wished} of ${partId}`,
    );
    this.#plan.operations[partId] = operation.id;
    this.#plan.minutes += operation.minutes;
    operation.outputs.forEach((output, index) => {
      const outputMg = massMg * shareOf(operation.outputs, index);
      if (output.to === 'part') this.#visit(output.id, outputMg);
      else if (isOutputLost(this.#shape.species, part, operation, output, this.#lost))
        this.#addBulk('lost', outputMg);
      else if (output.to === 'item') this.#addItem(output.id, partId, outputMg);
      else this.#addBulk(output.id, outputMg);
    });
  }

  #wayOf({ zone, stations, ways }: ZoneShape): ZoneWay {
    const wish = this.#wish.zones?.[zone.id];
    if (wish === undefined) return must(ways[0], zone.id);
    const [first, at, second] = typeof wish === 'string' ? [wish, stations, undefined] : wish;
    return must(
      ways.find(
        ([left, right]) => left?.manner.id === first && left.toStation === at && right?.manner.id === second,
      ),
      `way of ${zone.id}`,
    );
  }

  #layBar(bar: BarShape): void {
    const runs = must(
      layRuns(bar.zones.map((zone) => ({ zone, way: this.#wayOf(zone) }))),
      `runs of ${bar.bar.id}`,
    );
    this.#plan.bars.push({ bar: bar.bar.id, runs: runs.map((run) => this.#layRun(bar.bar.id, run)) });
  }

  #release(bar: string, run: Run): void {
    for (const stretch of run.stretches) {
      const stations = stretch.toStation - stretch.fromStation;
      this.#plan.minutes += stretch.manner.minutes;
      stretch.manner.releases.forEach((release, index) => {
        const massMg = stretchMassMg(stretch) * shareOf(mannerShares(stretch.manner), index + 1);
        const enough = stations >= (release.stationsMin ?? 0);
        if (release.to === 'item' && enough) this.#addItem(release.id, bar, massMg);
        else this.#addBulk(enough ? release.id : must(release.otherwise, 'otherwise'), massMg);
      });
    }
  }

  #layRun(bar: string, run: Run): RunPlan {
    this.#release(bar, run);
    const density = run.massMg / run.usableUm;
    const pieces: Draft<RunPlan['pieces'][number]>[] = [];
    let nextUm = run.fromUm;
    for (const wish of this.#wish.pieces?.filter(({ stock }) => stock === run.stock) ?? []) {
      const print = must(
        footprint(
          { tool: run.tool, pitchUm: run.pitchUm, densityMgPerUm: density },
          wish.portion,
          this.#day.tools,
        ),
        `room for ${wish.cut}`,
      );
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
      this.#entries.push({
        weight: print.pieceUm * density,
        put: (massMg) => {
          piece.massMg = massMg;
        },
      });
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
    this.#entries.push({
      weight: freeUm * density,
      put: (massMg) => {
        plan.freeMg = massMg;
      },
    });
    return plan;
  }
}

import {
  allowedOperations,
  type BarShape,
  footprint,
  layRuns,
  mannerShares,
  type Portion,
  type SideFacts,
  type SideShape,
  type Species,
  shapeSide,
  splitExactly,
} from '@flitchbook/carcass';
import type { BarPlan, ItemPiece, Owner, RunPlan, SidePlan, SpanPiece } from '@flitchbook/plan';

export const kerfUm = 3_000;
const tools = { saw: true, kerfUm };

/** How a side is to lie in a hand-made plan. What is not said takes the first way of the tree. */
export interface SideWish {
  readonly shareId?: string;
  readonly operations?: Readonly<Record<string, string>>;
  /** zone id to manner id, or to two manners with the station where they part */
  readonly zones?: Readonly<Record<string, string | readonly [string, number, string]>>;
  readonly pieces?: readonly {
    readonly stock: string;
    readonly cut: string;
    readonly portion: Portion;
    readonly count: number;
    readonly owner: Owner;
  }[];
  readonly items?: Readonly<Record<string, Owner>>;
}

/** Lays a side by hand, with whole masses that add up. For tests only: nothing is optimised. */
export class SideLayer {
  readonly #shape: SideShape;
  readonly #wish: SideWish;
  readonly #items: ItemPiece[] = [];
  readonly #bars: BarPlan[] = [];
  readonly #operations: Record<string, string> = {};
  readonly #bulkMg: Record<string, number> = {};
  #minutes = 0;

  constructor(species: Species, side: SideFacts, wish: SideWish) {
    this.#shape = shapeSide(species, side);
    this.#wish = wish;
  }

  lay(): SidePlan {
    const { side, species } = this.#shape;
    this.#visit(species.sideRoot, side.massMg);
    return {
      sideId: side.sideId,
      animalId: side.animalId,
      shareId: this.#wish.shareId ?? null,
      massMg: side.massMg,
      operations: this.#operations,
      items: this.#items,
      bars: this.#bars,
      bulkMg: this.#bulkMg,
      minutes: this.#minutes,
    };
  }

  #owner(wished: Owner): Owner {
    return this.#wish.shareId === undefined ? wished : { shareId: this.#wish.shareId };
  }

  #addBulk(bulk: string, mg: number): void {
    if (mg > 0) this.#bulkMg[bulk] = (this.#bulkMg[bulk] ?? 0) + mg;
  }

  #addItem(from: string, item: string, massMg: number): void {
    const { sideId } = this.#shape.side;
    const owner = this.#owner(this.#wish.items?.[item] ?? null);
    this.#items.push({ pieceId: `${sideId}:${from}:${item}`, item, from, massMg, owner });
  }

  #visit(partId: string, massMg: number): void {
    const part = this.#shape.species.parts[partId];
    const bar = this.#shape.bars.get(partId);
    if (bar) this.#layBar(bar, massMg);
    else if (part?.kind === 'primal') {
      const [first, ...others] = allowedOperations(part, this.#shape.side);
      const wanted = this.#wish.operations?.[partId];
      const operation = others.find(({ id }) => id === wanted) ?? first;
      if (!operation) throw new Error(`nothing to do with ${partId}`);
      this.#operations[partId] = operation.id;
      this.#minutes += operation.minutes;
      const masses = splitExactly(
        massMg,
        operation.outputs.map(({ parts }) => parts),
      );
      operation.outputs.forEach((output, at) => {
        const mine = masses[at] ?? 0;
        if (output.to === 'part') this.#visit(output.id, mine);
        else if (output.to === 'item') this.#addItem(partId, output.id, mine);
        else this.#addBulk(output.id, mine);
      });
    } else this.#addBulk('lost', massMg);
  }

  #layBar(bar: BarShape, massMg: number): void {
    const ways = bar.zones.map((zone) => {
      const wish = this.#wish.zones?.[zone.zone.id] ?? zone.zone.manners[0]?.id ?? '';
      const [first, at, second] = typeof wish === 'string' ? [wish, zone.stations, undefined] : wish;
      const manner = (id: string | undefined) => zone.zone.manners.find((each) => each.id === id);
      const stretch = (id: string | undefined, fromStation: number, toStation: number) => {
        const found = manner(id);
        return found && toStation > fromStation ? [{ manner: found, fromStation, toStation }] : [];
      };
      return { zone, way: [...stretch(first, 0, at), ...stretch(second, at, zone.stations)] };
    });
    const zoneMg = splitExactly(
      massMg,
      bar.zones.map(({ zone }) => zone.mass.parts),
    );
    const keptMg = new Map<string, number>();
    ways.forEach(({ zone, way }, at) => {
      const lengths = way.map(({ fromStation, toStation }) => toStation - fromStation);
      const stretchMg = splitExactly(zoneMg[at] ?? 0, lengths);
      way.forEach(({ manner, fromStation }, nth) => {
        const [kept = 0, ...released] = splitExactly(
          stretchMg[nth] ?? 0,
          mannerShares(manner).map(({ parts }) => parts),
        );
        keptMg.set(`${zone.zone.id}/${fromStation}`, kept);
        this.#minutes += manner.minutes;
        manner.releases.forEach((release, which) => {
          const enough = (lengths[nth] ?? 0) >= (release.stationsMin ?? 0);
          if (release.to === 'item' && enough) this.#addItem(bar.bar.id, release.id, released[which] ?? 0);
          else
            this.#addBulk(
              release.to === 'item' ? (release.otherwise ?? 'trim') : release.id,
              released[which] ?? 0,
            );
        });
      });
    });
    const runs = (layRuns(ways) ?? []).map((run): RunPlan => {
      const runMg = run.stretches.reduce(
        (sum, { zone, fromStation }) => sum + (keptMg.get(`${zone.zone.id}/${fromStation}`) ?? 0),
        0,
      );
      return this.#layRun(bar.bar.id, run, runMg);
    });
    this.#bars.push({ bar: bar.bar.id, runs });
  }

  #layRun(barId: string, run: NonNullable<ReturnType<typeof layRuns>>[number], runMg: number): RunPlan {
    const density = run.massMg / run.usableUm;
    const site = { tool: run.tool, pitchUm: run.pitchUm, densityMgPerUm: density };
    const wished = (this.#wish.pieces ?? []).filter(({ stock }) => stock === run.stock);
    const laid = wished.flatMap(({ cut, portion, count, owner }) => {
      const print = footprint(site, portion, tools);
      if (!print) throw new Error(`${run.stock} does not give ${cut}`);
      return Array.from({ length: count }, () => ({ ...print, cut, portion, owner: this.#owner(owner) }));
    });
    const takenUm = laid.reduce((sum, { takesUm }) => sum + takesUm, 0);
    const sawnUm = laid.reduce((sum, { takesUm, pieceUm }) => sum + takesUm - pieceUm, 0);
    const freeUm = run.usableUm - takenUm;
    if (freeUm < 0) throw new Error(`${barId}: ${takenUm} um wanted of ${run.usableUm}`);
    const masses = splitExactly(runMg, [...laid.map(({ pieceUm }) => pieceUm), sawnUm, freeUm]);
    this.#addBulk('loss', masses[laid.length] ?? 0);
    let atUm = run.fromUm;
    const pieces = laid.map(({ cut, portion, pieceUm, takesUm, owner }, nth): SpanPiece => {
      const pieceId = `${this.#shape.side.sideId}:${barId}:${atUm}`;
      const piece = {
        pieceId,
        cut,
        portion,
        fromUm: atUm,
        toUm: atUm + pieceUm,
        massMg: masses[nth] ?? 0,
        owner,
      };
      atUm += takesUm;
      return piece;
    });
    return {
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
      freeMg: masses[laid.length + 1] ?? 0,
    };
  }
}

import {
  askedGrams,
  askedPieces,
  type CuttingPlan,
  type DemandLine,
  type LineFill,
  type Owner,
  type ShareFill,
  type Shortfall,
  type SidePlan,
} from '@flitchbook/plan';
import { type Prices, priceClass, priceClasses } from './pricing.ts';
import type { BulkDemand, Demand, Problem, UnitClass } from './problem.ts';

/** Worth of what is missing against anything already promised: the search gives up as little as it can, but gets it. */
const wantedAbove = 1_000;

interface Sacrifice {
  readonly side: SidePlan;
  readonly label: string;
  /** line id to pieces that it would lose on this side */
  readonly lines: ReadonlyMap<string, number>;
}

interface Case {
  readonly line: DemandLine;
  readonly fill: LineFill;
  readonly products: readonly number[];
  readonly bulk: number | null;
}

const blank = (problem: Problem): Prices => ({
  products: new Float64Array(problem.products.length),
  stocks: new Float64Array(problem.outlets.stocks.length),
  bulks: new Float64Array(problem.outlets.bulks.length),
  minute: 0,
});

const plural = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
const kilograms = (grams: number): string => `${(grams / 1000).toFixed(2)} kg`;

/** Says why lines and shares fall short: what the day could give at most, and what getting it would cost whom. */
export class Explainer {
  readonly #problem: Problem;
  readonly #plan: CuttingPlan;
  readonly #classOf: ReadonlyMap<string, UnitClass>;
  readonly #lines: ReadonlyMap<string, DemandLine>;
  readonly #demandOf: ReadonlyMap<string, Demand>;
  readonly #ownedOn: ReadonlyMap<string, ReadonlyMap<string, number>>;

  constructor(problem: Problem, plan: CuttingPlan) {
    this.#problem = problem;
    this.#plan = plan;
    this.#classOf = new Map(
      problem.classes.flatMap((group) =>
        group.units.filter(({ side }) => side).map((unit) => [unit.unitId, group] as const),
      ),
    );
    this.#lines = new Map(problem.day.lines.map((line) => [line.lineId, line]));
    this.#demandOf = new Map(
      problem.demands.flatMap((demand) => demand.lines.map((line) => [line.lineId, demand] as const)),
    );
    this.#ownedOn = new Map(plan.sides.map((side) => [side.sideId, ownedBy(side)]));
  }

  explain(): CuttingPlan {
    return {
      ...this.#plan,
      lines: this.#plan.lines.map((fill) =>
        fill.filled < fill.asked ? { ...fill, shortfall: this.#line(fill) } : fill,
      ),
      shares: this.#plan.shares.map((fill) => this.#share(fill)),
    };
  }

  #case(fill: LineFill): Case {
    const line = this.#lines.get(fill.lineId) as DemandLine;
    const bulkDemand = this.#problem.bulkDemands.find((demand: BulkDemand) => demand.line === line);
    const products = this.#demandOf.get(fill.lineId)?.options.map((option) => option.product) ?? [];
    return { line, fill, products: [...new Set(products)], bulk: bulkDemand?.bulk ?? null };
  }

  #line(fill: LineFill): Shortfall {
    const short = this.#case(fill);
    const { line } = short;
    if (!this.#problem.day.animals.some((animal) => animal.speciesId === line.speciesId)) {
      return this.#saying('impossible', `There is no ${this.#speciesName(line)} on this day.`, 0);
    }
    const most = this.#most(short);
    if (most < 1) return this.#saying('impossible', this.#whyNever(short), 0);
    const rivals = this.#rivals(short);
    const wanted = rivals.reduce((sum, rival) => sum + (askedPieces(rival) || askedGrams(rival)), 0);
    const sacrifices = this.#sacrifices(short);
    const shares = this.#sharesThatCould(short);
    const amount = (count: number): string => (short.bulk === null ? `${count}` : kilograms(count));
    if (most < wanted) {
      const holders = this.#plan.lines.filter(
        (other) =>
          other.filled > 0 &&
          other.lineId !== line.lineId &&
          rivals.some((rival) => rival.lineId === other.lineId),
      );
      const kept =
        holders.length === 0
          ? ''
          : ` ${listed([...new Set(holders.map((other) => this.#ownerOf(other.lineId)))])} ${holders.length === 1 ? 'has' : 'have'} part of them.`;
      const alone =
        rivals.length === 1
          ? `${amount(wanted)} asked for`
          : `${amount(wanted)} wanted over ${plural(rivals.length, 'line')}`;
      return this.#saying(
        'scarce',
        `${alone}; this day could give ${amount(most)} at the very most, with nothing else cut.${kept}${this.#atWhatCost(sacrifices)}`,
        most,
        sacrifices,
        shares,
        holders.map((other) => other.lineId),
      );
    }
    return this.#saying(
      'clash',
      `This day could give ${amount(Math.min(most, fill.asked))}, but not beside the rest.${this.#atWhatCost(sacrifices)}`,
      most,
      sacrifices,
      shares,
    );
  }

  #saying(
    kind: Shortfall['kind'],
    says: string,
    mostPossible: number,
    sacrifices: readonly Sacrifice[] = [],
    withShares: readonly string[] = [],
    holders: readonly string[] = [],
  ): Shortfall {
    const clashing = sacrifices.flatMap(({ lines }) => [...lines.keys()]);
    return {
      kind,
      says,
      withLines: [...new Set([...clashing, ...holders])],
      withShares,
      withLocks: [],
      mostPossible,
    };
  }

  /** Lines that ask for any of the same products or bulk, in the order of the book. */
  #rivals({ line, products, bulk }: Case): DemandLine[] {
    if (bulk !== null)
      return this.#problem.bulkDemands.filter((demand) => demand.bulk === bulk).map((demand) => demand.line);
    if (products.length === 0) return [line];
    return this.#problem.demands
      .filter(({ options }) => options.some(({ product }) => products.includes(product)))
      .flatMap((demand) => demand.lines);
  }

  #asking({ products, bulk }: Case, worth: number): Prices {
    const prices = blank(this.#problem);
    for (const product of products) prices.products[product] = worth;
    if (bulk !== null) prices.bulks[bulk] = worth;
    return prices;
  }

  /** Most that the day could give with nothing else wanted, pieces or grams. */
  #most(short: Case): number {
    const sum = priceClasses(this.#problem, this.#asking(short, 1)).reduce(
      (running, { group, unitValue }) => running + unitValue * group.units.length,
      0,
    );
    return short.bulk === null ? Math.floor(sum + 1e-6) : Math.floor(sum * 1000);
  }

  #whyNever({ line }: Case): string {
    const cut = this.#problem.day.species[line.speciesId]?.cuts[line.cut];
    const facts = this.#problem.day.animals.flatMap((animal) => animal.sides).flatMap((side) => side.facts);
    const skinned = !facts.includes('skin-on') ? ' The carcasses came without their skin.' : '';
    const knife =
      !this.#problem.day.tools.saw && line.portion.by !== 'whole'
        ? ' Without a saw, bone-in pieces part between the ribs only.'
        : '';
    return `No side of this day gives ${cut?.name ?? line.cut} as ordered.${skinned}${knife}`;
  }

  /** Shares whose sides could have given it. */
  #sharesThatCould(short: Case): string[] {
    const asking = this.#asking(short, 1);
    const could = this.#plan.sides.flatMap((side) => {
      const group = this.#classOf.get(side.sideId);
      return side.shareId !== null && group && priceClass(group, asking).unitValue > 0 ? [side.shareId] : [];
    });
    return [...new Set(could)];
  }

  /** For each side, whom it would cost what to get one more there; the cheapest first. */
  #sacrifices(short: Case): Sacrifice[] {
    return this.#plan.sides
      .filter((side) => side.shareId === null)
      .flatMap((side) => this.#sacrifice(short, side) ?? [])
      .sort((left, right) => total(left.lines) - total(right.lines));
  }

  #sacrifice(short: Case, side: SidePlan): Sacrifice | undefined {
    const group = this.#classOf.get(side.sideId);
    const owned = this.#ownedOn.get(side.sideId) ?? new Map<string, number>();
    if (!group) return undefined;
    const prices = this.#asking(short, wantedAbove);
    for (const lineId of owned.keys()) {
      for (const { product } of this.#demandOf.get(lineId)?.options ?? []) {
        if (!short.products.includes(product))
          prices.products[product] = Math.max(prices.products[product] as number, 1);
      }
    }
    const made = priceClass(group, prices).unitProducts();
    if (!short.products.some((product) => (made.get(product) ?? 0) > 0) && short.bulk === null)
      return undefined;
    return { side, label: this.#labelOf(side), lines: this.#lost(made, owned, short.line.lineId) };
  }

  #lost(
    products: ReadonlyMap<number, number>,
    owned: ReadonlyMap<string, number>,
    forLine: string,
  ): ReadonlyMap<string, number> {
    const made = new Map(products);
    const lost = new Map<string, number>();
    for (const [lineId, count] of owned) {
      if (lineId === forLine) continue;
      let missing = count;
      for (const { product } of this.#demandOf.get(lineId)?.options ?? []) {
        const used = Math.min(missing, made.get(product) ?? 0);
        made.set(product, (made.get(product) ?? 0) - used);
        missing -= used;
      }
      if (missing > 0) lost.set(lineId, missing);
    }
    return lost;
  }

  #atWhatCost([cheapest]: readonly Sacrifice[]): string {
    if (!cheapest) return ' Every side that could give it is reserved whole.';
    if (cheapest.lines.size === 0) return '';
    const losses = [...cheapest.lines].map(
      ([lineId, count]) => `${this.#ownerOf(lineId)} ${this.#pieces(lineId, count)}`,
    );
    return ` One more would have to come from ${cheapest.label}, and would cost ${listed(losses)}.`;
  }

  #pieces(lineId: string, count: number): string {
    const line = this.#lines.get(lineId);
    const name =
      this.#problem.day.species[line?.speciesId ?? '']?.cuts[line?.cut ?? '']?.name ?? line?.cut ?? lineId;
    return `${count} × ${name.charAt(0).toLowerCase()}${name.slice(1)}`;
  }

  #ownerOf(lineId: string): string {
    return this.#lines.get(lineId)?.owner ?? lineId;
  }

  #labelOf(side: SidePlan): string {
    const animal = this.#problem.day.animals.find((candidate) => candidate.animalId === side.animalId);
    const hand = animal?.sides.find((candidate) => candidate.sideId === side.sideId)?.hand ?? '';
    return `the ${hand} side of ${animal?.name ?? side.animalId}`;
  }

  #speciesName(line: DemandLine): string {
    return this.#problem.day.species[line.speciesId]?.name.toLowerCase() ?? line.speciesId;
  }

  #share(fill: ShareFill): ShareFill {
    if (fill.sideIds.length > 0) return fill;
    const share = this.#problem.day.shares.find((candidate) => candidate.shareId === fill.shareId);
    const places = this.#problem.shares.filter((choice) => choice.share.shareId === fill.shareId);
    if (places.length === 0) {
      return {
        ...fill,
        shortfall: this.#saying(
          'impossible',
          `No ${share?.size === 'whole' ? 'animal' : 'side'} of this day can be cut to these instructions.`,
          0,
        ),
      };
    }
    const withLines = [
      ...new Set(
        this.#plan.sides.flatMap((side) => [
          ...(this.#ownedOn.get(side.sideId) ?? new Map<string, number>()).keys(),
        ]),
      ),
    ];
    const says = `Every ${share?.size === 'whole' ? 'animal' : 'side'} is needed: ${plural(withLines.length, 'line')} and ${plural(this.#plan.shares.filter(({ sideIds }) => sideIds.length > 0).length, 'share')} are filled from them.`;
    return { ...fill, shortfall: { ...this.#saying('clash', says, 0), withLines } };
  }
}

const total = (lines: ReadonlyMap<string, number>): number =>
  [...lines.values()].reduce((sum, count) => sum + count, 0);

function ownedBy(side: SidePlan): Map<string, number> {
  const owned = new Map<string, number>();
  const note = ({ owner }: { readonly owner: Owner }): void => {
    if (owner && 'lineId' in owner) owned.set(owner.lineId, (owned.get(owner.lineId) ?? 0) + 1);
  };
  side.items.forEach(note);
  for (const bar of side.bars) for (const run of bar.runs) run.pieces.forEach(note);
  return owned;
}

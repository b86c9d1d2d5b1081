import { regionsOf } from '../regions.ts';
import type { Bar, Cut, Portion, SlaughterFact, Species, Zone } from '../species.ts';
import type { StyleWalk, Within } from '../take-home/kept-share.ts';
import type { CutSheet } from './cut-sheet.ts';
import { consequences, lackedBy, ReachableCuts } from './reachable-cuts.ts';

/** One answer of a question. */
export interface HalfAnswer {
  readonly id: string;
  readonly name: string;
  /** the cut that a portion gives */
  readonly cut?: string;
  readonly portion?: Portion;
  /** done only where somebody asks for it */
  readonly rare: boolean;
  /** facts of slaughter that it cannot do without and this animal lacks */
  readonly lacks: readonly SlaughterFact[];
  /** cuts that another answer would leave and this one takes away */
  readonly rulesOut: readonly string[];
  /** cuts that no other answer of the question gives */
  readonly onlySo: readonly string[];
}

/** A choice on the way down a side. It arises from the choices above it. */
export interface HalfQuestion {
  readonly about: 'operations' | 'manners' | 'portions';
  /** part, zone or stock */
  readonly id: string;
  readonly name: string;
  /** part of the side that the answer is about */
  readonly within: Within;
  /** where it lies */
  readonly regions: readonly string[];
  /** answer in force: the one given, or the usual way */
  readonly standing: string;
  readonly answers: readonly HalfAnswer[];
}

/** A stretch that is left in one piece. */
export const leftWhole = 'left-whole';

/** An id for a portion, the same for the same portion. */
export function portionKey(portion: Portion): string {
  switch (portion.by) {
    case 'thickness':
      return `thickness-${portion.um}`;
    case 'ribs':
      return `ribs-${portion.ribs}`;
    case 'weight':
      return `weight-${portion.fromGrams}-${portion.toGrams}`;
    default:
      return portion.by;
  }
}

/** The thicknesses that customers are offered, out of the limits of a cut: 3/4 in to 2 in by quarters. */
const quarterInchesUm = [19_050, 25_400, 31_750, 38_100, 50_800] as const;

const cutsFrom = ({ cuts }: Species, stock: string): readonly Cut[] =>
  Object.values(cuts).filter(({ sources }) =>
    sources.some(({ from, id }) => from === 'stock' && id === stock),
  );

interface PortionOffer {
  readonly cut: Cut;
  readonly portion: Portion;
}

/** Ways to portion a stock, by `portionKey`: each cut in its usual portion, slices in the usual thicknesses too. */
export function portionOffers(species: Species, stock: string): ReadonlyMap<string, PortionOffer> {
  const offers = new Map<string, PortionOffer>();
  const offer = (cut: Cut, portion: Portion): void => {
    const id = portionKey(portion);
    if (!offers.has(id)) offers.set(id, { cut, portion });
  };
  for (const cut of cutsFrom(species, stock)) {
    offer(cut, cut.usual);
    for (const rule of cut.portions) {
      if (rule.by !== 'thickness') continue;
      for (const um of quarterInchesUm)
        if (um >= rule.minUm && um <= rule.maxUm) offer(cut, { by: 'thickness', um });
    }
  }
  return offers;
}

/** The cut that pieces of a stock count as when they are portioned so. */
export const cutOfPortion = (species: Species, stock: string, portion: Portion): Cut | undefined =>
  cutsFrom(species, stock).find(({ portions }) => portions.some(({ by }) => by === portion.by));

/** Regions of a zone: its own, or what the other zones leave of the bar. */
function regionsOfZone(species: Species, bar: Bar, zone: Zone): readonly string[] {
  if (Object.hasOwn(species.regions, zone.id)) return [zone.id];
  const others = bar.zones.map(({ id }) => id);
  return regionsOf(bar).filter((region) => !others.includes(region));
}

class Asking {
  readonly #species: Species;
  readonly #facts: readonly SlaughterFact[];
  readonly #sheet: CutSheet;
  readonly #reachable: ReachableCuts;
  readonly #asked = new Set<string>();

  constructor(species: Species, facts: readonly SlaughterFact[], sheet: CutSheet) {
    this.#species = species;
    this.#facts = facts;
    this.#sheet = sheet;
    this.#reachable = new ReachableCuts(species, facts);
  }

  of(partId: string): readonly HalfQuestion[] {
    const part = this.#species.parts[partId];
    if (part?.kind === 'bar') return part.zones.flatMap((zone) => this.#ofZone(part, zone));
    const operations = part?.operations ?? [];
    if (!part || operations.length < 2) return [];
    const effects = consequences(operations.map((operation) => this.#reachable.ofOperation(operation)));
    const answers = operations.map((operation, at) => ({
      id: operation.id,
      name: operation.name,
      rare: operation.onRequest === true,
      lacks: lackedBy(this.#facts, operation),
      ...(effects[at] as (typeof effects)[number]),
    }));
    const said = this.#sheet.operations[partId];
    const standing = operations.find(({ id }) => id === said)?.id ?? operations[0]?.id ?? '';
    const within = { part: partId };
    return [
      {
        about: 'operations',
        id: partId,
        name: part.name,
        within,
        regions: regionsOf(part),
        standing,
        answers,
      },
    ];
  }

  #ofZone(bar: Bar, zone: Zone): readonly HalfQuestion[] {
    const { manners } = zone;
    const said = this.#sheet.manners[zone.id];
    const standing = manners.find(({ id }) => id === said) ?? manners[0];
    if (!standing) return [];
    const regions = regionsOfZone(this.#species, bar, zone);
    const within = { part: bar.id, zone: zone.id };
    const portions = this.#ofStock(standing.stock, within, regions);
    if (manners.length < 2) return portions;
    const effects = consequences(manners.map((manner) => this.#reachable.ofManner(manner)));
    const answers = manners.map((manner, at) => ({
      id: manner.id,
      name: manner.name,
      rare: manner.onRequest === true,
      lacks: [],
      ...(effects[at] as (typeof effects)[number]),
    }));
    const { id, name } = zone;
    return [{ about: 'manners', id, name, within, regions, standing: standing.id, answers }, ...portions];
  }

  #ofStock(stock: string, within: Within, regions: readonly string[]): readonly HalfQuestion[] {
    if (this.#asked.has(stock)) return [];
    this.#asked.add(stock);
    const offers = [...portionOffers(this.#species, stock)];
    const said = this.#sheet.portions[stock];
    const key = said && portionKey(said);
    if (said && !offers.some(([id]) => id === key)) {
      const cut = cutOfPortion(this.#species, stock, said);
      if (cut) offers.push([portionKey(said), { cut, portion: said }]);
    }
    if (offers.length === 0) return [];
    const effects = consequences([...offers.map(([, { cut }]) => new Set([cut.id])), new Set<string>()]);
    // Two thicknesses of one cut rule each other out and nothing else: the cut itself is there either way.
    const effectAt = (at: number, own?: string) => {
      const { rulesOut, onlySo } = effects[at] as (typeof effects)[number];
      return { rulesOut: rulesOut.filter((cut) => cut !== own), onlySo };
    };
    const plain = { rare: false, lacks: [] };
    const answers: HalfAnswer[] = offers.map(([id, { cut, portion }], at) => ({
      ...plain,
      id,
      name: cut.name,
      cut: cut.id,
      portion,
      ...effectAt(at, cut.id),
    }));
    answers.push({ ...plain, id: leftWhole, name: '', ...effectAt(offers.length) });
    const name = this.#species.stocks[stock]?.name ?? stock;
    const standing = offers.some(([id]) => id === key) ? (key ?? leftWhole) : leftWhole;
    return [{ about: 'portions', id: stock, name, within, regions, standing, answers }];
  }
}

/** The choices of a side cut as the sheet says, in tree order; what is not said stands the usual way. */
export function questionsOnTheWay(
  species: Species,
  facts: readonly SlaughterFact[],
  sheet: CutSheet,
  walk: StyleWalk,
): readonly HalfQuestion[] {
  const asking = new Asking(species, facts, sheet);
  return walk.parts().flatMap((part) => asking.of(part));
}

import { mannerShares } from '../runs.ts';
import { outputsOn, shareOf, stationsOf } from '../side-shape.ts';
import type { Bar, Release, SlaughterFact, Zone } from '../species.ts';
import type { Breakdown } from '../yield/breakdown.ts';
import type { Estimate } from '../yield/estimate.ts';
import type { Settled } from '../yield/settle.ts';
import { concentrationOf } from '../yield/spread-shares.ts';
import type { YieldProfile } from '../yield/yield-profile.ts';
import type { CuttingStyle } from './cutting-style.ts';

/** Where something ends up when a side is cut in a style. */
export interface Ending {
  readonly kind: 'item' | 'stock' | 'bulk';
  readonly id: string;
}

/** First and second moment of a share. */
interface Moments {
  readonly mean: number;
  readonly square: number;
}

const whole: Moments = { mean: 1, square: 1 };
const nothing: Moments = { mean: 0, square: 0 };

/** The part of a side that is looked at: all of it, a part with what is below, or one zone of a bar. */
export interface Within {
  readonly part: string;
  readonly zone?: string;
}

/** What is known of an animal that decides what a cut comes to: racks need ribs, crackling needs skin. */
export interface SeenAnimal {
  readonly ribs: number;
  readonly facts: readonly SlaughterFact[];
}

/** A rack from too few ribs is none: it is counted as what the data says. */
function released(
  { to, id, stationsMin = 0, otherwise }: Release,
  zone: Zone,
  ribs: number | undefined,
): Ending {
  const tooFew = ribs !== undefined && stationsOf(zone, ribs) < stationsMin;
  return tooFew ? { kind: 'bulk', id: otherwise ?? id } : { kind: to, id };
}

type Ways = Pick<CuttingStyle, 'operations' | 'manners'>;

interface ZoneEnding extends Ending {
  readonly zone: string;
  /** of the bar */
  readonly share: number;
}

/** What a bar's zones end in, each with its share of the bar, in the manners of a style. */
function zoneEndings(bar: Bar, style: Ways, ribs: number | undefined): readonly ZoneEnding[] {
  return bar.zones.flatMap((zone, turn) => {
    const share = shareOf(
      bar.zones.map(({ mass }) => mass),
      turn,
    );
    const manner = zone.manners.find(({ id }) => id === style.manners[zone.id]) ?? zone.manners[0];
    if (!manner) return [];
    const shares = mannerShares(manner);
    return [
      { zone: zone.id, kind: 'stock' as const, id: manner.stock, share: share * shareOf(shares, 0) },
      ...manner.releases.map((release, at) => ({
        zone: zone.id,
        ...released(release, zone, ribs),
        share: share * shareOf(shares, at + 1),
      })),
    ];
  });
}

/** Moments of a sum of `share x kept`, the shares following a Dirichlet law and the kept parts independent of them. */
function blend(
  entries: readonly { readonly share: number; readonly kept: Moments }[],
  concentration: number,
): Moments {
  const mean = entries.reduce((sum, { share, kept }) => sum + share * kept.mean, 0);
  const own = entries.reduce((sum, { share, kept }) => sum + share * share * kept.mean * kept.mean, 0);
  const shrink = concentration / (concentration + 1);
  const square = entries.reduce(
    (sum, { share, kept }) =>
      sum + ((share * (concentration * share + 1)) / (concentration + 1)) * kept.square,
    shrink * (mean * mean - own),
  );
  return { mean, square };
}

/** A thing on the way down: its share of what it is made from, and what it is or is broken into. */
type Laid = { readonly share: number } & (
  | { readonly ending: Ending }
  | { readonly part: string; readonly concentration: number; readonly made: readonly Laid[] }
  | { readonly bar: string; readonly endings: readonly ZoneEnding[] }
);

/** Walks the operations of a style from the side down. */
export class StyleWalk {
  readonly #breakdown: Breakdown;
  readonly #profile: YieldProfile;
  readonly #means: Settled;
  readonly #style: Ways;
  readonly #animal: SeenAnimal | null;
  readonly #root: Laid;

  /** @param animal null: one that has everything, and ribs enough */
  constructor(
    breakdown: Breakdown,
    profile: YieldProfile,
    means: Settled,
    style: Ways,
    animal: SeenAnimal | null = null,
  ) {
    this.#breakdown = breakdown;
    this.#profile = profile;
    this.#means = means;
    this.#style = style;
    this.#animal = animal;
    this.#root = this.#lay(0, 1);
  }

  #lay(index: number, share: number): Laid {
    const { id, operations } = this.#breakdown.parts[index] as Breakdown['parts'][number];
    const part = this.#breakdown.species.parts[id];
    if (part?.kind === 'bar')
      return { share, bar: id, endings: zoneEndings(part, this.#style, this.#animal?.ribs) };
    const wanted = operations.findIndex((operation) => operation.id === this.#style.operations[id]);
    const turn = Math.max(0, wanted);
    const { from, to } = operations[turn] ?? { from: 0, to: 0 };
    const operation = part?.operations[turn];
    const outputs = operation && this.#animal ? outputsOn(this.#animal, operation) : operation?.outputs;
    const mass = this.#means.parts[index] as number;
    const made: Laid[] = [];
    for (let at = from; at < to && mass > 0; at++) {
      const part = (this.#means.outputs[at] as number) / mass;
      const output = outputs?.[at - from];
      if (part === 0 || !output) continue;
      const { makes } = this.#breakdown.outputs[at] as Breakdown['outputs'][number];
      made.push(
        output.to === 'part'
          ? this.#lay(makes, part)
          : { share: part, ending: { kind: output.to, id: output.id } },
      );
    }
    return { share, part: id, concentration: concentrationOf(this.#profile, id), made };
  }

  #moments(laid: Laid, picks: (ending: Ending) => boolean, within: Within | null): Moments {
    if ('ending' in laid) return within === null && picks(laid.ending) ? whole : nothing;
    const here = within !== null && within.part === ('bar' in laid ? laid.bar : laid.part);
    if ('bar' in laid) {
      if (within && !here) return nothing;
      const kept = laid.endings
        .filter((ending) => (within?.zone ?? ending.zone) === ending.zone && picks(ending))
        .reduce((sum, { share }) => sum + share, 0);
      return { mean: kept, square: kept * kept };
    }
    const below = here ? null : within;
    const entries = laid.made.map((made) => ({ share: made.share, kept: this.#moments(made, picks, below) }));
    return blend(entries, laid.concentration);
  }

  /** Share of the side that ends up in what is picked of a part of it. */
  shareOf(picks: (ending: Ending) => boolean, within: Within | null = null): Estimate {
    const { mean, square } = this.#moments(this.#root, picks, within);
    return { mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
  }

  /** The parts that a side is broken into on the way, each before what is made of it. */
  parts(): readonly string[] {
    const found: string[] = [];
    const visit = (laid: Laid): void => {
      if ('bar' in laid) found.push(laid.bar);
      if (!('part' in laid)) return;
      found.push(laid.part);
      laid.made.forEach(visit);
    };
    visit(this.#root);
    return found;
  }

  /** Everything a side, or a part of it, ends in, each once, in tree order. */
  endings(within: Within | null = null): readonly Ending[] {
    const found = new Map<string, Ending>();
    const note = ({ kind, id }: Ending): void => void found.set(`${kind}/${id}`, { kind, id });
    const visit = (laid: Laid, above: boolean): void => {
      if ('ending' in laid) {
        if (above) note(laid.ending);
        return;
      }
      const inside = above || within?.part === ('bar' in laid ? laid.bar : laid.part);
      if ('bar' in laid) {
        if (!inside) return;
        for (const ending of laid.endings) if ((within?.zone ?? ending.zone) === ending.zone) note(ending);
      } else for (const made of laid.made) visit(made, inside);
    };
    visit(this.#root, within === null);
    return [...found.values()];
  }
}

import { mannerShares } from '../runs.ts';
import { shareOf } from '../side-shape.ts';
import type { Bar } from '../species.ts';
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

/** What a bar's zones end in, each with its share of the bar, in the manners of a style. */
function barEndings(bar: Bar, style: CuttingStyle): readonly (Ending & { readonly share: number })[] {
  return bar.zones.flatMap((zone, turn) => {
    const share = shareOf(
      bar.zones.map(({ mass }) => mass),
      turn,
    );
    const manner = zone.manners.find(({ id }) => id === style.manners[zone.id]) ?? zone.manners[0];
    if (!manner) return [];
    const shares = mannerShares(manner);
    return [
      { kind: 'stock' as const, id: manner.stock, share: share * shareOf(shares, 0) },
      ...manner.releases.map((release, at) => ({
        kind: release.to,
        id: release.id,
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

/** Walks the operations of a style from the side down. */
export class StyleWalk {
  readonly #breakdown: Breakdown;
  readonly #profile: YieldProfile;
  readonly #means: Settled;
  readonly #style: CuttingStyle;

  constructor(breakdown: Breakdown, profile: YieldProfile, means: Settled, style: CuttingStyle) {
    this.#breakdown = breakdown;
    this.#profile = profile;
    this.#means = means;
    this.#style = style;
  }

  #operationOf(index: number) {
    const { id, operations } = this.#breakdown.parts[index] as Breakdown['parts'][number];
    return operations.find((operation) => operation.id === this.#style.operations[id]) ?? operations[0];
  }

  #moments(index: number, picks: (ending: Ending) => boolean): Moments {
    const { id } = this.#breakdown.parts[index] as Breakdown['parts'][number];
    const part = this.#breakdown.species.parts[id];
    if (part?.kind === 'bar') {
      const kept = barEndings(part, this.#style)
        .filter(picks)
        .reduce((sum, { share }) => sum + share, 0);
      return { mean: kept, square: kept * kept };
    }
    const operation = this.#operationOf(index);
    const mass = this.#means.parts[index] as number;
    if (!operation || mass === 0) return nothing;
    const entries = this.#breakdown.outputs.slice(operation.from, operation.to).map((output, turn) => ({
      share: (this.#means.outputs[operation.from + turn] as number) / mass,
      kept:
        output.to === 'part'
          ? this.#moments(output.makes, picks)
          : picks({ kind: output.to, id: output.id })
            ? whole
            : nothing,
    }));
    return blend(entries, concentrationOf(this.#profile, id));
  }

  /** Share of the side that ends up in what is picked. */
  shareOf(picks: (ending: Ending) => boolean): Estimate {
    const { mean, square } = this.#moments(0, picks);
    return { mean, sd: Math.sqrt(Math.max(0, square - mean * mean)) };
  }

  /** Everything a side ends in, each once, in the order of the bench. */
  endings(): readonly Ending[] {
    const found = new Map<string, Ending>();
    const visit = (index: number): void => {
      const { id } = this.#breakdown.parts[index] as Breakdown['parts'][number];
      const part = this.#breakdown.species.parts[id];
      if (part?.kind === 'bar') {
        for (const { kind, id: ending } of barEndings(part, this.#style))
          found.set(`${kind}/${ending}`, { kind, id: ending });
        return;
      }
      const operation = this.#operationOf(index);
      for (let at = operation?.from ?? 0; at < (operation?.to ?? 0); at++) {
        const output = this.#breakdown.outputs[at] as Breakdown['outputs'][number];
        if ((this.#means.outputs[at] as number) === 0) continue;
        if (output.to === 'part') visit(output.makes);
        else found.set(`${output.to}/${output.id}`, { kind: output.to, id: output.id });
      }
    };
    visit(0);
    return [...found.values()];
  }
}

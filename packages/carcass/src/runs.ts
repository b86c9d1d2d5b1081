import type { Stretch, ZoneShape, ZoneWay } from './side-shape.ts';
import { lengthGridUm, shareOf } from './side-shape.ts';
import type { Manner, Portion } from './species.ts';

/** One zone's part of a run. */
export interface RunStretch extends Stretch {
  readonly zone: ZoneShape;
}

/** A continuous stretch of a bar in one stock: what pieces are laid into, end to end. */
export interface Run {
  readonly stock: string;
  readonly tool: Manner['tool'];
  readonly stretches: readonly RunStretch[];
  /** place on the bar, in the length the bar has in the carcass */
  readonly fromUm: number;
  readonly toUm: number;
  /** length that pieces can take up; less than `toUm - fromUm` where a boned muscle draws up */
  readonly usableUm: number;
  readonly stations: number;
  /** length of a station, 0 where the run joins zones of different pitch */
  readonly pitchUm: number;
  /** mass that stays in the run after boning and trimming */
  readonly massMg: number;
}

/** Mass of a stretch before boning and trimming. */
export const stretchMassMg = ({ zone, fromStation, toStation }: RunStretch): number =>
  zone.stations === 0 ? 0 : (zone.massMg * (toStation - fromStation)) / zone.stations;

export const mannerShares = (manner: Manner) => [manner.keeps, ...manner.releases];

/** Length of a stretch that pieces can take up. */
export function usableUmOf({ zone, manner, fromStation, toStation }: RunStretch): number {
  const inPlaceUm = (toStation - fromStation) * zone.pitchUm;
  return Math.floor((inPlaceUm * manner.lengthPpm) / 1_000_000 / lengthGridUm) * lengthGridUm;
}

function runOf(stretches: readonly RunStretch[]): Run {
  const [first] = stretches as readonly [RunStretch];
  const last = stretches.at(-1) as RunStretch;
  const pitches = new Set(stretches.map(({ zone }) => zone.pitchUm));
  return {
    stock: first.manner.stock,
    tool: first.manner.tool,
    stretches,
    fromUm: first.zone.fromUm + first.fromStation * first.zone.pitchUm,
    toUm: last.zone.fromUm + last.toStation * last.zone.pitchUm,
    usableUm: stretches.reduce((sum, stretch) => sum + usableUmOf(stretch), 0),
    stations: stretches.reduce((sum, { fromStation, toStation }) => sum + toStation - fromStation, 0),
    pitchUm: pitches.size === 1 ? first.zone.pitchUm : 0,
    massMg: stretches.reduce(
      (sum, stretch) => sum + stretchMassMg(stretch) * shareOf(mannerShares(stretch.manner), 0),
      0,
    ),
  };
}

/**
 * The runs of a bar cut zone by zone in the given ways. Neighbouring stretches of one stock that joins are one run.
 * @returns undefined when a joining stock would stand in two places of the bar: a boned muscle leaves in one piece
 */
export function layRuns(
  ways: readonly { readonly zone: ZoneShape; readonly way: ZoneWay }[],
): readonly Run[] | undefined {
  const groups: RunStretch[][] = [];
  for (const { zone, way } of ways) {
    for (const stretch of way) {
      const previous = groups.at(-1)?.at(-1);
      const joins = stretch.manner.joins && previous?.manner.stock === stretch.manner.stock;
      if (joins) groups.at(-1)?.push({ ...stretch, zone });
      else groups.push([{ ...stretch, zone }]);
    }
  }
  const joining = groups.filter(([first]) => first?.manner.joins).map(([first]) => first?.manner.stock);
  if (new Set(joining).size !== joining.length) return undefined;
  return groups.map(runOf);
}

/** Tools on the block. */
export interface Tools {
  /** without a saw, bone-in pieces part between bones only */
  readonly saw: boolean;
  /** length turned to dust by one cut of the saw */
  readonly kerfUm: number;
}

/** Length of a piece and length it takes up with its cut. */
export interface Footprint {
  readonly pieceUm: number;
  readonly takesUm: number;
}

export interface PortionSite {
  readonly tool: Manner['tool'];
  readonly pitchUm: number;
  /** mg for each um of usable length */
  readonly densityMgPerUm: number;
}

/**
 * Length that one portion takes in a run.
 * @returns undefined when the run can't give it: bone-in slices without a saw, ribs where there is no single pitch
 */
export function footprint(site: PortionSite, portion: Portion, tools: Tools): Footprint | undefined {
  const kerfUm = site.tool === 'saw' && tools.saw ? tools.kerfUm : 0;
  const sliced = site.tool === 'knife' || tools.saw;
  switch (portion.by) {
    case 'thickness':
      return sliced ? { pieceUm: portion.um, takesUm: portion.um + kerfUm } : undefined;
    case 'ribs': {
      const takesUm = portion.ribs * site.pitchUm;
      return takesUm === 0 ? undefined : { pieceUm: takesUm - kerfUm, takesUm };
    }
    case 'weight': {
      if (!sliced || site.densityMgPerUm <= 0) return undefined;
      // Two milligrams over the least: a piece must not fall short by the rounding of its share.
      const exactUm = (portion.fromGrams * 1000 + 2) / site.densityMgPerUm;
      const pieceUm = Math.ceil(exactUm / lengthGridUm) * lengthGridUm;
      return { pieceUm, takesUm: pieceUm + kerfUm };
    }
    default:
      return undefined;
  }
}

/** How many pieces a length gives: whole ones, never a fraction. */
export const countPieces = (usableUm: number, takesUm: number): number => Math.floor(usableUm / takesUm);

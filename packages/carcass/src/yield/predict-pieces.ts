import { countPieces, footprint, layRuns, type Run, type Tools } from '../runs.ts';
import type { SideShape, ZoneShape } from '../side-shape.ts';
import type { Portion } from '../species.ts';
import { cautiousLow, type Estimate, rounded, squaredCv, usualConfidence } from './estimate.ts';
import type { YieldPrediction } from './predict-yields.ts';
import type { YieldProfile } from './yield-profile.ts';

/** How many pieces of one size a side gives when a whole stock is cut into them. */
export interface PieceForecast {
  readonly bar: string;
  readonly usableUm: Estimate;
  /** at the mean length */
  readonly pieces: number;
  /** what can be promised before the carcass is seen */
  readonly cautiousPieces: number;
  readonly pieceMg: Estimate;
}

function runOf(zones: readonly ZoneShape[], stock: string): Run | undefined {
  const ways = zones.flatMap((zone) => {
    const way = zone.ways.find((each) => each.length === 1 && each[0]?.manner.stock === stock);
    return way ? [{ zone, way }] : [];
  });
  return ways.length === 0 ? undefined : layRuns(ways)?.[0];
}

/**
 * The pieces of a stock on a side, from the bar that gives most of it.
 * @param shape the side at its mean, of the species as believed
 * @returns undefined when the side has no such stock or can't be portioned so
 */
export function predictPieces(
  profile: YieldProfile,
  prediction: YieldPrediction,
  shape: SideShape,
  wanted: { readonly stock: string; readonly portion: Portion; readonly tools: Tools },
  confidence: number = usualConfidence,
): PieceForecast | undefined {
  const runs = [...shape.bars.values()].flatMap(({ bar, zones }) => {
    const run = runOf(zones, wanted.stock);
    return run && run.usableUm > 0 ? [{ bar: bar.id, run }] : [];
  });
  const [most] = runs.sort((left, right) => right.run.usableUm - left.run.usableUm);
  if (!most) return undefined;
  const { bar, run } = most;
  const site = { tool: run.tool, pitchUm: run.pitchUm, densityMgPerUm: run.massMg / run.usableUm };
  const print = footprint(site, wanted.portion, wanted.tools);
  if (!print || print.pieceUm <= 0) return undefined;
  const lengthCv = profile.chopsCvPercent.value / 100;
  const usableUm = { mean: run.usableUm, sd: run.usableUm * lengthCv };
  const massCv2 = squaredCv(prediction.partMg.get(bar) ?? { mean: 0, sd: 0 });
  const mean = print.pieceUm * site.densityMgPerUm;
  return {
    bar,
    usableUm: rounded(usableUm),
    pieces: countPieces(run.usableUm, print.takesUm),
    cautiousPieces: countPieces(cautiousLow(usableUm, confidence), print.takesUm),
    pieceMg: rounded({ mean, sd: mean * Math.sqrt(massCv2 + lengthCv ** 2) }),
  };
}

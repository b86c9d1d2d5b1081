/** One farm's readings of one figure: logarithms of what was measured over what was expected. */
export interface FarmReadings {
  readonly farm: string;
  readonly readings: readonly { readonly log: number; readonly sd: number }[];
}

/** What is believed of one figure: a logarithm, its spread, and how many readings say so. */
export interface PooledFigure {
  readonly log: number;
  readonly sd: number;
  readonly used: number;
  readonly setAside: number;
}

/** Readings follow Student's law with this many degrees of freedom: one wild reading hardly counts. */
const freedom = 4;
/** A reading that counts for less than this is called wild. */
const leastWeight = 0.25;
const turns = 50;

const weightOf = (log: number, sd: number, centre: number): number =>
  (freedom + 1) / (freedom + ((log - centre) / sd) ** 2);

function median(values: readonly number[]): number {
  const sorted = [...values].sort((left, right) => left - right);
  const middle = Math.floor(sorted.length / 2);
  if (sorted.length % 2 === 1) return sorted[middle] as number;
  return ((sorted[middle - 1] as number) + (sorted[middle] as number)) / 2;
}

/**
 * The most likely figure for one farm, given that farms differ by `priorSd` around `prior`, and animals of a farm by
 * the spread of each reading (iterated reweighting; it starts from the median of prior and readings, so it is the same
 * in any order of the readings).
 */
function poolFarm({ readings }: FarmReadings, prior: number, priorSd: number): PooledFigure {
  let log = median([prior, ...readings.map((reading) => reading.log)]);
  let precision = 1 / priorSd ** 2;
  for (let turn = 0; turn < turns; turn++) {
    precision = 1 / priorSd ** 2;
    let pull = prior * precision;
    for (const reading of readings) {
      const weight = weightOf(reading.log, reading.sd, log) / reading.sd ** 2;
      precision += weight;
      pull += weight * reading.log;
    }
    log = pull / precision;
  }
  const wild = readings.filter((reading) => weightOf(reading.log, reading.sd, log) < leastWeight).length;
  return { log, sd: precision ** -0.5, used: readings.length - wild, setAside: wild };
}

/** The shop's figure: what its farms' readings say alone, each as far as it may be trusted, pulled to the published one. */
function poolShop(farms: readonly FarmReadings[], betweenSd: number): { log: number; sd: number } {
  const widerSd = betweenSd * Math.SQRT2;
  let precision = 1 / betweenSd ** 2;
  let pull = 0;
  for (const farm of farms) {
    const { log, sd } = poolFarm(farm, 0, widerSd);
    const own = 1 / sd ** 2 - 1 / widerSd ** 2;
    if (own <= 0) continue;
    const weight = 1 / (1 / own + betweenSd ** 2);
    precision += weight;
    pull += (weight * log) / sd ** 2 / own;
  }
  return { log: pull / precision, sd: precision ** -0.5 };
}

export interface Pooled {
  readonly farms: ReadonlyMap<string, PooledFigure>;
  /** for a farm that nothing was weighed of */
  readonly shop: PooledFigure;
}

/**
 * Partial pooling in two steps: the shop's farms around the published figure, each farm around the shop's.
 * @param betweenSd how much farms differ, as the standard deviation of a logarithm
 */
export function poolReadings(farms: readonly FarmReadings[], betweenSd: number): Pooled {
  const shop = poolShop(farms, betweenSd);
  const pooled = farms.map((farm) => {
    const figure = poolFarm(farm, shop.log, betweenSd);
    // The farm leans on the shop's figure, which is not certain itself.
    const leaning = (figure.sd / betweenSd) ** 2;
    return [farm.farm, { ...figure, sd: Math.hypot(figure.sd, leaning * shop.sd) }] as const;
  });
  const count = (pick: (figure: PooledFigure) => number): number =>
    pooled.reduce((sum, [, figure]) => sum + pick(figure), 0);
  return {
    farms: new Map(pooled),
    shop: {
      log: shop.log,
      sd: Math.hypot(shop.sd, betweenSd),
      used: count(({ used }) => used),
      setAside: count(({ setAside }) => setAside),
    },
  };
}

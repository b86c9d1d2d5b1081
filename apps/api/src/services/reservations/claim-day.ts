import { knownSpecies } from '@flitchbook/contracts';
import {
  askedGrams,
  askedPieces,
  type CarcassShare,
  type CuttingDay,
  type CuttingPlan,
  type DemandLine,
  expectedGrams,
  type LineFill,
  type Nominal,
  nominalsOf,
  pieceWorth,
  type Shortfall,
} from '@flitchbook/plan';
import type { TravellingDay } from '../../solve/day-solver.ts';

/** Lines and shares by id. */
export interface Demand {
  readonly lineIds: ReadonlySet<string>;
  readonly shareIds: ReadonlySet<string>;
}

// In the question "does it all fit" each piece counts alike, and what was promised before counts ten times: so that what
// is missing is missing from the newcomer.
const keptWorth = 1000;
const claimedWorth = 100;

const wholePriced = (worth: number, grams: number): number =>
  grams > 0 ? Math.max(1, Math.round((worth * 1000) / grams)) : worth;

function priced(day: CuttingDay, nominals: ReadonlyMap<string, Nominal>, line: DemandLine, worth: number) {
  const grams = askedGrams(line) || expectedGrams(day, nominals.get(line.speciesId), line.speciesId, line);
  return { ...line, rank: 'promised' as const, priceMinorPerKg: wholePriced(worth, grams) };
}

/** What of a line has to stay as it is: an assured one whole, another one as much as the plan gives it now. */
function keptOf(line: DemandLine, assured: Demand, before: CuttingPlan | null): DemandLine | undefined {
  if (assured.lineIds.has(line.lineId)) return line;
  if (line.rank === 'wished') return undefined;
  const filled = before?.lines.find(({ lineId }) => lineId === line.lineId)?.filled ?? 0;
  if (filled === 0) return undefined;
  return { ...line, ask: 'grams' in line.ask ? { grams: filled } : { pieces: filled } };
}

const nothingForTheCounter = (day: CuttingDay): CuttingDay['counter'] => ({
  itemSteps: [{ pieces: null, worthPercent: 0 }],
  stockSteps: [{ grams: null, worthPercent: 0 }],
  worthMinorPerKg: Object.fromEntries(
    Object.values(day.species).flatMap(({ bulks }) => Object.keys(bulks).map((bulk) => [bulk, 0])),
  ),
  labourMinorPerHour: 0,
});

/** The question whether a claim fits, as a day: what has to stay, the claim, and nothing else worth anything. */
export interface ClaimDay {
  readonly day: TravellingDay;
  /** worth of a plan that serves all of it, minor units: a bound below that is a proof that there is none */
  readonly fullWorth: number;
}

/**
 * @param day with the claimed lines and shares in it
 * @param before the plan that stands, where it is of this day
 */
export function claimDayOf(
  day: TravellingDay,
  before: CuttingPlan | null,
  assured: Demand,
  claimed: Demand,
): ClaimDay {
  const known: CuttingDay = { ...day, species: knownSpecies };
  const nominals = nominalsOf(known);
  const lines = day.lines.flatMap((line) => {
    if (claimed.lineIds.has(line.lineId)) return [priced(known, nominals, line, claimedWorth)];
    const kept = keptOf(line, assured, before);
    return kept ? [priced(known, nominals, kept, keptWorth)] : [];
  });
  const sideMg = known.animals.flatMap(({ sides }) => sides.map(({ massMg }) => massMg));
  const lightest = Math.min(...sideMg);
  const shareOf = (share: CarcassShare): CarcassShare[] => {
    const isClaimed = claimed.shareIds.has(share.shareId);
    const had = before?.shares.find(({ shareId }) => shareId === share.shareId);
    const stays =
      assured.shareIds.has(share.shareId) || (share.rank === 'promised' && (had?.sideIds.length ?? 0) > 0);
    if (!isClaimed && !stays) return [];
    const worth = isClaimed ? claimedWorth : keptWorth;
    return [{ ...share, rank: 'promised', priceMinorPerKg: wholePriced(worth, lightest / 1000) }];
  };
  const shares = day.shares.flatMap(shareOf);
  const question = { ...day, lines, shares, counter: nothingForTheCounter(known) };
  const worthOfLine = (line: DemandLine): number =>
    askedPieces(line) > 0
      ? askedPieces(line) * pieceWorth(known, nominals.get(line.speciesId), line)
      : (askedGrams(line) * line.priceMinorPerKg) / 1000;
  const worthOfShare = (share: CarcassShare): number =>
    (share.size === 'whole' ? 2 : 1) * Math.round((lightest / 1_000_000) * share.priceMinorPerKg);
  const fullWorth =
    lines.reduce((sum, line) => sum + worthOfLine(line), 0) +
    shares.reduce((sum, share) => sum + worthOfShare(share), 0);
  return { day: question, fullWorth };
}

/** Everything the question asks for is there. */
export const isAllServed = (plan: CuttingPlan): boolean =>
  plan.lines.every(({ filled, asked }) => filled === asked) &&
  plan.shares.every(({ sideIds }) => sideIds.length > 0);

const left: Shortfall = {
  kind: 'clash',
  says: 'Other promises came first; the day has not been planned for value since.',
  withLines: [],
  withShares: [],
  withLocks: [],
  mostPossible: 0,
};

/** A plan of the question as a plan of the day itself: what was not part of the question goes without for now. */
export function answerAsPlan(day: TravellingDay, answer: CuttingPlan): CuttingPlan {
  const fills = new Map(answer.lines.map((fill) => [fill.lineId, fill]));
  const shares = new Map(answer.shares.map((fill) => [fill.shareId, fill]));
  return {
    ...answer,
    proof: null,
    lines: day.lines.map((line): LineFill => {
      const asked = askedPieces(line) || askedGrams(line);
      const fill = fills.get(line.lineId);
      const given = fill ?? { lineId: line.lineId, filled: 0, pieceIds: [], bulkGrams: 0 };
      return {
        ...given,
        asked,
        shortfall: given.filled < asked ? { ...left, mostPossible: given.filled } : null,
      };
    }),
    shares: day.shares.map(({ shareId }) => shares.get(shareId) ?? { shareId, sideIds: [], shortfall: left }),
  };
}

import { entryOf } from './check-plan/day-index.ts';
import type { CuttingPlan, LineFill, ShareFill } from './cutting-plan.ts';
import type { CarcassShare, CuttingDay, DemandLine, Rank } from './day.ts';
import { portionText, type ShownIn, weightText } from './measures.ts';

export interface LineReport {
  readonly lineId: string;
  readonly orderId: string;
  readonly owner: string;
  readonly rank: Rank;
  /** "Bone-in rib chop, 1 in (25.4 mm)" */
  readonly what: string;
  readonly unit: 'pieces' | 'grams';
  readonly asked: number;
  readonly filled: number;
  readonly short: number;
  /** how many of the filled pieces are a substitute that the line accepts */
  readonly substituted: number;
  readonly says: string;
}

export interface ShareReport {
  readonly shareId: string;
  readonly orderId: string;
  readonly owner: string;
  readonly rank: Rank;
  readonly size: CarcassShare['size'];
  readonly sideIds: readonly string[];
  readonly says: string;
}

/** One kind of loose meat, fat or bone over the whole day, whole grams. */
export interface BulkReport {
  readonly speciesId: string;
  readonly bulk: string;
  readonly name: string;
  /** from sides that nobody has whole */
  readonly pooledGrams: number;
  /** of the pool, taken by lines */
  readonly takenGrams: number;
  readonly freeGrams: number;
  /** goes with shares */
  readonly sharedGrams: number;
}

export interface FillReport {
  readonly lines: readonly LineReport[];
  readonly shares: readonly ShareReport[];
  readonly bulk: readonly BulkReport[];
  /** lines and shares that do not get all they ask for, by rank */
  readonly short: Readonly<Record<Rank, number>>;
}

interface Work {
  readonly day: CuttingDay;
  readonly plan: CuttingPlan;
  readonly shown: ShownIn;
}

interface Made {
  readonly cut?: string;
  readonly item?: string;
}

/** Cut of each piece on a bar and item of each piece that leaves whole, by piece id. */
function madeOf({ sides, singles }: CuttingPlan): ReadonlyMap<string, Made> {
  const made = new Map<string, Made>();
  for (const { pieceId, item } of [...sides.flatMap((side) => side.items), ...singles])
    made.set(pieceId, { item });
  const runs = sides.flatMap(({ bars }) => bars.flatMap((bar) => bar.runs));
  for (const { pieceId, cut } of runs.flatMap((run) => run.pieces)) made.set(pieceId, { cut });
  return made;
}

function substitutedOf(
  { day }: Work,
  line: DemandLine,
  fill: LineFill,
  made: ReadonlyMap<string, Made>,
): number {
  const sources = entryOf(day.species, line.speciesId)?.cuts[line.cut]?.sources ?? [];
  return fill.pieceIds.filter((pieceId) => {
    const piece = made.get(pieceId);
    if (!piece) return false;
    return piece.cut === undefined
      ? !sources.some(({ from, id }) => from === 'item' && id === piece.item)
      : piece.cut !== line.cut;
  }).length;
}

function amount(unit: LineReport['unit'], value: number, shown: ShownIn): string {
  if (unit === 'grams') return weightText(value * 1000, shown);
  return String(value);
}

function lineReport(
  work: Work,
  line: DemandLine,
  fill: LineFill,
  made: ReadonlyMap<string, Made>,
): LineReport {
  const { day, shown } = work;
  const cut = entryOf(day.species, line.speciesId)?.cuts[line.cut];
  const unit = 'grams' in line.ask ? 'grams' : 'pieces';
  const short = Math.max(0, fill.asked - fill.filled);
  const substituted = substitutedOf(work, line, fill, made);
  const count = `${amount(unit, fill.filled, shown)} of ${amount(unit, fill.asked, shown)}`;
  const instead = substituted === 0 ? '' : ` ${substituted} of them as an accepted substitute.`;
  const why =
    short === 0 ? '' : ` ${amount(unit, short, shown)} short. ${fill.shortfall?.says ?? ''}`.trimEnd();
  return {
    lineId: line.lineId,
    orderId: line.orderId,
    owner: line.owner,
    rank: line.rank,
    what: `${cut?.name ?? line.cut}, ${portionText(line.portion, shown)}`,
    unit,
    asked: fill.asked,
    filled: fill.filled,
    short,
    substituted,
    says: `${count}.${instead}${why}`,
  };
}

function shareReport({ day, plan }: Work, share: CarcassShare, fill: ShareFill): ShareReport {
  const hands = fill.sideIds.map((sideId) => {
    const animal = day.animals.find(({ sides }) => sides.some((side) => side.sideId === sideId));
    return {
      name: animal?.name ?? '',
      hand: animal?.sides.find((side) => side.sideId === sideId)?.hand ?? '',
    };
  });
  const got = `Gets ${hands.map(({ name, hand }) => `the ${hand} side of ${name}`).join(' and ')}.`;
  const singles = plan.singles.filter(
    ({ owner }) => owner && 'shareId' in owner && owner.shareId === share.shareId,
  ).length;
  const says =
    fill.sideIds.length === 0
      ? `Gets nothing. ${fill.shortfall?.says ?? ''}`.trimEnd()
      : `${got}${singles > 0 ? ` With ${singles} single pieces.` : ''}`;
  const { shareId, orderId, owner, rank, size } = share;
  return { shareId, orderId, owner, rank, size, sideIds: fill.sideIds, says };
}

interface Sums {
  pooledMg: number;
  sharedMg: number;
}

function sumBulk({ day, plan }: Work, speciesId: string): ReadonlyMap<string, Sums> {
  const animals = new Set(
    day.animals.filter((animal) => animal.speciesId === speciesId).map(({ animalId }) => animalId),
  );
  const sums = new Map<string, Sums>();
  for (const side of plan.sides.filter(({ animalId }) => animals.has(animalId))) {
    for (const [bulk, mg] of Object.entries(side.bulkMg)) {
      const sum = sums.get(bulk) ?? { pooledMg: 0, sharedMg: 0 };
      if (side.shareId === null) sum.pooledMg += mg;
      else sum.sharedMg += mg;
      sums.set(bulk, sum);
    }
  }
  return sums;
}

/** Totals by kind, in the order of the species' table; what does not occur is left out. Whole grams, rounded down. */
function bulkReports(work: Work): BulkReport[] {
  const { day, plan } = work;
  return Object.values(day.species).flatMap((species) => {
    const sums = sumBulk(work, species.id);
    return Object.values(species.bulks).flatMap(({ id, name }): BulkReport[] => {
      const sum = sums.get(id);
      if (!sum) return [];
      const takenGrams = day.lines
        .filter(
          (line) =>
            line.speciesId === species.id &&
            species.cuts[line.cut]?.sources.some((source) => source.from === 'bulk' && source.id === id),
        )
        .reduce(
          (total, line) => total + (plan.lines.find(({ lineId }) => lineId === line.lineId)?.bulkGrams ?? 0),
          0,
        );
      const pooledGrams = Math.floor(sum.pooledMg / 1000);
      const sharedGrams = Math.floor(sum.sharedMg / 1000);
      return [
        {
          speciesId: species.id,
          bulk: id,
          name,
          pooledGrams,
          takenGrams,
          freeGrams: pooledGrams - takenGrams,
          sharedGrams,
        },
      ];
    });
  });
}

/** Who gets what and who does not, and why; and what is left of loose meat, fat, bone and skin by kind. */
export function fillReport(day: CuttingDay, plan: CuttingPlan, shown: ShownIn = {}): FillReport {
  const work = { day, plan, shown };
  const made = madeOf(plan);
  const lineFills = new Map(plan.lines.map((fill) => [fill.lineId, fill]));
  const shareFills = new Map(plan.shares.map((fill) => [fill.shareId, fill]));
  const lines = day.lines.flatMap((line) => {
    const fill = lineFills.get(line.lineId);
    return fill ? [lineReport(work, line, fill, made)] : [];
  });
  const shares = day.shares.flatMap((share) => {
    const fill = shareFills.get(share.shareId);
    return fill ? [shareReport(work, share, fill)] : [];
  });
  const shortOf = (rank: Rank): number =>
    lines.filter((line) => line.rank === rank && line.short > 0).length +
    shares.filter((share) => share.rank === rank && share.sideIds.length === 0).length;
  return {
    lines,
    shares,
    bulk: bulkReports(work),
    short: { promised: shortOf('promised'), wished: shortOf('wished') },
  };
}

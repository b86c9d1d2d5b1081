import type { Portion, Species } from '@flitchbook/carcass';
import {
  type BarPlan,
  type CuttingDay,
  type CuttingPlan,
  counterWorth,
  type DemandLine,
  type ItemPiece,
  type Owner,
  portionText,
  type ShownIn,
  type SidePlan,
  type SpanPiece,
} from '@flitchbook/plan';

/** What a pack holds, by the name it has in the species: a cut, a piece that leaves whole, a free stretch, loose meat. */
export interface PackedThing {
  readonly kind: 'cut' | 'item' | 'stock' | 'bulk';
  readonly id: string;
}

/** A pack that the plan foresees: pieces of one animal, for one owner. */
export interface PackToMake {
  /** the same on every reading of one plan */
  readonly key: string;
  readonly animalId: string;
  /** null: head, liver and what else belongs to no side */
  readonly sideId: string | null;
  readonly thing: PackedThing;
  readonly name: string;
  /** how the pieces are portioned, for people */
  readonly size: string;
  readonly portion: Portion;
  readonly pieceIds: readonly string[];
  readonly owner: Owner;
  readonly expectedMg: number;
  /** null: part of a share, which is billed by its hanging weight */
  readonly priceMinorPerKg: number | null;
}

interface Draft extends Omit<PackToMake, 'name' | 'size' | 'priceMinorPerKg'> {
  readonly speciesId: string;
}

const notPacked: ReadonlySet<string> = new Set(['loss', 'lost']);
const whole: Portion = { by: 'whole' };

const nameOf = (species: Species | undefined, { kind, id }: PackedThing): string =>
  ({ cut: species?.cuts, item: species?.items, stock: species?.stocks, bulk: species?.bulks })[kind]?.[id]
    ?.name ?? id;

const itemDraft = (
  side: SidePlan,
  speciesId: string,
  { pieceId, item, massMg, owner }: ItemPiece,
): Draft => ({
  key: pieceId,
  speciesId,
  animalId: side.animalId,
  sideId: side.sideId,
  thing: { kind: 'item', id: item },
  portion: whole,
  pieceIds: [pieceId],
  owner: owner ?? shareOwner(side),
  expectedMg: massMg,
});

const shareOwner = ({ shareId }: SidePlan): Owner => (shareId === null ? null : { shareId });

/** Pieces of one run that are alike and for one owner go into one pack. */
function spanDrafts(side: SidePlan, speciesId: string, { bar, runs }: BarPlan): Draft[] {
  return runs.flatMap((run) => {
    const groups = new Map<string, SpanPiece[]>();
    for (const piece of run.pieces) {
      const alike = JSON.stringify([piece.cut, piece.portion, piece.owner]);
      groups.set(alike, [...(groups.get(alike) ?? []), piece]);
    }
    const packs = [...groups.values()].flatMap(([first, ...rest]): Draft[] => {
      if (!first) return [];
      const pieces = [first, ...rest];
      return [
        {
          key: first.pieceId,
          speciesId,
          animalId: side.animalId,
          sideId: side.sideId,
          thing: { kind: 'cut', id: first.cut },
          portion: first.portion,
          pieceIds: pieces.map(({ pieceId }) => pieceId),
          owner: first.owner ?? shareOwner(side),
          expectedMg: pieces.reduce((sum, { massMg }) => sum + massMg, 0),
        },
      ];
    });
    if (run.freeMg === 0) return packs;
    const key = `${side.sideId}:${bar}:${run.fromUm}:free`;
    const free: Draft = {
      key,
      speciesId,
      animalId: side.animalId,
      sideId: side.sideId,
      thing: { kind: 'stock', id: run.stock },
      portion: whole,
      pieceIds: [key],
      owner: shareOwner(side),
      expectedMg: run.freeMg,
    };
    return [...packs, free];
  });
}

interface Pool {
  readonly side: SidePlan;
  readonly speciesId: string;
  readonly bulk: string;
  leftMg: number;
}

/** Loose meat is not pieces: a line takes from one side after the other, and each side's part is a pack of its own. */
function bulkDrafts(
  pools: readonly Pool[],
  lines: readonly (DemandLine & { readonly bulkMg: number })[],
  day: CuttingDay,
): Draft[] {
  const draft = ({ side, speciesId, bulk }: Pool, owner: Owner, expectedMg: number, who: string): Draft => ({
    key: `${side.sideId}:${bulk}:${who}`,
    speciesId,
    animalId: side.animalId,
    sideId: side.sideId,
    thing: { kind: 'bulk', id: bulk },
    portion: { by: 'bulk' },
    pieceIds: [],
    owner,
    expectedMg,
  });
  const taken = lines.flatMap((line) => {
    const kinds = day.species[line.speciesId]?.cuts[line.cut]?.sources.map(({ id }) => id) ?? [];
    let open = line.bulkMg;
    return pools.flatMap((pool): Draft[] => {
      if (pool.side.shareId !== null || !kinds.includes(pool.bulk) || pool.speciesId !== line.speciesId)
        return [];
      const mg = Math.min(open, pool.leftMg);
      if (mg === 0) return [];
      open -= mg;
      pool.leftMg -= mg;
      return [draft(pool, { lineId: line.lineId }, mg, line.lineId)];
    });
  });
  const rest = pools
    .filter(({ leftMg }) => leftMg > 0)
    .map((pool) => draft(pool, shareOwner(pool.side), pool.leftMg, 'rest'));
  return [...taken, ...rest];
}

function priceOf(day: CuttingDay, { owner, speciesId, thing }: Draft): number | null {
  if (owner && 'shareId' in owner) return null;
  if (owner) return day.lines.find(({ lineId }) => lineId === owner.lineId)?.priceMinorPerKg ?? 0;
  if (thing.kind !== 'cut') return counterWorth(day, speciesId, `${thing.kind}s`, thing.id);
  const source = day.species[speciesId]?.cuts[thing.id]?.sources[0];
  return source ? counterWorth(day, speciesId, `${source.from}s`, source.id) : 0;
}

/**
 * Every pack that a plan foresees, by animal and side. Their expected masses add up to the sides less saw dust, shrink
 * and what was set aside.
 */
export function packsToMake(day: CuttingDay, plan: CuttingPlan, shown: ShownIn = {}): PackToMake[] {
  const speciesOf = new Map(day.animals.map(({ animalId, speciesId }) => [animalId, speciesId]));
  const pools: Pool[] = [];
  const fromSides = plan.sides.flatMap((side) => {
    const speciesId = speciesOf.get(side.animalId) ?? '';
    for (const [bulk, mg] of Object.entries(side.bulkMg))
      if (mg > 0 && !notPacked.has(bulk)) pools.push({ side, speciesId, bulk, leftMg: mg });
    return [
      ...side.items.map((piece) => itemDraft(side, speciesId, piece)),
      ...side.bars.flatMap((bar) => spanDrafts(side, speciesId, bar)),
    ];
  });
  const bulkMg = new Map(plan.lines.map(({ lineId, bulkGrams }) => [lineId, bulkGrams * 1000]));
  const bulkLines = day.lines.map((line) => ({ ...line, bulkMg: bulkMg.get(line.lineId) ?? 0 }));
  const singles = plan.singles.map(
    ({ pieceId, animalId, item, massMg, owner }): Draft => ({
      key: pieceId,
      speciesId: speciesOf.get(animalId) ?? '',
      animalId,
      sideId: null,
      thing: { kind: 'item', id: item },
      portion: whole,
      pieceIds: [pieceId],
      owner,
      expectedMg: massMg,
    }),
  );
  return [...fromSides, ...bulkDrafts(pools, bulkLines, day), ...singles].map((draft) => {
    const { speciesId, ...pack } = draft;
    return {
      ...pack,
      name: nameOf(day.species[speciesId], draft.thing),
      size: portionText(draft.portion, shown),
      priceMinorPerKg: priceOf(day, draft),
    };
  });
}

import type { Portion } from '@flitchbook/carcass';
import type { CuttingPlan, Owner, SidePlan } from '../cutting-plan.ts';

/** Any piece of a plan with where it stands and what it is. */
export interface Holding {
  readonly at: string;
  readonly pieceId: string;
  readonly owner: Owner;
  readonly animalId: string;
  /** null for a single piece of the animal */
  readonly side: SidePlan | null;
  readonly what:
    | { readonly kind: 'item'; readonly item: string }
    | { readonly kind: 'span'; readonly stock: string; readonly cut: string; readonly portion: Portion };
}

function holdingsOfSide(side: SidePlan): Holding[] {
  const at = `sides[${side.sideId}]`;
  const place = { animalId: side.animalId, side };
  const items = side.items.map(
    ({ pieceId, owner, item }): Holding => ({
      ...place,
      at: `${at}.items[${pieceId}]`,
      pieceId,
      owner,
      what: { kind: 'item', item },
    }),
  );
  const spans = side.bars.flatMap((bar) =>
    bar.runs.flatMap((run) =>
      run.pieces.map(
        ({ pieceId, owner, cut, portion }): Holding => ({
          ...place,
          at: `${at}.bars[${bar.bar}].pieces[${pieceId}]`,
          pieceId,
          owner,
          what: { kind: 'span', stock: run.stock, cut, portion },
        }),
      ),
    ),
  );
  return [...items, ...spans];
}

/** Every piece of a plan: items, pieces on bars and singles, in the plan's order. */
export function holdingsOf(plan: CuttingPlan): Holding[] {
  const singles = plan.singles.map(
    ({ pieceId, animalId, item, owner }): Holding => ({
      at: `singles[${pieceId}]`,
      pieceId,
      owner,
      animalId,
      side: null,
      what: { kind: 'item', item },
    }),
  );
  return [...plan.sides.flatMap(holdingsOfSide), ...singles];
}

export function heldByLines(holdings: readonly Holding[]): ReadonlyMap<string, readonly Holding[]> {
  const held = new Map<string, Holding[]>();
  for (const holding of holdings) {
    if (!holding.owner || !('lineId' in holding.owner)) continue;
    const list = held.get(holding.owner.lineId);
    if (list) list.push(holding);
    else held.set(holding.owner.lineId, [holding]);
  }
  return held;
}

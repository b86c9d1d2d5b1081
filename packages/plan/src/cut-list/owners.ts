import type { Owner } from '../cutting-plan.ts';
import type { CuttingDay } from '../day.ts';

/** Names of owners, for lists that people read. */
export interface OwnerNames {
  /** null: nobody yet, the counter */
  of(owner: Owner): string | null;
  ofShare(shareId: string | null): string | null;
}

export function ownerNames(day: CuttingDay): OwnerNames {
  const lines = new Map(day.lines.map(({ lineId, owner }) => [lineId, owner]));
  const shares = new Map(day.shares.map(({ shareId, owner }) => [shareId, owner]));
  const ofShare = (shareId: string | null): string | null =>
    shareId === null ? null : (shares.get(shareId) ?? shareId);
  return {
    ofShare,
    of(owner) {
      if (owner === null) return null;
      return 'lineId' in owner ? (lines.get(owner.lineId) ?? owner.lineId) : ofShare(owner.shareId);
    },
  };
}

const counter = 'the counter';

/** "Ann, Ben and the counter", each name once, in order of appearance. */
export function listNames(names: readonly (string | null)[]): string {
  const once = [...new Set(names.map((name) => name ?? counter))];
  const last = once.at(-1);
  return once.length < 2 ? (last ?? '') : `${once.slice(0, -1).join(', ')} and ${last}`;
}

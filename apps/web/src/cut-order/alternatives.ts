import type { Coming, OfferedCut, QuoteOnWire } from '../wire/customers-client.ts';
import { dishes } from '../words/customers/dishes.ts';
import type { CutDraft } from './cut-draft.ts';

/** Something that can be promised in place of what cannot: one tap asks for it. */
export type Alternative =
  | { readonly kind: 'fewer'; readonly possible: number; readonly byWeight: boolean }
  | { readonly kind: 'other'; readonly dayId: string; readonly offer: OfferedCut }
  | { readonly kind: 'day'; readonly dayId: string; readonly date: string; readonly offer: OfferedCut };

const most = 3;

const dishesShared = (one: string, other: string): number =>
  dishes.filter(({ cuts }) => cuts.includes(one) && cuts.includes(other)).length;

/**
 * Two or three things in place of what was refused: less of the same, as the refusal says; the same on another day; cuts
 * for the same dishes that the plan has free as many of. Everything here was counted by the service.
 */
export function alternativesTo(
  draft: Pick<CutDraft, 'by' | 'pieces'>,
  offer: OfferedCut,
  {
    quote,
    coming,
    dayId,
  }: { readonly quote: Pick<QuoteOnWire, 'instead'>; readonly coming: Coming; readonly dayId: string },
): readonly Alternative[] {
  const byWeight = draft.by === 'bulk';
  const wanted = byWeight ? 1 : draft.pieces;
  const possible = quote.instead[0]?.possible ?? 0;
  const fewer: Alternative[] = possible > 0 ? [{ kind: 'fewer', possible, byWeight }] : [];
  const days = coming.days
    .filter((day) => day.dayId !== dayId)
    .flatMap((day): Alternative[] => {
      const same = day.offers.find(
        ({ speciesId, cut }) => speciesId === offer.speciesId && cut === offer.cut,
      );
      return same && (same.more ?? 0) >= wanted
        ? [{ kind: 'day', dayId: day.dayId, date: day.date, offer: same }]
        : [];
    });
  const others = (coming.days.find((day) => day.dayId === dayId)?.offers ?? [])
    .filter(
      ({ speciesId, cut, more }) =>
        speciesId === offer.speciesId && cut !== offer.cut && (more ?? 0) >= wanted,
    )
    .map((other) => ({ other, near: dishesShared(offer.cut, other.cut) }))
    .filter(({ near }) => near > 0)
    .toSorted((a, b) => b.near - a.near || (b.other.more ?? 0) - (a.other.more ?? 0))
    .map(({ other }): Alternative => ({ kind: 'other', dayId, offer: other }));
  return [...fewer, ...days.slice(0, 1), ...others].slice(0, most);
}

import { signal } from '@preact/signals';

/** A page of the app. */
export type Route =
  | { readonly page: 'days' | 'yields' | 'curing' }
  | { readonly page: 'board' | 'new-order'; readonly dayId: string }
  | { readonly page: 'packs' | 'hand-over' | 'closing'; readonly dayId: string }
  | { readonly page: 'counter' }
  | { readonly page: 'unknown' };

function decoded(part: string): string | null {
  try {
    return decodeURIComponent(part);
  } catch {
    return null;
  }
}

const dayPages = ['new-order', 'packs', 'hand-over', 'closing'] as const;

/** Reads an address inside the app. */
export function routeOf(path: string): Route {
  const [first, coded, last, ...rest] = path.split('/').filter((part) => part !== '');
  if (first === undefined) return { page: 'days' };
  if (first === 'yields' && coded === undefined) return { page: 'yields' };
  if (first === 'curing' && coded === undefined) return { page: 'curing' };
  if (first === 'counter' && coded === undefined) return { page: 'counter' };
  const dayId = coded === undefined ? null : decoded(coded);
  if (first !== 'days' || dayId === null || rest.length > 0) return { page: 'unknown' };
  if (last === undefined) return { page: 'board', dayId };
  const known = dayPages.find((page) => page === last);
  return known ? { page: known, dayId } : { page: 'unknown' };
}

/** The address of the app as shown, kept in step with the browser's own bar. */
export const path = signal(globalThis.location?.pathname ?? '/');

globalThis.addEventListener?.('popstate', () => {
  path.value = location.pathname;
});

export function go(to: string): void {
  history.pushState(null, '', to);
  path.value = location.pathname;
  scrollTo(0, 0);
}

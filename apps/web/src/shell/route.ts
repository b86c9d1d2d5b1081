import { signal } from '@preact/signals';

/** A page for customers: all of them lie below /yours, but for the link of a mail. */
export type CustomersRoute =
  | { readonly page: 'coming' | 'own-orders' | 'way-in' }
  | { readonly page: 'order-cut'; readonly dayId: string; readonly speciesId: string; readonly cut: string }
  | { readonly page: 'half-or-whole'; readonly dayId: string }
  | { readonly page: 'own-order'; readonly orderId: string }
  | { readonly page: 'by-link'; readonly token: string };

/** A page of the app. */
export type Route =
  | { readonly page: 'days' | 'yields' | 'curing' }
  | { readonly page: 'board' | 'new-order' | 'watch'; readonly dayId: string }
  | { readonly page: 'packs' | 'hand-over' | 'closing'; readonly dayId: string }
  | { readonly page: 'counter' }
  | { readonly page: 'unknown' }
  | CustomersRoute;

function decoded(part: string): string | null {
  try {
    return decodeURIComponent(part);
  } catch {
    return null;
  }
}

const dayPages = ['new-order', 'watch', 'packs', 'hand-over', 'closing'] as const;

const unknown = { page: 'unknown' } as const;

function customersRouteOf([area, id, what, species, cut, ...rest]: readonly string[]): Route {
  if (rest.length > 0) return unknown;
  if (area === undefined) return { page: 'coming' };
  if (area === 'way-in' && id === undefined) return { page: 'way-in' };
  if (area === 'orders' && what === undefined)
    return id === undefined ? { page: 'own-orders' } : { page: 'own-order', orderId: id };
  if (area !== 'days' || id === undefined) return unknown;
  if (what === 'half-or-whole' && species === undefined) return { page: 'half-or-whole', dayId: id };
  if (what === 'cuts' && species !== undefined && cut !== undefined)
    return { page: 'order-cut', dayId: id, speciesId: species, cut };
  return unknown;
}

/** Where the pages of customers are. */
export const yours = {
  coming: '/yours',
  wayIn: '/yours/way-in',
  orders: '/yours/orders',
  order: (orderId: string): string => `/yours/orders/${encodeURIComponent(orderId)}`,
  cut: (dayId: string, speciesId: string, cut: string): string =>
    `/yours/days/${[dayId, 'cuts', speciesId, cut].map(encodeURIComponent).join('/')}`,
  halfOrWhole: (dayId: string): string => `/yours/days/${encodeURIComponent(dayId)}/half-or-whole`,
} as const;

/**
 * Reads an address inside the app.
 * @param hash of the same address: the links of mails carry their token there, where no server sees it
 */
export function routeOf(path: string, hash = ''): Route {
  const [, token] = /^#\/link\/([\w-]{1,100})$/.exec(hash) ?? [];
  if (token !== undefined) return { page: 'by-link', token };
  const parts = path.split('/').filter((part) => part !== '');
  const [first, coded, last, ...rest] = parts;
  if (first === undefined) return { page: 'days' };
  if (first === 'yours') {
    const said = parts.slice(1).flatMap((part) => decoded(part) ?? []);
    return said.length === parts.length - 1 ? customersRouteOf(said) : unknown;
  }
  if (first === 'yields' && coded === undefined) return { page: 'yields' };
  if (first === 'curing' && coded === undefined) return { page: 'curing' };
  if (first === 'counter' && coded === undefined) return { page: 'counter' };
  const dayId = coded === undefined ? null : decoded(coded);
  if (first !== 'days' || dayId === null || rest.length > 0) return unknown;
  if (last === undefined) return { page: 'board', dayId };
  const known = dayPages.find((page) => page === last);
  return known ? { page: known, dayId } : unknown;
}

const customersPages: ReadonlySet<Route['page']> = new Set<CustomersRoute['page']>([
  'coming',
  'own-orders',
  'way-in',
  'order-cut',
  'half-or-whole',
  'own-order',
  'by-link',
]);

export const isForCustomers = (route: Route): route is CustomersRoute => customersPages.has(route.page);

/** The address of the app as shown, kept in step with the browser's own bar. */
export const path = signal(globalThis.location?.pathname ?? '/');
export const hash = signal(globalThis.location?.hash ?? '');

function readAddress(): void {
  path.value = location.pathname;
  hash.value = location.hash;
}

globalThis.addEventListener?.('popstate', readAddress);
globalThis.addEventListener?.('hashchange', readAddress);

export function go(to: string): void {
  history.pushState(null, '', to);
  readAddress();
  scrollTo(0, 0);
}

/** Goes there without leaving a trace for the way back: after a link whose token is used, after an order is placed. */
export function goInstead(to: string): void {
  history.replaceState(null, '', to);
  readAddress();
  scrollTo(0, 0);
}

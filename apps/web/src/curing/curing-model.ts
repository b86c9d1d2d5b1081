import {
  type CalendarRule,
  type CureAnswer,
  type CureCalendar,
  type CureMethod,
  type CureRequest,
  cureCalendar,
  cureMethods,
  type KitchenFault,
  reckonCure,
  usualCalendarRules,
  usualCureRules,
} from '@flitchbook/kitchen/curing';

/** The form as it stands: texts as they were typed. */
export interface CuringDraft {
  readonly jurisdiction: string;
  readonly product: string;
  readonly method: string;
  readonly meat: string;
  readonly skin: 'on' | 'off';
  readonly skinShare: string;
  readonly nitrite: string;
  readonly from: 'target' | 'cure';
  readonly target: string;
  readonly cure: string;
  readonly pickle: string;
  readonly uptake: string;
  readonly salt: string;
  readonly sugar: string;
  readonly ascorbate: string;
  readonly scaleDivision: string;
  readonly rule: string;
  readonly start: string;
  readonly thickness: string;
}

/** A slab as most shops cure it: invented figures, to be typed over. */
export const firstDraft: CuringDraft = {
  jurisdiction: 'us',
  product: 'bacon',
  method: 'dry-rub',
  meat: '12.4 lb',
  skin: 'off',
  skinShare: '',
  nitrite: '6.25 %',
  from: 'target',
  target: '120 ppm',
  cure: '',
  pickle: '',
  uptake: '',
  salt: '2.25 %',
  sugar: '1 %',
  ascorbate: '',
  scaleDivision: '0.1 g',
  rule: '',
  start: '',
  thickness: '1.5',
};

export const places = usualCureRules.jurisdictions;
export const calendarRules: readonly CalendarRule[] = usualCalendarRules;

export const productsOf = (jurisdiction: string) =>
  places.find(({ id }) => id === jurisdiction)?.classes ?? [];

/** The ways of curing that a product has a limit on nitrite for. */
export function methodsOf(jurisdiction: string, product: string): readonly CureMethod[] {
  const limits = productsOf(jurisdiction).find(({ id }) => id === product)?.limits ?? [];
  const ingoing = limits.filter(
    ({ of, kind, basis }) => of === 'nitrite' && kind !== 'at-least' && basis === 'ingoing',
  );
  const deciding = ingoing.length > 0 ? ingoing : limits;
  return cureMethods.filter((method) => deciding.some(({ methods }) => methods.includes(method)));
}

/** The draft after a choice: what hangs on it is chosen anew where it no longer fits. */
export function chosen(draft: CuringDraft, change: Partial<CuringDraft>): CuringDraft {
  const next = { ...draft, ...change };
  const products = productsOf(next.jurisdiction);
  const product = products.some(({ id }) => id === next.product) ? next.product : (products[0]?.id ?? '');
  const methods = methodsOf(next.jurisdiction, product);
  const method = methods.some((name) => name === next.method) ? next.method : (methods[0] ?? '');
  return { ...next, product, method };
}

export const isWet = (method: string): boolean => method !== 'mixed-in' && method !== 'dry-rub';
export const hasUptake = (method: string): boolean => method === 'pumped' || method === 'short-soak';

/** Whether the skin has to be taken off the weight. */
export function countsSkin({ jurisdiction, product, skin }: CuringDraft): boolean {
  const limits = productsOf(jurisdiction).find(({ id }) => id === product)?.limits ?? [];
  return skin === 'on' && limits.some(({ skinFree }) => skinFree);
}

/** What was typed; nothing is asked of fields that are not shown. */
function requestOf(draft: CuringDraft): CureRequest {
  const given = (name: string, text: string) => (text.trim() === '' ? {} : { [name]: text });
  return {
    jurisdiction: draft.jurisdiction,
    product: draft.product,
    method: draft.method,
    meat: draft.meat,
    skin: draft.skin,
    bag: { nitrite: draft.nitrite },
    ...(countsSkin(draft) && given('skinShare', draft.skinShare)),
    ...(draft.from === 'target' ? { target: draft.target } : { cure: draft.cure }),
    ...(isWet(draft.method) && given('pickle', draft.pickle)),
    ...(hasUptake(draft.method) && given('uptake', draft.uptake)),
    ...given('salt', draft.salt),
    ...given('sugar', draft.sugar),
    ...given('ascorbate', draft.ascorbate),
    ...given('scaleDivision', draft.scaleDivision),
  };
}

const umPer = { in: 25_400, mm: 1000 } as const;

export interface CuringView {
  readonly answer: CureAnswer | null;
  readonly calendar: CureCalendar | null;
  /** by field of the form */
  readonly faults: Readonly<Record<string, string>>;
}

const sentence = ({ says }: KitchenFault): string => `It ${says}.`;
const fieldOf = (at: string): string => (at.startsWith('bag') ? 'nitrite' : at);

function calendarOf(
  draft: CuringDraft,
  lengthUnit: 'in' | 'mm',
  badThickness: string,
): Omit<CuringView, 'answer'> {
  const rule = calendarRules.find(({ id }) => id === draft.rule);
  if (!rule) return { calendar: null, faults: {} };
  const typed = /^\d{1,4}(\.\d{1,3})?$/.test(draft.thickness.trim()) ? Number(draft.thickness) : 0;
  if (typed === 0) return { calendar: null, faults: { thickness: badThickness } };
  const made = cureCalendar(rule, draft.start, Math.round(typed * umPer[lengthUnit]));
  if (!('faults' in made)) return { calendar: made, faults: {} };
  const faults = made.faults.map((fault) => [fault.at === 'start' ? 'start' : 'thickness', sentence(fault)]);
  return { calendar: null, faults: Object.fromEntries(faults) };
}

/** The form reckoned: an answer, or what is wrong in which field. */
export function viewOf(draft: CuringDraft, lengthUnit: 'in' | 'mm', badThickness: string): CuringView {
  const answer = reckonCure(requestOf(draft));
  const { calendar, faults } = calendarOf(draft, lengthUnit, badThickness);
  if (!('faults' in answer)) return { answer, calendar, faults };
  const typed = answer.faults.map((fault) => [fieldOf(fault.at), sentence(fault)]);
  return { answer: null, calendar, faults: { ...faults, ...Object.fromEntries(typed.reverse()) } };
}

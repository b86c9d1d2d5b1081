/** Every way the service says no: one type each, with its status and title. `/problems/<type>` is its address. */
export const refusals = {
  'request.malformed': { status: 400, title: 'The request could not be read' },
  'request.invalid': { status: 422, title: 'Something in the request is not right' },
  'request.too-large': { status: 413, title: 'The request is too large' },
  'request.not-json': { status: 415, title: 'Only application/json is understood' },
  'request.not-found': { status: 404, title: 'There is nothing at this address' },
  'request.method-not-allowed': { status: 405, title: 'This address does not answer to that method' },
  'request.cross-site': { status: 403, title: 'The request came from another site' },
  'request.too-many': { status: 429, title: 'Too many tries' },
  'idempotency.key-missing': { status: 400, title: 'An Idempotency-Key is needed' },
  'idempotency.still-running': { status: 409, title: 'The same request is still being worked on' },
  'idempotency.key-reused': { status: 422, title: 'This Idempotency-Key was used for another request' },
  'edit.version-missing': { status: 428, title: 'Say which version you are changing' },
  'edit.version-stale': { status: 412, title: 'Somebody has changed this since you read it' },
  'session.wrong-sign-in': { status: 401, title: 'E-mail address or password is wrong' },
  'session.required': { status: 401, title: 'Sign in first' },
  'session.not-allowed': { status: 403, title: 'Your role does not cover this' },
  'shop.already-open': { status: 409, title: 'There is a shop already' },
  'day.unknown': { status: 404, title: 'There is no such cutting day' },
  'day.already-open': { status: 409, title: 'There is a cutting day on that date already' },
  'day.closed': { status: 409, title: 'The cutting day is closed' },
  'animal.unknown': { status: 404, title: 'There is no such animal' },
  'animal.already-booked': { status: 409, title: 'This animal is booked already' },
  'animal.invalid': { status: 422, title: 'The animal cannot be as it is written' },
  'customer.unknown': { status: 404, title: 'There is no such customer' },
  'person.already-there': { status: 409, title: 'Somebody has this address already' },
  'order.unknown': { status: 404, title: 'There is no such order' },
  'order.already-taken': { status: 409, title: 'This order is taken already' },
  'order.already-cancelled': { status: 409, title: 'The order is cancelled already' },
  'order.invalid': { status: 422, title: 'The order cannot be as it is written' },
  'reservation.not-possible': { status: 409, title: 'The day cannot give this beside what it has promised' },
  'reservation.lapsed': { status: 409, title: 'The hold has lapsed' },
  'reservation.not-held': { status: 409, title: 'The order is not held' },
  'reservation.not-yours-to-hold': {
    status: 409,
    title: 'The shop keeps no more for one customer on this day',
  },
  'reservation.contended': { status: 503, title: 'Others were faster, several times running' },
  'day.closed-to-customers': { status: 409, title: 'The day takes no more from customers' },
  'half.no-animal': { status: 409, title: 'The day has no such animal' },
  'link.void': { status: 401, title: 'The link is used up, revoked or unknown' },
  'lock.invalid': { status: 422, title: 'A lock does not fit the day' },
  'plan.missing': { status: 409, title: 'The day has no plan yet' },
  'plan.overtaken': { status: 503, title: 'The day changed while it was being planned' },
  'plan.undecided': { status: 503, title: 'It was not found out in time' },
  'plan.queue-full': { status: 503, title: 'Too many days are being planned' },
  'plan.failed': { status: 500, title: 'The day could not be planned' },
  'plan.faulty': { status: 500, title: 'The plan that was found breaks a rule and was not stored' },
  'advice.invalid': { status: 422, title: 'The question does not fit the day' },
  'pack.unknown': { status: 404, title: 'There is no such pack' },
  'pack.invalid': { status: 422, title: 'The pack cannot be as it is written' },
  'pack.already-made': { status: 409, title: 'These pieces are packed already' },
  'pack.plan-stale': { status: 409, title: 'The plan no longer fits the day' },
  'pack.gone': { status: 409, title: 'The pack has left the house' },
  'pack.billed': { status: 409, title: 'The pack stands on a bill' },
  'pack.not-for-sale': { status: 409, title: 'This meat was cut for its owner' },
  'label.invalid': { status: 422, title: 'A label cannot be printed as it is' },
  'label.run-unknown': { status: 404, title: 'There is no such batch of labels' },
  'batch.invalid': { status: 422, title: 'The batch cannot be as it is written' },
  'batch.over-limit': { status: 422, title: 'The cure is above a limit' },
  'batch.taken': { status: 409, title: 'This batch cannot be kept beside what was kept before' },
  'bill.already-settled': { status: 409, title: 'The order has its bill already' },
  'bill.too-early': { status: 409, title: 'Not everything is weighed yet' },
  'bill.invalid': { status: 422, title: 'The bill cannot be drawn' },
  'bill.needs-consent': { status: 409, title: 'The customer has to be asked first' },
  'bill.missing': { status: 409, title: 'The order is not settled yet' },
  'payment.invalid': { status: 422, title: 'Money cannot move so' },
  'hand-over.invalid': { status: 422, title: 'These packs cannot leave with this order' },
  'pick-up.invalid': { status: 422, title: 'The pick-up cannot be as it is written' },
  'pick-up.missing': { status: 409, title: 'No pick-up is agreed' },
  'pick-up.not-due': { status: 409, title: 'This step is not due' },
  'animal.closed': { status: 409, title: 'The animal is closed' },
  'animal.unbalanced': { status: 422, title: 'The animal does not balance' },
  'book-settings.invalid': { status: 422, title: 'The settings cannot be as they are written' },
  'server.fault': { status: 500, title: 'Something went wrong on our side' },
  'server.busy': { status: 503, title: 'The service cannot answer just now' },
} as const satisfies Readonly<Record<string, { readonly status: number; readonly title: string }>>;

export type RefusalType = keyof typeof refusals;

/** One field at fault: where it stands, what was there, and what is wrong with it. */
export interface FieldFault {
  readonly at: string;
  readonly value: unknown;
  readonly says: string;
}

/** Of one line of an order: how much of it could be promised, in pieces or grams, and why not all. */
export interface Instead {
  readonly lineId: string;
  readonly asked: number;
  readonly possible: number;
  readonly says: string;
}

export interface Refusal {
  readonly ok: false;
  readonly type: RefusalType;
  /** what happened, to whom, and perhaps what to do: two sentences at most */
  readonly says: string;
  readonly faults?: readonly FieldFault[];
  /** what could be promised instead */
  readonly instead?: readonly Instead[];
  readonly retryAfterSeconds?: number;
}

export type Outcome<T> = { readonly ok: true; readonly value: T } | Refusal;

export const done = <T>(value: T): Outcome<T> => ({ ok: true, value });

export const refused = (
  type: RefusalType,
  says: string,
  more: Pick<Refusal, 'faults' | 'instead' | 'retryAfterSeconds'> = {},
): Refusal => ({ ok: false, type, says, ...more });

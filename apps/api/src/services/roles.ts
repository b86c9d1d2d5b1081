import type { Role } from '@flitchbook/db';
import { type Refusal, refused } from '../refusals.ts';
import type { Ctx } from './ctx.ts';

const staff = ['counter', 'butcher', 'owner'] as const;

/** Customers for themselves; the counter and the owner for whoever stands before them. */
const everyone = ['customer', 'counter', 'owner'] as const;

/** Who may do what. A verb that is not listed here does not exist. */
export const mayDo = {
  'days.list': staff,
  'days.open': ['owner'],
  'boards.read': staff,
  'animals.list': staff,
  'animals.book': ['butcher', 'owner'],
  'animals.correct': ['butcher', 'owner'],
  'orders.list': staff,
  'orders.take': ['counter', 'owner'],
  'orders.cancel': everyone,
  'orders.own': ['customer'],
  'orders.promise': everyone,
  'reservations.quote': everyone,
  'reservations.hold': everyone,
  'reservations.reserve': everyone,
  'reservations.release': everyone,
  'halves.preview': everyone,
  'deals.read': everyone,
  'reservations.hold-longer': everyone,
  'days.offered': everyone,
  'days.set-last-call': ['owner'],
  'rules.read': staff,
  'rules.set': ['owner'],
  'shortages.list': staff,
  'links.send': ['counter', 'owner'],
  'links.revoke': ['customer', 'counter', 'owner'],
  'events.follow': staff,
  'locks.settle': ['butcher', 'owner'],
  'plans.make': ['butcher', 'owner'],
  'plans.try': ['butcher', 'owner'],
  'plans.cut-list': staff,
  'advice.split': ['butcher', 'owner'],
  'packs.list': staff,
  'packs.weigh': staff,
  'packs.undo': staff,
  'labels.print': staff,
  'accounts.read': ['counter', 'owner'],
  'bills.settle': ['counter', 'owner'],
  'payments.take': ['counter', 'owner'],
  'hand-overs.read': staff,
  'hand-overs.give': ['counter', 'owner'],
  'pick-ups.choose': everyone,
  'pick-ups.set': ['counter', 'owner'],
  'receipts.read': everyone,
  'counter.read': staff,
  'counter.sell': ['counter', 'owner'],
  'closings.read': ['butcher', 'owner'],
  'closings.close': ['owner'],
  'traces.read': staff,
  'exports.read': ['owner'],
  'feeds.make': staff,
  'book-settings.read': staff,
  'book-settings.set': ['owner'],
  'kitchen.read': staff,
  'kitchen.make': ['butcher', 'owner'],
  'kitchen.consent': ['counter', 'owner'],
  'people.add': ['owner'],
  'farms.add': ['owner'],
} as const satisfies Readonly<Record<string, readonly Role[]>>;

export type Verb = keyof typeof mayDo;

/** Undefined when the actor may. */
export function authorise({ actor }: Pick<Ctx, 'actor'>, verb: Verb): Refusal | undefined {
  const roles: readonly Role[] = mayDo[verb];
  if (roles.includes(actor.role)) return undefined;
  return refused(
    'session.not-allowed',
    `This is for: ${roles.join(', ')}. You are signed in as ${actor.role}.`,
  );
}

import { type Database, forShop, type Role, type ShopDatabase } from '@flitchbook/db';
import type { Ids } from '../ids.ts';
import type { Log } from '../log.ts';
import type { DaySolver, SolveLimits } from '../solve/day-solver.ts';
import type { KnownOffers } from './days/offers.ts';
import type { Passwords } from './passwords.ts';
import type { DayTurns } from './reservations/day-turns.ts';
import type { KnownRefusals } from './reservations/known-refusals.ts';

/** What claims of one process share, to spare each other work. None of it guards anything. */
interface Promises {
  readonly turns: DayTurns;
  readonly refusals: KnownRefusals;
  readonly offers: KnownOffers;
}

/** What verbs work with. Clock, chance and solver come in here and nowhere else. */
export interface Services {
  readonly db: Database;
  readonly clock: () => Date;
  readonly ids: Ids;
  readonly passwords: Passwords;
  readonly solver: DaySolver;
  readonly solveLimits: SolveLimits;
  readonly log: Log;
  readonly promises: Promises;
  /** where links in mails lead, without a slash at the end: https://shop.example */
  readonly shopAddress: string;
  /** told after every change of a day that its plan depends on */
  readonly dayChanged: (shopId: string, dayId: string) => void;
}

/** Who asks. `personId` is null for the service itself: seeding, planning again in the background. */
export interface Actor {
  readonly shopId: string;
  readonly personId: string | null;
  readonly role: Role;
}

export interface Ctx extends Services {
  /** narrowed to the actor's shop: rows of another one are out of reach, whatever a statement asks for */
  readonly db: ShopDatabase;
  readonly actor: Actor;
}

export const actAs = (services: Services, actor: Actor): Ctx => ({
  ...services,
  db: forShop(services.db, actor.shopId),
  actor,
});

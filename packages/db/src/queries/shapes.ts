import type { ScaleReading, SlaughterFact, Tools } from '@flitchbook/carcass';
import type { CarcassShare, Counter, CuttingDay, CuttingPlan, DemandLine } from '@flitchbook/plan';
import type { OrderState } from '../schema/index.ts';

export interface Shop {
  readonly shopId: string;
  readonly name: string;
  /** ISO 4217, three capitals */
  readonly currency: string;
  /** IANA name */
  readonly timeZone: string;
  readonly weightUnit: 'lb' | 'kg';
  readonly lengthUnit: 'in' | 'mm';
}

export type Role = 'customer' | 'counter' | 'butcher' | 'owner';

export interface Person {
  readonly shopId: string;
  readonly personId: string;
  readonly email: string;
  readonly name: string;
  readonly role: Role;
}

export interface NewPerson extends Person {
  /** argon2id, as its text form; null: comes in by links only */
  readonly passwordHash: string | null;
}

export interface NewSession {
  readonly shopId: string;
  readonly personId: string;
  /** SHA-256 of the token, 64 hexadecimal digits */
  readonly tokenHash: string;
  readonly lifetimeSeconds: number;
  /** the link it is begun with */
  readonly linkId?: string;
}

export interface Farm {
  readonly shopId: string;
  readonly farmId: string;
  readonly name: string;
}

export interface NewDay {
  readonly shopId: string;
  readonly dayId: string;
  /** local date of the shop, yyyy-mm-dd */
  readonly date: string;
  readonly tools: Tools;
  readonly counter: Counter;
}

export interface DayRecord extends NewDay {
  readonly state: 'open' | 'closed';
  /** ISO instant until which customers may ask, null: until the day is closed */
  readonly customersUntil: string | null;
  readonly version: number;
  /** the version that the stored plan belongs to: equal to `version` when nothing changed since */
  readonly plannedVersion: number | null;
  /** ISO instant */
  readonly plannedAt: string | null;
}

export interface DaySummary {
  readonly dayId: string;
  readonly date: string;
  readonly state: 'open' | 'closed';
  readonly version: number;
  readonly plannedVersion: number | null;
  readonly animals: number;
  /** standing ones */
  readonly orders: number;
  /** null: no plan yet */
  readonly shortLines: number | null;
}

/** A day that this unit has locked and given a new version. Every change of a day takes one. */
export interface TouchedDay {
  readonly shopId: string;
  readonly dayId: string;
  /** the version after the touch */
  readonly version: number;
}

export type Touch =
  | { readonly outcome: 'touched'; readonly day: TouchedDay }
  | { readonly outcome: 'stale'; readonly version: number }
  | { readonly outcome: 'closed' }
  | { readonly outcome: 'unknown' };

export interface NewSide {
  readonly sideId: string;
  readonly hand: 'left' | 'right';
  readonly massMg: number;
  /** the side weighed alone, as read */
  readonly weight: ScaleReading | null;
  readonly lostParts: readonly string[];
}

export interface NewAnimal {
  readonly animalId: string;
  readonly name: string;
  readonly speciesId: string;
  readonly farmId: string | null;
  readonly ribs: number;
  readonly hanging: ScaleReading & { readonly grams: number };
  readonly hotOrCold: 'hot' | 'cold';
  /** cut for its owner: never for sale */
  readonly legalMode: 'for-sale' | 'for-owner';
  readonly facts: readonly SlaughterFact[];
  readonly lostItems: readonly string[];
  readonly sides: readonly NewSide[];
}

export interface AnimalRecord extends NewAnimal {
  readonly dayId: string;
  readonly version: number;
}

export type NewLine = Omit<DemandLine, 'orderId' | 'owner'>;
export type NewShare = Omit<CarcassShare, 'orderId' | 'owner'>;

export type { OrderState };

/** How an order begins. */
export type Beginning =
  /** assured: the plan that is stored with it covers all of it */
  | { readonly state: 'standing'; readonly assured: boolean }
  | { readonly state: 'queued' }
  /** lapses after so many seconds of the database's clock */
  | { readonly state: 'held'; readonly holdSeconds: number; readonly depositMinor: number };

export interface NewOrder {
  readonly orderId: string;
  readonly owner: string;
  readonly personId: string | null;
  readonly note: string;
  readonly lines: readonly NewLine[];
  readonly shares: readonly NewShare[];
}

export interface OrderRecord {
  readonly orderId: string;
  readonly dayId: string;
  /** running number of the shop, from 1 */
  readonly number: number;
  readonly owner: string;
  readonly personId: string | null;
  readonly note: string;
  readonly state: OrderState;
  /** the stored plan covers all of it, and has since it was accepted */
  readonly assured: boolean;
  /** ISO instant; null unless held */
  readonly heldUntil: string | null;
  readonly depositMinor: number;
  readonly version: number;
  /** ISO instant */
  readonly placedAt: string;
  readonly lines: readonly DemandLine[];
  readonly shares: readonly CarcassShare[];
}

/** What a customer may ask of a shop, and what the shop asks in return. */
export interface ShopRules {
  readonly holdSeconds: number;
  readonly promotedHoldSeconds: number;
  readonly depositPercent: number;
  readonly depositFromMinor: number;
  readonly ordersPerPerson: number;
  readonly piecesPerPerson: number;
  readonly sharesPerPerson: number;
}

/** A cutting day as it is stored. Orders that are over or wait in the queue are in `orders` and not in `cuttingDay`. */
export interface StoredDay {
  readonly day: DayRecord;
  readonly cuttingDay: Omit<CuttingDay, 'species'>;
  readonly animals: readonly AnimalRecord[];
  readonly orders: readonly OrderRecord[];
}

export interface PlanToStore {
  readonly shopId: string;
  readonly planId: string;
  /** the version of the day that the plan was made from */
  readonly madeFor: number;
  readonly plan: CuttingPlan;
}

export interface StoredPlan {
  readonly planId: string;
  /** the version that the day got with it */
  readonly dayVersion: number;
  /** ISO instant */
  readonly madeAt: string;
  readonly plan: CuttingPlan;
}

export interface LedgerEntry {
  readonly shopId: string;
  /** small words joined by dots: order.taken */
  readonly kind: string;
  readonly dayId: string | null;
  readonly orderId: string | null;
  readonly personId: string | null;
  readonly facts: Readonly<Record<string, unknown>>;
}

export interface LedgerRecord extends LedgerEntry {
  /** from 1, without gaps, by shop */
  readonly seq: number;
  /** ISO instant */
  readonly at: string;
}

export interface AuditEntry {
  readonly shopId: string;
  readonly personId: string | null;
  /** small words joined by dots: order.cancel */
  readonly action: string;
  /** id of what was acted on */
  readonly subject: string;
  readonly facts: Readonly<Record<string, unknown>>;
}

export interface IdempotentRequest {
  readonly shopId: string;
  /** who asks: a person's id */
  readonly principal: string;
  /** method and route: "POST /api/days/:dayId/orders" */
  readonly route: string;
  readonly key: string;
  /** SHA-256 of the canonical request, 64 hexadecimal digits */
  readonly fingerprint: string;
}

export interface StoredAnswer {
  readonly status: number;
  readonly body: unknown;
}

export type IdempotencyState =
  | { readonly state: 'fresh' }
  | { readonly state: 'replay'; readonly answer: StoredAnswer }
  | { readonly state: 'running' }
  | { readonly state: 'reused' };

import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';
import type { Database, ShopDatabase, Tx, UnitLimits } from '../database.ts';
import { DatabaseUnavailable, ValueRefused } from '../faults.ts';

export type Handle = PgDatabase<PgQueryResultHKT>;
export type Mode = 'writing' | 'reading';

/** What both engines offer to the rest of this package. */
export interface Engine extends Database {
  /** One transaction, once; errors as the driver gives them, or DatabaseUnavailable. */
  unit<T>(kind: UnitKind, work: (handle: Handle) => Promise<T>): Promise<T>;
  /** Runs the migrations of a folder; one process at a time. */
  runMigrations(folder: string): Promise<void>;
}

/** Whose rows a unit sees: those of one shop, those of no shop (the list of shops only), or, in tests, the owner's. */
export type Scope = { readonly shopId: string } | 'no-shop' | 'owner';

export interface UnitKind {
  readonly mode: Mode;
  readonly scope: Scope;
}

/** An open database narrowed to a scope. The engine itself, as it was opened, belongs to no shop. */
class View implements ShopDatabase {
  readonly root: Engine;
  readonly scope: Scope;
  readonly shopId: string;

  constructor(root: Engine, scope: Scope) {
    this.root = root;
    this.scope = scope;
    this.shopId = typeof scope === 'object' ? scope.shopId : '';
  }

  get engine() {
    return this.root.engine;
  }

  get version() {
    return this.root.version;
  }

  get warnings() {
    return this.root.warnings;
  }

  close(): Promise<void> {
    return this.root.close();
  }
}

export const engineOf = (db: Database): Engine => (db instanceof View ? db.root : (db as Engine));
export const scopeOf = (db: Database): Scope => (db instanceof View ? db.scope : 'no-shop');

/** Units of the account that made the tables, past every wall but those of the table itself. For tests. */
export const asOwner = (db: Database): Database => new View(engineOf(db), 'owner');

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/**
 * The same database for units that work for one shop: they see and write its rows only.
 * @throws ValueRefused unless the id is a UUID
 */
export function forShop(db: Database, shopId: string): ShopDatabase {
  if (!uuid.test(shopId)) throw new ValueRefused(`"${shopId}" is not the id of a shop`);
  return new View(engineOf(db), { shopId });
}

/** First statements of a unit: the role that owns nothing, and the shop that the policies ask for. */
export function takeOnScope(scope: Scope): string {
  if (scope === 'owner') return '';
  const shopId = scope === 'no-shop' ? '' : scope.shopId;
  return `set local role flitchbook_app; set local flitchbook.shop = '${shopId}'`;
}
export const handleOf = (tx: Tx): Handle => tx as unknown as Handle;
export const txOf = (handle: Handle): Tx => handle as unknown as Tx;

export const usualLimits: UnitLimits = {
  deadlineMs: 15_000,
  statementMs: 10_000,
  lockMs: 5_000,
  idleMs: 10_000,
};

export const closedError = (): DatabaseUnavailable =>
  new DatabaseUnavailable('closed', 'The database is closed.', false);

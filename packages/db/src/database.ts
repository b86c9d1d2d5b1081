declare const open: unique symbol;

/** The handle of one unit of work. Made by inTransaction, passed explicitly, worthless once the unit is over. */
export interface Tx {
  readonly [open]: true;
}

export interface Clock {
  now(): Date;
}

/** Times of one unit of work, milliseconds. */
export interface UnitLimits {
  /** the caller has an answer by then, waiting for a connection included (15 000) */
  readonly deadlineMs: number;
  /** one statement (10 000); the embedded engine has no such limit */
  readonly statementMs: number;
  /** waiting for one lock (5 000) */
  readonly lockMs: number;
  /** a transaction that nobody goes on with (10 000) */
  readonly idleMs: number;
}

export interface ServerConfig {
  readonly engine: 'postgres';
  /** postgres://user@host/name */
  readonly url: string;
  /** units in flight at most (10) */
  readonly connections?: number;
  readonly limits?: Partial<UnitLimits>;
}

export interface FolderConfig {
  readonly engine: 'folder';
  /** made if it is not there; a file `<folder>.lock` beside it keeps a second opener out */
  readonly folder: string;
  readonly clock: Clock;
  /** in production the embedded engine is refused unless forced: it is not safe against a power cut */
  readonly production?: boolean;
  readonly forced?: boolean;
  readonly limits?: Partial<UnitLimits>;
}

export interface MemoryConfig {
  readonly engine: 'memory';
  /** folder that keeps a migrated snapshot, so that the next one starts in a third of the time */
  readonly snapshots?: string;
  readonly limits?: Partial<UnitLimits>;
}

export type DatabaseConfig = ServerConfig | FolderConfig | MemoryConfig;

export interface Database {
  readonly engine: 'postgres' | 'pglite';
  /** version of Postgres inside: "18.6" */
  readonly version: string;
  /** what is not covered by this engine, for the log at start-up */
  readonly warnings: readonly string[];
  /** Units in flight end first, for as long as their deadline; later ones are refused. */
  close(): Promise<void>;
}

/** A database narrowed to one shop by `forShop`. */
export interface ShopDatabase extends Database {
  readonly shopId: string;
}

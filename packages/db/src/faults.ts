/** A named rule of the database refused a row. Names are listed in the schema: `<table>_<rule>`. */
export class ConstraintViolation extends Error {
  override readonly name = 'ConstraintViolation';
  readonly constraint: string;
  readonly table: string;
  /** SQLSTATE */
  readonly code: string;

  constructor(found: { constraint: string; table: string; code: string; cause: unknown }) {
    super(`${found.table}: ${found.constraint} (${found.code})`, { cause: found.cause });
    this.constraint = found.constraint;
    this.table = found.table;
    this.code = found.code;
  }
}

/** A value that no column takes: NaN for a whole number, a number out of range, text that is no UUID. */
export class ValueRefused extends Error {
  override readonly name = 'ValueRefused';
}

/** No answer from the database. The caller may try again; with an Idempotency-Key where `maybeDone`. */
export class DatabaseUnavailable extends Error {
  override readonly name = 'DatabaseUnavailable';
  readonly reason: 'deadline' | 'connection' | 'conflict' | 'closed';
  /** the commit was sent and nothing is known of it */
  readonly maybeDone: boolean;

  constructor(reason: DatabaseUnavailable['reason'], says: string, maybeDone: boolean, cause?: unknown) {
    super(says, { cause });
    this.reason = reason;
    this.maybeDone = maybeDone;
  }
}

/** Another process has the folder, or may have. */
export class FolderBusy extends Error {
  override readonly name = 'FolderBusy';
  readonly pid: number | null;

  constructor(says: string, pid: number | null) {
    super(says);
    this.pid = pid;
  }
}

/** The embedded engine is not for production. */
export class EngineRefused extends Error {
  override readonly name = 'EngineRefused';
}

/** The folder cannot be opened as a database: damaged, no folder at all, or not this user's to read and write. */
export class FolderUnusable extends Error {
  override readonly name = 'FolderUnusable';
}

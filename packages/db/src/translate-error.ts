import { ConstraintViolation, DatabaseUnavailable, ValueRefused } from './faults.ts';

/** What both drivers put on an error; PGlite says `constraint`, postgres.js `constraint_name`. */
interface DriverError {
  readonly code: string;
  readonly message: string;
  readonly constraint?: string;
  readonly constraint_name?: string;
  readonly table?: string;
  readonly table_name?: string;
  readonly column?: string;
  readonly column_name?: string;
}

function isDriverError(error: unknown): error is DriverError {
  return error instanceof Error && 'code' in error && typeof error.code === 'string';
}

/** The query builder wraps what it gets: the error itself is one of the causes. */
function within<T>(error: unknown, is: (at: unknown) => at is T): T | undefined {
  for (let at = error, depth = 0; at instanceof Error && depth < 5; at = at.cause, depth++) {
    if (is(at)) return at;
  }
  return undefined;
}

const driverError = (error: unknown): DriverError | undefined => within(error, isDriverError);

const isUnavailable = (at: unknown): at is DatabaseUnavailable => at instanceof DatabaseUnavailable;

/** Serialization failure, deadlock: the transaction did nothing and may be tried again. */
export function mayRetry(error: unknown): boolean {
  const code = driverError(error)?.code;
  return code === '40001' || code === '40P01';
}

const lostConnection = new Set([
  'CONNECTION_CLOSED',
  'CONNECTION_DESTROYED',
  'CONNECTION_ENDED',
  'CONNECT_TIMEOUT',
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOENT',
  'ENOTFOUND',
  'EHOSTUNREACH',
  'EAI_AGAIN',
  'EPIPE',
  'ETIMEDOUT',
  // admin_shutdown, crash_shutdown, cannot_connect_now, too_many_connections
  '57P01',
  '57P02',
  '57P03',
  '53300',
]);

// query_canceled (statement_timeout), idle_in_transaction_session_timeout
const tooSlow = new Set(['57014', '25P03']);

/** DatabaseUnavailable when the error says that the server is gone, too slow or blocked; undefined when it says something else. */
export function unavailable(error: unknown, maybeDone: boolean): DatabaseUnavailable | undefined {
  const known = within(error, isUnavailable);
  if (known) {
    return known.maybeDone === maybeDone
      ? known
      : new DatabaseUnavailable(known.reason, known.message, maybeDone, error);
  }
  const found = driverError(error);
  if (!found) return undefined;
  if (lostConnection.has(found.code) || found.code.startsWith('08')) {
    return new DatabaseUnavailable(
      'connection',
      `The database cannot be reached (${found.code}).`,
      maybeDone,
      error,
    );
  }
  if (tooSlow.has(found.code)) {
    return new DatabaseUnavailable(
      'deadline',
      `The database took too long (${found.code}).`,
      maybeDone,
      error,
    );
  }
  if (found.code === '55P03') {
    return new DatabaseUnavailable(
      'conflict',
      'Somebody else held a lock for too long (55P03).',
      false,
      error,
    );
  }
  return undefined;
}

/** The error a caller of this package sees. What is not the database's passes as it is. */
export function translateError(error: unknown): unknown {
  const found = driverError(error);
  if (!found) return error;
  const table = found.table_name ?? found.table ?? '';
  if (found.code.startsWith('23')) {
    const column = found.column_name ?? found.column;
    const constraint = found.constraint_name ?? found.constraint ?? `${table}_${column ?? 'row'}_present`;
    return new ConstraintViolation({ constraint, table, code: found.code, cause: error });
  }
  if (found.code.startsWith('22')) return new ValueRefused(found.message, { cause: error });
  if (mayRetry(error)) {
    return new DatabaseUnavailable('conflict', `Others changed the same rows (${found.code}).`, false, error);
  }
  return error;
}

import type { ServerConfig, UnitLimits } from '../database.ts';
import { unavailable } from '../translate-error.ts';
import { Deadline } from './deadline.ts';
import { closedError, type Engine, type Handle, type UnitKind, usualLimits } from './engine.ts';
import { Gate } from './gate.ts';
import { migrateServer, PostgresConnection } from './postgres-connection.ts';
import { Unit } from './unit.ts';

const usualConnections = 10;

class PostgresEngine implements Engine {
  readonly engine = 'postgres';
  readonly warnings: readonly string[] = [];
  version = '';
  readonly #url: string;
  readonly #limits: UnitLimits;
  readonly #gate: Gate;
  readonly #resting: PostgresConnection[] = [];
  #closed = false;

  constructor({ url, connections = usualConnections, limits }: ServerConfig) {
    this.#url = url;
    this.#limits = { ...usualLimits, ...limits };
    this.#gate = new Gate(connections);
  }

  async unit<T>(kind: UnitKind, work: (handle: Handle) => Promise<T>): Promise<T> {
    if (this.#closed) throw closedError();
    const unit = new Unit();
    const deadline = new Deadline(this.#limits.deadlineMs);
    try {
      await this.#gate.enter(deadline);
    } catch (error) {
      deadline.clear();
      throw error;
    }
    const connection = this.#takeConnection();
    try {
      return await deadline.race(connection.run(kind, unit, work));
    } catch (error) {
      if (!deadline.expired) throw unavailable(error, unit.committing) ?? error;
      unit.end('The transaction is over: its deadline has passed.');
      connection.discard();
      throw deadline.error(unit.committing);
    } finally {
      deadline.clear();
      if (connection.alive) this.#resting.push(connection);
      else connection.discard();
      this.#gate.leave();
    }
  }

  runMigrations(folder: string): Promise<void> {
    return migrateServer(this.#url, folder);
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#gate.idle();
    await Promise.all(this.#resting.splice(0).map((connection) => connection.close()));
  }

  /** The one used last, if its socket is still there. */
  #takeConnection(): PostgresConnection {
    for (let resting = this.#resting.pop(); resting; resting = this.#resting.pop()) {
      if (resting.alive) return resting;
      resting.discard();
    }
    return new PostgresConnection({ url: this.#url, limits: this.#limits });
  }

  async connect(): Promise<void> {
    const connection = this.#takeConnection();
    try {
      this.version = await connection.version();
      this.#resting.push(connection);
    } catch (error) {
      connection.discard();
      throw unavailable(error, false) ?? error;
    }
  }
}

/** Connects once, so that a wrong address is known at the start. @throws DatabaseUnavailable */
export async function openPostgres(config: ServerConfig): Promise<Engine> {
  const engine = new PostgresEngine(config);
  await engine.connect();
  return engine;
}

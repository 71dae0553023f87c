/*
 * Opens the embedded SQLite file: WAL, foreign keys on, a busy time-out, and drizzle over it.
 * Invariant: one connection a path and process; nothing opens a database when a module is merely imported.
 * Not here: migrations (migrate.ts) and queries (queries/).
 * Read next: migrate.ts, queries/.
 */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3';

export type Db = BetterSQLite3Database;
/** A handle or a transaction: what every query takes first. */
export type DbOrTx = Pick<Db, 'select' | 'insert' | 'update' | 'delete' | 'run' | 'all' | 'get'>;

export interface OpenDatabase {
  readonly raw: Database.Database;
  readonly db: Db;
}

export function openDatabase(source: string | Buffer): OpenDatabase {
  if (typeof source === 'string' && source !== ':memory:') mkdirSync(dirname(source), { recursive: true });
  const raw = new Database(source);
  raw.pragma('journal_mode = WAL');
  raw.pragma('synchronous = NORMAL');
  raw.pragma('foreign_keys = ON');
  raw.pragma('busy_timeout = 5000');
  return { raw, db: drizzle({ client: raw }) };
}

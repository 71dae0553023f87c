/*
 * Brings a database to the newest schema without losing a row.
 * Invariant: foreign keys are off outside the transaction while tables are rebuilt, and checked before they are switched on again.
 * Not here: generating migrations (drizzle-kit) and demo data (lib/services/house/prepare-house.ts).
 * Read next: client.ts, migrations/.
 */
import { fileURLToPath } from 'node:url';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import type { OpenDatabase } from './client.ts';
import { createSearchIndex } from './search-index.ts';
import { createTriggers } from './triggers.ts';

export function migrationsFolder(): string {
  return process.env.KITWRIGHT_MIGRATIONS ?? fileURLToPath(new URL('./migrations', import.meta.url));
}

/**
 * A rebuilt table is dropped and copied; with foreign keys on, SQLite would cascade that drop into child rows,
 * and `PRAGMA foreign_keys` inside a transaction is ignored. Hence off here, outside, and a check afterwards.
 * The drop also takes the table's triggers with it, so they are made anew every time.
 */
export function migrateDatabase({ raw, db }: OpenDatabase, folder: string = migrationsFolder()): void {
  raw.pragma('foreign_keys = OFF');
  try {
    migrate(db, { migrationsFolder: folder });
    const violations = raw.pragma('foreign_key_check');
    if (Array.isArray(violations) && violations.length > 0) {
      throw new Error(
        `The migration left ${violations.length} rows without their parent; restore the copy of the database and report this.`,
      );
    }
    createSearchIndex(raw);
    createTriggers(raw);
  } finally {
    raw.pragma('foreign_keys = ON');
  }
}

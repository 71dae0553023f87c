/*
 * Opens the house on this machine once a process: the database file, the wall clock and whoever asks.
 * Invariant: nothing is opened before the first call; reloads of a development server share one handle.
 * Not here: migrations and demo data (prepare-house.ts).
 * Read next: ../context.ts.
 */
import { resolve } from 'node:path';
import { type OpenDatabase, openDatabase } from '#db/client.ts';
import type { Actor, Context } from '#lib/services/context.ts';

declare global {
  var kitwrightDatabase: { readonly path: string; readonly open: OpenDatabase } | undefined;
}

export function databasePath(): string {
  return resolve(/* turbopackIgnore: true */ process.env.KITWRIGHT_DATABASE ?? 'data/kitwright.sqlite');
}

export function openHouse(actor: Actor): Context {
  const path = databasePath();
  if (globalThis.kitwrightDatabase?.path !== path) {
    globalThis.kitwrightDatabase = { path, open: openDatabase(path) };
  }
  return { database: globalThis.kitwrightDatabase.open, now: () => new Date(), actor };
}

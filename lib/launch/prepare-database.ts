/*
 * Brings the database file up to date: migrations, then the demo house once.
 * Invariant: running it again on a prepared database changes nothing.
 * Not here: what a migration or the demo house holds (db/, seeds/); the use case does the work.
 * Read next: ../services/prepare-house.ts.
 */
import { mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { prepareHouse } from '#lib/services/prepare-house.ts';

const databasePath = resolve(process.env.KITWRIGHT_DATABASE ?? 'data/kitwright.sqlite');

mkdirSync(dirname(databasePath), { recursive: true });
await prepareHouse({ databasePath });

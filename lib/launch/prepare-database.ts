/*
 * Brings the database file up to date: migrations, the demo house once, and the first administrator once.
 * Invariant: running it again changes nothing; a one-time password is told once, to whoever started this, and kept nowhere.
 * Not here: what a migration or the demo house holds (db/, seeds/); the use case does the work.
 * Read next: ../services/house/prepare-house.ts.
 */
import { mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { firstAdministrator } from '#lib/services/access/first-administrator.ts';
import { carryOutDemoDealings } from '#lib/services/house/demo-dealings.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';

const databasePath = resolve(process.env.KITWRIGHT_DATABASE ?? 'data/kitwright.sqlite');

mkdirSync(dirname(databasePath), { recursive: true });
const house = await prepareHouse({ databasePath });
if (house === 'loaded') await carryOutDemoDealings({ databasePath });
const email = process.env.KITWRIGHT_ADMIN_EMAIL ?? 'administrator@house.example';
const access = await firstAdministrator({ databasePath, email });
if (access !== undefined && process.send !== undefined) process.send({ access });
else if (access !== undefined)
  console.info(`First administrator: ${access.email}   One-time password: ${access.password}   (shown only now)`);

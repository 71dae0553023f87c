/** Puts one person a role into the database that KITWRIGHT_DATABASE names, with the password in E2E_PASSWORD: for the stories in a browser. */
import { HOUSE_ITSELF, USER_ROLES } from '#lib/services/context.ts';
import { openHouse } from '#lib/services/house/open-house.ts';
import { addPerson } from './house-people.ts';

const password = process.env.E2E_PASSWORD;
if (password === undefined) throw new Error('E2E_PASSWORD names the password of the people in the stories.');
const context = openHouse(HOUSE_ITSELF);
for (const role of USER_ROLES) await addPerson(context, { role, password });
context.database.raw.close();

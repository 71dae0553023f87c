/*
 * A moment as the house writes it (ISO 8601 text in UTC) and as the sign-in library hands it over (a Date).
 * Invariant: texts of two moments compare as the moments do.
 * Not here: days (plain ISO dates).
 * Read next: session.ts.
 */
import { customType } from 'drizzle-orm/sqlite-core';

export const moment = customType<{ data: Date; driverData: string }>({
  dataType: () => 'text',
  toDriver: (value) => value.toISOString(),
  fromDriver: (value) => new Date(value),
});

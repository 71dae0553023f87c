'use server';
import { cookies } from 'next/headers';
import { setPreferences } from '#lib/services/access/set-preferences.ts';
import { asked } from './asking.ts';
import { systemNamed, UNITS_COOKIE } from './unit-system.ts';

const A_YEAR_S = 365 * 86_400;

/** Keeps the units that a person chose: with the person, and in the browser for before they sign in again. */
export async function chooseUnits(form: FormData): Promise<void> {
  const units = systemNamed(form.get('units'));
  setPreferences((await asked()).context, { units });
  (await cookies()).set(UNITS_COOKIE, units, { httpOnly: true, sameSite: 'lax', path: '/', maxAge: A_YEAR_S });
}

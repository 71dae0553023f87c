'use server';
import { cookies } from 'next/headers';
import { systemNamed, UNITS_COOKIE } from './unit-system.ts';

const A_YEAR_S = 365 * 86_400;

/** Keeps the units that a person chose in their browser; the page is then drawn anew by the server. */
export async function chooseUnits(form: FormData): Promise<void> {
  const jar = await cookies();
  jar.set(UNITS_COOKIE, systemNamed(form.get('units')), {
    httpOnly: true,
    sameSite: 'lax',
    path: '/',
    maxAge: A_YEAR_S,
  });
}

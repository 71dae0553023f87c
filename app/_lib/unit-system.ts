import { cookies } from 'next/headers';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { asked } from './asking.ts';

export const UNITS_COOKIE = 'kitwright-units';

/** The units that the person or else their browser asked for; SI until either says otherwise. Values are converted only when they are shown. */
export async function unitSystem(): Promise<UnitSystem> {
  const { units } = (await asked()).asker.preferences;
  return units ?? systemNamed((await cookies()).get(UNITS_COOKIE)?.value);
}

export function systemNamed(name: unknown): UnitSystem {
  return name === 'us' ? 'us' : 'si';
}

import { cookies } from 'next/headers';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

export const UNITS_COOKIE = 'kitwright-units';

/** The units that this browser asked for; SI until it says otherwise. Values are converted only when they are shown. */
export async function unitSystem(): Promise<UnitSystem> {
  return systemNamed((await cookies()).get(UNITS_COOKIE)?.value);
}

export function systemNamed(name: unknown): UnitSystem {
  return name === 'us' ? 'us' : 'si';
}

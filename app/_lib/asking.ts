import type { Context } from '#lib/services/context.ts';
import { openHouse } from '#lib/services/open-house.ts';

/** The house as the person who asks may use it: every page and route takes its context from here. */
export async function asking(): Promise<Context> {
  return openHouse();
}

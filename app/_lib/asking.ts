import { headers } from 'next/headers';
import type { Context } from '#lib/services/context.ts';
import { openHouse } from '#lib/services/open-house.ts';
import { SCREEN_HEADER } from './screen-name.ts';

/** The house as the person who asks may use it: every page and route takes its context from here. */
export async function asking(): Promise<Context> {
  const screen = (await headers()).get(SCREEN_HEADER) ?? '';
  return { ...openHouse(), screen: screen.slice(0, 60) };
}

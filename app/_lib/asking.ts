import { cookies, headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { cache } from 'react';
import { type Asker, whoAsks } from '#lib/services/access/who-asks.ts';
import { type Context, NOBODY } from '#lib/services/context.ts';
import { openHouse } from '#lib/services/house/open-house.ts';
import { forgetDraftsNowAndThen } from '#lib/services/self-service/forget-drafts.ts';
import { expireHoldsNowAndThen } from '#lib/services/yard/expire-holds.ts';
import { PATH_HEADER } from './open-paths.ts';
import { SCREEN_HEADER } from './screen-name.ts';

export interface Asked {
  readonly asker: Asker;
  readonly context: Context;
}

/** Who asks, signed in or not; looked up once while a page is drawn. */
export const asked = cache(async (): Promise<Asked> => {
  const house = openHouse(NOBODY);
  expireHoldsNowAndThen(house);
  forgetDraftsNowAndThen(house);
  const asker = await whoAsks(house.database, (await cookies()).toString());
  const screen = (await headers()).get(SCREEN_HEADER) ?? '';
  return { asker, context: { ...house, actor: asker.actor, screen: screen.slice(0, 60) } };
});

/**
 * The house as the person who asks may use it: every page and route takes its context from here.
 * A page sends the signed-out to sign in and back again; a route gets a context that every service refuses.
 */
export async function asking(): Promise<Context> {
  return (await askedBySomeone()).context;
}

/** The same, with the session and the preferences of the person. */
export async function askedBySomeone(): Promise<Asked> {
  const found = await asked();
  const path = (await headers()).get(PATH_HEADER) ?? '/';
  if (path.startsWith('/api/')) return found;
  const { role } = found.context.actor;
  if (role === 'signed-out') redirect(`/sign-in?to=${encodeURIComponent(path)}`);
  if (role === 'one-time') redirect(`/choose-password?to=${encodeURIComponent(path)}`);
  return found;
}

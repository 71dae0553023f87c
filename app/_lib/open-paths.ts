/** The path that was asked for, as the proxy writes it for pages; a browser's own header of this name is overwritten. */
export const PATH_HEADER = 'x-kitwright-path';

/** Routes that answer without a sign-in; everything else under /api asks for one. */
export const OPEN_ROUTES: readonly string[] = ['/api/ping'];

/** Pages that are shown without a sign-in. */
export const OPEN_PAGES: readonly string[] = ['/sign-in'];

/** A place inside the house to go on to after signing in; anything else is the front door. */
export function placeInside(to: unknown): string {
  if (typeof to !== 'string' || !/^\/(?![/\\])/.test(to)) return '/';
  const url = URL.canParse(to, 'http://house') ? new URL(to, 'http://house') : undefined;
  if (url === undefined || url.origin !== 'http://house') return '/';
  if (/^\/(api|sign-in|choose-password)(\/|$)/.test(url.pathname)) return '/';
  return `${url.pathname}${url.search}`;
}

/** The path that was asked for, as the proxy writes it for pages; a browser's own header of this name is overwritten. */
export const PATH_HEADER = 'x-kitwright-path';

/** Routes that answer without a sign-in; everything else under /api asks for one. */
export const OPEN_ROUTES: readonly string[] = ['/api/ping'];

/** Pages that are shown without a sign-in. */
export const OPEN_PAGES: readonly string[] = ['/sign-in'];

/** Below these everything is open to the world, pages and routes: what is behind them asks for a link or a key by itself. */
export const OPEN_ROOTS: readonly string[] = ['/hire', '/api/v1/orders', '/api/v1/openapi.json'];

/** Whether a path is let through without a session. */
export function isOpenPath(path: string): boolean {
  const isBelow = OPEN_ROOTS.some((root) => path === root || path.startsWith(`${root}/`));
  return isBelow || OPEN_ROUTES.includes(path) || OPEN_PAGES.includes(path);
}

/** Self-service has a frame of its own, without the house's header. */
export function isSelfService(path: string): boolean {
  return path === '/hire' || /^\/hire[/?]/.test(path);
}

/** A place inside the house to go on to after signing in; anything else is the front door. */
export function placeInside(to: unknown): string {
  if (typeof to !== 'string' || !/^\/(?![/\\])/.test(to)) return '/';
  const url = URL.canParse(to, 'http://house') ? new URL(to, 'http://house') : undefined;
  if (url === undefined || url.origin !== 'http://house') return '/';
  if (/^\/(api|sign-in|choose-password)(\/|$)/.test(url.pathname)) return '/';
  return `${url.pathname}${url.search}`;
}

import { type NextRequest, NextResponse } from 'next/server';
import { isOpenPath, PATH_HEADER } from './app/_lib/open-paths.ts';
import { isFromElsewhere } from './app/_lib/same-origin.ts';

export const config = { matcher: ['/((?!_next/static|icon.svg).*)'] };

/**
 * Stands before every page and route. It refuses changes that another site asks a browser to make, and sends away whoever
 * comes without any cookie. What a cookie is worth and what its owner may do is decided behind it, at each service.
 */
export function proxy(request: NextRequest): NextResponse {
  const { pathname, search } = request.nextUrl;
  if (isFromElsewhere({ method: request.method, headers: request.headers }))
    return refused({
      status: 403,
      code: 'from-elsewhere',
      title: 'Another site asked for this change; it was not made.',
    });
  const isRoute = pathname.startsWith('/api/');
  if (!isOpenPath(pathname) && !hasSession(request))
    return isRoute ? refused({ status: 401, code: 'not-signed-in', title: 'Sign in first.' }) : toSignIn(request);
  const headers = new Headers(request.headers);
  headers.set(PATH_HEADER, `${pathname}${search}`);
  return NextResponse.next({ request: { headers } });
}

/** Back to where one wanted to go; a form that was sent is not sent again. */
function toSignIn(request: NextRequest): NextResponse {
  const { pathname, search } = request.nextUrl;
  const there = request.nextUrl.clone();
  there.pathname = '/sign-in';
  there.search = pathname === '/' ? '' : `?to=${encodeURIComponent(`${pathname}${search}`)}`;
  return NextResponse.redirect(there, 303);
}

function hasSession(request: NextRequest): boolean {
  return request.cookies.getAll().some(({ name }) => name.endsWith('session_token'));
}

interface Refusal {
  readonly status: number;
  readonly code: string;
  readonly title: string;
}

function refused({ status, code, title }: Refusal): NextResponse {
  return NextResponse.json(
    { type: `/problems/${code}`, title, status, code },
    { status, headers: { 'content-type': 'application/problem+json' } },
  );
}

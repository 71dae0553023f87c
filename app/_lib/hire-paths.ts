import type { Refused } from '#lib/kernel/result.ts';
import { secondsToWait } from './respond.ts';

/** Addresses inside self-service. */
export const hirePaths = {
  start: '/hire',
  order: (token: string) => `/hire/${token}`,
  valve: (token: string, lineId: number) => `/hire/${token}/valve/${lineId}`,
  list: (token: string, fileId: number) => `/hire/${token}/list/${fileId}`,
  deed: (token: string, deed: string) => `/hire/${token}/do/${deed}`,
  paper: (token: string, kind: string) => `/hire/${token}/papers/${kind}`,
} as const;

/** After a form was sent: another page is asked for, so that loading again sends nothing twice. */
export function inHire(path: string, said: Readonly<Record<string, string>> = {}): Response {
  const query = new URLSearchParams(said);
  const mark = path.includes('?') ? '&' : '?';
  return new Response(null, {
    status: 303,
    headers: { location: query.size === 0 ? path : `${path}${mark}${query}`, 'cache-control': 'no-store' },
  });
}

/** What a page says of the form that was sent before it. */
export function refusedSaid(reason: Refused): Readonly<Record<string, string>> {
  const wait = secondsToWait(reason);
  return { refused: reason.code, ...(wait === undefined ? {} : { wait: String(wait) }) };
}

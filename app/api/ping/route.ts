import { ok } from '#lib/kernel/result.ts';

/** Says that the server answers; the launchers wait for it. */
export function GET(): Response {
  return Response.json(ok('ready'));
}

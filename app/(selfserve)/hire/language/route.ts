import { cookies } from 'next/headers';
import { inHire } from '#app/_lib/hire-paths.ts';
import { LANGUAGE_COOKIE, strangerAsks } from '#app/_lib/stranger.ts';
import { languageNamed } from '#lib/wording/language.ts';

const A_YEAR_S = 365 * 86_400;

/** Keeps the language that was chosen, and goes back to where one was. */
export async function POST(request: Request) {
  await strangerAsks();
  const language = languageNamed((await request.formData()).get('language'));
  if (language !== undefined)
    (await cookies()).set(LANGUAGE_COOKIE, language, {
      sameSite: 'lax',
      path: '/hire',
      maxAge: A_YEAR_S,
      httpOnly: true,
    });
  return inHire(backTo(request.headers.get('referer')));
}

function backTo(referer: string | null): string {
  const path = referer !== null && URL.canParse(referer) ? new URL(referer).pathname : '/hire';
  return /^\/hire(\/[\w-]+)*$/.test(path) ? path : '/hire';
}

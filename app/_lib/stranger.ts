import { cookies, headers } from 'next/headers';
import { cache } from 'react';
import type { Context } from '#lib/services/context.ts';
import { type Language, languageAccepted, languageNamed } from '#lib/wording/language.ts';
import { asked } from './asking.ts';
import { addressAsking } from './session-cookie.ts';

export const LANGUAGE_COOKIE = 'kitwright-language';

export interface Stranger {
  readonly context: Context;
  readonly address: string;
  readonly language: Language;
}

/** The language that was chosen here before, or else the first that the browser asks for and that there is. */
export const strangerLanguage = cache(async (): Promise<Language> => {
  const chosen = languageNamed((await cookies()).get(LANGUAGE_COOKIE)?.value);
  return chosen ?? languageAccepted((await headers()).get('accept-language') ?? '');
});

/** Whoever asks in self-service: every page and route of it takes its context, address and language from here. */
export async function strangerAsks(): Promise<Stranger> {
  return {
    context: (await asked()).context,
    address: await addressAsking(),
    language: await strangerLanguage(),
  };
}

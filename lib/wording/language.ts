/*
 * The languages in which people without an account are spoken to.
 * Invariant: every language has every text; a test holds it.
 * Not here: the texts (english.ts, german.ts) and the Desk's screens, which are English.
 * Read next: wording.ts.
 */
export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

export function languageNamed(text: unknown): Language | undefined {
  return LANGUAGES.find((name) => name === text);
}

/** The first language of an Accept-Language header that there is, by its weights; English where none is. */
export function languageAccepted(header: string): Language {
  const wanted = header
    .split(',')
    .slice(0, 20)
    .map((part, index) => {
      const [tag = '', ...parameters] = part.trim().toLowerCase().split(';');
      const weight = parameters.map((one) => /^\s*q=([\d.]+)$/.exec(one)?.[1]).find((one) => one !== undefined);
      return { language: languageNamed(tag.split('-')[0]), weight: weight === undefined ? 1 : Number(weight), index };
    })
    .filter(({ weight }) => weight > 0)
    .toSorted((a, b) => b.weight - a.weight || a.index - b.index);
  return wanted.find(({ language }) => language !== undefined)?.language ?? 'en';
}

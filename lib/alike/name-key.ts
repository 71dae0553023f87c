/*
 * A name as names are compared: without capitals, accents, punctuation and the words of a company's form.
 * Invariant: a name of which nothing else is left keeps its form words, so that no name has an empty key unless it is empty.
 * Not here: how far two keys may differ (find-alike.ts).
 * Read next: find-alike.ts.
 */

/** Words that say in which form a company is held, in the forms of several countries, and words that say nothing. */
const FORM_WORDS: ReadonlySet<string> = new Set(
  (
    'ab ag aps as asa bhd bv co company corp corporation doo eeig ehf gmbh holding holdings inc incorporated jsc kft kg lda limited ' +
    'llc llp lp ltd ltda nv ohg oy oyj plc pte pty pvt sa sarl sas sdn se sia spa srl sro the uab zoo'
  ).split(' '),
);

export function nameKey(name: string): string {
  const words = wordsOf(name);
  const own = words.filter((word) => !FORM_WORDS.has(word));
  return (own.length === 0 ? words : own).join(' ');
}

function wordsOf(name: string): readonly string[] {
  return (
    name
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .toLowerCase()
      .replaceAll('ß', 'ss')
      .replaceAll('ø', 'o')
      .replaceAll('ł', 'l')
      .replaceAll('&', ' and ')
      .replaceAll('+', ' and ')
      // “S.A.” and “b.v.” are one word each; an apostrophe divides nothing.
      .replace(/(?<=\b\p{L})\.(?=\p{L}\b)/gu, '')
      .replace(/['’]/g, '')
      .split(/[^\p{L}\p{N}]+/u)
      .filter((word) => word !== '')
  );
}

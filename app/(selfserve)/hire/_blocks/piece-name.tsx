import type { Language } from '#lib/wording/language.ts';

interface Named {
  readonly name: string;
  readonly germanName?: string;
}

/** What a piece is called; the English name, marked as such, where there is none in the language. */
export function PieceName({ piece, language }: { readonly piece: Named; readonly language: Language }) {
  if (language === 'en') return piece.name;
  return piece.germanName ?? <span lang="en">{piece.name}</span>;
}

/** The same where only text may stand. */
export function pieceName(piece: Named, language: Language): string {
  return language === 'de' ? (piece.germanName ?? piece.name) : piece.name;
}

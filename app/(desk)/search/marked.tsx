/** What was found stands between these two characters, which no text holds. */
const BEGIN = String.fromCharCode(2);
const END = String.fromCharCode(3);

/** A text with what was found marked in it. */
export function Marked({ text }: { readonly text: string }) {
  return <>{piecesOf(text).map(({ at, words, isFound }) => (isFound ? <mark key={at}>{words}</mark> : words))}</>;
}

interface Piece {
  /** Where it begins. */
  readonly at: number;
  readonly words: string;
  readonly isFound: boolean;
}

function piecesOf(text: string): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  while (at < text.length) {
    const isFound = text[at] === BEGIN;
    const ends = text.indexOf(isFound ? END : BEGIN, at);
    const stop = ends < 0 ? text.length : ends;
    pieces.push({ at, words: text.slice(isFound ? at + 1 : at, stop), isFound });
    at = isFound ? stop + 1 : stop;
  }
  return pieces;
}

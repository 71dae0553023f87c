/*
 * Breaks a text into lines of a width, each a row of runs in one face.
 * Invariant: no character is lost or moved; a word wider than the column is broken where it must.
 * Not here: where the lines go (pieces.ts).
 * Read next: fonts.ts, pieces.ts.
 */
import { FACES, mainHolds, type Weight, widthInFace } from './fonts.ts';
import type { TextStyle } from './styles.ts';

/** Text in one face. */
export interface Run {
  readonly text: string;
  readonly face: string;
  readonly width: number;
}

export interface TextLine {
  readonly runs: readonly Run[];
  readonly width: number;
}

/** Widths of words at size 1, by weight and word; words come back all the time. */
const widths = new Map<string, number>();
const MOST_WIDTHS = 200_000;

export function breakLines({
  text,
  style,
  width,
}: {
  readonly text: string;
  readonly style: TextStyle;
  readonly width: number;
}): readonly TextLine[] {
  const room = width / style.size;
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    for (const word of paragraph.split(' ').flatMap((one) => fitting(one, style.weight, room))) {
      const longer = line === '' ? word : `${line}${word.startsWith(JOINED) ? word.slice(1) : ` ${word}`}`;
      if (line === '' || textWidth(longer, style.weight) <= room) line = longer.replace(JOINED, '');
      else {
        lines.push(line);
        line = word.replace(JOINED, '');
      }
    }
    lines.push(line);
    return lines.map((one) => setLine(one, style));
  });
}

export function setLine(text: string, style: TextStyle): TextLine {
  const runs = runsOf(text, style.weight).map((run) => ({ ...run, width: run.width * style.size }));
  return { runs, width: runs.reduce((sum, run) => sum + run.width, 0) };
}

/** Marks a piece of a word that goes on without a space. */
const JOINED = '\u0000';

/** A word as it is, or in pieces that fit: after a mark that may end a line, else anywhere. */
function fitting(word: string, weight: Weight, room: number): readonly string[] {
  if (textWidth(word, weight) <= room) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const part of word
    .split(/(?<=[-/·,;_.])/)
    .flatMap((one) => (textWidth(one, weight) <= room ? [one] : [...one]))) {
    if (piece !== '' && textWidth(piece + part, weight) > room) {
      pieces.push(piece);
      piece = part;
    } else piece += part;
  }
  pieces.push(piece);
  return pieces.map((one, index) => (index === 0 ? one : `${JOINED}${one}`));
}

function textWidth(text: string, weight: Weight): number {
  const words = text.split(' ');
  const space = wordWidth(' ', weight);
  return words.reduce((sum, word) => sum + wordWidth(word, weight), (words.length - 1) * space);
}

function wordWidth(word: string, weight: Weight): number {
  if (word === '' || word === JOINED) return 0;
  const key = `${weight}:${word}`;
  const known = widths.get(key);
  if (known !== undefined) return known;
  const width = runsOf(word, weight).reduce((sum, run) => sum + run.width, 0);
  if (widths.size >= MOST_WIDTHS) widths.clear();
  widths.set(key, width);
  return width;
}

/** A text cut where the face changes; signs that the main family lacks come from the second one. Widths at size 1. */
function runsOf(text: string, weight: Weight): readonly Run[] {
  const faces = FACES[weight];
  const runs: Run[] = [];
  let current = '';
  let face: string = faces.main;
  const close = () => {
    if (current !== '') runs.push({ text: current, face, width: widthInFace(current, face) });
    current = '';
  };
  for (const character of text.replaceAll(JOINED, '')) {
    const wanted = mainHolds(character, weight) ? faces.main : faces.signs;
    if (wanted !== face) {
      close();
      face = wanted;
    }
    current += character;
  }
  close();
  return runs;
}

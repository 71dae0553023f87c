/*
 * How wide a text may print, on the safe side, so that labels can be placed without a font at hand.
 * Invariant: never narrower than Source Sans 3 or Noto Sans set the same text.
 * Not here: drawing text; line breaking of papers (the PDF layout does it).
 * Read next: place-labels.ts.
 */
/** Advance widths in thousandths of the size from U+0020 to U+007E: the wider of Source Sans 3 and Noto Sans, regular. */
const REGULAR = [
  260, 289, 426, 646, 572, 831, 732, 249, 303, 303, 551, 572, 268, 322, 268, 372, 572, 572, 572, 572, 572, 572, 572,
  572, 572, 572, 268, 268, 572, 572, 572, 434, 899, 639, 650, 632, 730, 556, 519, 728, 741, 339, 479, 619, 524, 907,
  760, 781, 605, 781, 622, 549, 556, 731, 600, 930, 586, 566, 572, 329, 372, 329, 572, 500, 542, 561, 615, 480, 615,
  564, 344, 615, 618, 258, 258, 534, 258, 935, 618, 605, 615, 615, 413, 479, 361, 618, 508, 786, 529, 510, 470, 380,
  551, 380, 572,
];

/** Semi-bold widths of the two families, the wider of each. */
const BOLD = [
  260, 315, 482, 646, 572, 875, 743, 275, 324, 324, 546, 572, 279, 322, 276, 399, 572, 572, 572, 572, 572, 572, 572,
  572, 572, 572, 276, 279, 572, 572, 572, 461, 898, 672, 659, 638, 732, 558, 538, 726, 756, 370, 494, 647, 546, 929,
  793, 787, 615, 787, 643, 550, 569, 747, 631, 953, 638, 603, 576, 330, 399, 330, 572, 500, 549, 585, 626, 502, 626,
  585, 371, 626, 638, 283, 283, 588, 283, 960, 638, 617, 626, 626, 434, 493, 406, 638, 547, 830, 560, 548, 484, 389,
  551, 389, 572,
];

const NARROW = new Set(['\u00a0', '·', '°', '’', '‘', '′', '|']);
const WIDE = new Set(['—', '…', '→', '←', '™', 'Ж', 'Ш', 'Щ', 'Ю', 'М', 'Ω', 'ш', 'щ', 'ю', 'ж', 'м']);

export interface TextStyle {
  readonly size: number;
  readonly bold: boolean;
}

export function textWidth(text: string, style: TextStyle): number {
  const table = style.bold ? BOLD : REGULAR;
  let thousandths = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    thousandths += table[code - 32] ?? (NARROW.has(character) ? 430 : WIDE.has(character) ? 1000 : 680);
  }
  return (thousandths / 1000) * style.size;
}

/** Breaks a text at spaces (never at a no-break space, which prints as a plain one) so that no line is wider than allowed; a single longer word is cut with an ellipsis. */
export function wrapText(
  text: string,
  box: TextStyle & { readonly width: number; readonly maxLines: number },
): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, box) <= box.width) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = cutToWidth(word, box);
    }
  }
  if (line !== '') lines.push(line);
  if (lines.length <= box.maxLines) return lines.map(plainSpaces);
  const kept = lines.slice(0, box.maxLines).map(plainSpaces);
  const last = kept[box.maxLines - 1] ?? '';
  return [...kept.slice(0, -1), cutToWidth(`${last} …`, box)];
}

function plainSpaces(text: string): string {
  return text.replace(/\u00a0/g, ' ');
}

function cutToWidth(text: string, box: TextStyle & { readonly width: number }): string {
  if (textWidth(text, box) <= box.width) return text;
  let cut = [...text.replace(/ ?…$/, '')];
  while (cut.length > 1 && textWidth(`${cut.join('')}…`, box) > box.width) cut = cut.slice(0, -1);
  return `${cut.join('').trimEnd()}…`;
}

/*
 * Draws everything that goes with a quote: the quote itself, and for each option its papers and files.
 * Invariant: the same frozen facts give the same bytes under the same version of the program.
 * Not here: keeping the bytes (issue-quote.ts) and comparing them (redraw-quote.ts).
 * Read next: papers-of.ts, quote-files.ts.
 */
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { optionInputs, PAPER_KINDS, type PaperKind, type PapersInput, paperOf } from './papers-of.ts';
import { drawQuoteFile, QUOTE_FILE_KINDS, type QuoteFileKind } from './quote-files.ts';

/** A paper or a file that goes with the quote, as bytes to keep. */
export interface Drawn {
  readonly kind: string;
  readonly bytes: Buffer;
}

export async function drawQuote(input: PapersInput): Promise<readonly Drawn[]> {
  const drawn: Drawn[] = [];
  for (const kind of QUOTE_FILE_KINDS)
    if (!isOfOption(kind)) drawn.push({ kind, bytes: await drawQuoteFile(kind, input) });
  drawn.push({ kind: 'quote', bytes: Buffer.from(await drawPaper(paperOf('quote', input))) });
  for (const [index, option] of optionInputs(input).entries()) {
    for (const kind of PAPER_KINDS)
      if (kind !== 'quote')
        drawn.push({ kind: kindOf(kind, index), bytes: Buffer.from(await drawPaper(paperOf(kind, option))) });
    drawn.push({ kind: kindOf('quotation-xml', index), bytes: await drawQuoteFile('quotation-xml', option) });
  }
  return drawn;
}

/** What is of one option alone; the rest tells all of them. A quotation in UBL holds one price, so each option has its own. */
function isOfOption(kind: QuoteFileKind): boolean {
  return kind === 'quotation-xml';
}

/** `site-sheet` of the first option, `site-sheet-option-2` of the second. */
function kindOf(kind: PaperKind | QuoteFileKind, index: number): string {
  return index === 0 ? kind : `${kind}-option-${index + 1}`;
}

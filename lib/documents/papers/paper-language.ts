/*
 * A whole paper in the language of whom it goes to.
 * Invariant: addresses, tags, numbers and what somebody wrote stay; a sentence without a wording stays whole in English.
 * Not here: the wordings (lib/wording), dates and figures (paper-forms.ts), pictures, which are worded before they are set.
 * Read next: ../../wording/told-in.ts.
 */
import type { Language } from '#lib/wording/language.ts';
import type { Teller } from '#lib/wording/told-in.ts';
import { say } from '#lib/wording/wording.ts';
import type { Block, Paper } from './paper.ts';
import { rewritten } from './paper-forms.ts';

export function paperInLanguage(
  paper: Paper,
  { language, teller }: { readonly language: Language; readonly teller: Teller },
): Paper {
  if (language === 'en') return paper;
  const { tell } = teller;
  const worded = rewritten(paper, tell);
  return {
    ...worded,
    title: tell(paper.title),
    number: tell(paper.number),
    toWords: tell('For'),
    pageWords: say(language, 'paper.page', { page: '{page}', pages: '{pages}' }),
    blocks: worded.blocks.map((block) => withSigning(block, tell)),
  };
}

/** What is signed stands outside dates and figures, not outside language. */
function withSigning(block: Block, tell: Teller['tell']): Block {
  if (block.kind === 'together') return { ...block, blocks: block.blocks.map((one) => withSigning(one, tell)) };
  if (block.kind !== 'signatures') return block;
  return {
    ...block,
    parties: block.parties.map(({ title, lines }) => ({ title: tell(title), lines: lines.map(tell) })),
  };
}

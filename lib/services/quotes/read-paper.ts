/*
 * Gives the frozen bytes of an issued paper, or of a file that went with the quote.
 * Invariant: the bytes that were stored when the quote was issued; their hash is checked before they are given out.
 * Not here: drafts (draft-paper.ts).
 * Read next: issue-quote.ts.
 */
import { findPaper, findQuote } from '#db/queries/quotes.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { sha256 } from '#lib/services/sha256.ts';
import type { DrawnPaper } from './draft-paper.ts';
import { fileForm } from './quote-files.ts';

export function readPaper(
  context: Context,
  key: { readonly quoteId: number; readonly kind: string },
): Result<DrawnPaper> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const quote = findQuote(context.database.db, key.quoteId);
  const paper = findPaper(context.database.db, key);
  if (!quote || !paper)
    return failed({
      code: 'no-such-paper',
      sentence: 'That paper was never issued; look at the list of issued quotes.',
    });
  invariant(
    sha256(paper.bytes) === paper.sha256,
    `The stored bytes of ${quote.number} ${quote.revision} ${paper.kind} do not match their hash.`,
  );
  const [kind = paper.kind] = paper.kind.split('~');
  const form = fileForm(kind);
  const { extension, mime } = form ?? PDF;
  const name = form === undefined ? kind : kind.replace(/-(xml|csv|xlsx|text)\b/, '');
  return ok({
    fileName: `${quote.number}-${quote.revision}-${name}.${extension}`,
    mime,
    bytes: paper.bytes,
  });
}

const PDF = { extension: 'pdf', mime: 'application/pdf' } as const;

/*
 * What the next revision of a quote would change against the newest issued one.
 * Invariant: both are told by the same words; nothing is compared that is not on the quote.
 * Not here: the comparison (../../documents/words/quote-changes.ts).
 * Read next: issue-quote.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { findQuote, listQuotes } from '#db/queries/quotes.ts';
import { type ComparedQuote, type QuoteChanges, quoteChanges } from '#lib/documents/words/quote-changes.ts';
import { type PapersInput, quoteOptions, validUntil } from './papers-of.ts';

/** Undefined where no quote was issued yet. */
export function revisionChanges(
  db: DbOrTx,
  { enquiryId, papers }: { readonly enquiryId: number; readonly papers: PapersInput },
): QuoteChanges | undefined {
  const [newest] = listQuotes(db, enquiryId);
  const row = newest === undefined ? undefined : findQuote(db, newest.id);
  if (row === undefined) return undefined;
  const before = JSON.parse(row.frozen_json) as PapersInput;
  const groups = quoteChanges({ before: compared(before), after: compared(papers) });
  return {
    since: `${row.number} ${row.revision}`,
    groups:
      groups.length > 0
        ? groups
        : [{ about: 'Nothing', sentences: ['Dates, equipment, price and terms are the same.'] }],
  };
}

function compared(papers: PapersInput): ComparedQuote {
  return { validUntil: validUntil(papers), options: quoteOptions(papers), terms: papers.house.terms.text };
}

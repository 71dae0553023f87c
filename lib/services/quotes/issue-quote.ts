/*
 * Issues a quote: takes the next number or revision, freezes what it was worked from, and keeps the bytes of its papers and files.
 * Invariant: quote and papers are written together; once written the database refuses to change them.
 * Not here: drafts (draft-paper.ts) and bookings.
 * Read next: enquiry-papers.ts, read-paper.ts.
 */

import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { changeEnquiry as changeRow } from '#db/queries/enquiries.ts';
import { peekNumber, takeNumber } from '#db/queries/house.ts';
import { insertPaper, insertQuote, listQuotes } from '#db/queries/quotes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { moveByDeed } from '#lib/services/enquiries/move-enquiry.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { mayQuote } from './discount-of.ts';
import { type Drawn, drawQuote } from './draw-quote.ts';
import { gatherQuote } from './enquiry-papers.ts';
import { optionInputs, type PapersInput, validUntil } from './papers-of.ts';
import { revisionChanges } from './revision-changes.ts';

export interface IssuedQuote {
  readonly id: number;
  readonly number: string;
  readonly revision: string;
  readonly total_minor: number;
  readonly currency: string;
}

export async function issueQuote(
  context: Context,
  input: { readonly enquiryId: number },
): Promise<Result<IssuedQuote>> {
  const allowed = authorise(context, 'issue quotes');
  if (!allowed.ok) return allowed;
  const next = nextNumber(context.database.db, input.enquiryId);
  const ready = readyPapers(context, { enquiryId: input.enquiryId, number: next.printed });
  if (!ready.ok) return ready;
  const papers = ready.value;
  const drawn = await drawQuote(papers);
  return context.database.db.transaction(
    (tx): Result<IssuedQuote> => {
      // Drawing took a moment: if somebody issued meanwhile the number on the papers would be wrong.
      if (nextNumber(tx, input.enquiryId).printed !== next.printed) {
        return failed({
          code: 'changed-meanwhile',
          sentence: 'Another quote was issued at the same moment; issue this one again.',
        });
      }
      return ok(write(tx, { context, enquiryId: input.enquiryId, next, papers, drawn }));
    },
    { behavior: 'immediate' },
  );
}

/** The papers with what changed since the last revision; refused while a discount waits for its approval. */
function readyPapers(
  context: Context,
  input: { readonly enquiryId: number; readonly number: string },
): Result<PapersInput> {
  const gathered = gatherQuote(context, input);
  if (!gathered.ok) return gathered;
  const { papers, discounts } = gathered.value;
  const empty = optionInputs(papers).find(isEmpty);
  if (empty !== undefined) return nothingToQuote(empty);
  for (const discount of discounts) {
    const may = mayQuote(discount);
    if (!may.ok) return may;
  }
  const changes = revisionChanges(context.database.db, { enquiryId: input.enquiryId, papers });
  return ok(changes === undefined ? papers : { ...papers, changes });
}

/** No valve is served and no line was added by hand: what is accepted would be a booking of nothing. */
function isEmpty({ outcome, choices }: PapersInput): boolean {
  return outcome.kits.every(({ pieces }) => pieces === 0) && (choices?.lines ?? []).length === 0;
}

function nothingToQuote({ option }: PapersInput): Result<never> {
  const plan = option === undefined ? 'The plan' : `The plan of option “${option.name}”`;
  return failed({
    code: 'nothing-to-quote',
    sentence: `${plan} serves no valve, so there is nothing to quote. Look under Kits for what stands in the way, or add a line of your own.`,
  });
}

interface NextNumber {
  readonly number: string;
  readonly revision: string;
  readonly printed: string;
  readonly isNew: boolean;
}

/** The first quote of an enquiry takes a number of its own; later ones are revisions B, C, … of it. */
function nextNumber(db: DbOrTx, enquiryId: number): NextNumber {
  const before = listQuotes(db, enquiryId);
  const [latest] = before;
  const number = latest?.number ?? `Q-${String(peekNumber(db, 'quote')).padStart(5, '0')}`;
  const revision = revisionName(before.length);
  return { number, revision, printed: `${number} ${revision}`, isNew: latest === undefined };
}

/** A, B … Z, AA, AB … */
function revisionName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : `${revisionName(Math.floor(index / 26) - 1)}${letter}`;
}

interface Writing {
  readonly context: Context;
  readonly enquiryId: number;
  readonly next: NextNumber;
  readonly papers: PapersInput;
  readonly drawn: readonly Drawn[];
}

function write(tx: DbOrTx, { context, enquiryId, next, papers, drawn }: Writing): IssuedQuote {
  if (next.isNew) takeNumber(tx, 'quote');
  const at = timestamp(context);
  const { price } = papers;
  const id = insertQuote(tx, {
    enquiry_id: enquiryId,
    number: next.number,
    revision: next.revision,
    state: 'issued',
    issued_on: papers.issuedOn,
    valid_until: validUntil(papers),
    total_minor: price.gross_minor,
    currency: price.currency,
    frozen_json: JSON.stringify(papers),
  });
  for (const { kind, bytes } of drawn)
    insertPaper(tx, { quote_id: id, kind, bytes, sha256: sha256(bytes), created_at: at });
  changeRow(tx, { id: enquiryId, at, set: {} });
  moveByDeed(tx, { context, enquiryId, by: 'quote issued', to: 'quoted', why: next.printed });
  addAuditEntry(tx, {
    at,
    who: context.actor,
    action: 'quote issued',
    subject: `enquiry ${enquiryId}`,
    detail_json: JSON.stringify({ number: next.printed, total_minor: price.gross_minor }),
  });
  return { id, number: next.number, revision: next.revision, total_minor: price.gross_minor, currency: price.currency };
}

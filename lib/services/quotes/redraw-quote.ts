/*
 * Draws an issued quote again from what was frozen with it, and compares every byte with what was kept.
 * Invariant: nothing is written; the kept bytes stay whatever comes out.
 * Not here: drawing (draw-quote.ts).
 * Read next: made-with.ts.
 */
import { findQuote, listPapers } from '#db/queries/quotes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { drawQuote } from './draw-quote.ts';
import { programVersion } from './made-with.ts';
import type { PapersInput } from './papers-of.ts';

export interface Redrawn {
  /** Version that drew it, and this one. */
  readonly drawnBy: string;
  readonly program: string;
  readonly papers: readonly {
    readonly kind: string;
    readonly kept: string;
    readonly answer: 'identical' | 'differs' | 'not drawn any more';
  }[];
}

export async function redrawQuote(context: Context, input: { readonly quoteId: number }): Promise<Result<Redrawn>> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const quote = findQuote(db, input.quoteId);
  if (!quote)
    return failed({
      code: 'no-such-quote',
      sentence: 'That quote was never issued; look at the list of issued quotes.',
    });
  const frozen = JSON.parse(quote.frozen_json) as PapersInput;
  const again = new Map((await drawQuote(frozen)).map(({ kind, bytes }) => [kind, sha256(bytes)]));
  const asIssued = listPapers(db, quote.id).filter(({ kind }) => !kind.includes('~'));
  return ok({
    drawnBy: frozen.made?.program ?? 'a version that did not say so',
    program: programVersion(),
    papers: asIssued.map(({ kind, sha256: kept }) => {
      const now = again.get(kind);
      return { kind, kept, answer: now === undefined ? 'not drawn any more' : now === kept ? 'identical' : 'differs' };
    }),
  });
}

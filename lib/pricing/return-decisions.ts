/*
 * The Desk's word on the charges of a return, line by line, and what they then come to with tax per category.
 * Invariant: a changed or struck line has its reason; a line that is open cannot be approved as it stands; nothing is rounded twice.
 * Not here: who may decide (services), working the charges out (return-charges.ts).
 * Read next: return-charges.ts, tax-totals.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Minor, toMinor } from '#lib/money/money.ts';
import type { ReturnLine } from './return-facts.ts';
import { type TaxCategory, type Totals, taxTotals } from './tax-totals.ts';
import { tellAmount } from './tell.ts';

export type Decision =
  | { readonly kind: 'approved' }
  | { readonly kind: 'changed'; readonly net_minor: Minor; readonly reason: string }
  | { readonly kind: 'struck'; readonly reason: string };

/** A line as it goes onto the return note. */
export interface DecidedLine extends ReturnLine {
  readonly decision: Decision['kind'];
  /** What was proposed, and why it is another amount now; empty where it is as proposed. */
  readonly remark: string;
}

export interface Deciding {
  readonly line: ReturnLine;
  readonly decision: Decision;
  readonly currency: string;
}

export function decide({ line, decision, currency }: Deciding): Result<DecidedLine> {
  if (decision.kind === 'approved') {
    const sentence = line.open === null ? null : OPEN_SENTENCES[line.open];
    if (sentence !== null) return failed({ code: `charge-open-${line.open}`, sentence: `${line.name}: ${sentence}` });
    return ok({ ...line, decision: 'approved', remark: '' });
  }
  const reason = decision.reason.trim();
  if (reason === '')
    return failed({ code: 'charge-reason-missing', sentence: 'Say why the charge is not taken as it was worked out.' });
  const net = decision.kind === 'struck' ? toMinor(0) : decision.net_minor;
  if (decision.kind === 'changed' && net !== 0 && line.net_minor !== 0 && Math.sign(net) !== Math.sign(line.net_minor))
    return failed({
      code: 'charge-turned',
      sentence: 'A charge stays a charge and a credit stays a credit; strike it if it should not stand.',
    });
  const proposed = tellAmount({ minor: line.net_minor, currency });
  return ok({
    ...line,
    quantity: net < 0 ? -1 : 1,
    unit_minor: toMinor(Math.abs(net)),
    net_minor: net,
    open: null,
    decision: decision.kind,
    remark: `${decision.kind === 'struck' ? `Not charged; ${proposed} was worked out` : `${proposed} was worked out`}: ${reason}`,
  });
}

const OPEN_SENTENCES = {
  cause: 'say first how it happened, because that decides whether the damage waiver covers it.',
  price: 'type a price first, or strike it.',
} as const;

export interface DecidedReturn extends Totals {
  readonly currency: string;
  readonly lines: readonly DecidedLine[];
}

export function totalReturn({
  lines,
  currency,
  categories,
}: {
  readonly lines: readonly DecidedLine[];
  readonly currency: string;
  readonly categories: readonly TaxCategory[];
}): DecidedReturn {
  return { currency, lines, ...taxTotals({ lines, categories }) };
}

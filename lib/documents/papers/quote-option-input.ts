/*
 * What a quote says of one option: where and when, its lines, kits and price, how it is paid.
 * Invariant: options of one quote share the schedule, the house and the customer; each has its own plan.
 * Not here: what is said once for all of them (quote-paper.ts).
 * Read next: quote-paper.ts.
 */
import type { KitInput, PaperContext, PaperLine, PriceInput, UnservedLine } from './paper-inputs.ts';

export interface QuoteOptionInput {
  readonly context: PaperContext;
  /** Absent where the quote has no other option. */
  readonly name?: string;
  readonly lines: readonly PaperLine[];
  readonly unserved: readonly UnservedLine[];
  readonly kits: readonly KitInput[];
  readonly price: PriceInput;
  /** Whole sentences on deposit, account and order number. */
  readonly payment?: readonly string[];
  /** One sentence: which preference the plan follows and what was proven. */
  readonly planSentence: string;
}

export function optionTitle({ name }: QuoteOptionInput, index: number): string {
  return `Option ${index + 1}: ${name ?? 'as asked'}`;
}

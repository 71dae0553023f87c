/*
 * Gathers what the papers of an enquiry need from the newest current plans of its options.
 * Invariant: papers are never made of a plan that no longer matches the enquiry, and never of some options without the others.
 * Not here: drawing and keeping them (draft-paper.ts, issue-quote.ts).
 * Read next: papers-of.ts, option-price.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { type DiscountOf, discountOf } from './discount-of.ts';
import { programVersion, rulesAsked } from './made-with.ts';
import { type OptionPrice, optionPrice } from './option-price.ts';
import { readOptions } from './option-record.ts';
import type { OtherOption, PapersInput } from './papers-of.ts';

/** Papers, and how the discount of each option stands. */
export interface GatheredPapers {
  readonly papers: PapersInput;
  readonly discounts: readonly DiscountOf[];
}

interface Gathering {
  readonly enquiryId: number;
  readonly number: string;
}

export function gatherPapers(context: Context, input: Gathering): Result<PapersInput> {
  const gathered = gatherQuote(context, input);
  return gathered.ok ? ok(gathered.value.papers) : gathered;
}

export function gatherQuote(context: Context, { enquiryId, number }: Gathering): Result<GatheredPapers> {
  const parts: Part[] = [];
  const options = readOptions(context, enquiryId);
  for (const { slot, choices } of options) {
    const option = optionPrice(context, { enquiryId, slot });
    if (!option.ok) return option;
    const part = currentPart(option.value);
    if (part === undefined) return notCurrent(options.length === 1 ? null : choices.name);
    parts.push(part);
  }
  const [first, ...others] = parts;
  if (first === undefined) return notCurrent(null);
  const { enquiry, input } = first.option;
  const discounts = parts.map(({ option, planned }) =>
    discountOf(context, { enquiryId, slot: option.option.slot, price: planned.price }),
  );
  const papers: PapersInput = {
    number,
    issuedOn: today(context),
    system: enquiry.paperUnits,
    ...(enquiry.customer.forms === null ? {} : { forms: enquiry.customer.forms }),
    ...(enquiry.customer.language === 'en' ? {} : { language: enquiry.customer.language }),
    ...(first.option.exchange === null ? {} : { exchange: first.option.exchange }),
    house: houseFacts(context, enquiry.site.startsOn),
    customer: enquiry.customer.onPapers,
    title: enquiry.row.title,
    models: input.models,
    lines: input.lines,
    serials: {},
    ...asOther(first, parts.length),
    ...(others.length === 0 ? {} : { others: others.map((part) => asOther(part, parts.length)) }),
    made: { program: programVersion(), rules: rulesAsked(), approvals: discounts.flatMap(approvedIn) },
  };
  return ok({ papers, discounts });
}

interface Part {
  readonly option: OptionPrice;
  readonly planned: NonNullable<OptionPrice['planned']>;
}

function currentPart(option: OptionPrice): Part | undefined {
  const { state, planned } = option;
  return state.kind === 'ready' && state.current && planned !== null ? { option, planned } : undefined;
}

function asOther({ option, planned }: Part, count: number): OtherOption {
  const { slot, choices } = option.option;
  return {
    site: option.enquiry.site,
    worked: planned.worked,
    outcome: planned.outcome,
    price: planned.price,
    choices,
    payment: planned.payment,
    ...(count === 1 ? {} : { option: { slot, name: choices.name } }),
  };
}

function approvedIn({ standing, approvals }: DiscountOf) {
  if (standing.kind !== 'approved') return [];
  return approvals
    .filter(({ id }) => id === standing.approvalId)
    .map(({ about, askedBy, decidedBy, decidedAt }) => ({
      about,
      askedBy: askedBy.name,
      approvedBy: decidedBy,
      at: decidedAt,
    }));
}

function notCurrent(option: string | null): Result<never> {
  return failed({
    code: 'plan-not-current',
    sentence:
      option === null
        ? 'The enquiry has no plan that matches it as it stands now: open Kits and plan it first.'
        : `The option “${option}” has no plan that matches it as it stands now: plan it first, or take it out.`,
  });
}

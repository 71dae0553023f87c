/*
 * Gathers what the papers of an enquiry need from its newest current plan.
 * Invariant: papers are never made of a plan that no longer matches the enquiry.
 * Not here: drawing and keeping them (draft-paper.ts, issue-quote.ts).
 * Read next: papers-of.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type Context, today } from './context.ts';
import { houseFacts } from './house-facts.ts';
import type { PapersInput } from './papers-of.ts';
import { planStateOf, prepareInput, readPlan } from './plan-enquiry.ts';
import { priceOutcome } from './price-outcome.ts';

export function gatherPapers(
  context: Context,
  input: { readonly enquiryId: number; readonly number: string },
): Result<PapersInput> {
  const prepared = prepareInput(context, input.enquiryId);
  if (!prepared.ok) return prepared;
  const { enquiry, input: worked, hash } = prepared.value;
  const state = planStateOf(context, { enquiryId: input.enquiryId, hash });
  const plan = readPlan(context, input.enquiryId);
  if (state.kind !== 'ready' || !state.current || !plan) {
    return failed({
      code: 'plan-not-current',
      sentence: 'The enquiry has no plan that matches it as it stands now: open Kits and plan it first.',
    });
  }
  const outcome = plan.plans.find(({ preference }) => preference === enquiry.preference) ?? plan.plans[0];
  if (!outcome)
    return failed({ code: 'plan-not-current', sentence: 'The plan holds no kits: plan the enquiry again.' });
  const house = houseFacts(context, enquiry.site.startsOn);
  return ok({
    number: input.number,
    issuedOn: today(context),
    system: enquiry.paperUnits,
    house,
    customer: enquiry.customer.onPapers,
    title: enquiry.row.title,
    site: enquiry.site,
    models: worked.models,
    lines: worked.lines,
    worked: plan,
    outcome,
    price: priceOutcome({
      house,
      models: worked.models,
      site: enquiry.site,
      outcome,
      agreed: enquiry.customer.terms,
    }),
    serials: {},
  });
}

/*
 * Gathers what the papers of an enquiry need from its newest current plan.
 * Invariant: papers are never made of a plan that no longer matches the enquiry.
 * Not here: drawing and keeping them (draft-paper.ts, issue-quote.ts).
 * Read next: papers-of.ts.
 */
import { findCustomer } from '#db/queries/customers.ts';
import { customerSchema } from '#lib/contracts/customer.ts';
import type { CustomerInput } from '#lib/documents/paper-inputs.ts';
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
  const house = houseFacts(context);
  return ok({
    number: input.number,
    issuedOn: today(context),
    house,
    customer: customerInput(context, enquiry.customer),
    title: enquiry.row.title,
    site: enquiry.site,
    models: worked.models,
    lines: worked.lines,
    worked: plan,
    outcome,
    price: priceOutcome({ house, models: worked.models, site: enquiry.site, outcome }),
    serials: {},
  });
}

function customerInput(context: Context, customer: { readonly id: number; readonly name: string }): CustomerInput {
  const row = findCustomer(context.database.db, customer.id);
  const facts = customerSchema.safeParse(JSON.parse(row?.facts_json ?? '{}'));
  if (!facts.success) return { name: customer.name, address: [] };
  return { name: facts.data.name, contact: facts.data.contact, address: facts.data.address };
}

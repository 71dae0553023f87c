/*
 * One option of an enquiry's quote with its newest plan, whether that still matches, what it comes to and how it is paid.
 * Invariant: a price is worked out anew from the plan, the house's terms and the choices each time it is asked for.
 * Not here: planning (plan-enquiry.ts).
 * Read next: price-outcome.ts, discount-of.ts.
 */
import type { OptionKey } from '#db/queries/quote-options.ts';
import type { HouseFacts } from '#lib/contracts/house.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import type { Exchange } from '#lib/money/exchange.ts';
import type { PlanOutcome, WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';
import { type PaymentTerms, paymentTerms } from '#lib/pricing/payment-terms.ts';
import type { PricedPlan } from '#lib/pricing/priced-plan.ts';
import type { Context } from '#lib/services/context.ts';
import type { CustomerTerms } from '#lib/services/customers/customer-facts.ts';
import type { EnquiryRecord } from '#lib/services/enquiries/enquiry-record.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { type PlanState, planStateOf, prepareInput, readPlan } from '#lib/services/plans/plan-enquiry.ts';
import { type OptionRecord, readOption } from './option-record.ts';
import { priceOutcome } from './price-outcome.ts';
import { choicesTurnedOver, quotedExchange } from './quote-currency.ts';

export interface OptionPrice {
  readonly option: OptionRecord;
  /** As this option asks it. */
  readonly enquiry: EnquiryRecord;
  readonly input: WorkOutInput;
  readonly state: PlanState;
  /** Null where the house's own currency is quoted. */
  readonly exchange: Exchange | null;
  /** Null until there is a plan. */
  readonly planned: {
    readonly worked: WorkedOut;
    readonly outcome: PlanOutcome;
    readonly price: PricedPlan;
    readonly payment: PaymentTerms;
  } | null;
}

export function optionPrice(context: Context, key: OptionKey): Result<OptionPrice> {
  const prepared = prepareInput(context, key);
  if (!prepared.ok) return prepared;
  const { enquiry, input, hash } = prepared.value;
  const stored = readOption(context, key);
  const worked = readPlan(context, key);
  const outcome = worked?.plans.find(({ preference }) => preference === enquiry.preference) ?? worked?.plans[0];
  const state = planStateOf(context, { ...key, hash });
  invariant(stored !== undefined, 'An option that was prepared is there.');
  const house = houseFacts(context, enquiry.site.startsOn);
  const exchange = quotedExchange(house, enquiry.customer.currency);
  const choices = choicesTurnedOver(stored.choices, { house, to: exchange?.to ?? house.pricing.currency });
  if (!choices.ok) return choices;
  const option = { ...stored, choices: choices.value };
  if (worked === undefined || outcome === undefined) {
    return ok({ option, enquiry, input, state, exchange, planned: null });
  }
  const agreed = enquiry.customer.terms;
  const price = priceOutcome({
    house,
    // An older plan may hold models that were retired since.
    models: knownModels(context, enquiry.site.startsOn),
    site: enquiry.site,
    outcome,
    agreed,
    choices: option.choices,
    exchange,
  });
  return ok({
    option,
    enquiry,
    input,
    state,
    exchange,
    planned: { worked, outcome, price, payment: paymentOf({ house, agreed, price }) },
  });
}

interface Paying {
  readonly house: HouseFacts;
  readonly agreed: CustomerTerms;
  readonly price: PricedPlan;
}

function paymentOf({ house, agreed, price }: Paying): PaymentTerms {
  return paymentTerms({
    price,
    deposit: agreed.account === 'new' ? house.deposit : null,
    paymentDays: agreed.paymentDays ?? house.terms.paymentDays,
    orderNumber: agreed.orderNumber,
  });
}

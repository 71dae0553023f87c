/*
 * How a quote is paid: on account or with a deposit, within how many days, and whether an order number is asked for.
 * Invariant: what is due before despatch is part of the total, never on top of it.
 * Not here: what is agreed with a customer (lib/services/customers/customer-facts.ts).
 * Read next: price-plan.ts.
 */
import type { PricedPlan } from './priced-plan.ts';
import { tellAmount } from './tell.ts';
import type { DepositTerms } from './terms.ts';

export interface PaymentQuestion {
  readonly price: Pick<PricedPlan, 'currency' | 'gross_minor' | 'deposit_minor'>;
  /** Null where the customer has an account. */
  readonly deposit: DepositTerms | null;
  readonly paymentDays: number;
  readonly orderNumber: 'asked for' | 'not asked for';
}

export interface PaymentTerms {
  readonly kind: 'on account' | 'deposit';
  readonly orderNumber: 'asked for' | 'not asked for';
  /** Whole sentences, as they stand on the quote. */
  readonly sentences: readonly string[];
}

export function paymentTerms({ price, deposit, paymentDays, orderNumber }: PaymentQuestion): PaymentTerms {
  const due = paymentDays === 0 ? 'on receipt of the invoice' : `within ${paymentDays} days of the invoice`;
  const tell = (minor: number) => tellAmount({ minor, currency: price.currency });
  const order = orderNumber === 'asked for' ? ['We need your order number with the acceptance.'] : [];
  if (deposit === null || price.deposit_minor === 0) {
    return {
      kind: 'on account',
      orderNumber,
      sentences: [`On account: ${tell(price.gross_minor)} is payable ${due}.`, ...order],
    };
  }
  const rest = price.gross_minor - price.deposit_minor;
  return {
    kind: 'deposit',
    orderNumber,
    sentences: [
      `A deposit of ${deposit.percentOfGross} %, ${tell(price.deposit_minor)}, is due with the order and before despatch: ${deposit.reason}.`,
      `The rest, ${tell(rest)}, is payable ${due}.`,
      ...order,
    ],
  };
}

/*
 * The words to paste into a mail that sends a quote.
 * Invariant: price, dates and what is not served are those of the quote; the cautions are pointed to, never softened.
 * Not here: sending mail.
 * Read next: quote-paper.ts.
 */
import type { PaperContext } from './paper-inputs.ts';
import { countText, dateText, moneyText, windowText } from './print-values.ts';

export interface MailInput {
  readonly context: PaperContext;
  readonly validUntil: string;
  readonly currency: string;
  readonly gross_minor: number;
  readonly deposit_minor: number;
  /** Valves of the schedule, and those of them that are not served. */
  readonly valves: number;
  readonly unserved: number;
  /** Values that were assumed and are listed on the quote. */
  readonly assumed: number;
}

export function mailText(input: MailInput): string {
  const { context, currency } = input;
  const { house, customer, site } = context;
  const served = input.valves - input.unserved;
  return [
    `Subject: Quote ${context.number}, ${site.name}`,
    '',
    `${customer.contact === undefined ? 'Good day' : `Dear ${customer.contact}`},`,
    '',
    `with this mail you receive our quote ${context.number} for portable powered valve operators at ${site.name}, ${windowText(site.window)}.`,
    '',
    `It serves ${served} of the ${countText(input.valves, 'valve')} on your schedule.${
      input.unserved === 0
        ? ''
        : ` ${countText(input.unserved, 'valve')} ${input.unserved === 1 ? 'is' : 'are'} not served; the quote says why, and what would change it.`
    }`,
    `The total with tax is ${currency} ${moneyText(input.gross_minor, currency)}; the quote holds until ${dateText(input.validUntil)}.`,
    ...(input.deposit_minor > 0
      ? [`A deposit of ${currency} ${moneyText(input.deposit_minor, currency)} is due with the order.`]
      : []),
    '',
    ...(input.assumed > 0
      ? [
          `${countText(input.assumed, 'value')} had to be assumed, because the list does not say; please read them on the quote. Each one that you can measure makes the kit surer.`,
          '',
        ]
      : []),
    'Please read the cautions too: all torques, turns and times are estimates until they are measured at the valve, and the rules of the place and the valve maker’s data come first.',
    '',
    'To order, send the signed acceptance with your order number.',
    '',
    'Kind regards',
    '',
    house.name,
    ...(house.phone === undefined ? [] : [house.phone]),
    ...(house.email === undefined ? [] : [house.email]),
    '',
  ].join('\n');
}

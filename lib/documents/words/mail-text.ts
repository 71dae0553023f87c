/*
 * The words to paste into a mail that sends a quote.
 * Invariant: price, dates and what is not served are those of the quote; the cautions are pointed to, never softened.
 * Not here: sending mail.
 * Read next: ../papers/quote-paper.ts.
 */
import type { PaperContext } from '#lib/documents/papers/paper-inputs.ts';
import { countText, dateText, moneyText, windowText } from './print-values.ts';

export interface MailInput {
  readonly context: PaperContext;
  readonly validUntil: string;
  readonly currency: string;
  readonly gross_minor: number;
  readonly deposit_minor: number;
  /** Titles and totals where the quote offers several; the figures above are then those of the first. */
  readonly options?: readonly { readonly title: string; readonly gross_minor: number }[];
  readonly orderNumber?: 'asked for' | 'not asked for';
  /** Number and revision that this one takes the place of. */
  readonly since?: string;
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
    ...priceWords(input),
    ...(input.since === undefined
      ? []
      : [`It takes the place of ${input.since}; what changed is told on its first page.`]),
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
    orderWords(input),
    '',
    'Kind regards',
    '',
    house.name,
    ...(house.phone === undefined ? [] : [house.phone]),
    ...(house.email === undefined ? [] : [house.email]),
    '',
  ].join('\n');
}

function priceWords({ currency, gross_minor, validUntil, options = [] }: MailInput): readonly string[] {
  const until = `the quote holds until ${dateText(validUntil)}.`;
  if (options.length <= 1) return [`The total with tax is ${currency} ${moneyText(gross_minor, currency)}; ${until}`];
  return [
    `It offers ${options.length} options, of which you order one:`,
    ...options.map((option) => `- ${option.title}: ${currency} ${moneyText(option.gross_minor, currency)} with tax`),
    `Each total is for that option alone; ${until}`,
  ];
}

function orderWords({ options = [], orderNumber }: MailInput): string {
  const which = options.length > 1 ? ', name the option,' : '';
  if (orderNumber === 'asked for')
    return `To order, send the signed acceptance${which} with your order number, which we need.`;
  return `To order, send the signed acceptance${which} with your order number.`;
}

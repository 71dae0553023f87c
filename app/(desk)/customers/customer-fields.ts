/** What is typed of a customer; the keys are those of its facts. */
export interface CustomerField {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly kind: 'text' | 'number' | 'lines' | 'date' | 'choice';
  /** Value and words. */
  readonly choices?: readonly (readonly [value: string, words: string])[];
}

export interface CustomerGroup {
  readonly title: string;
  readonly fields: readonly CustomerField[];
}

const OPEN = ['', 'as the house has it'] as const;

const WHERE: CustomerGroup = {
  title: 'Where papers go',
  fields: [
    { key: 'address', label: 'Address', help: 'One line under the other.', kind: 'lines' },
    { key: 'contact', label: 'For the attention of', help: 'A person or a desk, as papers name it.', kind: 'text' },
    { key: 'email', label: 'Mail', help: 'For quotes.', kind: 'text' },
    { key: 'telephone', label: 'Telephone', help: 'The switchboard.', kind: 'text' },
    { key: 'since', label: 'Customer since', help: 'The first day.', kind: 'date' },
  ],
};

const PRINT: CustomerGroup = {
  title: 'How figures are shown to them',
  fields: [
    {
      key: 'units',
      label: 'Units on papers',
      help: 'New enquiries begin with it.',
      kind: 'choice',
      choices: [OPEN, ['si', 'SI'], ['us', 'US customary']],
    },
    {
      key: 'currency',
      label: 'Currency of quotes',
      help: 'A code of ISO 4217, such as USD. It takes an exchange rate under House; without one the house’s own is quoted.',
      kind: 'text',
    },
    {
      key: 'date_format',
      label: 'Dates',
      help: 'As they write the second of March; papers and mails to them follow it.',
      kind: 'choice',
      choices: [OPEN, ...['2 Mar 2026', '2026-03-02', '02.03.2026', '03/02/2026'].map((form) => [form, form] as const)],
    },
    {
      key: 'number_format',
      label: 'Numbers',
      help: 'How they part thousands and tenths, on papers and mails to them.',
      kind: 'choice',
      choices: [OPEN, ...['1 234.5', '1 234,5', '1,234.5', '1.234,5'].map((form) => [form, form] as const)],
    },
    {
      key: 'language',
      label: 'Language',
      help: 'A tag such as en, de or pt-BR, for whoever writes to them. Quotes, site sheets and return notes are drawn in German for de, in English for all others.',
      kind: 'text',
    },
  ],
};

export function customerGroups(
  bands: readonly { readonly id: string; readonly name: string }[],
): readonly CustomerGroup[] {
  const terms: CustomerGroup = {
    title: 'Terms agreed',
    fields: [
      {
        key: 'account',
        label: 'Account',
        help: 'A new account pays a deposit before despatch.',
        kind: 'choice',
        choices: [
          ['new', 'new: pays a deposit'],
          ['credit', 'credit'],
        ],
      },
      { key: 'payment_days', label: 'Days to pay', help: 'Open: as the house has it.', kind: 'number' },
      {
        key: 'delivery_band',
        label: 'Delivery band',
        help: 'Open: the first band is assumed, and the price says so.',
        kind: 'choice',
        choices: [['', 'none agreed'], ...bands.map(({ id, name }) => [id, name] as const)],
      },
      {
        key: 'discount_percent',
        label: 'Discount agreed, percent',
        help: 'Told where a discount is given.',
        kind: 'number',
      },
      {
        key: 'order_number',
        label: 'Purchase order number',
        help: 'Whether they accept nothing without one.',
        kind: 'choice',
        choices: [
          ['not asked for', 'not asked for'],
          ['asked for', 'asked for before despatch'],
        ],
      },
      { key: 'note', label: 'Note on terms', help: 'For the Desk; it is not printed.', kind: 'lines' },
    ],
  };
  return [WHERE, terms, PRINT];
}

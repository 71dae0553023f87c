import { describe, expect, it } from 'vitest';
import type { QuoteOptionInput } from '#lib/documents/papers/quote-option-input.ts';
import { type ComparedQuote, quoteChanges } from '#lib/documents/words/quote-changes.ts';
import { SAMPLE_QUOTE } from '#tests/support/papers/sample-plan.ts';

const BEFORE: ComparedQuote = {
  validUntil: SAMPLE_QUOTE.validUntil,
  options: [SAMPLE_QUOTE],
  terms: SAMPLE_QUOTE.terms,
};

function changed(option: Partial<QuoteOptionInput>, quote: Partial<ComparedQuote> = {}) {
  return quoteChanges({ before: BEFORE, after: { ...BEFORE, ...quote, options: [{ ...SAMPLE_QUOTE, ...option }] } });
}

describe('what changed since the last revision', () => {
  it('is nothing between two equal quotes', () => {
    expect(quoteChanges({ before: BEFORE, after: structuredClone(BEFORE) })).toEqual([]);
  });

  it('tells dates, crews and facts of the site', () => {
    const { context } = SAMPLE_QUOTE;
    const site = {
      ...context.site,
      crews: 3,
      facts: ['Zone 2'],
      window: { starts_on: '2031-03-24', ends_before: '2031-03-27' },
    };
    expect(changed({ context: { ...context, site } })[0]).toMatchObject({
      about: 'Dates and site',
      sentences: expect.arrayContaining([
        'Dates: 24 March 2031 to 26 March 2031 (3 days) in place of 17 March 2031 to 21 March 2031 (5 days).',
        `Crews: 3 in place of ${context.site.crews}.`,
        'Now: Zone 2.',
      ]),
    });
  });

  it('tells equipment that is added, gone, or there in another number, over all crews', () => {
    const [first, ...others] = SAMPLE_QUOTE.kits;
    const [one, two, ...items] = first?.items ?? [];
    if (!first || !one || !two) throw new Error('The sample has a kit of two items.');
    const kit = { ...first, items: [{ ...one, count: one.count + 2 }, { number: 'NEW-1', count: 1 }, ...items] };
    const told = changed({ kits: [kit, ...others] }).find(({ about }) => about === 'Equipment')?.sentences ?? [];
    expect(told).toHaveLength(3);
    expect(told.join(' ')).toMatch(/: \d+ in place of \d+\..*Added: 1 × NEW-1 \(NEW-1\)\./);
  });

  it('tells price lines and the total with both amounts', () => {
    const { price } = SAMPLE_QUOTE;
    const [line, ...lines] = price.lines;
    if (!line) throw new Error('The sample has priced lines.');
    const next = {
      ...price,
      lines: [...lines, { label: 'Training', how: '', quantity: 1, amount_minor: 48_000, taxCategory: 'S' }],
      total_minor: price.total_minor + 100,
      deposit_minor: 5000,
    };
    expect(changed({ price: next })).toEqual([
      {
        about: 'Price',
        sentences: [
          `Gone: ${line.label}, which was 168.00.`,
          'Added: Training, 480.00.',
          'Total to pay: EUR 23 790.68 in place of EUR 23 789.68.',
          'Deposit: 50.00 in place of 5 000.00.',
        ],
      },
    ]);
  });

  it('tells valves that are added, gone, or asked for in another number', () => {
    const [first, ...lines] = SAMPLE_QUOTE.lines;
    if (!first) throw new Error('The sample has lines.');
    const more = { ...first, line: { ...first.line, qty: first.line.qty + 4 } };
    const told = changed({ lines: [more, ...lines] }).find(({ about }) => about === 'Valves');
    expect(told?.sentences[0]).toContain(`${first.line.tag}: valves `);
    const gone = changed({ lines }).find(({ about }) => about === 'Valves');
    expect(gone?.sentences.join(' ')).toContain(first.line.tag);
  });

  it('tells terms, and options that are offered too or no longer', () => {
    const option = { ...SAMPLE_QUOTE, name: 'Air kit' };
    const two = quoteChanges({
      before: BEFORE,
      after: { ...BEFORE, options: [SAMPLE_QUOTE, option], terms: ['Only this.'] },
    });
    expect(two[0]?.sentences).toEqual(['“Air kit” is offered too, at EUR 23 789.68.']);
    expect(two.at(-1)?.sentences[0]).toBe('Now: Only this.');
    const one = quoteChanges({ before: { ...BEFORE, options: [SAMPLE_QUOTE, option] }, after: BEFORE });
    expect(one).toEqual([{ about: 'Options', sentences: ['“Air kit” is offered no longer.'] }]);
  });
});

import { describe, expect, it } from 'vitest';
import { rewritten } from '#lib/documents/papers/paper-forms.ts';
import type { Context } from '#lib/services/context.ts';
import { openCustomer } from '#lib/services/customers/open-customer.ts';
import { changeCustomer } from '#lib/services/customers/save-customer.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { gatherPapers } from '#lib/services/quotes/enquiry-papers.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { paperNames } from '#lib/services/quotes/paper-names.ts';
import { type PapersInput, paperOf } from '#lib/services/quotes/papers-of.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { redrawQuote } from '#lib/services/quotes/redraw-quote.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';

const STOP_WORDS =
  /\b(the|and|with|must|which|from|without|before|after|your|this|that|these|not|only|never|until|valves?|wheel|torque|turns)\b/i;

function speaks(context: Context, { enquiryId, language }: { enquiryId: number; language: string | null }): void {
  const customerId = granted(openEnquiry(context, enquiryId)).customer.id;
  const { version } = granted(openCustomer(context, customerId));
  granted(changeCustomer(context, { customerId, version, facts: { language } }));
}

const drafts = (context: Context, enquiryId: number): PapersInput =>
  granted(gatherPapers(context, { enquiryId, number: 'Draft' }));

/** All that is said, of pictures their description, in which no words are parted at the ends of lines. */
function wordsOf(papers: PapersInput, kind: 'quote' | 'site-sheet'): readonly string[] {
  const said: string[] = [];
  const paper = paperOf(kind, papers);
  const blocks = paper.blocks.map((block) =>
    block.kind === 'drawing' ? { ...block, drawing: { ...block.drawing, shapes: [] } } : block,
  );
  rewritten({ ...paper, blocks }, (words) => {
    said.push(words);
    return words;
  });
  return said;
}

/** What a customer, a site or a house wrote in its own words and nobody worded in German. */
function ownWords(papers: PapersInput): readonly string[] {
  return [
    ...paperNames(papers),
    ...papers.site.houseRules.map(({ sentence }) => sentence),
    ...papers.lines.flatMap(({ place }) => place.surfaceBox?.value ?? []),
  ].toSorted((a, b) => b.length - a.length);
}

const numbersIn = (said: readonly string[]): readonly string[] =>
  said.flatMap((words) => words.match(/\d+/g) ?? []).toSorted((a, b) => a.localeCompare(b));

describe('papers in German', () => {
  it('say the same as the English ones, without English, and are frozen with the quote', async () => {
    const context = await demoHouseContext();
    const all = { sentences: 0, english: [] as string[] };
    for (const enquiryId of [1, 2, 3, 4, 5, 6, 7]) {
      granted(startPlan(context, enquiryId));
      granted(await awaitPlan(context, enquiryId));
      const english = drafts(context, enquiryId);
      expect(english).not.toHaveProperty('language');
      speaks(context, { enquiryId, language: 'de-AT' });
      const german = drafts(context, enquiryId);
      expect(german.language).toBe('de');
      expect(german.forms).toEqual({ dates: 'day-month-year', numbers: 'space-comma', commas: 'rewritten' });
      const names = ownWords(german);
      for (const kind of ['quote', 'site-sheet'] as const) {
        const said = wordsOf(german, kind);
        all.sentences += said.length;
        const bare = withoutNames(said, names);
        all.english.push(
          ...bare.map((words) => words.replace(/„[^“]*“/g, '')).filter((words) => STOP_WORDS.test(words)),
        );
        const inForm = { ...english, ...(german.forms === undefined ? {} : { forms: german.forms }) };
        expect(numbersIn(bare).length).toBeGreaterThan(100);
        expect(numbersIn(bare)).toEqual(numbersIn(withoutNames(wordsOf(inForm, kind), names)));
      }
    }
    console.info(`${all.sentences} texts of quotes and site sheets told in German`);
    expect(all.english).toEqual([]);
  }, 600_000);

  it('stay as they were issued when the customer’s language changes', async () => {
    const context = await demoHouseContext();
    const enquiryId = 7;
    granted(startPlan(context, enquiryId));
    granted(await awaitPlan(context, enquiryId));
    const first = granted(await issueQuote(context, { enquiryId }));
    speaks(context, { enquiryId, language: 'de' });
    const second = granted(await issueQuote(context, { enquiryId }));
    speaks(context, { enquiryId, language: 'pt-BR' });
    expect(drafts(context, enquiryId)).not.toHaveProperty('language');
    const [was, is] = await Promise.all(
      [first, second].map(
        async ({ id }) => readPdf(granted(readPaper(context, { quoteId: id, kind: 'quote' })).bytes).text,
      ),
    );
    expect(was).toContain('What was assumed');
    expect(is).toContain('Was angenommen wurde');
    expect(is).toMatch(/Seite 1 von \d/);
    for (const quote of [first, second]) {
      const { papers: again } = granted(await redrawQuote(context, { quoteId: quote.id }));
      expect(again.map(({ answer }) => answer)).toEqual(again.map(() => 'identical'));
    }
  }, 240_000);
});

function withoutNames(said: readonly string[], names: readonly string[]): readonly string[] {
  return said.map((words) => names.reduce((text, name) => text.replaceAll(name, ''), words));
}

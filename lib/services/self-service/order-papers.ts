/*
 * Papers of an order: the frozen quote as the house issued it, and its summary in the language of the reader.
 * Invariant: both speak of the same frozen quote; the summary adds no figure of its own.
 * Not here: the house's other papers, which go with a booking.
 * Read next: ../quotes/read-paper.ts.
 */
import { bookingOfQuote } from '#db/queries/bookings.ts';
import { findQuote, listQuotes } from '#db/queries/quotes.ts';
import type { Block, Paper } from '#lib/documents/papers/paper.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import type { DrawnPaper } from '#lib/services/quotes/draft-paper.ts';
import { type PapersInput, validUntil } from '#lib/services/quotes/papers-of.ts';
import { readPaper } from '#lib/services/quotes/read-paper.ts';
import { amountIn, dayIn, durationIn } from '#lib/wording/forms.ts';
import type { Language } from '#lib/wording/language.ts';
import { say } from '#lib/wording/wording.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { isHirePaper, readHirePaper } from './hire-papers.ts';
import { type LinkAsked, openOrder } from './open-link.ts';

export interface OrderPaperAsked extends LinkAsked {
  readonly kind: string;
  readonly language: Language;
}

export async function readOrderPaper(context: Context, asked: OrderPaperAsked): Promise<Result<DrawnPaper>> {
  const allowed = authorise(context, 'use self-service');
  if (!allowed.ok) return allowed;
  const opened = openOrder(context, asked);
  if (!opened.ok) return opened;
  const { order, desk } = opened.value;
  if (isHirePaper(asked.kind)) return readHirePaper(desk, { enquiryId: order.enquiry_id, kind: asked.kind });
  const { db } = context.database;
  const quotes = listQuotes(db, opened.value.order.enquiry_id);
  const shown = quotes.find(({ id }) => bookingOfQuote(db, id) !== undefined) ?? quotes[0];
  const quote = shown === undefined ? undefined : findQuote(db, shown.id);
  if (quote === undefined) return failed({ code: 'no-such-paper', sentence: 'There is no quote for this order yet.' });
  if (asked.kind === 'quote') return readPaper(opened.value.desk, { quoteId: quote.id, kind: 'quote' });
  if (asked.kind !== 'summary') return failed({ code: 'no-such-paper', sentence: 'There is no paper of that name.' });
  const papers = JSON.parse(quote.frozen_json) as PapersInput;
  const bytes = await drawPaper(summaryPaper(papers, asked.language));
  return ok({ fileName: `${quote.number}-${quote.revision}-${asked.language}.pdf`, mime: 'application/pdf', bytes });
}

/** What comes, for which valves, what it costs and what to mind, on a page. */
export function summaryPaper(papers: PapersInput, language: Language): Paper {
  const { house, customer, site, price } = papers;
  const amount = (amount_minor: number): string =>
    `${amountIn(language, { amount_minor, currency: price.currency })} ${price.currency}`;
  return {
    kind: 'quote',
    title: say(language, 'paper.title'),
    number: papers.number,
    fixedAt: papers.issuedOn,
    house: { name: house.name, lines: [...house.address, house.telephone, house.email] },
    to: [customer.name, ...(customer.contact === undefined ? [] : [customer.contact]), ...customer.address],
    facts: [
      { label: say(language, 'start.when'), value: dayIn(language, site.startsOn) },
      { label: say(language, 'start.days'), value: String(site.days) },
      { label: say(language, 'price.gross'), value: amount(price.gross_minor) },
    ],
    foot: say(language, 'paper.foot'),
    pageWords: say(language, 'paper.page', { page: '{page}', pages: '{pages}' }),
    blocks: [
      {
        kind: 'text',
        tone: 'strong',
        text: say(language, 'quote.valid', { date: dayIn(language, validUntil(papers)) }),
      },
      ...valveBlocks(papers, language),
      ...kitBlocks(papers, language),
      ...priceBlocks(papers, { language, amount }),
      cautionBlock(language),
      { kind: 'text', tone: 'muted', text: say(language, 'paper.binding', { quote: papers.number }) },
    ],
  };
}

function valveBlocks({ lines, worked, outcome }: PapersInput, language: Language): readonly Block[] {
  const duties = new Map(worked.duties.map((duty) => [duty.tag, duty]));
  const rows = lines.map((line) => {
    const duty = duties.get(line.tag);
    invariant(duty !== undefined, `The quote has no duty of ${line.tag}.`);
    const part = outcome.lines.find(({ tag }) => tag === line.tag)?.parts[0];
    const assembly = part === undefined ? undefined : outcome.assemblies[part.assembly];
    const times = assembly === undefined ? [] : [assembly.opening.strokeTime, assembly.closing.strokeTime];
    const worse = duty.closing.starting.high > duty.opening.starting.high ? duty.closing : duty.opening;
    return {
      cells: [
        line.tag,
        String(line.qty),
        `${Math.round(worse.starting.low)}–${Math.round(worse.starting.high)}`,
        String(Math.floor(worse.neverExceed.torque.low)),
        times.length === 0 ? '' : durationIn(Math.max(...times.map(({ high }) => high))),
      ],
    };
  });
  const head = ['paper.valve', 'paper.pieces', 'paper.start', 'paper.never', 'paper.stroke'] as const;
  return [
    { kind: 'heading', level: 1, text: say(language, 'order.valves') },
    {
      kind: 'table',
      columns: head.map((key, index) => ({
        label: say(language, key),
        share: index === 0 ? 3 : 2,
        align: index === 0 ? ('left' as const) : ('right' as const),
      })),
      rows,
    },
  ];
}

function kitBlocks({ outcome, models }: PapersInput, language: Language): readonly Block[] {
  const names = new Map(
    models.map(({ number, name, germanName }) => [number, language === 'de' ? (germanName ?? name) : name]),
  );
  return outcome.kits.flatMap(({ items, mass_kg }, index): readonly Block[] => [
    { kind: 'heading', level: 1, text: say(language, 'result.kit') },
    {
      kind: 'text',
      tone: 'muted',
      text: say(language, 'result.crew', { number: index + 1, mass: Math.round(mass_kg) }),
    },
    {
      kind: 'list',
      marker: 'dot',
      items: items.map(({ item, count }) => `${count} × ${names.get(item) ?? item} (${item})`),
    },
  ]);
}

function priceBlocks(
  { price }: PapersInput,
  { language, amount }: { readonly language: Language; readonly amount: (minor: number) => string },
): readonly Block[] {
  const sum = (kinds: readonly string[]): number =>
    price.lines.filter(({ kind }) => kinds.includes(kind)).reduce((all, { net_minor }) => all + net_minor, 0);
  const named = ['hire', 'waiver', 'delivery', 'collection', 'labour'] as const;
  const rows = named
    .map((kind) => ({ key: `price.${kind}` as const, minor: sum([kind]) }))
    .filter(({ minor }) => minor !== 0);
  const other = price.net_minor - rows.reduce((all, { minor }) => all + minor, 0);
  const all = [
    ...rows,
    ...(other === 0 ? [] : [{ key: 'price.other' as const, minor: other }]),
    { key: 'price.tax' as const, minor: price.tax_minor },
  ];
  return [
    { kind: 'heading', level: 1, text: say(language, 'result.price') },
    {
      kind: 'table',
      columns: [
        { label: '', share: 3 },
        { label: price.currency, share: 1, align: 'right' },
      ],
      rows: [
        ...all.map(({ key, minor }) => ({ cells: [say(language, key), amount(minor)] })),
        { cells: [say(language, 'price.gross'), amount(price.gross_minor)], tone: 'total' },
      ],
    },
  ];
}

function cautionBlock(language: Language): Block {
  return {
    kind: 'callout',
    tone: 'caution',
    title: say(language, 'result.cautions'),
    items: (['result.caution-1', 'result.caution-2', 'result.caution-3', 'result.caution-4'] as const).map((key) =>
      say(language, key),
    ),
  };
}

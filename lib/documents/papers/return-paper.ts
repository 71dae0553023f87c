/*
 * The return note: what came back and when, piece by piece, what is still out, and the charges that the Desk decided, each with its reason.
 * Invariant: every piece of the returns it covers stands on a row of its own; what is printed is what was decided, nothing is added up here.
 * Not here: working charges out (pricing), an invoice.
 * Read next: return-inputs.ts.
 */
import { countText, dateText, listText, moneyText } from '#lib/documents/words/print-values.ts';
import { sourceIn } from '#lib/units/us-beside.ts';
import { tellerFor } from '#lib/wording/told-in.ts';
import type { Block, Paper, TableRow } from './paper.ts';
import { paperInForms } from './paper-forms.ts';
import { paperHead } from './paper-head.ts';
import { paperInLanguage } from './paper-language.ts';
import type { ArrivalInput, CountedInput, PieceInput, ReturnNoteInput } from './return-inputs.ts';

/** The note as it goes out: in the language and form of its quote. */
export function returnPaper(input: ReturnNoteInput): Paper {
  const paper = inEnglish(input);
  const { written } = input;
  if (written === undefined) return paper;
  const { language, forms, names } = written;
  const teller = tellerFor({ language, names, own: new Map(written.own) });
  return paperInForms(paperInLanguage(paper, { language, teller }), { forms, names });
}

function inEnglish(input: ReturnNoteInput): Paper {
  const { context, arrivals } = input;
  const pieces = arrivals.flatMap((arrival) => arrival.pieces);
  const missing = pieces.filter(({ condition }) => condition === 'missing').length;
  const facts = [
    { label: 'Booking', value: input.bookingNumber },
    { label: 'Quote', value: input.quote },
    ...(input.orderNumber === '' ? [] : [{ label: 'Your order', value: input.orderNumber }]),
    ...(input.refersTo.length === 0 ? [] : [{ label: 'Refers to', value: `return note ${listText(input.refersTo)}` }]),
    { label: 'Site', value: context.site.name },
    { label: 'Damage waiver', value: input.waiver },
    { label: 'Came back', value: listText(arrivals.map(({ arrivedOn }) => dateText(arrivedOn))) },
    {
      label: 'Pieces',
      value: `${countText(pieces.length - missing, 'piece')} back${missing === 0 ? '' : `, ${missing} missing`}`,
    },
    { label: 'Issued', value: dateText(context.issuedOn) },
  ];
  return {
    ...paperHead(context, {
      kind: 'return note',
      title: 'Return note',
      facts,
      foot: 'No invoice. What is charged is invoiced under the terms of the quote.',
    }),
    blocks: [
      { kind: 'barcode', text: input.bookingNumber },
      ...notOurs(input),
      ...charges(input),
      ...arrivals.flatMap((arrival) => arrivalBlocks(arrival)),
      ...stillOut(input),
      ...offHire(input),
      ...cautions(pieces),
      ...signing(),
    ],
  };
}

/** What the reader should see first: pieces that are missing or may still be dangerous to touch. */
function notOurs({ arrivals }: ReturnNoteInput): readonly Block[] {
  const gone = arrivals
    .flatMap(({ pieces }) => pieces)
    .filter(({ condition }) => condition === 'missing')
    .map(({ serial, name }) => `${serial}, ${name}, did not come back with the rest.`);
  const declared = arrivals
    .filter(({ contamination }) => contamination !== 'none')
    .map(
      ({ sequence, contamination }) =>
        `Return ${sequence}: ${contamination} was declared; its pieces are kept apart until they are washed.`,
    );
  const items = [...gone, ...declared];
  return items.length === 0 ? [] : [{ kind: 'callout', tone: 'caution', title: 'To be looked at first', items }];
}

const CONDITION_WORDS: Readonly<Record<PieceInput['condition'], string>> = {
  good: 'good',
  dirty: 'dirty',
  damaged: 'DAMAGED',
  missing: 'MISSING',
};

function arrivalBlocks({
  sequence,
  arrivedOn,
  depot,
  broughtBy,
  contamination,
  pieces,
  counted,
}: ArrivalInput): readonly Block[] {
  const by = broughtBy === '' ? '' : `, brought by ${broughtBy}`;
  const rows = pieces.map(
    (piece): TableRow => ({
      cells: [
        piece.serial,
        piece.name,
        CONDITION_WORDS[piece.condition],
        piece.runHours === null ? '—' : `${piece.runHours} h`,
        piece.went,
      ],
      ...(noteOf(piece) === '' ? {} : { note: noteOf(piece) }),
    }),
  );
  return [
    {
      kind: 'table',
      caption: {
        level: 1,
        text: `Return ${sequence}: ${dateText(arrivedOn)}`,
        words: `At ${depot}${by}. Declared before it was touched: ${contamination}.`,
      },
      columns: [
        { label: 'Serial number', share: 18 },
        { label: 'Piece', share: 38 },
        { label: 'Condition', share: 14 },
        { label: 'Run', share: 12, align: 'right' },
        { label: 'Went to', share: 22 },
      ],
      rows: rows.length === 0 ? [{ cells: ['—', 'no piece with a serial number', '', '', ''], tone: 'muted' }] : rows,
    },
    ...countedBlock(counted),
  ];
}

function noteOf({ note, missingParts, photos, sawOverload }: PieceInput): string {
  return [
    note,
    missingParts === '' ? '' : `Missing from it: ${missingParts}.`,
    sawOverload ? 'The limiter saw an overload: it is calibrated anew before it goes out again.' : '',
    photos.length === 0 ? '' : `Photographs ${listText(photos)}.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}

function countedBlock(counted: readonly CountedInput[]): readonly Block[] {
  if (counted.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: { level: 2, text: 'Counted pieces' },
      columns: [
        { label: 'Number', share: 14 },
        { label: 'Piece', share: 40 },
        { label: 'Sent', share: 10, align: 'right' },
        { label: 'Back', share: 10, align: 'right' },
        { label: 'Unused', share: 11, align: 'right' },
        { label: 'Hired or sold', share: 15 },
      ],
      rows: counted.map((one) => ({
        cells: [
          one.number,
          one.name,
          String(one.sent),
          String(one.back),
          one.sold === 'sold' ? String(one.unused) : '—',
          one.sold,
        ],
      })),
    },
  ];
}

function charges({ charges: money, context, exchange }: ReturnNoteInput): readonly Block[] {
  const { currency } = money;
  const amount = (minor: number) => moneyText(minor, currency);
  if (money.lines.length === 0)
    return [
      { kind: 'heading', level: 1, text: 'Charges' },
      { kind: 'text', tone: 'strong', text: 'Nothing is charged beyond the quote.' },
    ];
  const rows: TableRow[] = money.lines.map((line) => ({
    cells: [line.label, String(line.quantity).replace('-', '−'), line.taxCategory, amount(line.net_minor)],
    note: [sourceIn(line.how, context.system), line.remark === '' ? '' : `${line.remark}.`]
      .filter((part) => part !== '')
      .join(' '),
  }));
  rows.push({ cells: ['Net total', '', '', amount(money.net_minor)], tone: 'total' });
  for (const tax of money.taxes)
    rows.push({
      cells: [
        `${tax.label}, ${tax.rate_percent} % on ${amount(tax.base_minor)}`,
        '',
        tax.category,
        amount(tax.tax_minor),
      ],
      tone: 'muted',
      ...(tax.reason === undefined ? {} : { note: tax.reason }),
    });
  rows.push({
    cells: [
      money.gross_minor < 0 ? `Total given back, ${currency}` : `Total charged, ${currency}`,
      '',
      '',
      amount(money.gross_minor),
    ],
    tone: 'total',
  });
  return [
    {
      kind: 'table',
      caption: {
        level: 1,
        text: 'Charges beyond the quote',
        ...(exchange === null ? {} : { words: rateWords(exchange) }),
      },
      columns: [
        { label: 'What, and how it came about', share: 62 },
        { label: 'Number', share: 10, align: 'right' },
        { label: 'Tax', share: 8, align: 'centre' },
        { label: currency, share: 20, align: 'right' },
      ],
      rows,
    },
  ];
}

function rateWords({ from, to, rate }: NonNullable<ReturnNoteInput['exchange']>): string {
  return `In ${to}, as quoted. What the house prices in ${from} is turned over at the rate that was frozen with the quote: 1 ${from} is ${rate} ${to}.`;
}

function stillOut({ stillOut: left }: ReturnNoteInput): readonly Block[] {
  if (left.length === 0) return [{ kind: 'text', tone: 'strong', text: 'Nothing of this booking is still out.' }];
  return [
    {
      kind: 'table',
      caption: {
        level: 1,
        text: 'Still with you',
        words: 'Hire runs on for these; they have a note of their own when they are back.',
      },
      columns: [
        { label: 'Serial or model number', share: 24 },
        { label: 'Piece', share: 46 },
        { label: 'Count', share: 10, align: 'right' },
        { label: 'Due back', share: 24 },
      ],
      rows: left.map(({ mark, name, count, due }) => ({ cells: [mark, name, String(count), dateText(due)] })),
      dense: true,
    },
  ];
}

function offHire({ offHire: notices }: ReturnNoteInput): readonly Block[] {
  if (notices.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Off-hire notices' },
    {
      kind: 'list',
      marker: 'dot',
      items: notices.map(
        ({ number, at, saidBy, units }) => `${number}: ${at}, given by ${saidBy}, for ${countText(units, 'unit')}.`,
      ),
    },
  ];
}

const ALWAYS = [
  'Equipment that came back damaged, dirty or overloaded is not used again before a competent person has looked at it.',
  'Amounts for repair rest on what was seen at the return; what shows up later in the workshop is told before it is charged.',
];

function cautions(pieces: readonly PieceInput[]): readonly Block[] {
  const overload = pieces.some(({ sawOverload }) => sawOverload)
    ? [
        'A limiter that saw an overload may have let a valve see more than its setting: have that valve looked at before it is moved again.',
      ]
    : [];
  return [{ kind: 'callout', tone: 'caution', title: 'Please note', items: [...overload, ...ALWAYS] }];
}

function signing(): readonly Block[] {
  return [
    {
      kind: 'together',
      blocks: [
        { kind: 'heading', level: 1, text: 'Seen by both sides' },
        {
          kind: 'text',
          tone: 'plain',
          text: 'Signing says that the pieces were seen as they stand above; it takes nothing away from anyone’s right to object to a charge.',
        },
        {
          kind: 'signatures',
          parties: [
            { title: 'For the hirer', lines: ['Name', 'Signature and date'] },
            { title: 'For the house', lines: ['Name', 'Signature and date'] },
          ],
        },
      ],
    },
  ];
}

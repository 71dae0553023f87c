import { describe, expect, it } from 'vitest';
import type { WrittenNote } from '#lib/documents/papers/return-inputs.ts';
import { returnPaper } from '#lib/documents/papers/return-paper.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { demoHouse } from '#seeds/load.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { SAMPLE_RETURN } from '#tests/support/papers/sample-return.ts';

const flowing = async (input: typeof SAMPLE_RETURN) =>
  readPdf(await drawPaper(returnPaper(input))).text.replace(/\s+/g, ' ');

describe('return note', () => {
  it('tells piece by piece what came back, what is missing, run hours, photographs and where it went', async () => {
    const text = await flowing(SAMPLE_RETURN);
    expect(text).toMatch(/D112-03 battery drive, medium, right-angle output DAMAGED 118\.5 h quarantine, W-00012/);
    expect(text).toContain('Missing from it: side handle. Photographs P-12 and P-13.');
    expect(text).toMatch(/C401-11 anchor chain, 2 m MISSING/);
    expect(text).toContain('The limiter saw an overload: it is calibrated anew before it goes out again.');
    expect(text).toContain('Return 1: sewage was declared; its pieces are kept apart until they are washed.');
    expect(text).toMatch(/X501 retaining pins 12 10 — hired/);
    expect(text).toMatch(/K220-04 valve key, telescopic 1 6 March 2031/);
    expect(text).toContain('H-00003: 2 March 2031, 16:20, given by R. Dunlin, for 4 units.');
  });

  it('prints every charge with how it came about, what the Desk made of it, tax by category and the total', async () => {
    const text = await flowing(SAMPLE_RETURN);
    expect(text).toMatch(/Repair: battery drive D112-03 1 S 105\.60/);
    expect(text).toContain('EUR 211.20 was worked out: half, as the seam was weak before.');
    expect(text).toMatch(/Unused: peg sets \(X540\) −5 S −6\.15/);
    expect(text).toMatch(/Standard rate, 21 % on 195\.45 S 41\.04/);
    expect(text).toMatch(/Damage waiver: exempt in Ostermere; elsewhere local law decides/);
    expect(text).toMatch(/Total charged, EUR 238\.65/);
    expect(text).toContain('No invoice.');
    expect(text).toContain('not used again before a competent person has looked at it');
  });

  it('says so where nothing is charged and nothing is out, and what is given back', async () => {
    const none = { ...SAMPLE_RETURN.charges, lines: [], taxes: [], net_minor: 0, tax_minor: 0, gross_minor: 0 };
    const empty = await flowing({ ...SAMPLE_RETURN, stillOut: [], offHire: [], charges: none });
    expect(empty).toContain('Nothing is charged beyond the quote.');
    expect(empty).toContain('Nothing of this booking is still out.');
    expect(empty).not.toContain('Off-hire notices');
    const back = { ...SAMPLE_RETURN.charges, gross_minor: -744 };
    expect(await flowing({ ...SAMPLE_RETURN, charges: back })).toMatch(/Total given back, EUR −7\.44/);
  });
});

describe('return note in German', () => {
  const { context, arrivals, stillOut, offHire, charges } = SAMPLE_RETURN;
  const pieces = arrivals.flatMap((arrival) => [...arrival.pieces, ...arrival.counted.map(({ name }) => ({ name }))]);
  const english = [...new Set([...pieces, ...stillOut].map(({ name }) => name))];
  const written: WrittenNote = {
    language: 'de',
    forms: { dates: 'day-month-year', numbers: 'space-comma', commas: 'rewritten' },
    names: [
      ...[SAMPLE_RETURN.bookingNumber, SAMPLE_RETURN.quote, SAMPLE_RETURN.orderNumber, context.site.name],
      ...[context.house.name, context.customer.name],
      ...arrivals.flatMap((arrival) => [
        arrival.broughtBy,
        ...arrival.pieces.flatMap((one) => [one.serial, one.note, one.missingParts]),
      ]),
      ...stillOut.map(({ mark }) => mark),
      ...offHire.map(({ saidBy }) => saidBy),
      ...['Nordwerk', 'Lever housing cracked', 'half, as the seam was weak before'],
    ].filter((name) => name !== ''),
    own: [
      ...[...english, 'battery drive', 'anchor chain', 'peg sets'].map(
        (name, index) => [name, `Teil ${index}`] as const,
      ),
      ...(demoHouse().germanWords ?? []).map((one) => [one.english, one.german] as const),
    ],
  };

  it('says the same in German: amounts with a comma, days in figures, what the yard wrote as it is', async () => {
    const site = { ...context.site, name: 'Nordwerk' };
    const text = await flowing({ ...SAMPLE_RETURN, context: { ...context, site }, written });
    expect(text).toContain('Rückgabeschein');
    expect(text).toContain('Daran fehlt: side handle. Fotos P-12 und P-13.');
    expect(text).toContain(
      'Lever housing cracked: 2,5 h in der Werkstatt zu EUR 68,00 je Stunde und Teile für EUR 41,20.',
    );
    expect(text).toContain('5 kamen unbenutzt zurück und werden zu 85 % von je EUR 1,45 gutgeschrieben.');
    expect(text).toContain('H-00003: 02.03.2031, 16:20, von R. Dunlin, für 4 Geräte.');
    expect(text).toMatch(/Seite 1 von \d/);
    const bare = written.names
      .toSorted((a, b) => b.length - a.length)
      .reduce((all, name) => all.replaceAll(name, ''), text);
    expect(bare).not.toMatch(/\b(the|and|with|must|which|from|without|before|were|charged|back)\b/i);
    const amounts = charges.lines.map(({ net_minor }) => (Math.abs(net_minor) / 100).toFixed(2).replace('.', ','));
    for (const amount of amounts) expect(text).toContain(amount);
  });
});

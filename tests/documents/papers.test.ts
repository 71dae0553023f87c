import { describe, expect, it } from 'vitest';
import { calculationPaper } from '#lib/documents/papers/calculation-paper.ts';
import { packingPaper } from '#lib/documents/papers/packing-paper.ts';
import type { Paper } from '#lib/documents/papers/paper.ts';
import { quotePaper } from '#lib/documents/papers/quote-paper.ts';
import { returnPaper } from '#lib/documents/papers/return-paper.ts';
import { sitePaper } from '#lib/documents/papers/site-paper.ts';
import { drawPaper } from '#lib/workers/draw-paper.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { SAMPLE_CREW_DAYS } from '#tests/support/papers/sample-outcome.ts';
import {
  longPlan,
  SAMPLE_CALCULATION,
  SAMPLE_CONTEXT,
  SAMPLE_LINES,
  SAMPLE_PACKING,
  SAMPLE_QUOTE,
  SAMPLE_UNSERVED,
} from '#tests/support/papers/sample-plan.ts';
import { SAMPLE_RETURN } from '#tests/support/papers/sample-return.ts';

const SITE_LINES = SAMPLE_LINES.filter((line) =>
  ['GV-101', 'GV-105', 'SV-109'].some((tag) => line.line.tag.startsWith(tag)),
);
const PAPERS: readonly (readonly [string, () => Paper])[] = [
  ['quote', () => quotePaper(SAMPLE_QUOTE)],
  ['packing list', () => packingPaper(SAMPLE_PACKING)],
  ['site sheet', () => sitePaper({ context: SAMPLE_CONTEXT, lines: SITE_LINES, crewDays: SAMPLE_CREW_DAYS })],
  ['calculation sheet', () => calculationPaper(SAMPLE_CALCULATION)],
  ['return note', () => returnPaper(SAMPLE_RETURN)],
];

/** Text as one line, so that wrapping does not hide a sentence. */
const flowing = (text: string) => text.replace(/\s+/g, ' ');

describe.each(PAPERS)('%s', (_, make) => {
  it('has the same bytes whenever it is drawn', async () => {
    const first = await drawPaper(make());
    await drawPaper(quotePaper({ ...SAMPLE_QUOTE, planSentence: 'Something else in between: Ωμέγα, щука, żółw.' }));
    const second = await drawPaper(make());
    expect(Buffer.compare(first, second)).toBe(0);
  });

  it('can be kept as JSON and drawn again to the same bytes', async () => {
    const kept: Paper = JSON.parse(JSON.stringify(make()));
    expect(Buffer.compare(await drawPaper(make()), await drawPaper(kept))).toBe(0);
  });

  it('embeds every font, numbers its pages, carries its own date, and prints signs and names of three scripts', async () => {
    const read = readPdf(await drawPaper(make()));
    expect(read.fonts.length).toBeGreaterThan(0);
    expect(read.fonts.filter((font) => !font.embedded)).toEqual([]);
    for (let page = 1; page <= read.pages; page += 1) expect(read.text).toContain(`Page ${page} of ${read.pages}`);
    expect(read.info).toMatch(/CreationDate:\s+Tue Mar\s+4 .*2031/);
    for (const word of ['Łódź', 'Świątek', 'Διώνη', 'Верхний', 'Źródlana']) expect(read.words, word).toContain(word);
  });
});

describe('quote of several options', () => {
  const other = { ...SAMPLE_QUOTE, name: 'Air kit, one crew', payment: ['Payable in 14 days.'] };
  const several = quotePaper({
    ...SAMPLE_QUOTE,
    name: 'Battery kit',
    others: [other],
    changes: { since: 'Q-1 A', groups: [{ about: 'Price', sentences: ['Training: 2.00 in place of 1.00.'] }] },
  });

  it('says what changed, compares the options, tells each, and asks which one is ordered', async () => {
    const text = flowing(readPdf(await drawPaper(several)).text);
    for (const words of [
      'Changed since Q-1 A',
      'Training: 2.00 in place of 1.00.',
      'This quote offers 2 options for the same schedule; one of them is ordered.',
      'Option 1: Battery kit',
      'Option 2: Air kit, one crew',
      'Payable in 14 days.',
      'We order the one option marked here',
    ])
      expect(text).toContain(words);
  });

  it('leaves days and crews to the options, and prints them where there is no choice', () => {
    const labels = (facts: Paper['facts']) => facts.map(({ label }) => label);
    expect(labels(several.facts)).not.toContain('Hire window');
    expect(labels(quotePaper(SAMPLE_QUOTE).facts)).toContain('Hire window');
  });
});

describe('quote', () => {
  it('says price, assumptions, unserved lines with reason and way out, cautions and acceptance', async () => {
    const text = flowing(readPdf(await drawPaper(quotePaper(SAMPLE_QUOTE))).text);
    for (const words of [
      'Total to pay, EUR 23 789.68',
      '23 % on 19 341.20',
      'Wheel diameter (assumed)',
      '400…500 mm, likely 450 mm',
      'Starting takes at least 640 N·m',
      'workshop enquiry',
      'This paper does not approve',
      'Crew 1: 66 valves',
      'Acceptance',
      'Not included',
      'Valid until',
    ])
      expect(text, words).toContain(words);
    for (const line of SAMPLE_UNSERVED) expect(text).toContain(line.tag);
  });

  it('names every line of a list of 1461, on pages that repeat the head of the table', async () => {
    const lines = longPlan({ lines: 1461, classes: 60 });
    const read = readPdf(await drawPaper(quotePaper({ ...SAMPLE_QUOTE, lines })));
    const missing = lines.filter((line) => !read.text.includes(line.line.tag)).map((line) => line.line.tag);
    expect(missing).toEqual([]);
    expect(read.text.split('Never above').length - 1).toBeGreaterThanOrEqual(2);
  });
});

describe('packing list', () => {
  it('lists every case with its lift mark, mass, energy and serial numbers, and the booking number under its bars', async () => {
    const text = flowing(readPdf(await drawPaper(packingPaper(SAMPLE_PACKING))).text);
    expect(text).toContain('B-2031-0077');
    for (const one of SAMPLE_PACKING.cases) {
      expect(text).toContain(
        `Case ${one.number} · crew ${one.crew} · ${one.mass_kg.toFixed(1)} kg · lift: ${one.lift}`,
      );
      for (const serial of one.contents.flatMap((piece) => piece.serials)) expect(text).toContain(serial);
    }
    expect(text).toContain('UN 3481');
    expect(text).toContain('1296 Wh');
  });
});

describe('drawing in a worker', () => {
  it('says why a paper cannot be drawn, and draws the next one', async () => {
    const bad: Paper = { ...packingPaper(SAMPLE_PACKING), fixedAt: 'yesterday' };
    await expect(drawPaper(bad)).rejects.toThrow('A paper is fixed at a calendar date, not yesterday.');
    expect(readPdf(await drawPaper(packingPaper(SAMPLE_PACKING))).pages).toBeGreaterThan(1);
  });

  it('leaves this thread free while a long paper is laid out', async () => {
    const paper = calculationPaper({ context: SAMPLE_CONTEXT, lines: longPlan({ lines: 200, classes: 20 }) });
    let longest = 0;
    let last = performance.now();
    const beat = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 5);
    const started = performance.now();
    await drawPaper(paper);
    clearInterval(beat);
    expect(longest).toBeLessThan((performance.now() - started) / 2);
  });
});

describe('site sheet', () => {
  it('gives start, step and ceiling each way, what to select, and a row to write on for every valve', async () => {
    const read = readPdf(
      await drawPaper(sitePaper({ context: SAMPLE_CONTEXT, lines: SITE_LINES, crewDays: SAMPLE_CREW_DAYS })),
    );
    const text = flowing(read.text);
    for (const words of [
      'opening unseat',
      'closing run',
      'closing seat',
      '10 N·m',
      'To open, select on the drive',
      'clockwise, seen facing the nut',
      'Highest torque',
      'As left',
      'Who, when',
      'never past the ceiling',
      'Chain square to the arm',
    ])
      expect(text, words).toContain(words);
    for (const line of SITE_LINES)
      expect(read.text.split(line.line.tag).length - 1, line.line.tag).toBeGreaterThanOrEqual(2);
  });

  it('prints each crew’s days with what they ask of people, a passed value in words, and what the figures are', async () => {
    const [first] = SAMPLE_CREW_DAYS;
    const loud = SAMPLE_CREW_DAYS.map((one) => ({
      ...one,
      days: one.days.map((day) => ({
        ...day,
        findings: [
          {
            id: 'crew-day-vibration-limit',
            severity: 'refusal' as const,
            about: [],
            sentence: `Crew ${one.crew}, day 1: do not work the day as it stands.`,
            source: 'test',
          },
        ],
      })),
    }));
    const draw = async (crewDays: typeof SAMPLE_CREW_DAYS) =>
      flowing(readPdf(await drawPaper(sitePaper({ context: SAMPLE_CONTEXT, lines: SITE_LINES, crewDays }))).text);
    const text = await draw(SAMPLE_CREW_DAYS);
    expect(first?.days).toHaveLength(1);
    for (const words of [
      'The crews’ days',
      '1 4 1 h 13 min 0 h 21 min 0.5 3 0.3 64.5 7 kg SA-2',
      'Heaviest case in and out of the vehicle: 22.4 kg, one person, near the limit',
      'Lifting index 0.8 (limit 9.07 kg)',
      'measured values and the law of the place decide',
    ])
      expect(text, words).toContain(words);
    const passed = await draw(loud);
    expect(passed).toContain('Passes: vibration limit.');
    expect(passed).toContain('Do not work these days as they stand');
    expect(passed).toContain('Crew 2, day 1: do not work the day as it stands.');
  });

  it('prints US customary units throughout when asked', async () => {
    const text = flowing(
      readPdf(
        await drawPaper(
          sitePaper({
            context: { ...SAMPLE_CONTEXT, system: 'us' },
            lines: SAMPLE_LINES.slice(0, 1),
            crewDays: SAMPLE_CREW_DAYS,
          }),
        ),
      ).text,
    );
    expect(text).toContain('lbf·ft');
    expect(text).toContain('Heaviest case in and out of the vehicle: 49.4 lb');
    expect(text).toContain('the heaviest piece is SA-2 with 15.4 lb');
    expect(text).not.toMatch(/\d kg/);
    // The limiter's own name holds its range as on its plate; the note tells the marks of a scale in N·m.
    expect(
      text.replace('20 to 420 N·m', '').replace(/Conversion: on a scale marked in N·m.*?rounded up\./, ''),
    ).not.toMatch(/\d N·m/);
  });

  it('never prints a direction as known when it is not', async () => {
    const unknown = SAMPLE_LINES.filter((line) => line.line.tag === 'GV-108');
    const text = flowing(
      readPdf(await drawPaper(sitePaper({ context: SAMPLE_CONTEXT, lines: unknown, crewDays: SAMPLE_CREW_DAYS }))).text,
    );
    expect(text).toContain('try gently first: direction unknown');
    expect(text).toContain('Closing direction not known');
    expect(text).not.toMatch(/(?<!anti)clockwise, seen/);
  });
});

describe('calculation sheet', () => {
  it('prints every step with formula, inputs with unit and basis, range and source', async () => {
    const text = flowing(readPdf(await drawPaper(calculationPaper(SAMPLE_CALCULATION))).text);
    for (const words of [
      'T = F·dm/2 · (l + π·f·dm·sec α)/(π·dm − f·l·sec α) + F·fc·dc/2',
      '0.12…0.2, likely 0.15',
      '245…262 mm, likely 250 mm',
      'ISO 2904, Tr 36 × 6.',
      '38…46 turns, likely 42 turns',
      'Basis of a value',
    ])
      expect(text, words).toContain(words);
  });
});

describe('papers in US customary units', () => {
  const context = { ...SAMPLE_CONTEXT, system: 'us' } as const;
  /** A citation keeps the figure that it prints, with the US customary one in brackets beside it or already around it. */
  const CITED =
    /\d[\d.,…–-]*(?: to [\d.]+)? (?:N·m|kN|N|mm|m|kg|bar|l\/s|l\/min|°C) \([^)]*\)|(?:lbf·ft|lbf) \([^)]*\)/g;
  const SI = /\d (?:N·m|kN|N|mm|m|kg|bar|l\/s|l\/min|°C|kW)(?![\w·/²³])/;
  const US_PAPERS: readonly (readonly [string, Paper, readonly string[]])[] = [
    ['quote', quotePaper({ ...SAMPLE_QUOTE, context }), ['lbf·ft', '15.7…19.7 in, likely 17.7 in', ' lb']],
    ['packing list', packingPaper({ ...SAMPLE_PACKING, context }), [' lb']],
    [
      'site sheet',
      sitePaper({ context, lines: SITE_LINES, crewDays: SAMPLE_CREW_DAYS }),
      ['lbf·ft', ' in', 'on a scale marked in N·m'],
    ],
    [
      'calculation sheet',
      calculationPaper({ ...SAMPLE_CALCULATION, context }),
      ['lbf·ft', ' psi', '1 lbf·ft = 1.3558179 N·m', '1 psi = 6894.7573 Pa'],
    ],
  ];

  it.each(US_PAPERS)(
    '%s: every figure of our own is in them; a figure in SI is a citation or the conversion note',
    async (name, paper, words) => {
      const text = flowing(readPdf(await drawPaper(paper)).text);
      for (const word of words) expect(text, word).toContain(word);
      const texts = textsOf(paper.blocks)
        .map(withoutNames)
        .filter((one) => SI.test(one) && !one.startsWith('Conversion:'));
      const bare = texts.filter((one) => SI.test(one.replace(CITED, '')));
      console.info(`${name} in US customary units: ${texts.length} citations with a figure in SI`);
      expect(bare).toEqual([]);
    },
  );

  it('differ from those in SI in figures alone: as many blocks and rows, and the same tags', () => {
    const si = quotePaper(SAMPLE_QUOTE);
    const us = US_PAPERS[0]?.[1];
    expect(us?.blocks.length).toBe(si.blocks.length);
    expect(textsOf(us?.blocks ?? []).length).toBe(textsOf(si.blocks).length);
  });
});

/** Equipment keeps its name, sizes in it included: it is painted on the piece. A picture may break a name over lines. */
function withoutNames(text: string): string {
  const names = [
    ...SAMPLE_CONTEXT.models.map(({ name }) => name),
    ...SAMPLE_PACKING.cases.flatMap(({ contents }) => contents.map(({ name }) => name)),
  ];
  if (names.some((name) => name.includes(text))) return '';
  return names.reduce((rest, name) => rest.replaceAll(name, ''), text);
}

/** Every text of the blocks, whatever they are. */
function textsOf(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(textsOf);
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(textsOf);
}

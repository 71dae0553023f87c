import { describe, expect, it } from 'vitest';
import { wrapText } from '#lib/documents/drawings/text-width.ts';
import { calculationPaper } from '#lib/documents/papers/calculation-paper.ts';
import { gatherClasses, inWorkingOrder } from '#lib/documents/papers/line-classes.ts';
import { packingPaper } from '#lib/documents/papers/packing-paper.ts';
import type { Block, TableRow } from '#lib/documents/papers/paper.ts';
import { SHORT_OF_TIME_OR_STOCK } from '#lib/documents/papers/paper-inputs.ts';
import { type QuoteInput, quotePaper } from '#lib/documents/papers/quote-paper.ts';
import { sitePaper } from '#lib/documents/papers/site-paper.ts';
import {
  longPlan,
  SAMPLE_CALCULATION,
  SAMPLE_CONTEXT,
  SAMPLE_LINES,
  SAMPLE_PACKING,
  SAMPLE_QUOTE,
  SAMPLE_UNSERVED,
} from '#tests/support/papers/sample-plan.ts';

const rowsOf = (blocks: readonly Block[]): readonly TableRow[] =>
  blocks.flatMap((block) => (block.kind === 'table' ? block.rows : []));
const said = (blocks: readonly Block[]) => JSON.stringify(blocks);

describe('classes of equal valves', () => {
  it('hold every line exactly once, and lines of one class with other assemblies stand apart', () => {
    const classes = gatherClasses(SAMPLE_LINES);
    expect(classes.flatMap((one) => one.tags).toSorted()).toEqual(SAMPLE_LINES.map((line) => line.line.tag).toSorted());
    const [first, second] = SAMPLE_LINES;
    if (first === undefined || second === undefined || first.assembly === null)
      throw new Error('The sample plan has lines.');
    const other = { ...second, classId: first.classId, assembly: { ...first.assembly, id: 'another' } };
    expect(gatherClasses([first, other])).toHaveLength(2);
  });

  it('are the same whatever order the lines come in', () => {
    const turned = [...SAMPLE_LINES].reverse();
    expect(gatherClasses(turned).map((one) => one.tags)).toEqual(gatherClasses(SAMPLE_LINES).map((one) => one.tags));
    expect(inWorkingOrder(turned).map((line) => line.line.tag)).toEqual(
      inWorkingOrder(SAMPLE_LINES).map((line) => line.line.tag),
    );
  });

  it('are worked crew by crew in place order, tags counted as numbers', () => {
    const tags = inWorkingOrder(longPlan({ lines: 30, classes: 2 })).map((line) => line.line.tag);
    expect(tags.slice(0, 3)).toEqual(['V-0001', 'V-0004', 'V-0007']);
  });
});

describe('packing list', () => {
  it('says before the cases what a crew goes without, and nothing of it where all is there', () => {
    const lacking = ['Crew 1 goes without 1 × S-104 Charger: no more are free on these dates.'];
    const { blocks } = packingPaper({ ...SAMPLE_PACKING, lacking });
    const at = blocks.findIndex((block) => block.kind === 'callout' && block.items.includes(lacking[0] ?? ''));
    expect(at).toBeGreaterThan(-1);
    expect(at).toBeLessThan(blocks.findIndex(({ kind }) => kind === 'table'));
    expect(said(packingPaper({ ...SAMPLE_PACKING, lacking: [] }).blocks)).not.toContain('Not in the load');
  });
});

describe('quote', () => {
  it('holds a row for every class, price, tax, total and unserved line', () => {
    const rows = rowsOf(quotePaper(SAMPLE_QUOTE).blocks);
    const cells = rows.map((row) => row.cells.join(' | '));
    expect(cells.filter((text) => text.startsWith('wedge gate'))).toHaveLength(gatherClasses(SAMPLE_LINES).length);
    expect(cells).toContain('Total to pay, EUR |  |  | 23 789.68');
    expect(cells.some((text) => text.startsWith('PV-201 | Starting takes at least 640 N·m'))).toBe(true);
    expect(cells.some((text) => text.startsWith('SV-204') && text.endsWith('Ask the Desk.'))).toBe(true);
  });

  it('says that all is served when all is served, and shows no empty tables', () => {
    const paper = quotePaper({ ...SAMPLE_QUOTE, unserved: [] });
    expect(said(paper.blocks)).toContain('Every valve of the schedule is served.');
    expect(said(paper.blocks)).not.toContain('Lines that are not served');
  });

  it('tells valves that nothing fits apart from valves left for want of time or stock', () => {
    const because = [
      { id: SHORT_OF_TIME_OR_STOCK, severity: 'refusal', about: ['days'], sentence: 'Too few hours.', source: 'Plan.' },
    ] as const;
    const [unfit] = SAMPLE_UNSERVED;
    const left = { tag: 'SV-900', qty: 12, because, repairs: [] } as const;
    const scope = (unserved: QuoteInput['unserved']) => said(quotePaper({ ...SAMPLE_QUOTE, unserved }).blocks);
    const both = scope(unfit === undefined ? [] : [{ ...unfit, qty: 3 }, left]);
    expect(both).toContain('No equipment fits 3 valves on 1 line as the list stands.');
    expect(both).toContain('The time and stock there are do not reach for 12 valves on 1 line.');
    expect(scope([left])).not.toContain('No equipment fits');
    expect(scope([])).toContain('Every valve of the schedule is served.');
  });

  it('never words anything as an approval', () => {
    const words = [
      quotePaper(SAMPLE_QUOTE),
      sitePaper({ context: SAMPLE_CONTEXT, lines: SAMPLE_LINES, crewDays: [] }),
      packingPaper(SAMPLE_PACKING),
      calculationPaper(SAMPLE_CALCULATION),
    ]
      .map((paper) => said(paper.blocks))
      .join(' ');
    expect(words).not.toMatch(/\b(is|are|we) (hereby )?approved?\b|guarantee|certified safe/i);
    expect(words).toContain('does not approve');
  });
});

describe('site sheet', () => {
  it('has a row to write on for every valve, also for the several valves of one line', () => {
    const paper = sitePaper({ context: SAMPLE_CONTEXT, lines: SAMPLE_LINES, crewDays: [] });
    const valves = SAMPLE_LINES.reduce((sum, line) => sum + line.line.qty, 0);
    const records = paper.blocks.flatMap((block) => (block.kind === 'table' && block.tall === true ? block.rows : []));
    expect(records).toHaveLength(valves);
    expect(records.map((row) => row.cells[0])).toContain('GV-104 (2 of 3)');
  });

  it('prints start, step and ceiling of every setting that the assembly has', () => {
    const one = SAMPLE_LINES.slice(0, 1);
    const limiter = sitePaper({ context: SAMPLE_CONTEXT, lines: one, crewDays: [] }).blocks.find(
      (block) => block.kind === 'table' && block.caption?.text.startsWith('Limiter'),
    );
    const rows = limiter?.kind === 'table' ? limiter.rows.map((row) => row.cells.slice(0, 2).join(' ')) : [];
    expect(rows).toEqual(['opening unseat', 'opening run', 'closing run', 'closing seat']);
  });

  it('leaves out lines that no assembly serves', () => {
    const paper = sitePaper({
      context: SAMPLE_CONTEXT,
      crewDays: [],
      lines: SAMPLE_LINES.map((line) => ({ ...line, assembly: null })),
    });
    expect(paper.facts.find((fact) => fact.label === 'Work')?.value).toBe('0 valves in 0 classes of equal valves');
  });
});

describe('wrapping label text', () => {
  it('cuts with an ellipsis what does not fit, and never parts a number from its unit', () => {
    const box = { size: 7, bold: false, width: 60, maxLines: 2 };
    expect(wrapText('Restraint R-210 carries 600\u00a0N·m', { ...box, maxLines: 4 }).join('|')).toContain('600 N·m');
    const cut = wrapText('one two three four five six seven eight nine ten eleven twelve', box);
    expect(cut).toHaveLength(2);
    expect(cut[1]).toMatch(/…$/);
    expect(wrapText('Incomprehensibilities-without-any-space-at-all', box)[0]).toMatch(/…$/);
  });
});

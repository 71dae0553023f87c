import { describe, expect, it } from 'vitest';
import { linesTable } from '#lib/documents/exchange/lines-table.ts';
import { mailText } from '#lib/documents/words/mail-text.ts';
import { SAMPLE_CONTEXT, SAMPLE_LINES, SAMPLE_UNSERVED } from '#tests/support/papers/sample-plan.ts';

describe('the lines of a quote as a table', () => {
  const table = linesTable({ lines: SAMPLE_LINES, unserved: SAMPLE_UNSERVED });
  const column = (heading: string) => table.rows.map((row) => row[table.headings.indexOf(heading)]);

  it('holds every valve once', () => {
    const valves = SAMPLE_LINES.reduce((sum, { line }) => sum + line.qty, 0);
    expect(column('valves').reduce<number>((sum, count) => sum + Number(count), 0)).toBe(valves);
    expect(new Set(column('tag')).size).toBe(new Set(SAMPLE_LINES.map(({ line }) => line.tag)).size);
  });

  it('never rounds what a valve may see upward, nor a range inward', () => {
    const tags = column('tag');
    for (const { line, duty, assembly } of SAMPLE_LINES) {
      const row = tags.indexOf(line.tag);
      const never = Math.min(duty.opening.neverExceed.torque.low, duty.closing.neverExceed.torque.low);
      expect(Number(column('never above, N·m')[row])).toBeLessThanOrEqual(never);
      const highest = Math.max(duty.opening.starting.high, duty.closing.starting.high);
      expect(Number(column('starting torque high, N·m')[row])).toBeGreaterThanOrEqual(highest);
      const ceiling = assembly?.closing.unseat?.atValve.ceiling;
      if (ceiling !== undefined)
        expect(Number(column('limiter ceiling closing, N·m at the valve')[row])).toBeLessThanOrEqual(ceiling);
    }
  });

  it('says of a line without equipment why', () => {
    const [missing] = SAMPLE_UNSERVED;
    const [sample] = SAMPLE_LINES;
    if (!missing || !sample) throw new Error('The sample plan has both.');
    const line = { ...sample, assembly: null, line: { ...sample.line, tag: missing.tag } };
    const alone = linesTable({ lines: [line], unserved: SAMPLE_UNSERVED });
    expect(alone.rows[0]?.at(-1)).toBe(missing.because.map(({ sentence }) => sentence).join(' '));
  });
});

describe('the words for a mail', () => {
  const input = {
    context: SAMPLE_CONTEXT,
    validUntil: '2031-04-03',
    currency: 'EUR',
    gross_minor: 1_234_550,
    deposit_minor: 0,
    valves: 75,
    unserved: 1,
    assumed: 12,
  };

  it('tell price, days, validity, what is not served and what was assumed', () => {
    const text = mailText(input);
    expect(text).toContain('Subject: Quote Q-2031-0142, Pumping station');
    expect(text).toContain('Dear Małgorzata Świątek,');
    expect(text).toContain('serves 74 of the 75 valves on your schedule. 1 valve is not served');
    expect(text).toContain('EUR 12 345.50; the quote holds until 3 April 2031');
    expect(text).toContain('17 March 2031 to 21 March 2031 (5 days)');
    expect(text).toContain('12 values had to be assumed');
    expect(text).toContain('estimates until they are measured');
    expect(text).not.toContain('deposit');
  });

  it('leave out what does not apply', () => {
    const text = mailText({ ...input, unserved: 0, assumed: 0, deposit_minor: 5000 });
    expect(text).not.toContain('not served');
    expect(text).not.toContain('assumed');
    expect(text).toContain('A deposit of EUR 50.00 is due with the order.');
  });
});

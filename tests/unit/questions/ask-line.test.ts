import { describe, expect, it } from 'vitest';
import { SELF_SERVICE_FACTS as bounds } from '#lib/contracts/self-service-facts.ts';
import { parseSite, type SiteJson } from '#lib/contracts/site.ts';
import { COLUMN_GUIDE } from '#lib/documents/guide/field-guide.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Cells, Column } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { handOverOfValue } from '#lib/questions/hand-over.ts';
import { lineOutcome, readTold } from '#lib/questions/line-outcome.ts';
import { type Asking, askLine } from '#lib/questions/next-question.ts';
import { QUESTIONS } from '#lib/questions/question-table.ts';
import { demoModels } from '#seeds/load.ts';

const models = demoModels();

function siteOf(facts: SiteJson = {}): Site {
  const site = parseSite(facts, { startsOn: '2030-06-03' });
  if (!site.ok) throw new Error(site.reason.sentence);
  return site.value;
}

function codesOf(cells: Cells, site = siteOf({ zone: 'none' })): readonly string[] {
  return lineOutcome(readTold(cells, site), { site, models, bounds }).handOver.map(({ code }) => code);
}

const FIRM: Cells = {
  tag: 'V1',
  valve_type: 'gate',
  driven_by: 'handwheel',
  size: 'DN 150',
  stem: 'rising through the wheel',
  differential_pressure: '4 bar',
  condition: 'free',
  last_operated: '1 year',
  wheel_diameter: '350 mm',
};

describe('questions about a valve', () => {
  it('have answers that intake reads without a problem, and an entry in the field guide', () => {
    const guided = new Set(COLUMN_GUIDE.map(({ field }) => field));
    for (const base of [{ driven_by: 'handwheel' }, { driven_by: 'key cap' }, { driven_by: 'gearbox wheel' }]) {
      const told = readTold({ tag: 'V1', ...base }, siteOf());
      for (const { column, answers } of QUESTIONS) {
        expect(guided).toContain(column);
        for (const { text } of answers(told)) {
          const { problems } = readLine({ row: 1, cells: { ...told.cells, [column]: text } });
          expect(problems.filter((one) => one.column === column)).toEqual([]);
        }
      }
    }
  });

  it('answered “I don’t know” throughout end with an honest range and what to find out first', () => {
    const asked: Column[] = [];
    let asking: Asking | undefined;
    for (let turn = 0; turn < QUESTIONS.length + 1; turn += 1) {
      asking = askLine({ told: { cells: { tag: 'V1' }, unknown: asked }, site: siteOf(), models, bounds });
      const next = asking.questions[0];
      if (next === undefined) break;
      asked.push(next.column);
    }
    expect(new Set(asked).size).toBe(asked.length);
    expect(asking?.questions).toEqual([]);
    expect(asking?.findOut?.column).toBe('size');
    const { starting, neverExceed } = asking?.outcome.duty.opening ?? {};
    expect(starting?.high ?? 0).toBeGreaterThan(10 * (starting?.low ?? 0));
    expect(starting?.source).not.toBe('');
    expect(neverExceed?.torque.basis).toBe('assumed');
    expect(asking?.outcome.handOver.map(({ code }) => code)).toContain('range-too-wide');
  });

  it('ask for the size before the shape of the wheel, and never what was answered', () => {
    const { questions } = askLine({ told: { cells: { tag: 'V1' }, unknown: [] }, site: siteOf(), models, bounds });
    expect(questions[0]?.column).toBe('size');
    const again = askLine({
      told: { cells: { tag: 'V1', size: 'DN 150' }, unknown: [] },
      site: siteOf(),
      models,
      bounds,
    });
    expect(again.questions.map(({ column }) => column)).not.toContain('size');
  });

  it('leave the nut alone where a wheel is turned, and the wheel where a nut is', () => {
    const about = (cells: Cells): readonly string[] =>
      askLine({ told: { cells, unknown: [] }, site: siteOf({ zone: 'none' }), models, bounds }).questions.map(
        ({ column }) => column,
      );
    const wheel = about({ ...FIRM, wheel_diameter: '' });
    expect(wheel).not.toContain('nut_size');
    expect(wheel).not.toContain('depth_to_nut');
    const nut = about({ tag: 'V1', valve_type: 'gate', size: 'DN 150', driven_by: 'key cap', condition: 'free' });
    expect(nut).not.toContain('wheel_diameter');
    expect(nut).not.toContain('stem');
  });

  it('take a counted effort, the same for the same line', () => {
    const once = askLine({ told: { cells: { tag: 'V1' }, unknown: [] }, site: siteOf(), models, bounds });
    const twice = askLine({ told: { cells: { tag: 'V1' }, unknown: [] }, site: siteOf(), models, bounds });
    expect(once.effort).toEqual(twice.effort);
    expect(once.effort.kits).toBeLessThanOrEqual(36);
  });
});

describe('whether the Desk must look', () => {
  it('is no for a common valve of which enough is known', () => {
    expect(codesOf(FIRM)).toEqual([]);
  });

  it.each([
    ['zone', { ...FIRM, zone: '1' }],
    ['locked', { ...FIRM, locked: 'yes' }],
    ['seized', { ...FIRM, condition: 'seized' }],
    ['service', { ...FIRM, service: 'oxygen' }],
    ['nothing-fits', { ...FIRM, driven_by: 'chain wheel' }],
    [
      'made-to-fit',
      {
        tag: 'V1',
        valve_type: 'globe',
        driven_by: 'gearbox wheel',
        size: 'DN 600',
        stem: 'non-rising',
        differential_pressure: '2 bar',
        condition: 'free',
        faces: 'up',
        anchor: 'none',
        wheel_diameter: '400 mm',
      },
    ],
    ['never-exceed-guessed', { tag: 'V1', valve_type: 'gate', driven_by: 'handwheel', size: 'DN 600' }],
    ['window-empty', { ...FIRM, max_torque: '12 N·m' }],
    ['range-too-wide', { tag: 'V1', driven_by: 'handwheel' }],
  ] satisfies readonly (readonly [string, Cells])[])('is yes with the code %s', (code, cells) => {
    expect(codesOf(cells)).toContain(code);
  });

  it('is yes where nobody said whether there is a hazardous zone', () => {
    expect(codesOf(FIRM, siteOf())).toEqual(['zone-unknown']);
  });

  it('is yes above a value, and not at it', () => {
    const limit = bounds.value_limit;
    expect(handOverOfValue({ net_minor: limit * 100, minorPerUnit: 100, limit })).toEqual([]);
    expect(handOverOfValue({ net_minor: limit * 100 + 1, minorPerUnit: 100, limit })).toEqual([
      { code: 'value', facts: { limit } },
    ]);
  });
});

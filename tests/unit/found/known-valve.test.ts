import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Found } from '#lib/found/found.ts';
import type { FoundCells } from '#lib/found/found-columns.ts';
import { knowValve } from '#lib/found/known-valve.ts';
import { readFound } from '#lib/found/read-found.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { findingIds, PLAIN_SITE, step } from '#tests/support/lists/duty-lines.ts';

const STARTS_ON = PLAIN_SITE.startsOn;

function visit(cells: FoundCells): Found {
  const { found, problems } = readFound({
    row: 1,
    cells: { tag: 'V1', visited_on: '2030-01-10', by: 'T. Marl', ...cells },
    under: 'quote Q-00012 A',
    today: '2030-03-01',
  });
  if (found === null) throw new Error(problems.map(({ sentence }) => sentence).join(' '));
  return found;
}

function listed(cells: Readonly<Record<string, string>>, measured: readonly 'turns'[] = []): ScheduleLine {
  return readLine({ row: 1, cells: { tag: 'V1', valve_type: 'gate', size: 'DN 150', ...cells }, measured }).line;
}

function dutyWith(line: ScheduleLine, ...records: readonly Found[]) {
  const known = knowValve({ line, records, startsOn: STARTS_ON });
  return { ...known, duty: assessDuty({ line: known.line, site: PLAIN_SITE }) };
}

describe('what earlier visits know of a valve', () => {
  it('turns that were counted replace those by rule, and say who counted them', () => {
    const { duty, known } = dutyWith(listed({}), visit({ turns: '23' }));
    expect(duty.turns).toMatchObject({ low: 23, high: 23, basis: 'measured' });
    expect(duty.turns.source).toContain('Counted on site on 10 January 2030 by T. Marl, quote Q-00012 A');
    expect(known).toMatchObject([{ column: 'turns', use: 'used' }]);
  });

  it('a counted number replaces a stated one that agrees with it', () => {
    expect(dutyWith(listed({ turns: '24' }), visit({ turns: '23' })).duty.turns).toMatchObject({ low: 23, high: 23 });
  });

  it('a contradiction covers both, keeps the list’s as likely and is told', () => {
    const { duty, known } = dutyWith(listed({ turns: '40' }), visit({ turns: '23' }));
    expect(duty.turns).toMatchObject({ low: 23, nominal: 40, high: 40, basis: 'stated' });
    const finding = duty.findings.find(({ id }) => id === 'visit-against-list-turns');
    expect(finding?.severity).toBe('warning');
    expect(finding?.sentence).toContain('The list gives 40 turns');
    expect(finding?.sentence).toContain('an earlier visit 23 turns');
    expect(known).toMatchObject([{ use: 'covered beside the list' }]);
  });

  it('what the list has measured stays', () => {
    expect(dutyWith(listed({ turns: '24' }, ['turns']), visit({ turns: '23' })).duty.turns).toMatchObject({ low: 24 });
  });

  it('turns of a part of a stroke, and a visit that is not before the hire, are not used', () => {
    const line = listed({});
    const part = dutyWith(line, visit({ turns: '5', full_stroke: 'no' }));
    expect(part.duty.turns.basis).not.toBe('measured');
    expect(knowValve({ line, records: [{ ...visit({ turns: '5' }), on: STARTS_ON }], startsOn: STARTS_ON }).line).toBe(
      line,
    );
  });

  it('two visits that do not agree are both covered and told', () => {
    const old = visit({ turns: '40', visited_on: '2027-05-01' });
    const { duty } = dutyWith(listed({}), old, visit({ turns: '23' }));
    expect(duty.turns).toMatchObject({ low: 23, nominal: 23, high: 40 });
    expect(findingIds(duty)).toContain('visits-disagree-turns');
  });

  it('a line of three valves takes turns only when all three are known', () => {
    const line = listed({ qty: '3' });
    const some = dutyWith(line, visit({ turns: '23' }), visit({ turns: '25', number: '2' }));
    expect(some.duty.turns.basis).not.toBe('measured');
    expect(findingIds(some.duty)).toContain('visits-of-some-valves');
    const all = [visit({ turns: '23' }), visit({ turns: '25', number: '2' }), visit({ turns: '24', number: '3' })];
    expect(dutyWith(line, ...all).duty.turns).toMatchObject({ low: 23, high: 25, basis: 'measured' });
  });

  it('of two closing directions none counts', () => {
    const { duty } = dutyWith(listed({ closes: 'clockwise' }), visit({ closes: 'anticlockwise' }));
    expect(duty.closes).toBe('unknown');
    expect(findingIds(duty)).toEqual(
      expect.arrayContaining(['visit-against-list-closes', 'closing-direction-unknown']),
    );
    expect(dutyWith(listed({}), visit({ closes: 'anticlockwise' })).duty.closes).toBe('anticlockwise');
  });

  it('of two conditions the worse counts, and “free” does not keep for years', () => {
    expect(dutyWith(listed({ condition: 'free' }), visit({ condition: 'seized' })).duty.seized).toBe(true);
    expect(dutyWith(listed({ condition: 'stiff' }), visit({ condition: 'free' })).line.state.condition?.value).toBe(
      'stiff',
    );
    const old = visit({ condition: 'free', visited_on: '2027-01-10' });
    expect(dutyWith(listed({}), old).line.state.condition).toBeUndefined();
    expect(dutyWith(listed({}), visit({ condition: 'free' })).line.state.condition?.value).toBe('free');
  });

  it('a visit that moved the valve says when it was last moved', () => {
    const { line } = dutyWith(listed({ last_operated: '1990' }), visit({ turns: '23' }));
    expect(line.state.lastOperated).toMatchObject({ value: 0.1, basis: 'measured' });
    expect(dutyWith(listed({ last_operated: '2030' }), visit({ turns: '23' })).line.state.lastOperated?.value).toBe(
      2030,
    );
  });
});

describe('torque that was read on an earlier visit', () => {
  it('within a year is measured and starts the valve as it was read', () => {
    const { duty } = dutyWith(listed({}), visit({ starting_torque: '80 N·m' }));
    expect(duty.opening.starting).toMatchObject({ low: 80, high: 80, basis: 'measured' });
    expect(step(duty, 'visit-starting-torque')?.result.nominal).toBe(80);
  });

  it('of years ago reaches higher by the rule of thumb, which is said', () => {
    const { duty } = dutyWith(listed({}), visit({ starting_torque: '80 N·m', visited_on: '2025-03-04' }));
    // Five years back, four after the first: 0, 5 and 10 % a year.
    expect(duty.opening.starting.low).toBeCloseTo(80, 9);
    expect(duty.opening.starting.nominal).toBeCloseTo(96, 6);
    expect(duty.opening.starting.high).toBeCloseTo(112, 6);
    expect(duty.opening.starting.basis).toBe('rule of thumb');
    expect(step(duty, 'visit-starting-torque')?.source).toContain('4 after the first; common practice, no source');
  });

  it('the highest of a stroke is the upper end of starting, and no bound of what the valve bears', () => {
    const plain = dutyWith(listed({}));
    const { duty } = dutyWith(listed({}), visit({ highest_torque: '60 N·m' }));
    expect(duty.opening.starting).toMatchObject({ nominal: 60, high: 60 });
    expect(duty.opening.starting.low).toBeCloseTo(36, 9);
    expect(duty.bounds).toEqual(plain.duty.bounds);
    expect(duty.opening.neverExceed).toEqual(plain.duty.opening.neverExceed);
  });

  it('starting and highest together reach from the one to the other', () => {
    const { duty } = dutyWith(listed({}), visit({ starting_torque: '50 N·m', highest_torque: '90 N·m' }));
    expect(duty.opening.starting).toMatchObject({ low: 50, nominal: 50, high: 90 });
  });

  it('against a list that says otherwise covers both and is told', () => {
    const { duty } = dutyWith(listed({ starting_torque: '200 N·m' }), visit({ starting_torque: '80 N·m' }));
    expect(duty.opening.starting).toMatchObject({ low: 80, nominal: 200, high: 200 });
    expect(findingIds(duty)).toContain('visit-against-list-starting-torque');
  });
});

import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { recogniseKind } from '#lib/intake/recognise-kind.ts';
import { dutyOf, findingIds, PLAIN_SITE, say, sayFact, step, tr, wedge } from '#tests/support/lists/duty-lines.ts';

describe('screw-driven valves', () => {
  it('a reverse-acting stem is pushed when it opens, so there its bowing bounds the torque (statics, no source needed)', () => {
    const bound = (action: 'direct' | 'reverse') =>
      dutyOf({ ...wedge, action: sayFact(action) }).bounds.find(({ kind }) => kind === 'stem buckling')?.directions;
    expect(bound('direct')).toEqual(['closing']);
    expect(bound('reverse')).toEqual(['opening']);
  });

  it.each(['parallel slide gate', 'knife gate', 'penstock'] as const)(
    '%s shuts by position, so its turns are counted (common practice, no source)',
    (type) => {
      const duty = dutyOf({ valveType: sayFact(type), size: say('m', 0.1), torque: { turns: say('turn', 9) } });
      expect(findingIds(duty)).toContain('position-seated');
      expect(duty.countTurns).toBe(true);
    },
  );

  it('a double-disc gate is wedged apart at its closed end and is not called position-seated (US NRC course manual, from memory)', () => {
    const ids = findingIds(dutyOf({ ...wedge, valveType: sayFact('double disc gate') }));
    expect(ids).toContain('discs-spread-at-the-end');
    expect(ids).toContain('pressure-locking');
    expect(ids).not.toContain('position-seated');
  });

  // Kansas Rural Water Association, The Kansas Lifeline, November 2011: 3 × 8 + 3 = 27 turns at 8 in.
  it('turns by the thread are held against the waterworks rule, and the thread is taken', () => {
    const gate: Partial<ScheduleLine> = {
      valveType: sayFact('gate'),
      size: say('m', 0.2),
      rating: sayFact('PN 16'),
      interface: { drivenBy: sayFact('nut') },
    };
    const odd = dutyOf({ ...gate, stem: { travel: say('m', 0.2), thread: tr(32, 3) } });
    const asked = odd.findings.find(({ id }) => id === 'turns-by-thread-against-rule');
    expect(asked?.sentence).toContain('By travel and thread a stroke takes 66.7 to 68.2 turns');
    expect(asked?.sentence).toContain('waterworks rule of three to the inch 24.6 to 26.6');
    expect(odd.turns.nominal).toBeCloseTo(67.2, 1);
    const usual = dutyOf({ ...gate, stem: { travel: say('m', 0.2), thread: tr(32, 6) } });
    expect(findingIds(usual)).not.toContain('turns-by-thread-against-rule');
    const twice = dutyOf({ ...gate, stem: { travel: say('m', 0.2), thread: tr(32, 10, 2) } });
    expect(findingIds(twice)).toContain('turns-by-thread-against-rule');
  });

  // ISO 2901 and 2904: Tr d x lead (P pitch); a lead that is no multiple of its pitch is no designation.
  it('a thread whose lead is no multiple of its pitch is told beside the duty, and its pitch is kept', () => {
    const { line } = readLine({ row: 2, cells: { size: 'DN 100', stem_thread: 'Tr36x10(P6)' } });
    const duty = assessDuty({ line, site: PLAIN_SITE });
    const told = duty.findings.find(({ about }) => about.includes('stem_thread'));
    expect(told?.sentence).toContain('gives a lead that is no multiple of its pitch');
    expect(step(duty, 'lead')?.result.nominal).toBeCloseTo(0.006);
  });

  // Joukowsky's equation; hydrants that shut quickly are a known cause of surge, common practice, no source.
  it('a hydrant is warned of surge as a valve is; a stop tap is too small for it', () => {
    const flowing: ScheduleLine['process'] = { flowing: sayFact('flowing') };
    expect(findingIds(dutyOf({ valveType: sayFact('hydrant'), process: flowing }))).toContain('surge-estimate');
    expect(findingIds(dutyOf({ valveType: sayFact('stop tap'), process: flowing }))).not.toContain('surge-estimate');
  });

  // Words of the trade, common practice, no source: all of these are shut by a disc that a screw presses on its seat.
  it.each([
    'screw-down non-return valve',
    'SDNR',
    'stop-check valve',
    'angle valve',
    'needle valve',
    'screwdown valve',
  ])('“%s” is turned, and is a globe valve by the way it moves', (text) => {
    expect(recogniseKind(text)).toMatchObject({ kind: 'valve', type: 'globe' });
  });
  it.each([
    ['RSGV', 'gate'],
    ['NRS', 'gate'],
    ['OS&Y', 'gate'],
    ['KGV', 'knife gate'],
  ])('“%s” is short for a %s', (text, type) => {
    expect(recogniseKind(text)).toMatchObject({ kind: 'valve', type });
  });
  it('a plain non-return valve works by itself still', () => {
    expect(recogniseKind('non-return valve')).toMatchObject({ kind: 'not operated' });
    expect(recogniseKind('swing check valve')).toMatchObject({ kind: 'not operated' });
  });
});

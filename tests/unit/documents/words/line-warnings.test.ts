import { describe, expect, it } from 'vitest';
import { gatherWarnings, warningNumbers } from '#lib/documents/words/line-warnings.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Severity } from '#lib/kernel/finding.ts';
import { SAMPLE_LINES } from '#tests/support/papers/sample-plan.ts';

function warned(tags: readonly string[], told: readonly (readonly [Severity, string])[]) {
  const base = SAMPLE_LINES.find(({ assembly }) => assembly !== null)?.assembly;
  if (!base) throw new Error('The sample plan has no assembly.');
  const findings = told.map(([severity, sentence], index) => ({
    id: `f-${index}`,
    severity,
    about: [],
    sentence,
    source: 's',
  }));
  const assembly: Assembly = { ...base, findings };
  return { tags, assembly };
}

describe('warnings of many lines', () => {
  const a = warned(
    ['A1', 'A2'],
    [
      ['warning', 'A1: the nut is a guess'],
      ['note', 'A1: try by hand'],
      ['warning', 'A1: only here'],
    ],
  );
  const b = warned(['B1'], [['warning', 'B1: the nut is a guess']]);
  const warnings = gatherWarnings([a, b, { tags: ['C1'], assembly: null }], 'si');

  it('are told once, without the name of the first line, with all lines they speak of', () => {
    expect(warnings).toEqual([
      { number: 1, sentence: 'The nut is a guess', tags: ['A1', 'A2', 'B1'] },
      { number: 2, sentence: 'Only here', tags: ['A1', 'A2'] },
    ]);
  });

  it('are found again from their class; notes are left to the site sheet', () => {
    expect(warningNumbers(a, { warnings, system: 'si' })).toEqual([1, 2]);
    expect(warningNumbers(b, { warnings, system: 'si' })).toEqual([1]);
  });
});

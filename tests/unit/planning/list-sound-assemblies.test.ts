import { describe, expect, it } from 'vitest';
import { holdSound } from '#lib/planning/list-sound-assemblies.ts';
import { kilograms } from '#lib/units/quantity.ts';
import { wheelAssembly } from '#tests/support/kits/sample-assemblies.ts';

describe('holdSound', () => {
  const { assembly, ...facts } = wheelAssembly();
  const listed = { assemblies: [assembly], more: 3, unserved: null, effort: {} };

  it('hands on what the independent check finds too', () => expect(holdSound(facts, listed)).toBe(listed));

  it('shows nothing of a list in which one assembly does not stand up to the check, and says which and why', () => {
    const wrong = { ...assembly, figures: { ...assembly.figures, mass: kilograms(assembly.figures.mass + 1) } };
    expect(() => holdSound(facts, { ...listed, assemblies: [assembly, wrong] })).toThrow(
      /does not agree with assembly SD-1:0\+SH-1.* of V-1: .*mass/i,
    );
  });
});

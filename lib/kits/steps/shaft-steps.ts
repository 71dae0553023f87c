/*
 * The steps of shafts and keys whose section is stated: stress, wind-up, energy stored, highest speed by length.
 * Invariant: the link that winds up most is shown, at its longest, under the highest torque of the chain.
 * Not here: whether it is too much (rules/shafts.ts).
 * Read next: assembly-steps.ts.
 */
import { storedEnergy } from '#lib/engineering/extension-shaft.ts';
import { hollowShaftStress } from '#lib/engineering/shaft-torsion.ts';
import { mostWound, shaftPieces, WHIRL_SHARE, whirlLimit, windUpOf } from '#lib/rules/shafts.ts';
import type { Step } from '#lib/units/calculation-step.ts';
import { fixed, just, PRACTICE, result, type StepsInput } from './step-values.ts';

export function shaftSteps({ whole }: StepsInput): readonly Step[] {
  const link = mostWound(whole);
  if (link === null) return [];
  const torque = whole.core.figures.highestAtValve;
  const pieces = shaftPieces(link);
  const names = pieces.map(({ number }) => number).join(' and ');
  const wound = windUpOf(link, torque);
  const stress = Math.max(
    ...pieces.map(({ section: { outer, inner } }) =>
      hollowShaftStress({ torque, outerDiameter: outer, innerDiameter: inner }),
    ),
  );
  const highest = fixed('T', 'Highest torque of the chain', torque, 'N·m', 'The steps of the torques');
  const sections = pieces.flatMap(({ number, section }, index) => [
    fixed(`D${index + 1}`, `Outer diameter of ${number}`, section.outer, 'm'),
    fixed(`d${index + 1}`, `Inner diameter of ${number}`, section.inner, 'm'),
  ]);
  const lengths = pieces.map(({ number, length }, index) =>
    fixed(`L${index + 1}`, `Greatest length of ${number}`, length, 'm'),
  );
  return [
    {
      id: 'shaft-stress',
      name: `Highest shear stress in ${names}`,
      formula: 'τ = 16·T·D/(π·(D⁴ − d⁴)), of the thinnest',
      inputs: [highest, ...sections],
      result: result('Pa', just(stress), 'computed'),
      source: 'J. M. Gere, Mechanics of Materials, section 3.3.',
    },
    {
      id: 'wind-up',
      name: `Wind-up of ${names}`,
      formula: 'φ = Σ T·L/(G·π·(D⁴ − d⁴)/32), steel G = 79 GPa',
      inputs: [highest, ...sections, ...lengths],
      result: result('°', just(wound), 'computed'),
      source: 'J. M. Gere, Mechanics of Materials, Example 3.1.',
    },
    {
      id: 'stored-energy',
      name: `Energy that ${names} gives back when let go`,
      formula: 'E = T·φ/2, φ in radians',
      inputs: [highest, fixed('φ', 'Wind-up', wound, '°', 'The step before')],
      result: result('J', just(storedEnergy({ torque, windUp: wound })), 'computed'),
      source: 'Work of a linear spring.',
    },
    {
      id: 'whirl-limit',
      name: `Highest speed of ${names} by its length`,
      formula: 'n = x·60/(2π)·(π/ΣL)²·√(E/ρ)·√(D² + d²)/4, of the thinnest; steel E = 210 GPa, ρ = 7850 kg/m³',
      inputs: [
        fixed('x', 'Part of the whirling speed that is used', WHIRL_SHARE, '1', PRACTICE),
        ...sections,
        ...lengths,
      ],
      result: result('1/min', just(whirlLimit(link)), 'rule of thumb'),
      source: 'First bending frequency of a shaft between two supports, handbooks, from memory.',
    },
  ];
}

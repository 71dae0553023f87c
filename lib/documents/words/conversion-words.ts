/*
 * What papers in US customary units say of the conversion: the factors, and the marks on a limiter's own scale where that is in N·m.
 * Invariant: factors come from the table of units; papers in SI say nothing of it.
 * Not here: converting (units/format-quantity.ts).
 * Read next: ../papers/calculation-paper.ts, ../papers/site-class.ts.
 */

import type { Block } from '#lib/documents/papers/paper.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import { formatMark, type UnitSystem } from '#lib/units/format-quantity.ts';
import { type Dimension, findUnit } from '#lib/units/unit-table.ts';

const FACTORS: readonly { readonly name: string; readonly dimension: Dimension; readonly si: string }[] = [
  { name: 'lbf·ft', dimension: 'torque', si: 'N·m' },
  { name: 'lbf', dimension: 'force', si: 'N' },
  { name: 'in', dimension: 'length', si: 'm' },
  { name: 'ft', dimension: 'length', si: 'm' },
  { name: 'in²', dimension: 'area', si: 'm²' },
  { name: 'psi', dimension: 'pressure', si: 'Pa' },
  { name: 'lb', dimension: 'mass', si: 'kg' },
  { name: 'ft/s', dimension: 'speed', si: 'm/s' },
  { name: 'cfm', dimension: 'flow', si: 'm³/s' },
  { name: 'hp', dimension: 'power', si: 'W' },
  { name: 'gal', dimension: 'volume', si: 'l' },
];

/** For those who redo a calculation by hand; nothing on a paper in SI. */
export function conversionBlocks(system: UnitSystem): readonly Block[] {
  if (system === 'si') return [];
  const factors = FACTORS.map(({ name, dimension, si }) => {
    const factor = findUnit({ text: name, dimension })?.factor ?? 1;
    return `1 ${name} = ${Number(factor.toPrecision(8))} ${si}`;
  });
  return [
    {
      kind: 'text',
      tone: 'muted',
      text: `Conversion: everything was worked out in SI and is printed here in US customary units, each value from the exact one. The formulas hold in SI: to redo a step by hand, turn its inputs into SI, work the formula, and turn the result back. ${factors.join('; ')}; °C = (°F − 32) · 5/9. Accelerations, sound, energy, voltage, angles and times are the same in both. Sources keep the figures that they print, with US customary ones in brackets; equipment keeps its name.`,
    },
  ];
}

/** The marks again as they are on a scale in N·m; nothing on a paper in SI. */
export function scaleBlocks(assembly: Assembly, system: UnitSystem): readonly Block[] {
  if (system === 'si') return [];
  const marks = (['opening', 'closing'] as const).flatMap((direction) => {
    const { unseat, run, seat } = assembly[direction];
    return Object.entries({ unseat, run, seat }).flatMap(([part, setting]) =>
      setting === null
        ? []
        : [
            `${direction}, ${part}: ${[setting.start, setting.step, setting.ceiling].map((mark) => formatMark(mark, 'si')).join(', ')}`,
          ],
    );
  });
  if (marks.length === 0) return [];
  return [
    {
      kind: 'text',
      tone: 'muted',
      text: `Conversion: on a scale marked in N·m start, step and ceiling are ${marks.join('; ')}. 1 lbf·ft = 1.3558 N·m; marks in lbf·ft are cut off, never rounded up.`,
    },
  ];
}

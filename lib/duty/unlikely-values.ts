/*
 * Asks about values that can be but do not go together: wheel, stem, turns, travel, seat against size, pressure against rating.
 * Invariant: a doubted value is kept; one that would make the valve look stronger is widened to what is usual for its size.
 * Not here: values that cannot be meant at all (sound-line.ts).
 * Read next: size-expectations.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import { formatQuantity, formatRange, inUsUnits } from '#lib/units/format-quantity.ts';
import { type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { figure } from '#lib/units/say-figure.ts';
import type { Expectation } from './expectation.ts';
import { type NumberColumn, PLAUSIBLE } from './plausible-values.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { expectations } from './size-expectations.ts';
import { threadQuestions, yearQuestions } from './thread-questions.ts';

export function askUnlikely(line: ScheduleLine): {
  readonly line: ScheduleLine;
  readonly findings: readonly Finding[];
} {
  const doubted = expectations(line).filter(({ value, usual }) => value.low > usual[1] || value.high < usual[0]);
  const findings = [...doubted.map(question), ...threadQuestions(line), ...yearQuestions(line)];
  const wheel = doubted.find(({ column }) => column === 'wheel_diameter');
  const stem = doubted.find(({ column, widens }) => column === 'stem_diameter' && widens);
  const wheelDiameter = widened(line.interface.wheelDiameter, wheel);
  const diameter = widened(line.stem.diameter, stem);
  return {
    line: {
      ...line,
      stem: diameter === undefined ? line.stem : { ...line.stem, diameter },
      interface: wheelDiameter === undefined ? line.interface : { ...line.interface, wheelDiameter },
    },
    findings,
  };
}

function question({ column, value, usual, against, basis, about, widens }: Expectation): Finding {
  const { label, unit } = PLAUSIBLE[column];
  const text = (end: number): string =>
    figure({ si: formatQuantity({ value: end, unit, system: 'si' }), us: inUsUnits(unit, end) });
  const kept =
    widens && value.basis !== 'measured'
      ? 'It is kept, and the figures cover what is usual as well'
      : 'It is kept as it stands';
  return {
    id: 'value-unlikely',
    severity: 'warning',
    about: [column, ...about],
    sentence: `${label} ${figure({ si: formatRange(value, 'si'), us: formatRange(value, 'us') })} is unlikely ${against}: usual is ${text(usual[0])} to ${text(usual[1])}. Is it meant so? ${kept}; check ${checked(column, about)}.`,
    source: basis,
  };
}

function checked(column: NumberColumn, about: readonly string[]): string {
  return [column, ...about].map((name) => name.replaceAll('_', ' ')).join(' and ');
}

/** A value that was not read off this valve reaches as far as the near end of what is usual. */
function widened<U extends Unit>(value: Known<U> | undefined, doubt: Expectation | undefined): Known<U> | undefined {
  if (value === undefined || doubt === undefined || value.basis === 'measured') return undefined;
  const near = value.low > doubt.usual[1] ? doubt.usual[1] : doubt.usual[0];
  const { basis, source, nominal } = value;
  return known(
    value.unit,
    { low: Math.min(value.low, near), nominal, high: Math.max(value.high, near) },
    { basis, source: `${source} Unlikely ${doubt.against}: what is usual is covered as well.` },
  );
}

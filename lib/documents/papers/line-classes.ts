/*
 * Lines gathered into classes of equal valves done with the same assembly, in working order, with the words that name them.
 * Invariant: every part of a line is in exactly one class; the order follows crew, place order and tag, so the same plan prints the same way.
 * Not here: which lines are equal (kits decides by classId).
 * Read next: quote-paper.ts, site-paper.ts.
 */

import { chainNumbers } from '#lib/documents/drawings/part-numbers.ts';
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import { formatQuantity, formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { PaperLine } from './paper-inputs.ts';

export interface PaperClass {
  readonly number: number;
  readonly lines: readonly PaperLine[];
  readonly tags: readonly string[];
  readonly valves: number;
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly assembly: Assembly | null;
  readonly crews: readonly number[];
}

const order = new Intl.Collator('en', { numeric: true });

export function inWorkingOrder(lines: readonly PaperLine[]): readonly PaperLine[] {
  return lines.toSorted(
    (a, b) =>
      (a.crew ?? Infinity) - (b.crew ?? Infinity) ||
      (a.line.place.placeOrder ?? Infinity) - (b.line.place.placeOrder ?? Infinity) ||
      order.compare(a.line.tag, b.line.tag) ||
      0,
  );
}

export function gatherClasses(lines: readonly PaperLine[]): readonly PaperClass[] {
  const groups = new Map<string, PaperLine[]>();
  for (const line of lines.toSorted((a, b) => order.compare(a.line.tag, b.line.tag))) {
    const key = `${line.classId}\n${line.assembly?.id ?? ''}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [line]);
    else group.push(line);
  }
  return [...groups.values()].flatMap((group, index) => {
    const first = group[0];
    if (first === undefined) return [];
    const crews = [...new Set(group.flatMap((line) => (line.crew === undefined ? [] : [line.crew])))].toSorted(
      (a, b) => a - b,
    );
    return [
      {
        number: index + 1,
        lines: group,
        tags: [...new Set(group.map((line) => line.line.tag))],
        valves: group.reduce((sum, line) => sum + line.line.qty, 0),
        line: first.line,
        duty: first.duty,
        assembly: first.assembly,
        crews,
      },
    ];
  });
}

/** Lines of the schedule behind the parts: a line that two crews share counts once. */
export function countLines(lines: readonly PaperLine[]): number {
  return new Set(lines.map(({ line }) => line.tag)).size;
}

/** `wedge gate, DN 250, PN 16` */
export function valveWords(line: ScheduleLine): string {
  const size = line.size === undefined ? 'size not known' : nominalSize(line.size.nominal);
  const type =
    line.valveType === undefined || line.valveType.value === 'unknown' ? 'valve, type not known' : line.valveType.value;
  return [type, size, ...(line.rating === undefined ? [] : [line.rating.value])].join(', ');
}

/** DN is a number without unit: the nominal size in mm. */
export function nominalSize(size_m: number): string {
  return `DN ${Math.round(size_m * 1000)}`;
}

/** `D-214 · H-126 · W-117 · R-210` */
export function partNumbersText(assembly: Assembly): string {
  return chainNumbers(assembly).join(' · ');
}

export function modelName(models: readonly Model[], number: string): string {
  return models.find((model) => model.number === number)?.name ?? 'not in the catalogue given';
}

/** `62…140 N·m`, with the likely value where it says more. */
export function rangeText(value: Known<Unit>, system: UnitSystem): string {
  const range = formatRange(value, system);
  const likely = formatQuantity({ value: value.nominal, unit: value.unit, system });
  return value.low === value.high || range === likely ? range : `${range}, likely ${likely}`;
}

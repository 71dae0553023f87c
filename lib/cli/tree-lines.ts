/*
 * An explanation in text: one sentence a line, what it rests on two columns further in.
 * Invariant: the same tree as the screen shows, all of it.
 * Not here: making the tree (../kits/why/reason.ts).
 * Read next: why-command.ts.
 */
import type { Reason } from '#lib/kits/why/reason.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';
import { sourceIn } from '#lib/units/us-beside.ts';

export function treeLines(reason: Reason, system: UnitSystem): readonly string[] {
  const { kind, source, children } = reason;
  const head = kind === 'answer' ? '' : `${kind}: `;
  const tail = source === undefined ? '' : ` (${sourceIn(source, system)})`;
  return [
    `${head}${sentenceIn(reason, system)}${tail}`,
    ...children.flatMap((child) => treeLines(child, system).map((line) => `  ${line}`)),
  ];
}

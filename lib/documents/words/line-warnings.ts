/*
 * The warnings of many classes, each told once with the lines that it speaks of.
 * Invariant: every warning of every class has a number; equal sentences share one.
 * Not here: notes and refusals, and where the numbers are printed (../papers/quote-paper.ts).
 * Read next: ../papers/quote-paper.ts, ../papers/line-classes.ts.
 */
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';

export interface WarnedClass {
  readonly tags: readonly string[];
  readonly assembly: Assembly | null;
}

export interface LineWarning {
  readonly number: number;
  readonly sentence: string;
  readonly tags: readonly string[];
}

export function gatherWarnings(classes: readonly WarnedClass[], system: UnitSystem): readonly LineWarning[] {
  const gathered = new Map<string, string[]>();
  for (const one of classes) {
    for (const sentence of sentencesOf(one, system))
      gathered.set(sentence, [...(gathered.get(sentence) ?? []), ...one.tags]);
  }
  return [...gathered].map(([sentence, tags], index) => ({ number: index + 1, sentence, tags }));
}

/** The numbers of a class's warnings, in order. */
export function warningNumbers(
  one: WarnedClass,
  { warnings, system }: { readonly warnings: readonly LineWarning[]; readonly system: UnitSystem },
): readonly number[] {
  const sentences = new Set(sentencesOf(one, system));
  return warnings.filter(({ sentence }) => sentences.has(sentence)).map(({ number }) => number);
}

function sentencesOf({ assembly, tags }: WarnedClass, system: UnitSystem): readonly string[] {
  const findings = (assembly?.findings ?? []).filter(({ severity }) => severity === 'warning');
  return findings.map((finding) => withoutTag(sentenceIn(finding, system), tags));
}

/** A finding speaks of the first line of its class by name; told for the whole class it goes without. */
export function withoutTag(sentence: string, tags: readonly string[]): string {
  const tag = tags.find((one) => sentence.startsWith(`${one}: `));
  const plain = tag === undefined ? sentence : sentence.slice(tag.length + 2);
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}`;
}

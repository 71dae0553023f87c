/*
 * The rule of couplings: what joins what from the drive to the adapter.
 * Invariant: two parts join only where form and size are equal and one side is male, the other female.
 * Not here: which parts stand next to each other (kits).
 * Read next: all-rules.ts.
 */
import type { Coupling } from '#lib/equipment/coupling.ts';
import { joins } from '#lib/equipment/coupling.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Rule } from './rule.ts';
import { lineFacts } from './sample-facts.ts';
import { sampleDrive, sampleHead, sampleKey } from './sample-parts.ts';

/** Coupling that a part turns the next one with; null where nothing follows. */
export function outputOf(part: Model): Coupling | null {
  if (part.role === 'drive' || part.role === 'head' || part.role === 'extension') return part.facts.output;
  return part.role === 'option' ? (part.facts.output ?? null) : null;
}

export function inputOf(part: Model): Coupling | null {
  if (part.role === 'head' || part.role === 'extension' || part.role === 'adapter') return part.facts.input;
  return part.role === 'option' ? (part.facts.input ?? null) : null;
}

function fits(upstream: Model, downstream: Model): boolean {
  const output = outputOf(upstream);
  const input = inputOf(downstream);
  return output !== null && input !== null && joins(output, input);
}

const tell = (coupling: Coupling | null): string =>
  coupling === null ? 'no coupling' : `${coupling.form} ${coupling.size} ${coupling.gender}`;

export const COUPLING_RULES: readonly Rule[] = [
  {
    id: 'couplings-join',
    topic: 'couplings',
    title: 'Couplings join where form and size match',
    scope: 'pair',
    severity: 'refusal',
    source: 'ISO 1174 squares; splines and faces of the house',
    speaksOf: ['drive', 'head', 'option', 'extension', 'adapter'],
    speaks: ({ upstream, downstream }) => !fits(upstream, downstream),
    sentence: ({ upstream, downstream }) =>
      `${upstream.number} turns ${tell(outputOf(upstream))}; ${downstream.number} takes ${tell(inputOf(downstream))}: they do not join.`,
    examples: () => [
      {
        name: 'drive and head',
        facts: { ...lineFacts(), upstream: sampleDrive(), downstream: sampleHead() },
        speaks: false,
      },
      {
        name: 'head and key',
        facts: { ...lineFacts(), upstream: sampleHead(), downstream: sampleKey() },
        speaks: false,
      },
      {
        name: 'drive and key',
        facts: { ...lineFacts(), upstream: sampleDrive(), downstream: sampleKey() },
        speaks: true,
      },
    ],
  },
];

/*
 * What each piece of a plan is needed for: models against classes of equal lines, in one order for all rows.
 * Invariant: a long list is drawn together into bands of neighbouring classes; every valve stays counted.
 * Not here: what would be lost without a piece (study-enquiry.ts).
 * Read next: plan-view.ts.
 */
import { partNumbers } from '#lib/documents/drawings/part-numbers.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';

/** Bands that can still be told apart on a phone. */
const MOST_BANDS = 48;
const TAGS_TOLD = 12;

export interface CoverageBand {
  readonly valves: number;
  readonly tags: readonly string[];
  readonly lines: number;
}

export interface CoverageRow {
  readonly number: string;
  readonly count: number;
  readonly valves: number;
  readonly lines: number;
  readonly tags: readonly string[];
  /** By band: the share of its valves that need the piece. */
  readonly shares: readonly number[];
}

export interface Coverage {
  readonly valves: number;
  readonly bands: readonly CoverageBand[];
  readonly rows: readonly CoverageRow[];
}

interface Work {
  readonly classId: string;
  readonly tag: string;
  readonly qty: number;
  readonly parts: ReadonlySet<string>;
}

export function coverageOf(outcome: PlanOutcome): Coverage {
  const work = workOf(outcome);
  const classes = [...new Set(work.map(({ classId }) => classId))];
  const size = Math.max(1, Math.ceil(classes.length / MOST_BANDS));
  const bandOf = new Map(classes.map((id, index) => [id, Math.floor(index / size)]));
  const bands = Array.from({ length: Math.ceil(classes.length / size) }, (_, index) =>
    bandFrom(work.filter(({ classId }) => bandOf.get(classId) === index)),
  );
  const carried = new Map<string, number>();
  for (const { item, count } of outcome.kits.flatMap(({ items }) => items))
    carried.set(item, (carried.get(item) ?? 0) + count);
  const rows = [...carried].map(([number, count]): CoverageRow => {
    const needing = work.filter(({ parts }) => parts.has(number));
    const valves = new Array<number>(bands.length).fill(0);
    for (const { classId, qty } of needing) {
      const band = bandOf.get(classId) ?? 0;
      valves[band] = (valves[band] ?? 0) + qty;
    }
    const tags = [...new Set(needing.map(({ tag }) => tag))];
    return {
      number,
      count,
      valves: needing.reduce((sum, { qty }) => sum + qty, 0),
      lines: tags.length,
      tags: tags.slice(0, TAGS_TOLD),
      shares: valves.map((some, band) => some / Math.max(1, bands[band]?.valves ?? 1)),
    };
  });
  return {
    valves: work.reduce((sum, { qty }) => sum + qty, 0),
    bands,
    rows: rows.filter(({ valves }) => valves > 0).sort((a, b) => b.valves - a.valves),
  };
}

function workOf({ lines, assemblies }: PlanOutcome): readonly Work[] {
  const partsOf = new Map(Object.entries(assemblies).map(([key, one]) => [key, new Set(partNumbers(one))]));
  return lines.flatMap(({ classId, tag, parts }) =>
    parts.map(({ assembly, qty }) => ({ classId, tag, qty, parts: partsOf.get(assembly) ?? new Set<string>() })),
  );
}

function bandFrom(work: readonly Work[]): CoverageBand {
  const tags = [...new Set(work.map(({ tag }) => tag))];
  return { valves: work.reduce((sum, { qty }) => sum + qty, 0), tags: tags.slice(0, TAGS_TOLD), lines: tags.length };
}

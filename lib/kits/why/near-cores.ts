/*
 * How near the cores of a question come to passing the rules of a conflict.
 * Invariant: cores of parts that a part rule of the conflict refuses are none of them; the share below one is how far the torque falls short.
 * Not here: telling them (tell-cores.ts, tell-beside-cores.ts).
 * Read next: ../cores/core-table.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import { type AlikeCores, type HeadAt, withHeads } from '../cores/alike-cores.ts';
import { bitOf, type CoreTable, coreTable, looksAtCounter, looksAtHead } from '../cores/core-table.ts';
import { remembering } from '../grips/element-table.ts';
import type { ClassQuestion } from '../search-class.ts';

export interface NearCores {
  readonly table: CoreTable;
  /** Cores whose parts the conflict's part rules let pass. */
  readonly alike: readonly AlikeCores[];
  readonly passes: (part: Model | null) => boolean;
  /** Broken core rules of the conflict; the counter is left out. */
  readonly count: (one: AlikeCores, at: HeadAt) => number;
  /** Whether the count may differ from head to head. */
  readonly looksAtHead: boolean;
  /** The cores by the bits of the rules that refuse them, where every core rule of the conflict has one and no part rule is in it; else null. */
  readonly byBits: ReadonlyMap<number, readonly AlikeCores[]> | null;
  /** How many rules of the conflict are among some bits. */
  readonly broken: (bits: number) => number;
}

export function nearCores(question: ClassQuestion, conflict: readonly string[]): NearCores {
  const table = coreTable(question);
  const passes = passesOf(question, conflict);
  const rules = RULES_OF.core.filter(({ id }) => conflict.includes(id));
  const bits = table.bits(rules);
  const mask = rules.reduce((sum, rule) => sum | bitOf(rule), 0);
  const rest = rules.filter((rule) => bitOf(rule) === 0);
  const plain = rest.filter((rule) => !looksAtCounter(rule));
  const ofCounter = rest.filter(looksAtCounter);
  return {
    table,
    alike: passes === null ? table.alike : table.alike.flatMap((one) => withPassing(one, passes)),
    passes: (part) => part === null || passes === null || passes(part),
    looksAtHead: rest.some(looksAtHead),
    byBits: passes === null && rest.length === 0 ? table.byBits(rules) : null,
    broken: (bits) => ones(bits & mask),
    count: (one, at) => {
      const broken = ones(bits(one));
      if (rest.length === 0) return broken;
      const ofRest = plain.filter((rule) => table.refuses(rule, one, at));
      const ofCounters = ofCounter.filter((rule) => table.refusesCounter(rule, table.core(one, at), null));
      return broken + ofRest.length + ofCounters.length;
    },
  };
}

/** What the part rules of a conflict let pass; null where it has none. */
function passesOf({ facts }: ClassQuestion, conflict: readonly string[]): ((part: Model) => boolean) | null {
  const rules = RULES_OF.part.filter((one) => one.severity === 'refusal' && conflict.includes(one.id));
  return rules.length === 0 ? null : remembering((part: Model) => !rules.some((one) => one.speaks({ ...facts, part })));
}

function withPassing(one: AlikeCores, passes: (part: Model) => boolean): AlikeCores | readonly AlikeCores[] {
  if (!passes(one.drive) || (one.limiter !== null && !passes(one.limiter))) return [];
  return withHeads(one, passes) ?? [];
}

/** How many bits are set. */
function ones(bits: number): number {
  let count = 0;
  for (let left = bits; left !== 0; left &= left - 1) count += 1;
  return count;
}

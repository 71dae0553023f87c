/*
 * Cases of a line as bits, and for a case rule the bits it refuses: asked once for cases that are alike in what the rule looks at.
 * Invariant: the same bits come out as from asking the rule about every case.
 * Not here: which cases there are (grip-cases.ts).
 * Read next: grip-elements.ts, conflict-table.ts.
 */
import type { FactsOf, GripCase } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import type { Tally } from './refusals.ts';

/** Fields of a case that a rule looks at besides its kind; a rule that is not named is asked about every case. */
export const CASE_FIELDS: ReadonlyMap<string, readonly string[]> = new Map([
  ['wheel-diameter-within-adapter', ['diameter_m']],
  ['wheel-spokes-within-adapter', ['spokes']],
  ['wheel-dish-within-adapter', ['dish_deg']],
  ['nut-socket-fits', ['shape', 'acrossFlats_m']],
  ['key-long-enough', ['depth_m']],
  ['key-not-too-long', ['depth_m']],
]);

/** Facts of a case rule without the case. */
export type CaseSetting = Omit<FactsOf['case'], 'gripCase'>;

export interface CaseBits {
  readonly all: bigint;
  /** Cases that a rule refuses in a setting. */
  readonly refusedBy: (rule: RuleOf<'case'>, setting: CaseSetting) => bigint;
  /** Cases that all rules let pass. */
  readonly passing: (rules: readonly RuleOf<'case'>[], setting: CaseSetting) => bigint;
}

interface Alike {
  readonly gripCase: GripCase;
  bits: bigint;
}

export function caseBits(cases: readonly GripCase[], tally: Tally): CaseBits {
  const all = (1n << BigInt(cases.length)) - 1n;
  const groups = new Map<string, readonly Alike[]>();
  const alikeTo = ({ id }: RuleOf<'case'>): readonly Alike[] => {
    const known = groups.get(id) ?? groupCases(cases, CASE_FIELDS.get(id) ?? null);
    groups.set(id, known);
    return known;
  };
  const refusedBy = (rule: RuleOf<'case'>, { line, duty, site, place, adapter, extensions }: CaseSetting): bigint => {
    let refused = 0n;
    for (const { gripCase, bits } of alikeTo(rule)) {
      tally.evaluations += 1;
      if (rule.speaks({ line, duty, site, place, adapter, extensions, gripCase })) refused |= bits;
    }
    return refused;
  };
  const passing = (rules: readonly RuleOf<'case'>[], setting: CaseSetting): bigint => {
    let left = all;
    for (const rule of rules) {
      if (left === 0n) return left;
      left &= ~refusedBy(rule, setting);
    }
    return left;
  };
  return { all, refusedBy, passing };
}

function groupCases(cases: readonly GripCase[], fields: readonly string[] | null): readonly Alike[] {
  const groups = new Map<string, Alike>();
  for (const [index, gripCase] of cases.entries()) {
    const seen = fields === null ? [index] : Object.entries(gripCase).filter(([name]) => fields.includes(name));
    const key = JSON.stringify([gripCase.kind, seen]);
    const group = groups.get(key) ?? { gripCase, bits: 0n };
    group.bits |= 1n << BigInt(index);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/*
 * Cases of a line as bits, and for a case rule the bits it refuses: asked once for cases that are alike in what the rule looks at.
 * Invariant: the same bits come out as from asking the rule about every case.
 * Not here: which cases there are (grip-cases.ts).
 * Read next: grip-elements.ts, ../why/conflict-table.ts.
 */
import type { FactsOf, GripCase } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import type { Tally } from '../refusals.ts';

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

/** Cases that are alike to a rule. */
export interface AlikeCases {
  readonly gripCase: GripCase;
  readonly cases: readonly GripCase[];
  readonly bits: bigint;
}

export function caseBits(cases: readonly GripCase[], tally: Tally): CaseBits {
  const all = (1n << BigInt(cases.length)) - 1n;
  const groups = new Map<string, readonly AlikeCases[]>();
  const byRule = new Map<RuleOf<'case'>, readonly AlikeCases[]>();
  const alikeTo = (rule: RuleOf<'case'>): readonly AlikeCases[] => {
    const ofRule = byRule.get(rule);
    if (ofRule !== undefined) return ofRule;
    const fields = CASE_FIELDS.get(rule.id)?.join(' ') ?? rule.id;
    const known = groups.get(fields) ?? alikeCases(rule, cases);
    groups.set(fields, known);
    byRule.set(rule, known);
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
      const refused = refusedBy(rule, setting);
      if ((refused & left) !== 0n) tally.refusing.add(rule.id);
      left &= ~refused;
    }
    return left;
  };
  return { all, refusedBy, passing };
}

/** The cases in groups that a rule cannot tell apart, in the order of their first. */
export function alikeCases({ id }: RuleOf<'case'>, cases: readonly GripCase[]): readonly AlikeCases[] {
  const fields = CASE_FIELDS.get(id) ?? null;
  const groups = new Map<string, { gripCase: GripCase; cases: GripCase[]; bits: bigint }>();
  for (const [index, gripCase] of cases.entries()) {
    const key = fields === null ? String(index) : keyOf(gripCase, fields);
    const group = groups.get(key) ?? { gripCase, cases: [], bits: 0n };
    if (group.cases.length === 0) groups.set(key, group);
    group.cases.push(gripCase);
    group.bits |= 1n << BigInt(index);
  }
  return [...groups.values()];
}

function keyOf(gripCase: GripCase, fields: readonly string[]): string {
  const of = (name: string, value: string | number | null): string => (fields.includes(name) ? `${value} ` : '');
  return gripCase.kind === 'wheel'
    ? `wheel ${of('diameter_m', gripCase.diameter_m)}${of('spokes', gripCase.spokes)}${of('dish_deg', gripCase.dish_deg)}`
    : `nut ${of('shape', gripCase.shape)}${of('acrossFlats_m', gripCase.acrossFlats_m)}${of('depth_m', gripCase.depth_m)}`;
}

/*
 * The same list planned under other terms, one after the other: other days, crews, a later start, without a part, with more pieces.
 * Invariant: every case is really planned and passes the independent check; one that does not carries what was found and no figures are used of it.
 * Not here: which cases are worth trying (services).
 * Read next: work-out.ts.
 */
import type { Preference } from '#lib/equipment/choices.ts';
import type { Watch } from './work-out.ts';
import { workOut } from './work-out.ts';
import type { PlanOutcome, WorkedOut, WorkOutInput } from './worked-out.ts';

/** What is other than in the enquiry. */
export interface CaseChange {
  readonly days?: number;
  readonly crews?: number;
  readonly startsOn?: string;
  readonly without?: readonly string[];
  /** Parts that were left out and may be used again. */
  readonly again?: readonly string[];
  /** Pieces free, where the change makes others free. */
  readonly free?: Readonly<Record<string, number>>;
}

export interface PlanCase {
  readonly key: string;
  readonly change: CaseChange;
}

export interface CaseFigures extends PlanCase {
  readonly served: number;
  readonly asked: number;
  readonly cost_minor: number;
  readonly hours: number;
  readonly mass_kg: number;
  readonly pieces: number;
  readonly gap: number;
  readonly proof: string;
  /** Lines that are not served in full, at most a hundred, and how many there are. */
  readonly short: readonly string[];
  readonly shortCount: number;
  /** What the independent check found; a case with any is an incident. */
  readonly discrepancies: readonly string[];
}

export interface CasesInput {
  readonly base: WorkOutInput;
  readonly preference: Preference;
  readonly cases: readonly PlanCase[];
}

export async function tryCases(
  { base, preference, cases }: CasesInput,
  watch: Watch & { readonly onCase?: (figures: CaseFigures) => void } = {},
): Promise<readonly CaseFigures[]> {
  const done: CaseFigures[] = [];
  for (const one of cases) {
    if (watch.isHalted?.() === true) break;
    watch.onNote?.(`${done.length + 1} of ${cases.length}`);
    const input = { ...changed(base, one.change), preferences: [preference] };
    const worked = await workOut(input, { ...watch, shortage: 'not asked' });
    const [plan] = worked.plans;
    // What was cut short by hand says nothing about its case.
    if (plan === undefined || watch.isHalted?.() === true) break;
    const figures = figuresOf({ one, plan, worked });
    done.push(figures);
    watch.onCase?.(figures);
  }
  return done;
}

function changed(base: WorkOutInput, change: CaseChange): WorkOutInput {
  const { days, crews, startsOn, without = [], again = [], free } = change;
  const { constraints, site } = base;
  return {
    ...base,
    site: {
      ...site,
      ...(days === undefined ? {} : { days }),
      ...(crews === undefined ? {} : { crews }),
      ...(startsOn === undefined ? {} : { startsOn }),
    },
    free: free ?? base.free,
    constraints: {
      ...constraints,
      lockedParts: constraints.lockedParts.filter((part) => !without.includes(part)),
      excludedParts: [...constraints.excludedParts.filter((part) => !again.includes(part)), ...without],
    },
  };
}

const SHORT_TOLD = 100;

function figuresOf(at: {
  readonly one: PlanCase;
  readonly plan: PlanOutcome;
  readonly worked: WorkedOut;
}): CaseFigures {
  const { one, plan, worked } = at;
  const { kits, fleet } = plan;
  const asked = worked.duties.reduce((sum, { qty }) => sum + qty, 0);
  const short = [
    ...plan.lines.filter((line) => line.served < line.asked).map(({ tag }) => tag),
    ...worked.unserved.map(({ tag }) => tag),
  ];
  return {
    ...one,
    served: fleet.served,
    asked,
    cost_minor: fleet.cost_minor,
    hours: kits.reduce((sum, kit) => sum + kit.time_s, 0) / 3600,
    mass_kg: kits.reduce((sum, kit) => sum + kit.mass_kg, 0),
    pieces: kits.reduce((sum, kit) => sum + kit.pieces, 0),
    gap: fleet.gap,
    proof: fleet.proof,
    short: [...new Set(short)].slice(0, SHORT_TOLD),
    shortCount: new Set(short).size,
    discrepancies: plan.discrepancies,
  };
}

/*
 * Asks the core rules of one line, each as rarely as what it looks at allows.
 * Invariant: the same cores and counters pass as when every rule is asked about every core with every counter.
 * Not here: grips and restraints (../search-class.ts).
 * Read next: ../narrow-views.ts, core-figures.ts.
 */
import type { OptionModel } from '#lib/equipment/model.ts';
import type { Core, CoreFigures, LineFacts } from '#lib/rules/facts.ts';
import type { RuleOf } from '#lib/rules/rule.ts';
import { CORE_OF_MESH, CORE_OF_OPTIONS, CORE_WITHOUT_COUNTER, CORE_WITHOUT_HEAD } from '../narrow-views.ts';
import { isAllowed, type Refusals, type Tally } from '../refusals.ts';
import { coreFigures, unlimitedFigures } from './core-figures.ts';
import { memoOf } from './core-memo.ts';
import type { Frame } from './frames.ts';

export type Counters = readonly (OptionModel | null)[];

interface PassedCore {
  readonly core: Core;
  readonly counters: Counters;
}

export interface CoreFilter {
  /** What looks at drive, gear and head, whatever limits them. */
  readonly mesh: (frame: Frame, gearIndex: number) => boolean;
  /** The rest, for a frame whose mesh has passed: the core with the counters that it may have, or null. */
  readonly core: (frame: Frame, gearIndex: number) => PassedCore | null;
}

interface FilterInput {
  readonly facts: LineFacts;
  readonly refusals: Pick<Refusals, 'core'>;
  readonly tally: Tally;
}

export function coreFilter({ facts, refusals, tally }: FilterInput, counters: Counters): CoreFilter {
  const { line, duty, site, place } = facts;
  const memo = memoOf(facts);
  const [first = null] = counters;
  const coreWith = ({ drive, limiter, head }: Frame, gearIndex: number, figures: CoreFigures): Core | null => {
    const gear = drive.facts.gears[gearIndex];
    return gear === undefined ? null : { drive, limiter, head, gear, gearIndex, counter: first, figures };
  };
  const allowed = (rules: readonly RuleOf<'core'>[], core: Core): boolean =>
    isAllowed(rules, { line, duty, site, place, core }, tally);
  const ofMesh = onceForHeads(
    refusals.core.filter(({ id }) => CORE_OF_MESH.has(id)),
    allowed,
  );
  const ofLimiter = onceForHeads(
    refusals.core.filter(({ id }) => CORE_WITHOUT_COUNTER.has(id) && !CORE_OF_MESH.has(id)),
    allowed,
  );
  const fittingCounters = counterFilter({
    rules: refusals.core.filter(({ id }) => !CORE_WITHOUT_COUNTER.has(id)),
    allowed,
    counters,
  });
  const inputOf = (frame: Frame, gearIndex: number) => ({ facts, frame, gearIndex, limiterUpTo: 'needed' }) as const;
  return {
    mesh: (frame, gearIndex) => {
      const figures = unlimitedFigures(inputOf(frame, gearIndex), memo);
      return ofMesh(figures, () => coreWith(frame, gearIndex, figures));
    },
    core: (frame, gearIndex) => {
      tally.cores += 1;
      const figures = coreFigures(inputOf(frame, gearIndex), memo);
      let core: Core | null = null;
      const made = (): Core | null => {
        core ??= coreWith(frame, gearIndex, figures);
        return core;
      };
      if (!ofLimiter(figures, made)) return null;
      const passed = made();
      if (passed === null) return null;
      const fitting = fittingCounters(passed);
      const [counter] = fitting;
      if (counter === undefined) return null;
      return { core: counter === first ? passed : { ...passed, counter }, counters: fitting };
    },
  };
}

type Allowed = (rules: readonly RuleOf<'core'>[], core: Core) => boolean;

/** Rules that do not look at the head are asked once for all heads of a kind: these share their figures. */
function onceForHeads(
  rules: readonly RuleOf<'core'>[],
  allowed: Allowed,
): (figures: CoreFigures, make: () => Core | null) => boolean {
  const shared = rules.filter(({ id }) => CORE_WITHOUT_HEAD.has(id));
  const own = rules.filter(({ id }) => !CORE_WITHOUT_HEAD.has(id));
  const verdicts = new Map<CoreFigures, boolean>();
  return (figures, make) => {
    let verdict = verdicts.get(figures);
    if (verdict === undefined) {
      const core = make();
      verdict = core !== null && allowed(shared, core);
      verdicts.set(figures, verdict);
    }
    if (!verdict || own.length === 0) return verdict;
    const core = make();
    return core !== null && allowed(own, core);
  };
}

/** Counters that a core may have; equal lists are one array. */
function counterFilter(at: {
  readonly rules: readonly RuleOf<'core'>[];
  readonly allowed: Allowed;
  readonly counters: Counters;
}): (core: Core) => Counters {
  const { rules, allowed, counters } = at;
  const isOfOptions = rules.every(({ id }) => CORE_OF_OPTIONS.has(id));
  const byLimiter = new Map<OptionModel | null, Counters>();
  const lists = new Map<string, Counters>();
  const ask = (core: Core): Counters => {
    const verdicts = counters.map((counter) => allowed(rules, counter === core.counter ? core : { ...core, counter }));
    if (!verdicts.includes(false)) return counters;
    const key = verdicts.join();
    const known = lists.get(key) ?? counters.filter((_, index) => verdicts[index]);
    lists.set(key, known);
    return known;
  };
  return (core) => {
    if (!isOfOptions) return ask(core);
    const known = byLimiter.get(core.limiter) ?? ask(core);
    byLimiter.set(core.limiter, known);
    return known;
  };
}

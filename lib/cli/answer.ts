/*
 * The one JSON document that `plan --json` prints.
 * Invariant: quantities carry their unit in the key; the top-level keys are schedule, duties, plans, unserved, shortage, quote, timings.
 * Not here: working anything out.
 * Read next: plan-command.ts.
 */
import type { Direction, DirectionDuty, Duty, MeasureFirstEffect } from '#lib/duty/duty.ts';
import type { Taken } from '#lib/intake/take-rows.ts';
import type { PlanOutcome } from '#lib/planning/worked-out.ts';
import { crewDaysOf } from '#lib/services/plans/crew-days-of.ts';
import { crewOffset } from '#lib/services/plans/crew-numbers.ts';
import type { PapersInput } from '#lib/services/quotes/papers-of.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Told } from '#lib/units/say-figure.ts';
import { crewDaysAnswer } from './crew-days-answer.ts';

export interface AnswerInput {
  readonly taken: Taken;
  readonly papers: PapersInput;
  readonly intake_ms: number;
}

export function planAnswer({ taken, papers, intake_ms }: AnswerInput) {
  const { worked, price } = papers;
  return {
    schedule: {
      counts: taken.counts,
      lines: papers.lines.map(({ tag, qty, strokes }) => ({ tag, qty, strokes })),
      classes: worked.classes,
      set_aside: taken.setAside,
      problems: taken.problems,
    },
    duties: worked.duties.map(dutyAnswer),
    plans: worked.plans.map((plan) => ({
      ...planOf(plan),
      crew_days: crewDaysAnswer(crewDaysOf({ ...papers, outcome: plan })),
    })),
    unserved: worked.unserved.map(({ tag, because, repairs }) => ({ tag, because, repairs })),
    shortage: worked.shortage,
    quote: price,
    timings: { ...worked.timings, intake: Math.round(intake_ms) },
  };
}

/** Every answer as JSON: sentences in SI alone, whatever units the text is told in. */
export function jsonText(answer: unknown, indent?: number): string {
  const inUs: keyof Told = 'inUs';
  return JSON.stringify(answer, (key, value: unknown) => (key === inUs ? undefined : value), indent);
}

function range(known: Known<Unit>) {
  const { low, nominal, high, basis, source } = known;
  return { low, nominal, high, basis, source };
}

export function dutyAnswer(duty: Duty) {
  const side = (direction: Direction) => sideAnswer(duty[direction]);
  const worse = (pick: (one: DirectionDuty) => Known<'N·m'>) => {
    const [a, b] = [pick(duty.opening), pick(duty.closing)];
    return range(a.high >= b.high ? a : b);
  };
  const tighter =
    duty.opening.neverExceed.torque.low <= duty.closing.neverExceed.torque.low ? duty.opening : duty.closing;
  return {
    tag: duty.tag,
    qty: duty.qty,
    torque_start_nm: worse(({ starting }) => starting),
    torque_run_nm: worse(({ running }) => running),
    turns: range(duty.turns),
    never_exceed_nm: { ...range(tighter.neverExceed.torque), kind: tighter.neverExceed.kind },
    limiter_nm: { opening: duty.opening.limiter, closing: duty.closing.limiter },
    opening: side('opening'),
    closing: side('closing'),
    thrust_n: {
      opening: duty.opening.thrust && range(duty.opening.thrust),
      closing: duty.closing.thrust && range(duty.closing.thrust),
    },
    thread: duty.thread && {
      mean_diameter_mm: duty.thread.meanDiameter.nominal * 1000,
      lead_mm: duty.thread.lead.nominal * 1000,
      self_locking: duty.thread.selfLocking,
    },
    measure_first: duty.measureFirstEffect && measureFirstAnswer(duty.measureFirstEffect),
    findings: duty.findings,
    steps: duty.steps,
  };
}

function measureFirstAnswer({ what, tries, direction, start, ceiling, turns }: MeasureFirstEffect) {
  const change = ({ before, after }: { readonly before: Known<Unit>; readonly after: Known<Unit> }) => ({
    before: range(before),
    after: range(after),
  });
  return {
    what,
    tries,
    direction,
    torque_start_nm: change(start),
    never_exceed_nm: change(ceiling),
    turns: change(turns),
  };
}

function sideAnswer(side: DirectionDuty) {
  return {
    torque_start_nm: range(side.starting),
    torque_run_nm: range(side.running),
    never_exceed_nm: range(side.neverExceed.torque),
    limiter_nm: side.limiter,
  };
}

function planOf(plan: PlanOutcome) {
  const { fleet } = plan;
  const sum = (pick: (kit: PlanOutcome['kits'][number]) => number) =>
    plan.kits.reduce((total, kit) => total + pick(kit), 0);
  return {
    preference: plan.preference,
    served: fleet.served,
    asked: fleet.asked,
    cost_minor: fleet.cost_minor,
    hours: sum((kit) => kit.time_s) / 3600,
    mass_kg: sum((kit) => kit.mass_kg),
    pieces: sum((kit) => kit.pieces),
    bound_minor: fleet.preference === 'cost' ? fleet.bound : null,
    bound: fleet.bound,
    gap: fleet.gap,
    proof: fleet.proof,
    effort: fleet.effort,
    kits: plan.kits.map((kit) => ({ ...kit, crew: kit.crew + crewOffset(plan) })),
    lines: plan.lines.map((line) => {
      const assembly = plan.assemblies[line.parts[0]?.assembly ?? ''];
      return {
        tag: line.tag,
        asked: line.asked,
        served: line.served,
        crews: line.parts.map(({ crew }) => crew + crewOffset(plan)),
        assembly: assembly?.parts ?? null,
        limiter_nm: assembly ? { opening: limiterOf(assembly.opening), closing: limiterOf(assembly.closing) } : null,
      };
    }),
  };
}

function limiterOf({ unseat, run, seat }: PlanOutcome['assemblies'][string]['opening']) {
  return { unseat, run, seat };
}

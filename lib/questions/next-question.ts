/*
 * What is still worth asking about a line: only what can change its answer, the question that narrows it most first.
 * Invariant: a question is offered only after a real working of some of its answers gave another outcome; effort is counted, not timed.
 * Not here: words and drawings of questions.
 * Read next: question-table.ts, line-outcome.ts.
 */
import type { Site } from '#lib/duty/site.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Column } from '#lib/intake/columns.ts';
import type { Range } from '#lib/units/known-value.ts';
import type { SelfServiceBounds } from './hand-over.ts';
import { type LineOutcome, lineOutcome, outcomeKey, readTold, triedOutcome } from './line-outcome.ts';
import type { Answer, QuestionSpec, ReadTold, Told } from './question.ts';
import { QUESTIONS } from './question-table.ts';

export interface Question {
  readonly column: Column;
  readonly answered: QuestionSpec['answered'];
  readonly answers: readonly string[];
  /** How much it narrows the answer, as an expected gain; larger is more. */
  readonly gain: number;
  /** Answers that send the line to the Desk, or take it back from there. */
  readonly turnsOn: readonly string[];
}

export interface Asking {
  readonly outcome: LineOutcome;
  /** Not answered yet, the best first. */
  readonly questions: readonly Question[];
  /** Said to be not known, though knowing it would change the answer: what to find out first. */
  readonly findOut: Question | null;
  readonly effort: { readonly duties: number; readonly kits: number };
}

/** Workings of kits that one asking may take; each takes some hundredths of a second. */
const MOST_KITS = 36;

interface Asked {
  readonly told: Told;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly bounds: SelfServiceBounds;
}

export function askLine({ told, site, models, bounds }: Asked): Asking {
  const effort = { duties: 1, kits: 1 };
  const now = readTold(told.cells, site);
  const outcome = lineOutcome(now, { site, models, bounds });
  const tried = triedOutcome(now, { site, models, bounds });
  const open: Question[] = [];
  const unknown: Question[] = [];
  for (const trial of ranked(now, effort)) {
    if (effort.kits + trial.tries.length > MOST_KITS) continue;
    effort.kits += trial.tries.length;
    const question = weighed({ trial, now: tried, site, models, bounds });
    if (question !== null) (told.unknown.includes(question.column) ? unknown : open).push(question);
  }
  const byGain = (a: Question, b: Question): number => b.gain - a.gain;
  return { outcome, questions: open.toSorted(byGain), findOut: unknown.toSorted(byGain)[0] ?? null, effort };
}

interface Try {
  readonly answer: Answer;
  readonly told: ReadTold;
}

interface Trial {
  readonly spec: QuestionSpec;
  readonly tries: readonly Try[];
  /** What can be said before any kit is worked out. */
  readonly rank: number;
}

/** Questions that apply and are blank, with their answers' duties, the likeliest to matter first. */
function ranked(now: ReadTold, effort: { duties: number }): readonly Trial[] {
  const specs = QUESTIONS.filter(({ column, applies }) => isBlank(now, column) && applies(now));
  const trials = specs.map((spec): Trial => {
    const tries = spec.answers(now).map((answer) => ({ answer, told: answered(now, spec.column, answer.text) }));
    effort.duties += tries.length;
    const narrowed = expected(tries, ({ told }) => width(now) - width(told));
    return { spec, tries, rank: spec.usualWeight + Math.max(0, narrowed) };
  });
  return trials.toSorted((a, b) => b.rank - a.rank);
}

function isBlank({ cells }: ReadTold, column: Column): boolean {
  return (cells[column] ?? '').trim() === '';
}

function answered(now: ReadTold, column: Column, text: string): ReadTold {
  return readTold({ ...now.cells, [column]: text }, now.site);
}

interface Weighing {
  readonly trial: Trial;
  readonly now: LineOutcome;
  readonly site: Site;
  readonly models: readonly Model[];
  readonly bounds: SelfServiceBounds;
}

/** Shares of the gain: how far the torque narrows, pieces saved, price moved, the Desk needed or not, for how many reasons. House practice, no source. */
const SHARE = { torque: 1, piece: 0.25, price: 2, desk: 1.5, reason: 0.5 } as const;

function weighed({ trial, now, site, models, bounds }: Weighing): Question | null {
  const { spec, tries } = trial;
  const outcomes = tries.map(({ answer, told }) => ({ answer, after: triedOutcome(told, { site, models, bounds }) }));
  if (outcomes.every(({ after }) => outcomeKey(after) === outcomeKey(now))) return null;
  const gain = expected(outcomes, ({ after }) => gainOf(now, after));
  const turns = outcomes.filter(({ after }) => isForDesk(after) !== isForDesk(now));
  return {
    column: spec.column,
    answered: spec.answered,
    answers: tries.map(({ answer }) => answer.text),
    gain: Math.round(gain * 1000) / 1000,
    turnsOn: turns.map(({ answer }) => answer.text),
  };
}

function gainOf(now: LineOutcome, after: LineOutcome): number {
  const price = Math.abs(after.hire_minor - now.hire_minor) / Math.max(1, now.hire_minor, after.hire_minor);
  const pieces = Math.max(0, now.kit.length - after.kit.length);
  return (
    SHARE.torque * Math.max(0, width(now) - width(after)) +
    SHARE.piece * pieces +
    SHARE.price * price +
    SHARE.desk * (isForDesk(now) === isForDesk(after) ? 0 : 1) +
    SHARE.reason * Math.abs(now.handOver.length - after.handOver.length)
  );
}

function isForDesk({ handOver }: LineOutcome): boolean {
  return handOver.length > 0;
}

function expected<Each extends { readonly answer: Answer }>(
  of: readonly Each[],
  value: (each: Each) => number,
): number {
  const all = of.reduce((sum, { answer }) => sum + answer.weight, 0);
  return all === 0 ? 0 : of.reduce((sum, each) => sum + each.answer.weight * value(each), 0) / all;
}

/** Width of the torques to start and of the ceiling, in powers of e; below half a newton metre nothing is told apart. */
function width({ duty }: Pick<ReadTold, 'duty'>): number {
  const { opening, closing } = duty;
  return span(opening.starting) + span(closing.starting) + span(opening.neverExceed.torque);
}

function span({ low, high }: Range<'N·m'>): number {
  return Math.log(Math.max(high, 0.5) / Math.max(low, 0.5));
}

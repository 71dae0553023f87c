/*
 * Solves an integer program with HiGHS and checks the answer before anyone sees it.
 * Invariant: a solved answer meets every row and whole number, and its objective was added up here; a bound is only the solver's word.
 * Not here: proofs that do not rest on the solver's word (branch-and-bound.ts), files and text formats.
 * Read next: branch-and-bound.ts.
 */
import type { Model } from 'highs';
import type { Refused } from '#lib/kernel/result.ts';
import { checkValues } from './check-values.ts';
import { holdsModel, infoNumber, withSolver } from './highs-runtime.ts';
import type { SparseModel } from './sparse-model.ts';

export interface MilpOptions {
  /** `off` where a proof rests on the call: with it on, HiGHS 1.15 has called a wrong value optimal. */
  readonly presolve: 'on' | 'off';
  /** Relative gap at which to stop; 1e-6 unless said. */
  readonly gap?: number;
  /** Absolute gap at which to stop, where the objective counts whole things; 1e-6 unless said. */
  readonly margin?: number;
  readonly seconds: number;
  readonly nodes?: number;
  /** A point to start from; one that does not fit is ignored by the solver. */
  readonly start?: Float64Array;
  /** Asked now and then while solving; true stops with the best so far. */
  readonly interrupt?: (seen: MilpProgress) => boolean;
}

export interface MilpProgress {
  readonly best: number;
  readonly bound: number;
  readonly nodes: number;
}

export interface MilpEffort {
  readonly nodes: number;
  readonly simplexIterations: number;
}

export type MilpStop = 'gap reached' | 'nodes used up' | 'time used up' | 'interrupted';

export type MilpAnswer =
  | {
      readonly kind: 'solved';
      readonly stop: MilpStop;
      readonly objective: number;
      /** The solver's word. */
      readonly bound: number;
      /** (objective − bound) / max(1, |objective|). */
      readonly gap: number;
      readonly values: Float64Array;
      readonly effort: MilpEffort;
      readonly seconds: number;
    }
  | { readonly kind: 'infeasible'; readonly effort: MilpEffort; readonly seconds: number }
  | { readonly kind: 'unbounded'; readonly effort: MilpEffort; readonly seconds: number }
  | {
      readonly kind: 'nothing found';
      readonly stop: MilpStop;
      readonly bound: number;
      readonly effort: MilpEffort;
      readonly seconds: number;
    }
  | { readonly kind: 'failed'; readonly reason: Refused };

export const DEFAULT_GAP = 1e-6;

export async function solveMilp(model: SparseModel, options: MilpOptions): Promise<MilpAnswer> {
  if (model.columns === 0) return emptyAnswer(model);
  const answer = await withSolver({
    model,
    relax: 'integers kept',
    options: {
      presolve: options.presolve,
      mip_rel_gap: options.gap ?? DEFAULT_GAP,
      time_limit: options.seconds,
      ...(options.margin === undefined ? {} : { mip_abs_gap: options.margin }),
      ...(options.nodes === undefined ? {} : { mip_max_nodes: Math.max(1, Math.floor(options.nodes)) }),
    },
    work: (solver) => {
      if (!holdsModel(solver, model)) return notHeld();
      if (options.start !== undefined) solver.setSolution({ colValue: options.start });
      const { modelStatus } = solver.run(interruptor(options.interrupt));
      return readAnswer({ solver, modelStatus, model });
    },
  });
  return answer.ok ? answer.value : { kind: 'failed', reason: answer.reason };
}

/** HiGHS calls a program without columns empty and solves nothing. */
function emptyAnswer(model: SparseModel): MilpAnswer {
  const effort = { nodes: 0, simplexIterations: 0 };
  const checked = checkValues(model, new Float64Array(0));
  return checked.kind === 'sound'
    ? {
        kind: 'solved',
        stop: 'gap reached',
        objective: 0,
        bound: 0,
        gap: 0,
        values: checked.values,
        effort,
        seconds: 0,
      }
    : { kind: 'infeasible', effort, seconds: 0 };
}

function notHeld(): MilpAnswer {
  return {
    kind: 'failed',
    reason: {
      code: 'program-not-held',
      sentence: 'The solver does not hold the program that was given; nothing was solved.',
    },
  };
}

/** Callback type 6 is HiGHS's mip interrupt. */
const MIP_INTERRUPT = 6;

function interruptor(interrupt: MilpOptions['interrupt']): NonNullable<Parameters<Model['run']>[0]> {
  if (interrupt === undefined) return {};
  return {
    [MIP_INTERRUPT]: (event) => {
      const stop = interrupt({
        best: event.data.mip_primal_bound ?? Number.POSITIVE_INFINITY,
        bound: event.data.mip_dual_bound ?? Number.NEGATIVE_INFINITY,
        nodes: Number(event.data.mip_node_count ?? 0),
      });
      if (stop) event.interrupt();
    },
  };
}

/** HiGHS's model status codes: types.d.ts of the package, `modelStatus`. */
const STOPS: Readonly<Record<number, MilpStop>> = {
  7: 'gap reached',
  13: 'time used up',
  14: 'nodes used up',
  16: 'nodes used up',
  17: 'interrupted',
};
const INFEASIBLE = 8;
const UNBOUNDED_OR_INFEASIBLE = 9;
const UNBOUNDED = 10;

function readAnswer(request: {
  readonly solver: Model;
  readonly modelStatus: number;
  readonly model: SparseModel;
}): MilpAnswer {
  const { solver, modelStatus, model } = request;
  const effort: MilpEffort = {
    nodes: Math.max(0, infoNumber(solver, 'mip_node_count')),
    simplexIterations: Math.max(0, infoNumber(solver, 'simplex_iteration_count')),
  };
  const seconds = solver.getRunTime();
  if (modelStatus === INFEASIBLE) return { kind: 'infeasible', effort, seconds };
  if (modelStatus === UNBOUNDED || modelStatus === UNBOUNDED_OR_INFEASIBLE)
    return { kind: 'unbounded', effort, seconds };
  const stop = STOPS[modelStatus];
  if (stop === undefined) {
    return {
      kind: 'failed',
      reason: { code: 'solver-status', sentence: `The solver ended with status ${modelStatus}, which is no answer.` },
    };
  }
  const claimed = infoNumber(solver, 'mip_dual_bound');
  const hasIntegers = model.integer.includes(1);
  // 2 is HiGHS's "feasible point" in primal_solution_status.
  if (infoNumber(solver, 'primal_solution_status') !== 2) {
    return { kind: 'nothing found', stop, bound: hasIntegers ? claimed : Number.NEGATIVE_INFINITY, effort, seconds };
  }
  const checked = checkValues(model, solver.getSolution().colValue);
  if (checked.kind === 'unsound') {
    return {
      kind: 'failed',
      reason: { code: 'answer-unsound', sentence: `The solver's answer failed its check. ${checked.sentence}` },
    };
  }
  const { objective, values } = checked;
  const bound = hasIntegers ? Math.min(claimed, objective) : objective;
  const gap = (objective - bound) / Math.max(1, Math.abs(objective));
  return { kind: 'solved', stop, objective, bound, gap, values, effort, seconds };
}

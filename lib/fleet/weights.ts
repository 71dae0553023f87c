/*
 * What each aim counts: per piece carried and per valve done, so that every aim is a sum and can be a row of a linear program.
 * Invariant: a plan's measure of an aim is Σ pieces · item weight + Σ valves · use weight + a constant.
 * Not here: adding the sums up over a plan (measure.ts).
 * Read next: measure.ts.
 */
import { unreachable } from '#lib/kernel/invariant.ts';
import type { Aim, Branch, Job, Option, Program, ProgramItem } from './program.ts';

export function itemWeight(aim: Aim, item: ProgramItem): number {
  switch (aim) {
    case 'cost':
      return item.cost_minor;
    case 'pieces':
      return item.pieces;
    case 'unserved':
    case 'time':
    case 'second visits':
      return 0;
    default:
      return unreachable(aim);
  }
}

/** Of one valve done in a branch, its options apart. */
export function valveWeight(request: {
  readonly aim: Aim;
  readonly program: Program;
  readonly job: Job;
  readonly branch: Branch;
}): number {
  const { aim, program, job, branch } = request;
  switch (aim) {
    case 'unserved':
      return -1;
    case 'cost':
      return program.labour_minor_per_second * job.moveTime;
    case 'time':
      return job.moveTime;
    case 'second visits':
      return 1 - branch.chance;
    case 'pieces':
      return 0;
    default:
      return unreachable(aim);
  }
}

export function optionWeight(request: {
  readonly aim: Aim;
  readonly program: Program;
  readonly option: Option;
}): number {
  const { aim, program, option } = request;
  if (aim === 'cost') return option.cost_minor + program.labour_minor_per_second * option.time;
  return aim === 'time' ? option.time : 0;
}

/** Several aims in one number: each counts by its factor. */
export type Blend = readonly { readonly aim: Aim; readonly factor: number }[];

export function blended(blend: Blend, weigh: (aim: Aim) => number): number {
  let sum = 0;
  for (const { aim, factor } of blend) sum += factor * weigh(aim);
  return sum;
}

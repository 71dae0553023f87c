/*
 * The window of a torque limiter for one direction, and where to start, step and stop on its own scale.
 * Invariant: no setting at or below the ceiling can bring more than never-exceed (low) to the valve, error and overshoot included.
 * Not here: whether a limiter is required, and which duty numbers go in (kits).
 * Read next: chain-torque.ts, reaction.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';
import type { Range } from '#lib/units/known-value.ts';
import { type NewtonMetres, newtonMetres, type Ratio } from '#lib/units/quantity.ts';

/** Ends of the window; it is empty when low is above high. */
export interface LimiterWindow {
  readonly low: NewtonMetres;
  readonly high: NewtonMetres;
}

/** A limiter's own facts, on its own scale. */
export interface LimiterFacts {
  readonly lowest: NewtonMetres;
  readonly highest: NewtonMetres;
  readonly error: Ratio;
  readonly overshoot: NewtonMetres;
  readonly step: NewtonMetres;
}

export interface LimiterMarks {
  readonly start: NewtonMetres;
  readonly step: NewtonMetres;
  readonly ceiling: NewtonMetres;
  readonly atValve: { readonly start: NewtonMetres; readonly ceiling: NewtonMetres };
  /** False when the ceiling lies below the lower end of the window: it may not move at the torque allowed. */
  readonly coversStarting: boolean;
}

/** `open`: a setting satisfies both ends; `narrow`: it may not move at the torque allowed; `impossible`: it cannot. */
export type WindowGrade = 'open' | 'narrow' | 'impossible';

/**
 * Window of limiter settings at the valve.
 *
 * Formula: low = T_start,high·m/(1 − e); high = (T_never,low − o)/(1 + e)
 *
 * @param startingHigh - Highest torque needed to start. [N·m] range 0…1e6
 * @param neverExceedLow - Lowest torque that the valve must never see. [N·m] range 0…1e6
 * @param margin - House margin over the starting torque. [1] range 1…2
 * @param error - Relative error of the limiter either way. [1] range 0…0.5
 * @param overshoot - What comes after the trip, at the valve. [N·m] range 0…1e5
 * @returns Both ends; empty when low is above high. [N·m]
 * @source Definition of the ends: house design; a setting read with error e gives between (1 − e) and (1 + e) of it.
 * @assumes Error is a share of the setting; overshoot adds.
 * @example limiterWindow({ startingHigh: newtonMetres(100), neverExceedLow: newtonMetres(200), margin: ratio(1.25), error: ratio(0.1), overshoot: newtonMetres(10) }).high // => 172.7
 */
export function limiterWindow({
  startingHigh,
  neverExceedLow,
  margin,
  error,
  overshoot,
}: {
  readonly startingHigh: NewtonMetres;
  readonly neverExceedLow: NewtonMetres;
  readonly margin: Ratio;
  readonly error: Ratio;
  readonly overshoot: NewtonMetres;
}): LimiterWindow {
  invariant(error >= 0 && error < 1, 'The error of a limiter is a share below one.');
  return {
    low: newtonMetres((startingHigh * margin) / (1 - error)),
    high: newtonMetres((neverExceedLow - overshoot) / (1 + error)),
  };
}

/**
 * The window referred to where the limiter sits.
 *
 * Formula: low_limiter = low/k_low; high_limiter = high/k_high
 *
 * @param window - Window at the valve. [N·m]
 * @param factor - Torque factor from the limiter to the valve (ratio times efficiency). [1] range above 0
 * @returns The same window on the limiter's scale. [N·m]
 * @source House design: the lowest factor for what must be reached, the highest for what must not be passed.
 * @assumes The overshoot in the window was already taken at the valve.
 * @example referToLimiter({ window: { low: newtonMetres(139), high: newtonMetres(172) }, factor: { low: ratio(3.4), high: ratio(3.8) } }).high // => 45.26
 */
export function referToLimiter({
  window,
  factor,
}: {
  readonly window: LimiterWindow;
  readonly factor: Range<'1'>;
}): LimiterWindow {
  invariant(factor.low > 0, 'A chain factor is above nought.');
  return { low: newtonMetres(window.low / factor.low), high: newtonMetres(window.high / factor.high) };
}

/**
 * Where to start, how to step and where to stop with a limiter, for one purpose in one direction.
 *
 * Formula: ceiling = (T_never,low/k_high − o)/(1 + e), down to a step; start = T_low/k_high, down to a step; needed = T_high·m/((1 − e)·k_low)
 *
 * @param torque - Torque that the purpose needs at the valve, lowest and highest. [N·m] range 0…1e6
 * @param neverExceedLow - Lowest torque that the valve must never see. [N·m] range 0…1e6
 * @param margin - House margin over the torque needed. [1] range 1…2
 * @param limiter - The limiter's own facts; overshoot on its own scale. [N·m, 1]
 * @param factor - Torque factor from the limiter to the valve. [1] range above 0
 * @param stopAt - `never-exceed`: up to the ceiling; `needed`: no higher than the purpose needs. [–]
 * @returns Start, step, ceiling on the limiter's scale and at the valve, or null where its scale starts above the ceiling. [N·m]
 * @source House design: start low, raise in steps, never past the ceiling.
 * @assumes The scale's marks are at whole steps from nought.
 * @example limiterMarks({ torque: { low: newtonMetres(60), high: newtonMetres(100) }, neverExceedLow: newtonMetres(200), margin: ratio(1.25), limiter: { lowest: newtonMetres(20), highest: newtonMetres(400), error: ratio(0.1), overshoot: newtonMetres(10), step: newtonMetres(5) }, factor: { low: ratio(1), high: ratio(1) }, stopAt: 'never-exceed' })?.ceiling // => 170
 */
export function limiterMarks({
  torque,
  neverExceedLow,
  margin,
  limiter,
  factor,
  stopAt,
}: {
  readonly torque: Range<'N·m'>;
  readonly neverExceedLow: NewtonMetres;
  readonly margin: Ratio;
  readonly limiter: LimiterFacts;
  readonly factor: Range<'1'>;
  readonly stopAt: 'never-exceed' | 'needed';
}): LimiterMarks | null {
  invariant(limiter.step > 0, 'A limiter is set in steps above nought.');
  const needed = (torque.high * margin) / ((1 - limiter.error) * factor.low);
  const allowed = Math.min(limiter.highest, (neverExceedLow / factor.high - limiter.overshoot) / (1 + limiter.error));
  const most = stepDown(allowed, limiter.step);
  /** The lowest mark that is on a whole step; the plate's lower end need not be one. */
  const lowest = stepUp(limiter.lowest, limiter.step);
  if (most < limiter.lowest) return null;
  const ceiling = stopAt === 'needed' ? Math.max(lowest, Math.min(most, stepUp(needed, limiter.step))) : most;
  const start = Math.min(ceiling, Math.max(lowest, stepDown(torque.low / factor.high, limiter.step)));
  return {
    start: newtonMetres(start),
    step: limiter.step,
    ceiling: newtonMetres(ceiling),
    atValve: { start: newtonMetres(start * factor.high), ceiling: newtonMetres(ceiling * factor.high) },
    coversStarting: needed <= ceiling + WHOLE_STEP_SLACK * limiter.step,
  };
}

/** Binary fractions make 34.999999 of a whole 35 steps; a billionth of a step is below any scale. */
const WHOLE_STEP_SLACK = 1e-9;

function stepDown(value: number, step: number): number {
  return Math.floor(value / step + WHOLE_STEP_SLACK) * step;
}

function stepUp(value: number, step: number): number {
  return Math.ceil(value / step - WHOLE_STEP_SLACK) * step;
}

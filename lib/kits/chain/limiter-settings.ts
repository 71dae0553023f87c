/*
 * Marks of a limiter for each purpose in one direction: unseat and run when opening, run and seat when closing.
 * Invariant: the unseating mark is never used to close, and no mark is made for the back seat.
 * Not here: the window of an ideal limiter (duty).
 * Read next: ../cores/core-figures.ts, ../build-assembly.ts.
 */
import type { Direction, DirectionDuty } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import { limiterMarks } from '#lib/engineering/limiter-window.ts';
import type { LimiterSetting } from '#lib/equipment/assembly.ts';
import type { ChainLimiter } from '#lib/rules/facts.ts';
import { type NewtonMetres, newtonMetres } from '#lib/units/quantity.ts';

/** The house's margin of a limiter over the torque needed. */
export const LIMITER_MARGIN = HOUSE_CONSTANTS.limiterMargin.nominal;

export interface Settings {
  readonly unseat: LimiterSetting | null;
  readonly run: LimiterSetting | null;
  readonly seat: LimiterSetting | null;
}

export const NO_SETTINGS: Settings = { unseat: null, run: null, seat: null };

export interface SettingsInput {
  readonly limiter: ChainLimiter;
  readonly duty: DirectionDuty;
  readonly direction: Direction;
  /** `needed`: no mark higher than its purpose needs; a number: to unseat, up to that torque at the valve where it allows. */
  readonly upTo: 'needed' | NewtonMetres;
  /** A valve that seats by position is stopped at its mark: no mark of a limiter closes it. */
  readonly seats: 'by torque' | 'by position';
}

export function limiterSettings({ limiter, duty, direction, upTo, seats }: SettingsInput): Settings {
  const never = duty.neverExceed.torque.low;
  const neverExceedLow = upTo === 'needed' ? never : newtonMetres(Math.min(never, upTo));
  const ask = { neverExceedLow, margin: LIMITER_MARGIN, limiter, factor: limiter.factor };
  const run = limiterMarks({ ...ask, torque: duty.running, stopAt: 'needed' });
  // Whether the scale starts above what is allowed hangs on no purpose.
  if (run === null) return NO_SETTINGS;
  /** Closing starts with breaking away from open and ends in the seat: both are in the starting torque of that direction. */
  const whole = { low: newtonMetres(Math.min(duty.running.low, duty.starting.low)), high: duty.starting.high };
  if (direction === 'opening') {
    return {
      unseat: limiterMarks({ ...ask, torque: duty.starting, stopAt: upTo === 'needed' ? 'needed' : 'never-exceed' }),
      run,
      seat: null,
    };
  }
  return {
    unseat: null,
    run: limiterMarks({ ...ask, torque: whole, stopAt: 'needed' }),
    seat:
      seats === 'by position'
        ? null
        : limiterMarks({ ...ask, torque: { low: duty.running.low, high: duty.starting.high }, stopAt: 'needed' }),
  };
}

/** The highest mark of a direction; null where the scale starts above what is allowed. */
export function ceilingOf(settings: Settings): LimiterSetting['ceiling'] | null {
  const { unseat, run, seat } = settings;
  const marks = [unseat, run, seat].filter((setting) => setting !== null);
  return marks.length === 0 ? null : newtonMetres(Math.max(...marks.map((setting) => setting.ceiling)));
}

/** What never-exceed alone would allow on the limiter's scale, however far the scale went. */
export function allowedSetting({ limiter, duty }: Pick<SettingsInput, 'limiter' | 'duty'>): number {
  const marks = limiterMarks({
    torque: duty.starting,
    neverExceedLow: duty.neverExceed.torque.low,
    margin: LIMITER_MARGIN,
    limiter: { ...limiter, highest: newtonMetres(1e9) },
    factor: limiter.factor,
    stopAt: 'never-exceed',
  });
  return marks?.ceiling ?? 0;
}

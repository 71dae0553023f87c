/*
 * A limiter where it sits in a chain, built in or not, and how far each direction of one line lets it go.
 * Invariant: worked out once a line, limiter and kind of head; without a limiter there is none.
 * Not here: what the limited chain gives (core-figures.ts) and the marks themselves (../chain/limiter-settings.ts).
 * Read next: core-figures.ts.
 */
import type { Direction } from '#lib/duty/duty.ts';
import type { HeadModel } from '#lib/equipment/model.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { ChainLimiter } from '#lib/rules/facts.ts';
import { seatsOf } from '#lib/rules/ways-of-working.ts';
import type { Range } from '#lib/units/known-value.ts';
import { newtonMetres } from '#lib/units/quantity.ts';
import { underHeadFactor } from '../chain/chain-limits.ts';
import { allowedSetting, ceilingOf, limiterSettings } from '../chain/limiter-settings.ts';
import { type CoreInput, type CoreMemo, kindOf, type LimiterAt, type LimiterReach } from './core-memo.ts';

/** The limiter of a frame, built in or not, worked out once a line for where it sits. */
export function limiterAt(
  input: CoreInput,
  { memo, factor }: { readonly memo: CoreMemo; readonly factor: Range<'1'> },
): LimiterAt | null {
  const { drive, limiter: option } = input.frame;
  if (option === null && drive.facts.limiter === null) return null;
  const owner = option ?? drive;
  const ofOwner = memo.limiters.get(owner) ?? new Map<HeadModel | 'any head', LimiterAt>();
  if (ofOwner.size === 0) memo.limiters.set(owner, ofOwner);
  const where = option?.facts.sits === 'after head' ? 'any head' : kindOf(input.frame.head, memo);
  const known = ofOwner.get(where);
  if (known !== undefined) return known;
  const limiter = limiterInChain(input, factor);
  if (limiter === null) return null;
  const reach = (direction: Direction): LimiterReach => {
    const { facts, limiterUpTo: upTo } = input;
    const ask = { limiter, duty: facts.duty[direction], direction, upTo, seats: seatsOf(facts) };
    let allowed: number | null = null;
    return {
      ceiling: ceilingOf(limiterSettings(ask)),
      allowed: () => {
        allowed ??= allowedSetting(ask);
        return allowed;
      },
    };
  };
  const made = { limiter, opening: reach('opening'), closing: reach('closing') };
  ofOwner.set(where, made);
  return made;
}

function limiterInChain({ facts, frame }: CoreInput, factor: Range<'1'>): ChainLimiter | null {
  const built = frame.drive.facts.limiter;
  if (frame.limiter === null) return built === null ? null : { ...built, factor, number: frame.drive.number };
  const { lowest, highest, error, overshoot, step, bothDirections, sits } = frame.limiter.facts;
  invariant(
    lowest !== undefined && highest !== undefined && error !== undefined && step !== undefined,
    `Limiter ${frame.limiter.number} lacks its range, error or step.`,
  );
  const after = sits === 'after drive' ? factor : underHeadFactor(facts);
  return {
    lowest,
    highest,
    error,
    overshoot: overshoot ?? newtonMetres(0),
    step,
    bothDirections: bothDirections ?? false,
    factor: after,
    number: frame.limiter.number,
  };
}

/** Torque at the valve up to which a limiter surely lets the chain turn. */
export function surely(limiter: ChainLimiter, setting: number): number {
  return setting * (1 - limiter.error) * limiter.factor.low;
}

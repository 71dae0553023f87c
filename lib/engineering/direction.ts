/*
 * Which way to select on the drive so that the valve goes the way that is wanted.
 * Invariant: an unknown closing direction is never silently clockwise.
 * Not here: which heads reverse (their facts) and how the sheet words it (documents).
 * Read next: ../equipment/assembly.ts.
 */
export type TurningSense = 'clockwise' | 'anticlockwise';
export type Selection = TurningSense | 'try gently first: direction unknown';

/**
 * The other turning sense.
 *
 * Formula: clockwise ↔ anticlockwise
 *
 * @param sense - A turning sense. [–]
 * @returns The opposite one. [–]
 * @source Definition.
 * @assumes Both are seen from the same side.
 * @example opposite('clockwise') // => 'anticlockwise'
 */
export function opposite(sense: TurningSense): TurningSense {
  return sense === 'clockwise' ? 'anticlockwise' : 'clockwise';
}

/**
 * What the wheel or nut does for a movement of the valve, seen facing it.
 *
 * Formula: closing = closes; opening = the opposite
 *
 * @param movement - `opening` or `closing`. [–]
 * @param closes - Which way the valve closes, seen facing the wheel or nut. [–]
 * @returns Turning sense of the wheel or nut, or `unknown`. [–]
 * @source Definition.
 * @assumes The closing direction is that of the wheel or nut, gearboxes included.
 * @example wheelTurns({ movement: 'opening', closes: 'clockwise' }) // => 'anticlockwise'
 */
export function wheelTurns({
  movement,
  closes,
}: {
  readonly movement: 'opening' | 'closing';
  readonly closes: TurningSense | 'unknown';
}): TurningSense | 'unknown' {
  if (closes === 'unknown') return 'unknown';
  return movement === 'closing' ? closes : opposite(closes);
}

/**
 * What to select on the drive.
 *
 * Formula: the wheel's sense, turned round once for every head that reverses
 *
 * @param movement - `opening` or `closing`. [–]
 * @param closes - Which way the valve closes, seen facing the wheel or nut. [–]
 * @param reversals - Heads in the chain that reverse the turning sense. [1] range 0…5
 * @returns Turning sense to select, or the sentence that says it is unknown. [–]
 * @source Definition.
 * @assumes The drive's mark means its output seen from behind the drive, facing the valve.
 * @example selectOnDrive({ movement: 'closing', closes: 'clockwise', reversals: 1 }) // => 'anticlockwise'
 */
export function selectOnDrive({
  movement,
  closes,
  reversals,
}: {
  readonly movement: 'opening' | 'closing';
  readonly closes: TurningSense | 'unknown';
  readonly reversals: number;
}): Selection {
  const wheel = wheelTurns({ movement, closes });
  if (wheel === 'unknown') return 'try gently first: direction unknown';
  return reversals % 2 === 0 ? wheel : opposite(wheel);
}

/*
 * What the way a line is worked asks of its equipment: to and fro, both ways, by position, out of line.
 * Invariant: what is not known counts as the harder way.
 * Not here: the sentences of the rules (method.ts, restraint.ts).
 * Read next: method.ts.
 */
import { yearsIdle } from '#lib/duty/years-idle.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import { type Degrees, degrees } from '#lib/units/quantity.ts';
import type { LineFacts } from './facts.ts';

type WorkedFacts = Pick<LineFacts, 'line' | 'duty' | 'site'>;

/** Angle that a key takes up by itself; common practice, no source. */
export const STRAIGHT_UP_TO_DEG = 5;

const QUARTER_TURN: readonly string[] = ['butterfly', 'ball', 'plug'];
const SEATED_BY_POSITION: readonly string[] = ['parallel slide gate', 'knife gate', 'penstock'];

export function isStiff({ line, site }: Pick<LineFacts, 'line' | 'site'>): boolean {
  return (
    line.state.condition?.value === 'stiff' || (yearsIdle({ line, site }) ?? 0) > WORKING_CONSTANTS.stiffAfterYears
  );
}

/** Whether the drive pulls on its restraint both ways: more than one stroke, freeing to and fro, or a direction to be found out. */
export function goesBothWays(facts: WorkedFacts): boolean {
  return facts.duty.strokes > 1 || isStiff(facts) || facts.duty.closes === 'unknown';
}

/** Why it goes both ways, as a sentence goes on after the valve's tag. */
export function whyBothWays(facts: WorkedFacts): string {
  if (facts.duty.strokes > 1) return `is stroked ${facts.duty.strokes} times, both ways`;
  return isStiff(facts)
    ? 'is or may be stiff and is worked to and fro'
    : 'may close either way, which is found out by turning both ways';
}

/** A mark or a stop ends its closing, not a torque. */
export function isPositionSeated({ line }: Pick<LineFacts, 'line'>): boolean {
  const type = line.valveType?.value ?? 'unknown';
  const isWorm = line.torque.gearbox?.value === 'worm';
  return isWorm || QUARTER_TURN.includes(type) || SEATED_BY_POSITION.includes(type);
}

export function seatsOf(facts: Pick<LineFacts, 'line'>): 'by torque' | 'by position' {
  return isPositionSeated(facts) ? 'by position' : 'by torque';
}

/** Angle of the joint in the chain: nought where the chain stands straight and takes none. */
export function jointAngle({ line }: Pick<LineFacts, 'line'>): Degrees {
  const angle = line.place.misalignment?.high ?? degrees(0);
  return angle > STRAIGHT_UP_TO_DEG ? degrees(Math.min(angle, WORKING_CONSTANTS.steepestJoint)) : degrees(0);
}

/*
 * How many turns a stroke takes, and its work.
 * Invariant: turns follow the lead (pitch × starts), never the pitch alone.
 * Not here: gearboxes (gear-reduction.ts) and speed (tool side).
 * Read next: gear-reduction.ts.
 */
import { type Joules, joules, type Metres, type NewtonMetres, type Turns, turns } from '#lib/units/quantity.ts';

/**
 * Turns of a stroke from its geometry.
 *
 * Formula: n = s/l + n0
 *
 * @param travel - Travel of the closure. [m] range 0…10
 * @param lead - Advance in one turn, pitch × starts. [m] range 0.0005…0.15
 * @param lostMotion - Turns before anything moves. [turn] range 0…10
 * @returns Turns of one stroke. [turn]
 * @source Geometry; Khurmi & Gupta, Theory of Machines, Example 10.11 (170 mm at 10 mm lead: 17 turns).
 * @assumes The nut does not slip.
 * @example turnsFromTravel({ travel: millimetres(170), lead: millimetres(10), lostMotion: turns(0) }) // => 17
 */
export function turnsFromTravel({
  travel,
  lead,
  lostMotion,
}: {
  readonly travel: Metres;
  readonly lead: Metres;
  readonly lostMotion: Turns;
}): Turns {
  return turns(travel / lead + lostMotion);
}

/**
 * Turns of a waterworks gate valve by the trade's rule.
 *
 * Formula: n = 3·D/(25.4 mm) + k
 *
 * @param size - Nominal size. [m] range 0.02…3
 * @param extra - Turns beyond three for each inch, 2 to 3 in the rule. [turn] range 0…6
 * @returns Turns of one stroke. [turn]
 * @source Waterworks rule of thumb (public valve-operation article: 4 in 14 to 15, 6 in 20 to 21, 8 in 26 to 27 turns); Kansas Rural Water Association, The Kansas Lifeline, November 2011: 27 turns at 8 in.
 * @assumes A thread of about three turns to the inch; metric valves often take more turns.
 * @example waterworksTurns({ size: millimetres(203.2), extra: turns(3) }) // => 27
 */
export function waterworksTurns({ size, extra }: { readonly size: Metres; readonly extra: Turns }): Turns {
  return turns((3 * size) / 0.0254 + extra);
}

/**
 * Work of a stroke at the valve.
 *
 * Formula: W = 2π·T·n
 *
 * @param torque - Running torque. [N·m] range 0…1e5
 * @param turns - Turns of the stroke. [turn] range 0…1e5
 * @returns Work. [J]
 * @source Definition of work.
 * @assumes The same torque all along, which is on the safe side for a valve.
 * @example strokeWork({ torque: newtonMetres(40), turns: turns(25) }) // => 6283
 */
export function strokeWork({ torque, turns }: { readonly torque: NewtonMetres; readonly turns: Turns }): Joules {
  return joules(2 * Math.PI * torque * turns);
}

/*
 * Sizes of stem threads: trapezoidal, Acme and square.
 * Invariant: lead = pitch × starts; a designation such as Tr36x6 names the pitch.
 * Not here: reading a designation (intake) and the torque of a thread (power-screw.ts).
 * Read next: thread-table.ts.
 */
import { type Degrees, degrees, type Metres, metres, type Ratio } from '#lib/units/quantity.ts';
import { TRAPEZOIDAL_MEDIUM_PITCHES } from './thread-table.ts';

export const THREAD_FORMS = ['trapezoidal', 'acme', 'square'] as const;
export type ThreadForm = (typeof THREAD_FORMS)[number];

export interface ThreadSize {
  readonly form: ThreadForm;
  readonly majorDiameter: Metres;
  readonly pitch: Metres;
}

/**
 * Mean (pitch) diameter of a thread.
 *
 * Formula: dm = d − P/2
 *
 * @param majorDiameter - Outside diameter of the thread. [m] range 0.005…0.3
 * @param pitch - Distance between neighbouring threads. [m] range 0.0005…0.05
 * @returns Mean diameter. [m]
 * @source ISO 2904 (trapezoidal), ASME B1.5 (Acme); square threads by the same rule.
 * @assumes Basic profile, no wear.
 * @example threadMeanDiameter({ majorDiameter: millimetres(36), pitch: millimetres(6) }) // => 0.033
 */
export function threadMeanDiameter({
  majorDiameter,
  pitch,
}: {
  readonly majorDiameter: Metres;
  readonly pitch: Metres;
}): Metres {
  return metres(majorDiameter - pitch / 2);
}

/**
 * Root diameter of an external thread.
 *
 * Formula: d3 = d − P − 2·ac; trapezoidal ac = 0.25 mm to P = 5, 0.5 mm to P = 12, 1 mm above; Acme 2·ac = 0.508 mm; square ac = 0
 *
 * @param form - Trapezoidal, Acme or square. [–]
 * @param majorDiameter - Outside diameter of the thread. [m] range 0.005…0.3
 * @param pitch - Distance between neighbouring threads. [m] range 0.0005…0.05
 * @returns Diameter of the core that carries torsion and compression. [m]
 * @source ISO 2904 and DIN 103 (trapezoidal); ASME B1.5, clearance 0.020 in at 10 threads per inch and coarser, from memory.
 * @assumes Basic profile, no wear and no corrosion.
 * @example threadRootDiameter({ form: 'trapezoidal', majorDiameter: millimetres(36), pitch: millimetres(6) }) // => 0.029
 */
export function threadRootDiameter({ form, majorDiameter, pitch }: ThreadSize): Metres {
  return metres(Math.max(majorDiameter - pitch - bottomClearance({ form, pitch }), majorDiameter * 0.4));
}

/**
 * Half the angle between the flanks of a thread.
 *
 * Formula: α = 15° trapezoidal, 14.5° Acme, 0° square
 *
 * @param form - Trapezoidal, Acme or square. [–]
 * @returns Half-angle. [°]
 * @source ISO 2901 (30° trapezoidal), ASME B1.5 (29° Acme).
 * @assumes A standard profile.
 * @example flankHalfAngle('acme') // => 14.5
 */
export function flankHalfAngle(form: ThreadForm): Degrees {
  return degrees({ trapezoidal: 15, acme: 14.5, square: 0 }[form]);
}

/**
 * Advance of a thread in one turn.
 *
 * Formula: l = P·n
 *
 * @param pitch - Distance between neighbouring threads. [m] range 0.0005…0.05
 * @param starts - Number of threads side by side. [1] range 1…6
 * @returns Lead. [m]
 * @source Shigley's Mechanical Engineering Design, section 8-1; ISO 2901.
 * @assumes Whole starts.
 * @example threadLead({ pitch: millimetres(4), starts: ratio(2) }) // => 0.008
 */
export function threadLead({ pitch, starts }: { readonly pitch: Metres; readonly starts: Ratio }): Metres {
  return metres(pitch * starts);
}

/**
 * Usual pitch of a trapezoidal thread of this size.
 *
 * Formula: the row of the medium series with the nearest diameter not above; below and beyond the table P ≈ d/5.5
 *
 * @param majorDiameter - Outside diameter of the thread. [m] range 0.005…0.3
 * @returns Medium pitch. [m]
 * @source ISO 2902, medium-pitch series.
 * @assumes A stem with an ordinary trapezoidal thread.
 * @example mediumPitch(millimetres(36)) // => 0.006
 */
export function mediumPitch(majorDiameter: Metres): Metres {
  const row = TRAPEZOIDAL_MEDIUM_PITCHES.findLast(([upFrom]) => majorDiameter >= upFrom / 1000 - 1e-9);
  if (row === undefined) return metres(Math.max(majorDiameter / 5.5, 0.001));
  return metres(row[1] / 1000);
}

function bottomClearance({ form, pitch }: { readonly form: ThreadForm; readonly pitch: Metres }): number {
  if (form === 'square') return 0;
  if (form === 'acme') return 0.000508;
  if (pitch < 0.0055) return 0.0005;
  return pitch < 0.0125 ? 0.001 : 0.002;
}

/*
 * Couplings between pieces of equipment: forms, sizes and what joins what.
 * Invariant: two couplings join only where form and size are equal and one is male, the other female.
 * Not here: torque ratings of squares (engineering).
 * Read next: model.ts.
 */
/** Driving squares of ISO 1174 by nominal size in mm, and the splines and bolted faces of the house. */
export const COUPLING_SIZES = {
  square: ['12.5', '20', '25', '40'],
  spline: ['house spline 22', 'house spline 30', 'house spline 42'],
  face: ['house face 90', 'house face 140'],
} as const;
export type CouplingForm = keyof typeof COUPLING_SIZES;

export interface Coupling {
  readonly form: CouplingForm;
  readonly size: string;
  readonly gender: 'male' | 'female';
}

export function joins(a: Coupling, b: Coupling): boolean {
  return a.form === b.form && a.size === b.size && a.gender !== b.gender;
}

/*
 * Data: sizes of operating nuts, squares and key caps that a kit must be ready for.
 * Invariant: sizes across flats in millimetres, commonest first; a tapered square is named at its top.
 * Not here: the sockets that fit them (equipment).
 * Read next: keyed-valves.ts.
 */
export interface UsualNut {
  readonly shape: 'square' | 'tapered square' | 'hexagon' | 'pentagon';
  readonly acrossFlats_mm: number;
  readonly atBase_mm?: number;
  readonly source: string;
}

/** ANSI/AWWA C500 and C509 wrench nut: 1-15/16 in at the top, 2 in at the base, 1-3/4 in high; from memory. */
export const AMERICAN_WRENCH_NUT: UsualNut = {
  shape: 'tapered square',
  acrossFlats_mm: 49.2,
  atBase_mm: 50.8,
  source: 'ANSI/AWWA C509 wrench nut, 2 in square, from memory.',
};

/** Squares and caps met on buried valves; national practice varies. Common practice, no source, sizes from memory. */
export const BURIED_NUTS: readonly UsualNut[] = [
  AMERICAN_WRENCH_NUT,
  {
    shape: 'tapered square',
    acrossFlats_mm: 27,
    atBase_mm: 32,
    source: 'Key cap or spindle square about 27 to 32 mm, usual on European buried valves; common practice, no source.',
  },
  { shape: 'square', acrossFlats_mm: 38, source: 'Key cap 38 mm; common practice, no source.' },
];

export const HYDRANT_NUTS: readonly UsualNut[] = [
  { shape: 'pentagon', acrossFlats_mm: 38, source: 'Hydrant pentagon about 1-1/2 in; common practice, no source.' },
  {
    shape: 'tapered square',
    acrossFlats_mm: 27,
    atBase_mm: 32,
    source: 'Spindle square about 27 to 32 mm; common practice, no source.',
  },
  { shape: 'square', acrossFlats_mm: 30, source: 'Pillar hydrant square about 30 mm; common practice, no source.' },
];

export const STOP_TAP_NUTS: readonly UsualNut[] = [
  { shape: 'square', acrossFlats_mm: 14, source: 'Stop-tap square about 14 mm; common practice, no source.' },
  { shape: 'square', acrossFlats_mm: 19, source: 'Stop-tap crutch or square about 19 mm; common practice, no source.' },
];

export const GEARBOX_NUTS: readonly UsualNut[] = [
  AMERICAN_WRENCH_NUT,
  ...BURIED_NUTS.slice(1, 2),
  { shape: 'square', acrossFlats_mm: 19, source: 'Gearbox input square about 19 mm; common practice, no source.' },
];

import type { NewLine } from '#lib/services/schedule/change-lines.ts';

const TYPES = ['gate', 'wedge gate', 'globe', 'butterfly', 'penstock', 'knife gate'] as const;

/** Lines as a long list has them: every cell that most lists fill, in a few hundred combinations. */
export function longSchedule(count: number): readonly NewLine[] {
  return Array.from({ length: count }, (_, at) => ({
    cells: {
      tag: `LV-${at + 1}`,
      qty: '1',
      valve_type: TYPES[at % TYPES.length] ?? 'gate',
      size: `DN ${80 + (at % 8) * 50}`,
      rating: 'PN 16',
      line_pressure: `${4 + (at % 7)} bar`,
      driven_by: at % 3 === 0 ? 'handwheel' : 'key cap',
      location: `Street ${at % 311}, chamber ${at % 7}`,
      ...(at % 3 === 0 ? { wheel_diameter: `${300 + (at % 9) * 25} mm` } : { depth_to_nut: `${1 + (at % 5) * 0.3} m` }),
      ...(at % 11 === 0 ? { notes: 'stiff' } : {}),
    },
  }));
}

import { describe, expect, it } from 'vitest';
import { parseSite } from '#lib/contracts/site.ts';
import { COLUMN_GUIDE } from '#lib/documents/guide/field-guide.ts';
import { CAUTIONS } from '#lib/documents/guide/field-guide-entry.ts';
import { FOUND_GUIDE } from '#lib/documents/guide/field-guide-found.ts';
import { SITE_GUIDE } from '#lib/documents/guide/field-guide-site.ts';
import { FIELD_PICTURE_NAMES, fieldPicture } from '#lib/documents/guide/field-pictures.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { Duty } from '#lib/duty/duty.ts';
import { COLUMN_NAMES } from '#lib/intake/column-names.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { granted } from '#tests/support/granted.ts';
import { textOverlaps } from '#tests/support/papers/text-overlaps.ts';

const ALL = [...COLUMN_GUIDE, ...SITE_GUIDE, ...FOUND_GUIDE];

describe('the field guide', () => {
  it('has one entry for every column of a list, in their order, and no other', () => {
    expect(COLUMN_GUIDE.map(({ field }) => field)).toEqual([...COLUMN_NAMES]);
  });

  it('has one entry for every fact of a site that no column names, and no field twice', () => {
    const columns: readonly string[] = COLUMN_NAMES;
    const site = granted(parseSite({}, { startsOn: '2026-03-02' }));
    expect(site.days).toBe(1);
    expect(new Set(ALL.map(({ field }) => field)).size).toBe(ALL.length);
    expect(SITE_GUIDE.filter(({ field }) => columns.includes(field))).toEqual([]);
  });

  it('says in whole sentences how each is measured and what grows wider', () => {
    for (const { field, measure, widens, caution } of ALL) {
      expect(widens.length, field).toBeGreaterThan(0);
      expect(measure.length, field).toBeGreaterThan(0);
      for (const sentence of [...measure, ...(caution === undefined ? [] : [caution])])
        expect(sentence, field).toMatch(/^[A-Z0-9].*[.?]$/);
    }
  });

  it('warns wherever measuring means moving the valve, opening a cover or standing high', () => {
    const moving =
      /\b(try by hand|watch two turns|turn it once|pull slowly|count to|count turns|turn by hand|turns of the wheel for)\b/i;
    const asks = COLUMN_GUIDE.filter(({ measure }) => measure.some((step) => moving.test(step)));
    expect(asks.length).toBeGreaterThan(5);
    for (const { field, caution = '' } of asks) expect(caution, field).toContain(CAUTIONS.move);
    for (const field of ['depth_to_nut', 'surface_box', 'nut_size', 'spindle_length'])
      expect(COLUMN_GUIDE.find((entry) => entry.field === field)?.caution, field).toContain(CAUTIONS.cover);
  });
});

describe('the drawings of the field guide', () => {
  const used = new Map(ALL.flatMap(({ field, picture }) => (picture === undefined ? [] : [[picture, field] as const])));

  it('are all used', () => {
    expect([...used.keys()].toSorted()).toEqual([...FIELD_PICTURE_NAMES].toSorted());
  });

  it('tell themselves in a sentence, keep inside their frame, and no name covers another', () => {
    for (const [name, title] of used) {
      const drawing = fieldPicture({ name, title });
      expect(drawing.description, name).toMatch(/^[A-Z].{30,}\.$/);
      expect(textOverlaps(drawing), name).toEqual([]);
      for (const shape of drawing.shapes) {
        if (shape.kind !== 'rect') continue;
        expect(
          shape.x >= 0 && shape.y >= 0 && shape.x + shape.width <= 240 && shape.y + shape.height <= 150,
          name,
        ).toBe(true);
      }
    }
  });
});

/** Lines that say much, so that leaving one thing out can be seen. */
const SAYING_MUCH: readonly Cells[] = [
  {
    tag: 'A',
    valve_type: 'gate',
    size: 'DN 200',
    rating: 'PN 16',
    line_pressure: '10 bar',
    differential_pressure: '4 bar',
    medium: 'water',
    temperature: '180 °C',
    age: '2 years',
    last_operated: '1 year',
    condition: 'free',
    bypass: 'yes',
    stem: 'rising through the wheel',
    stem_thread: 'Tr40x12(P6)',
    thread_starts: '2',
    stem_diameter: '40 mm',
    stem_material: 'stainless steel',
    thread_friction: '0.12',
    collar_friction: '0.12',
    collar_mean_diameter: '70 mm',
    collar_bearing: 'plain',
    packing_load: '3000 N',
    seat_diameter: '190 mm',
    travel: '210 mm',
    valve_factor: '0.4',
    driven_by: 'handwheel',
    wheel_diameter: '400 mm',
    wheel_material: 'steel',
    flange: 'F14',
  },
  {
    tag: 'B',
    valve_type: 'gate',
    size: 'DN 200',
    stem: 'non-rising',
    stem_thread: 'Tr40x7',
    travel: '205 mm',
    driven_by: 'nut',
    nut_size: '32 mm',
    nut_shape: 'square',
    nut_wear: 'good',
    turns: '30',
    starting_torque: '120 N·m',
    running_torque: '60 N·m',
    max_torque: '300 N·m',
  },
  {
    tag: 'C',
    valve_type: 'butterfly',
    size: 'DN 600',
    line_pressure: '6 bar',
    gearbox: 'worm',
    gear_ratio: '40:1',
    gear_efficiency: '35 %',
    output_torque: '2000 N·m',
    end_stops: 'adjustable',
    flange: 'F16',
    driven_by: 'gearbox wheel',
    wheel_diameter: '400 mm',
  },
  {
    tag: 'D',
    valve_type: 'gate',
    size: 'DN 150',
    driven_by: 'extension spindle',
    spindle_size: '25 mm',
    spindle_length: '1.5 m',
    depth_to_nut: '1.5 m',
    nut_size: '32 mm',
    condition: 'free',
  },
  {
    tag: 'E',
    valve_type: 'gate',
    size: 'DN 200',
    line_pressure: '10 bar',
    stem: 'non-rising',
    driven_by: 'handwheel',
    stem_thrust: '40 kN',
    stem_material: 'bronze',
    action: 'reverse',
    travel: '200 mm',
  },
  { tag: 'F', valve_type: 'gate', size: 'DN 200', rating: 'PN 25', driven_by: 'handwheel' },
  {
    tag: 'G',
    valve_type: 'gate',
    size: 'DN 150',
    line_pressure: '6 bar',
    medium: 'slurry',
    temperature: '350 °C',
    age: '60 years',
    last_operated: '20 years',
    bypass: 'yes',
    driven_by: 'handwheel',
    wheel_material: 'cast iron',
  },
  {
    tag: 'H',
    valve_type: 'gate',
    size: 'DN 200',
    line_pressure: '10 bar',
    stem: 'non-rising',
    driven_by: 'nut',
    nut_size: '25 mm',
    nut_wear: 'rounded',
  },
  {
    tag: 'I',
    valve_type: 'gate',
    size: 'DN 200',
    line_pressure: '10 bar',
    stem_thread: 'Tr40x6',
    thread_starts: '2',
    collar_bearing: 'rolling',
    stem: 'rising through the wheel',
  },
  {
    tag: 'J',
    valve_type: 'globe',
    size: 'DN 150',
    line_pressure: '10 bar',
    stem: 'rising with the wheel',
    stem_diameter: '28 mm',
    stem_material: 'bronze',
    driven_by: 'handwheel',
  },
  {
    tag: 'K',
    valve_type: 'gate',
    size: 'DN 600',
    line_pressure: '6 bar',
    gearbox: 'bevel',
    gear_ratio: '3:1',
    driven_by: 'gearbox wheel',
  },
  {
    tag: 'L',
    valve_type: 'penstock',
    size: '1000 mm',
    stem: 'rising through the wheel',
    stem_thrust: '60 kN',
    travel: '1.2 m',
    stem_diameter: '40 mm',
  },
  {
    tag: 'M',
    valve_type: 'ball',
    size: 'DN 200',
    line_pressure: '40 bar',
    gearbox: 'worm',
    driven_by: 'gearbox wheel',
  },
  {
    tag: 'O',
    valve_type: 'gate',
    size: 'DN 400',
    line_pressure: '10 bar',
    gearbox: 'bevel',
    driven_by: 'handwheel',
    wheel_diameter: '500 mm',
  },
  { tag: 'N', size: 'DN 100', driven_by: 'square' },
];

/** Numbers only: a source sentence that changes is no range that widens. */
function figures(duty: Duty, what: 'torque' | 'turns' | 'never'): readonly (readonly number[])[] {
  const ends = ({ low, nominal, high }: Known<Unit>) => [low, nominal, high];
  if (what === 'turns') return [ends(duty.turns)];
  const ways = [duty.opening, duty.closing];
  if (what === 'torque') return ways.flatMap(({ starting, running }) => [ends(starting), ends(running)]);
  return [...ways.map(({ neverExceed }) => neverExceed), ...duty.bounds].map(({ torque }) => ends(torque));
}

function dutyOf(cells: Cells): Duty {
  const site = granted(parseSite({}, { startsOn: '2026-03-02' }));
  return assessDuty({ line: readLine({ row: 1, cells }).line, site });
}

describe('what a field is said to widen', () => {
  const claims = COLUMN_GUIDE.flatMap(({ field, widens }) =>
    widens.flatMap((what) => (what === 'torque' || what === 'turns' || what === 'never' ? [{ field, what }] : [])),
  );

  it.each(claims)('$field moves $what of the duty when it is left out', ({ field, what }) => {
    const moved = SAYING_MUCH.filter((cells) => field in cells).filter((cells) => {
      const { [field as keyof Cells]: _left, ...without } = cells;
      return JSON.stringify(figures(dutyOf(cells), what)) !== JSON.stringify(figures(dutyOf(without), what));
    });
    expect(moved.length).toBeGreaterThan(0);
  });
});

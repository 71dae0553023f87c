import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { DIRECTIONS, type Duty } from '#lib/duty/duty.ts';
import type { Cells } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { number } from '#tests/support/lists/duty-arbitraries.ts';
import { PLAIN_SITE } from '#tests/support/lists/duty-lines.ts';

/** Exact by definition: international inch and foot, avoirdupois pound, standard gravity (NIST SP 811, appendix B). */
const IN_MM = 25.4;
const FT_M = 0.3048;
const LBF_N = 0.453_592_37 * 9.806_65;
const PSI_BAR = LBF_N / 0.0254 ** 2 / 1e5;
const LBF_FT_NM = LBF_N * FT_M;

interface Twin {
  readonly si: string;
  readonly us: string;
}

const twin = (si: string, unit: string, value: number, per: number): Twin => ({
  si: `${value} ${si}`,
  us: `${value / per} ${unit}`,
});
const length = (min: number, max: number) => number(min, max).map((value) => twin('mm', 'in', value, IN_MM));
const depth = (min: number, max: number) => number(min, max).map((value) => twin('m', 'ft', value, FT_M));
const pressure = (min: number, max: number) => number(min, max).map((value) => twin('bar', 'psi', value, PSI_BAR));
const force = (min: number, max: number) => number(min, max).map((value) => twin('N', 'lbf', value, LBF_N));
const torque = (min: number, max: number) => number(min, max).map((value) => twin('N·m', 'lbf·ft', value, LBF_FT_NM));
const heat = number(1, 300).map((value): Twin => ({ si: `${value} °C`, us: `${(value * 9) / 5 + 32} °F` }));
const same = (...texts: readonly string[]) => fc.constantFrom(...texts).map((text): Twin => ({ si: text, us: text }));
const sizes = fc.constantFrom<Twin>(
  { si: 'DN 100', us: 'NPS 4' },
  { si: 'DN 150', us: 'NPS 6' },
  { si: 'DN 200', us: 'NPS 8' },
  { si: 'DN 300', us: 'NPS 12' },
);
const maybe = (value: fc.Arbitrary<Twin>) => fc.option(value, { nil: undefined, freq: 2 });

const rows = fc.record({
  valve_type: same('wedge gate', 'knife gate', 'globe', 'butterfly', 'ball', 'penstock', 'hydrant', 'gate'),
  size: sizes,
  rating: maybe(same('PN 16', 'Class 150', 'Class 300')),
  line_pressure: maybe(pressure(1, 18)),
  differential_pressure: maybe(pressure(1, 18)),
  temperature: maybe(heat),
  stem_diameter: maybe(length(18, 60)),
  seat_diameter: maybe(length(90, 300)),
  travel: maybe(length(90, 320)),
  packing_load: maybe(force(200, 9000)),
  stem_thrust: maybe(force(2000, 90_000)),
  collar_mean_diameter: maybe(length(30, 90)),
  thread_friction: maybe(same('0.12', '0.15', '0.2')),
  max_torque: maybe(torque(60, 500)),
  starting_torque: maybe(torque(20, 300)),
  turns: maybe(same('14', '30', '52')),
  wheel_diameter: maybe(length(200, 600)),
  depth_to_nut: maybe(depth(0.3, 3)),
  condition: maybe(same('free', 'stiff')),
});

function dutyIn(system: keyof Twin, row: Readonly<Record<string, Twin | undefined>>): Duty {
  const cells = Object.fromEntries(
    Object.entries(row).flatMap(([column, cell]) => (cell === undefined ? [] : [[column, cell[system]]])),
  ) satisfies Cells;
  const { line, problems } = readLine({ row: 1, cells: { tag: 'V1', ...cells } });
  expect(problems.filter(({ severity }) => severity === 'refused')).toEqual([]);
  return assessDuty({ line, site: PLAIN_SITE });
}

/** Everything numeric that a duty says, by name. */
function figuresOf(duty: Duty): readonly (readonly [name: string, value: number])[] {
  const range = (name: string, one: { readonly low: number; readonly high: number } | null | undefined) =>
    one === null || one === undefined
      ? [[name, -1] as const]
      : [[`${name} low`, one.low] as const, [`${name} high`, one.high] as const];
  return [
    ...DIRECTIONS.flatMap((way) => [
      ...range(`${way} start`, duty[way].starting),
      ...range(`${way} run`, duty[way].running),
      ...range(`${way} thrust`, duty[way].thrust),
      ...range(`${way} limit`, duty[way].neverExceed.torque),
      ...range(`${way} window`, duty[way].limiter),
    ]),
    ...range('turns', duty.turns),
    ...range('speed', duty.maxInputSpeed),
    ...range('stroke', duty.minStrokeTime),
    ...range('wheel', duty.grip.wheelDiameter),
    ...range('depth', duty.grip.depthToNut),
    ...range('protrusion', duty.grip.stemProtrusion),
    ...range('lead', duty.thread?.lead),
  ];
}

describe('the unit system of a list', () => {
  it('does not matter: the same row in SI and in US customary units gives the same duty', () => {
    let compared = 0;
    holdsFor({
      law: 'unit system does not matter',
      cases: rows,
      runs: 800,
      check: (row) => {
        const [si, us] = [dutyIn('si', row), dutyIn('us', row)];
        const other = new Map(figuresOf(us));
        for (const [name, value] of figuresOf(si)) {
          const twinned = other.get(name) ?? Number.NaN;
          expect(Math.abs(twinned - value), name).toBeLessThanOrEqual(1e-9 * Math.max(1e-3, Math.abs(value)));
          compared += 1;
        }
        expect(us.findings.map(({ id }) => id)).toEqual(si.findings.map(({ id }) => id));
        expect(us.measureFirst).toBe(si.measureFirst);
        return undefined;
      },
    });
    console.info(`unit systems: ${compared} figures compared`);
  });
});

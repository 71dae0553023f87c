import fc from 'fast-check';
import {
  CONDITIONS,
  DRIVEN_BY,
  GEARBOX_KINDS,
  NUT_SHAPES,
  type ScheduleLine,
  STEM_KINDS,
  VALVE_TYPES,
} from '#lib/duty/schedule-line.ts';
import { fact, type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { lineOf, SAID } from '#tests/support/lists/duty-lines.ts';

/** Even steps between the ends: doubles drawn freely crowd at nought. */
export const number = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((step) => min + ((max - min) * step) / 10_000);

/** A range, or one value, somewhere between the ends. */
export function ranged<U extends Unit>(unit: U, min: number, max: number): fc.Arbitrary<Known<U>> {
  return fc.tuple(number(min, max), number(min, max), number(0, 1)).map(([a, b, part]) => {
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    return known(unit, { low, nominal: Math.min(high, low + (high - low) * part), high }, SAID);
  });
}
const maybe = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | undefined> =>
  fc.option(value, { nil: undefined, freq: 2 });
const one = <Value extends string>(values: readonly Value[]) =>
  fc.constantFrom(...values).map((value) => fact(value, SAID));

function given<Part extends object>(part: { readonly [Key in keyof Part]: Part[Key] | undefined }): Part {
  return Object.fromEntries(Object.entries(part).filter(([, value]) => value !== undefined)) as Part;
}

const thread = fc
  .record({
    d: number(0.012, 0.09),
    share: number(0.12, 0.25),
    starts: fc.constantFrom(undefined, 1, 2),
    form: fc.constantFrom('trapezoidal' as const, 'acme' as const, 'square' as const),
  })
  .map(({ d, share, starts, form }) =>
    fact(
      {
        form,
        majorDiameter_m: d,
        pitch_m: d * share,
        designation: 'generated',
        ...(starts === undefined ? {} : { starts }),
      },
      SAID,
    ),
  );

export const scheduleLines: fc.Arbitrary<ScheduleLine> = fc
  .record({
    valveType: maybe(one(VALVE_TYPES)),
    size: maybe(ranged('m', 0.02, 1.2)),
    rating: maybe(one(['PN 10', 'PN 16', 'Class 150', 'Class 600', '10K', 'unreadable'])),
    action: maybe(one(['direct', 'reverse'])),
    process: fc
      .record({
        linePressure: maybe(ranged('Pa', 0, 60e5)),
        differentialPressure: maybe(ranged('Pa', 0, 60e5)),
        flowing: maybe(one(['flowing', 'still'])),
        temperature: maybe(ranged('°C', -10, 400)),
        pipeLength: maybe(ranged('m', 1, 5000)),
        flowVelocity: maybe(ranged('m/s', 0, 5)),
      })
      .map(given<ScheduleLine['process']>),
    state: fc
      .record({
        condition: maybe(one(CONDITIONS)),
        age: maybe(fc.integer({ min: 0, max: 2030 }).map((value) => fact(value, SAID))),
        lastOperated: maybe(fc.integer({ min: 0, max: 60 }).map((value) => fact(value, SAID))),
      })
      .map(given<ScheduleLine['state']>),
    stem: fc
      .record({
        kind: maybe(one(STEM_KINDS)),
        thread: maybe(thread),
        diameter: maybe(ranged('m', 0.012, 0.1)),
        threadFriction: maybe(ranged('1', 0.05, 0.3)),
        collarFriction: maybe(ranged('1', 0.003, 0.3)),
        packingLoad: maybe(ranged('N', 0, 2e4)),
        valveFactor: maybe(ranged('1', 0.1, 1.2)),
        travel: maybe(ranged('m', 0.01, 1.5)),
        thrust: maybe(ranged('N', 100, 2e5)),
      })
      .map(given<ScheduleLine['stem']>),
    torque: fc
      .record({
        turns: maybe(ranged('turn', 2, 300)),
        starting: maybe(ranged('N·m', 1, 900)),
        max: maybe(ranged('N·m', 5, 900)),
        gearbox: maybe(one(GEARBOX_KINDS)),
        gearRatio: maybe(ranged('1', 1.5, 300)),
        flange: maybe(one(['F07', 'F10', 'F14', 'F25'])),
        closes: maybe(one(['clockwise', 'anticlockwise'])),
      })
      .map(given<ScheduleLine['torque']>),
    interface: fc
      .record({
        drivenBy: maybe(one(DRIVEN_BY)),
        wheelDiameter: maybe(ranged('m', 0.1, 1)),
        nutShape: maybe(one(NUT_SHAPES)),
        spindleSize: maybe(ranged('m', 0.015, 0.05)),
        nutWear: maybe(one(['good', 'worn', 'rounded'])),
      })
      .map(given<ScheduleLine['interface']>),
    notes: maybe(fc.constantFrom('buried', 'flow under the disc', 'pressure from above', 'at the corner')),
  })
  .map((parts) => lineOf(given<Partial<ScheduleLine>>(parts)));

/** Lines that give the ranges which the law then reads at one point. */
export const measurable = fc
  .tuple(scheduleLines, ranged('Pa', 0, 60e5), ranged('Pa', 0, 60e5), ranged('1', 0.05, 0.3), ranged('1', 0.1, 1.2))
  .map(([line, linePressure, differentialPressure, threadFriction, valveFactor]) => ({
    ...line,
    process: { ...line.process, linePressure, differentialPressure },
    stem: { ...line.stem, threadFriction, valveFactor },
  }));

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { DIRECTIONS, type Duty } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import {
  CONDITIONS,
  DRIVEN_BY,
  GEARBOX_KINDS,
  NUT_SHAPES,
  type ScheduleLine,
  STEM_KINDS,
  VALVE_TYPES,
} from '#lib/duty/schedule-line.ts';
import { stemLoad, stemTorque, threadTorque } from '#lib/engineering/power-screw.ts';
import { fact, type Known, known } from '#lib/units/known-value.ts';
import { degrees, metres, newtonMetres, newtons, ratio, type Unit } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { lineOf, PLAIN_SITE, SAID } from '#tests/support/duty-lines.ts';

/** Even steps between the ends: doubles drawn freely crowd at nought. */
const number = (min: number, max: number) =>
  fc.integer({ min: 0, max: 10_000 }).map((step) => min + ((max - min) * step) / 10_000);

/** A range, or one value, somewhere between the ends. */
function ranged<U extends Unit>(unit: U, min: number, max: number): fc.Arbitrary<Known<U>> {
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

const lines: fc.Arbitrary<ScheduleLine> = fc
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
const measurable = fc
  .tuple(lines, ranged('Pa', 0, 60e5), ranged('Pa', 0, 60e5), ranged('1', 0.05, 0.3), ranged('1', 0.1, 1.2))
  .map(([line, linePressure, differentialPressure, threadFriction, valveFactor]) => ({
    ...line,
    process: { ...line.process, linePressure, differentialPressure },
    stem: { ...line.stem, threadFriction, valveFactor },
  }));

const dutyOf = (line: ScheduleLine): Duty => assessDuty({ line, site: PLAIN_SITE });
const screws = fc
  .record({
    load: number(0, 2e5),
    meanDiameter: number(0.01, 0.1),
    leadShare: number(0.05, 0.6),
    friction: number(0.02, 0.4),
    collarFriction: number(0, 0.3),
    collarShare: number(0, 2),
    more: number(1, 3),
  })
  .map(({ load, meanDiameter, leadShare, friction, collarFriction, collarShare, more }) => ({
    more,
    screw: {
      load: newtons(load),
      meanDiameter: metres(meanDiameter),
      lead: metres(meanDiameter * leadShare),
      flankHalfAngle: degrees(15),
      friction: ratio(friction),
      collarFriction: ratio(collarFriction),
      collarMeanDiameter: metres(meanDiameter * collarShare),
    },
  }));

describe('laws of the stem', () => {
  it('torque rises with load, friction and lead', () => {
    holdsFor({
      law: 'torque is monotone',
      cases: screws,
      check: ({ screw, more }) => {
        const torque = stemTorque(screw);
        for (const raised of [
          { load: newtons(screw.load * more) },
          { friction: ratio(Math.min(0.6, screw.friction * more)) },
          { collarFriction: ratio(screw.collarFriction * more) },
          { lead: metres(screw.lead * Math.min(more, 1.3)) },
          { meanDiameter: metres(screw.meanDiameter * more) },
        ]) {
          expect(stemTorque({ ...screw, ...raised })).toBeGreaterThanOrEqual(torque * (1 - 1e-9));
        }
        return undefined;
      },
    });
  });
  it('the inverse gives the load back', () => {
    holdsFor({
      law: 'forward and inverse agree',
      cases: screws,
      check: ({ screw }) => {
        if (screw.load < 1) return false;
        const { load, ...thread } = screw;
        const back = stemLoad({ ...thread, torque: newtonMetres(stemTorque(screw)) });
        expect(Math.abs(back / load - 1)).toBeLessThan(1e-9);
        return undefined;
      },
    });
  });
  it('a load that helps never takes more than one that resists', () => {
    holdsFor({
      law: 'helping load',
      cases: screws,
      check: ({ screw }) => {
        const { collarFriction: _fc, collarMeanDiameter: _dc, ...thread } = screw;
        expect(threadTorque({ ...thread, load: newtons(-screw.load) })).toBeLessThanOrEqual(threadTorque(thread));
        return undefined;
      },
    });
  });
});

describe('laws of a duty', () => {
  it('any line gives a duty whose every number is a finite, ordered range with a source', () => {
    holdsFor({
      law: 'total and honest',
      cases: lines,
      runs: 1500,
      check: (line) => {
        const duty = dutyOf(line);
        for (const value of [
          duty.opening.starting,
          duty.opening.running,
          duty.closing.starting,
          duty.closing.running,
          duty.turns,
          duty.maxInputSpeed,
          ...duty.bounds.map(({ torque }) => torque),
          ...duty.steps.map(({ result }) => result),
        ]) {
          expect([value.low, value.nominal, value.high].every(Number.isFinite)).toBe(true);
          expect(value.low).toBeLessThanOrEqual(value.nominal);
          expect(value.nominal).toBeLessThanOrEqual(value.high);
          expect(value.source.length).toBeGreaterThan(0);
        }
        expect(duty.opening.starting.low).toBeGreaterThanOrEqual(0);
        expect(new Set(duty.steps.map(({ id }) => id)).size).toBe(duty.steps.length);
        return undefined;
      },
    });
  });
  it('never-exceed lies above no bound of its direction, at any end', () => {
    holdsFor({
      law: 'never-exceed is the lowest',
      cases: lines,
      runs: 800,
      check: (line) => {
        const duty = dutyOf(line);
        let compared = 0;
        for (const direction of DIRECTIONS) {
          const limit = duty[direction].neverExceed.torque;
          const bounds = duty.bounds.filter(({ directions }) => directions.includes(direction));
          expect(bounds.length).toBeGreaterThan(0);
          for (const { torque } of bounds) {
            compared += 1;
            expect(limit.low).toBeLessThanOrEqual(torque.low);
            expect(limit.nominal).toBeLessThanOrEqual(torque.nominal);
            expect(limit.high).toBeLessThanOrEqual(torque.high);
          }
          expect(bounds.some(({ torque }) => torque.low === limit.low)).toBe(true);
        }
        return compared > 2;
      },
    });
  });
  it('the window is empty exactly when no setting satisfies both ends', () => {
    let open = 0;
    let empty = 0;
    holdsFor({
      law: 'limiter window',
      cases: fc
        .tuple(lines, ranged('N·m', 1, 150))
        .map(([line, starting]) => ({ ...line, torque: { ...line.torque, starting } })),
      runs: 800,
      check: (line) => {
        const duty = dutyOf(line);
        for (const direction of DIRECTIONS) {
          const { starting, neverExceed, limiter } = duty[direction];
          const least = starting.high * HOUSE_CONSTANTS.limiterMargin.nominal;
          const most = neverExceed.torque.low;
          if (limiter === null) empty += 1;
          else open += 1;
          expect(limiter === null).toBe(least > most);
          if (limiter !== null) expect([limiter.low, limiter.high]).toEqual([least, most]);
        }
        return undefined;
      },
    });
    console.info(`limiter windows: ${open} open, ${empty} empty`);
    expect(Math.min(open, empty)).toBeGreaterThan(50);
  });
  it('narrowing what is known never widens the torque that follows', () => {
    const narrow = <U extends Unit>(value: Known<U>, part: number): Known<U> =>
      known(
        value.unit,
        {
          low: value.low + (value.nominal - value.low) * part,
          nominal: value.nominal,
          high: value.high - (value.high - value.nominal) * part,
        },
        SAID,
      );
    let really = 0;
    holdsFor({
      law: 'narrower in, no wider out',
      cases: fc.tuple(lines, number(0.05, 1)),
      runs: 400,
      check: ([line, part]) => {
        const wide = dutyOf(line);
        const changes: ScheduleLine[] = [];
        const { process, stem, torque } = line;
        if (process.differentialPressure !== undefined)
          changes.push({
            ...line,
            process: { ...process, differentialPressure: narrow(process.differentialPressure, part) },
          });
        if (stem.threadFriction !== undefined)
          changes.push({ ...line, stem: { ...stem, threadFriction: narrow(stem.threadFriction, part) } });
        if (stem.collarFriction !== undefined)
          changes.push({ ...line, stem: { ...stem, collarFriction: narrow(stem.collarFriction, part) } });
        if (stem.packingLoad !== undefined)
          changes.push({ ...line, stem: { ...stem, packingLoad: narrow(stem.packingLoad, part) } });
        if (stem.valveFactor !== undefined)
          changes.push({ ...line, stem: { ...stem, valveFactor: narrow(stem.valveFactor, part) } });
        if (stem.travel !== undefined) changes.push({ ...line, stem: { ...stem, travel: narrow(stem.travel, part) } });
        if (torque.gearRatio !== undefined)
          changes.push({ ...line, torque: { ...torque, gearRatio: narrow(torque.gearRatio, part) } });
        for (const change of changes) {
          const close = dutyOf(change);
          for (const direction of DIRECTIONS) {
            for (const what of ['starting', 'running'] as const) {
              const slack = 1e-9 * Math.max(1, wide[direction][what].high);
              expect(close[direction][what].low).toBeGreaterThanOrEqual(wide[direction][what].low - slack);
              expect(close[direction][what].high).toBeLessThanOrEqual(wide[direction][what].high + slack);
              if (close[direction][what].high < wide[direction][what].high - slack) really += 1;
            }
          }
        }
        return changes.length > 0;
      },
    });
    console.info(`narrower in, narrower out: ${really} results became narrower`);
    expect(really).toBeGreaterThan(300);
  });
  it('every reading inside a range gives a torque inside the range of torques', () => {
    const at = <U extends Unit>(value: Known<U>, part: number): Known<U> => {
      const point = Math.min(value.high, value.low + (value.high - value.low) * part);
      return known(value.unit, { low: point, nominal: point, high: point }, SAID);
    };
    holdsFor({
      law: 'a reading inside stays inside',
      cases: fc.tuple(measurable, number(0, 1), number(0, 1), number(0, 1)),
      runs: 400,
      check: ([line, a, b, c]) => {
        const { process, stem } = line;
        if (
          process.differentialPressure === undefined ||
          stem.threadFriction === undefined ||
          stem.valveFactor === undefined ||
          process.linePressure === undefined
        )
          return false;
        const wide = dutyOf(line);
        const read = dutyOf({
          ...line,
          process: { ...process, differentialPressure: at(process.differentialPressure, a) },
          stem: { ...stem, threadFriction: at(stem.threadFriction, b), valveFactor: at(stem.valveFactor, c) },
        });
        for (const direction of DIRECTIONS) {
          const slack = 1e-9 * Math.max(1, wide[direction].running.high);
          expect(read[direction].running.low).toBeGreaterThanOrEqual(wide[direction].running.low - slack);
          expect(read[direction].running.high).toBeLessThanOrEqual(wide[direction].running.high + slack);
        }
        return undefined;
      },
    });
  });
  it('the same line gives the same duty, alone or in a list', () => {
    holdsFor({
      law: 'same in, same out',
      cases: fc.array(lines, { minLength: 2, maxLength: 6 }),
      runs: 60,
      check: (many) => {
        const twice = [...many, ...many];
        expect(assessDuties({ lines: twice, site: PLAIN_SITE })).toEqual(twice.map(dutyOf));
        return undefined;
      },
    });
  });
  it('what cannot be meant never throws', () => {
    const wild = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -1, 0, 1e300, 1e-300);
    const broken = <U extends Unit>(unit: U) =>
      fc.tuple(wild, wild, wild).map(([low, nominal, high]) => ({ low, nominal, high, unit, ...SAID }) as Known<U>);
    holdsFor({
      law: 'nonsense is set aside',
      runs: 800,
      cases: fc.tuple(lines, broken('m'), broken('Pa'), broken('1'), broken('N·m'), broken('turn'), wild),
      check: ([line, length, pressure, plain, torque, turns, count]) => {
        const duty = dutyOf({
          ...line,
          size: length,
          qty: count,
          process: { ...line.process, differentialPressure: pressure },
          stem: { ...line.stem, travel: length, valveFactor: plain, threadStarts: fact(count, SAID) },
          torque: { ...line.torque, max: torque, turns, gearRatio: plain },
          state: { age: fact(count, SAID) },
          interface: {
            ...line.interface,
            wheelDiameter: length,
            wheelSpokes: fact(count, SAID),
            nut: { acrossFlats: length },
          },
        });
        expect(
          Number.isFinite(
            duty.opening.starting.high +
              duty.closing.starting.high +
              duty.turns.high +
              duty.opening.neverExceed.torque.low,
          ),
        ).toBe(true);
        return undefined;
      },
    });
  });
});

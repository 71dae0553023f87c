import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import { DIRECTIONS } from '#lib/duty/duty.ts';
import { HOUSE_CONSTANTS } from '#lib/duty/house-constants.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { fact, type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { measurable, number, ranged, scheduleLines } from '#tests/support/lists/duty-arbitraries.ts';
import { dutyOf, PLAIN_SITE, SAID } from '#tests/support/lists/duty-lines.ts';

describe('laws of a duty', () => {
  it('any line gives a duty whose every number is a finite, ordered range with a source', () => {
    holdsFor({
      law: 'total and honest',
      cases: scheduleLines,
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
      cases: scheduleLines,
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
        .tuple(scheduleLines, ranged('N·m', 1, 150))
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
          low: Math.min(value.nominal, value.low + (value.nominal - value.low) * part),
          nominal: value.nominal,
          high: Math.max(value.nominal, value.high - (value.high - value.nominal) * part),
        },
        SAID,
      );
    let really = 0;
    holdsFor({
      law: 'narrower in, no wider out',
      cases: fc.tuple(scheduleLines, number(0.05, 1)),
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
        if (process.linePressure !== undefined)
          changes.push({ ...line, process: { ...process, linePressure: narrow(process.linePressure, part) } });
        if (stem.diameter !== undefined)
          changes.push({ ...line, stem: { ...stem, diameter: narrow(stem.diameter, part) } });
        if (stem.thrust !== undefined) changes.push({ ...line, stem: { ...stem, thrust: narrow(stem.thrust, part) } });
        if (torque.starting !== undefined)
          changes.push({ ...line, torque: { ...torque, starting: narrow(torque.starting, part) } });
        if (torque.max !== undefined) changes.push({ ...line, torque: { ...torque, max: narrow(torque.max, part) } });
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
      cases: fc.array(scheduleLines, { minLength: 2, maxLength: 6 }),
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
      cases: fc.tuple(scheduleLines, broken('m'), broken('Pa'), broken('1'), broken('N·m'), broken('turn'), wild),
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

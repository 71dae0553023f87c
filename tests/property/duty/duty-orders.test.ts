import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIRECTIONS, type Direction, type Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { holdsFor } from '#tests/support/checked-property.ts';
import { measurable, number, ranged } from '#tests/support/lists/duty-arbitraries.ts';
import { dutyOf, SAID, sayFact } from '#tests/support/lists/duty-lines.ts';

/** The same value, more of it at every end, yet no more than can be meant. */
function raised<U extends Unit>(value: Known<U>, more: number, most = Number.POSITIVE_INFINITY): Known<U> {
  const times = Math.min(more, most / value.high);
  return known(value.unit, { low: value.low * times, nominal: value.nominal * times, high: value.high * times }, SAID);
}

/** Lines whose torque is worked out, of the kinds whose pressure stands against the movement. */
const lines = fc
  .tuple(
    measurable,
    fc.constantFrom(
      'wedge gate' as const,
      'parallel slide gate' as const,
      'knife gate' as const,
      'globe' as const,
      'penstock' as const,
      'butterfly' as const,
      'ball' as const,
    ),
    fc.constantFrom('flow under the disc', 'flow over the disc'),
    ranged('N', 100, 2e4),
    number(1.01, 3),
  )
  .map(([line, type, notes, packingLoad, times]) => {
    const { starting: _starting, running: _running, ...torque } = line.torque;
    const { thrust: _thrust, ...stem } = line.stem;
    return { line: { ...line, valveType: sayFact(type), notes, torque, stem: { ...stem, packingLoad } }, times };
  });

/** Where the pressure of this valve stands against the movement. */
function opposes(line: ScheduleLine, direction: Direction): boolean {
  if (line.valveType?.value !== 'globe') return true;
  return (line.notes === 'flow under the disc') === (direction === 'closing');
}

function notLess(more: Duty, less: Duty, direction: Direction): number {
  let grown = 0;
  for (const what of ['starting', 'running'] as const) {
    for (const end of ['low', 'nominal', 'high'] as const) {
      const [a, b] = [more[direction][what][end], less[direction][what][end]];
      expect(a, `${direction}, ${what}, ${end}`).toBeGreaterThanOrEqual(b - 1e-9 * Math.max(1, b));
      if (a > b * (1 + 1e-6)) grown += 1;
    }
  }
  return grown;
}

/** Nothing drives the stem, and nothing holds its collar the other way, as pressure on the end of a non-rising stem may. */
function resists(duty: Duty, direction: Direction): boolean {
  const { thrust } = duty[direction];
  const collar = duty.steps.find(({ id }) => id === `collar-load-${direction}`)?.result;
  return (thrust === null || thrust.low >= 0) && (collar === undefined || collar.low >= 0);
}

function holdsWhenRaised(
  law: string,
  raise: (line: ScheduleLine, times: number) => ScheduleLine | null,
  counts: (line: ScheduleLine, direction: Direction) => boolean = () => true,
): void {
  let grown = 0;
  holdsFor({
    law,
    cases: lines,
    runs: 400,
    check: ({ line, times }) => {
      const more = raise(line, times);
      if (more === null) return false;
      const [before, after] = [dutyOf(line), dutyOf(more)];
      const ways = DIRECTIONS.filter((way) => counts(line, way) && resists(before, way) && resists(after, way));
      for (const way of ways) grown += notLess(after, before, way);
      return ways.length > 0;
    },
  });
  console.info(`${law}: ${grown} ends grew`);
  expect(grown).toBeGreaterThan(300);
}

describe('the torque of a valve goes with what makes it', () => {
  it('rises with the differential pressure where that opposes the movement and the load resists', () => {
    holdsWhenRaised(
      'monotone in opposing pressure',
      (line, times) => {
        const { differentialPressure } = line.process;
        if (differentialPressure === undefined || differentialPressure.high === 0) return null;
        const up = raised(differentialPressure, times);
        return { ...line, process: { ...line.process, differentialPressure: up } };
      },
      opposes,
    );
  });
  it('rises with the friction of the thread', () => {
    holdsWhenRaised('monotone in thread friction', (line, times) => {
      const { threadFriction } = line.stem;
      return threadFriction === undefined
        ? null
        : { ...line, stem: { ...line.stem, threadFriction: raised(threadFriction, times, 0.59) } };
    });
  });
  it('rises with the friction of the collar', () => {
    holdsWhenRaised('monotone in collar friction', (line, times) => {
      const { collarFriction } = line.stem;
      return collarFriction === undefined
        ? null
        : { ...line, stem: { ...line.stem, collarFriction: raised(collarFriction, times, 0.59) } };
    });
  });
  it('rises with the valve factor where the pressure opposes', () => {
    holdsWhenRaised(
      'monotone in valve factor',
      (line, times) => {
        const { valveFactor } = line.stem;
        return valveFactor === undefined
          ? null
          : { ...line, stem: { ...line.stem, valveFactor: raised(valveFactor, times, 1.9) } };
      },
      opposes,
    );
  });
  it('rises with the packing load', () => {
    holdsWhenRaised('monotone in packing load', (line, times) => {
      const { packingLoad } = line.stem;
      return packingLoad === undefined
        ? null
        : { ...line, stem: { ...line.stem, packingLoad: raised(packingLoad, times) } };
    });
  });
  it('rises with a thrust that is said', () => {
    let grown = 0;
    holdsFor({
      law: 'monotone in load',
      cases: fc.tuple(lines, ranged('N', 100, 2e5)),
      runs: 400,
      check: ([{ line, times }, thrust]) => {
        const at = (value: Known<'N'>): Duty => dutyOf({ ...line, stem: { ...line.stem, thrust: value } });
        const [before, after] = [at(thrust), at(raised(thrust, times))];
        const ways = DIRECTIONS.filter((way) => before[way].thrust !== null && resists(before, way));
        for (const way of ways) grown += notLess(after, before, way);
        return ways.length > 0;
      },
    });
    console.info(`monotone in load: ${grown} ends grew`);
    expect(grown).toBeGreaterThan(1000);
  });
});

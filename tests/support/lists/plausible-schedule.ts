/*
 * Seeded invented valve lists of any length for benches: wheels in plants, keys in streets, with what such lists leave open.
 */
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { ranged } from '#lib/rules/sample-facts.ts';
import { lineOf, PLAIN_SITE, say, sayFact } from './duty-lines.ts';

export const PLAUSIBLE_SITE: Site = {
  ...PLAIN_SITE,
  vehicleAccess: true,
  airPressure: say('Pa', 7e5),
  airFlow: say('m³/s', 0.05),
};

/** DN in metres with turns of its stroke, starting torque and wheel, as common sizes go together; invented round figures. */
const SIZES = [
  { size: 0.08, turns: 12, torque: 35, wheel: 0.2, nut: 0.019 },
  { size: 0.1, turns: 16, torque: 50, wheel: 0.25, nut: 0.024 },
  { size: 0.15, turns: 22, torque: 80, wheel: 0.3, nut: 0.029 },
  { size: 0.2, turns: 28, torque: 120, wheel: 0.35, nut: 0.029 },
  { size: 0.25, turns: 34, torque: 170, wheel: 0.4, nut: 0.032 },
  { size: 0.3, turns: 40, torque: 230, wheel: 0.5, nut: 0.032 },
  { size: 0.4, turns: 52, torque: 340, wheel: 0.6, nut: 0.036 },
  { size: 0.5, turns: 66, torque: 480, wheel: 0.7, nut: 0.036 },
  { size: 0.6, turns: 80, torque: 650, wheel: 0.8, nut: 0.05 },
] as const;

/** Sorts of valves in a list of a hundred lines are ten times this; a longer list has more, by the root of its length. */
const SORTS = 8;

interface Drawing {
  readonly random: Random;
  readonly pick: <Value>(values: readonly Value[]) => Value;
  readonly chance: (share: number) => boolean;
}

/** As many lines as asked; the longer the list, the more lines are alike. */
export function plausibleSchedule(at: { readonly seed: number; readonly lines: number }): readonly ScheduleLine[] {
  const random = seededRandom(at.seed);
  const drawing: Drawing = {
    random,
    pick: (values) => {
      const value = values[Math.floor(random() * values.length)];
      if (value === undefined) throw new Error('Nothing to pick from.');
      return value;
    },
    chance: (share) => random() < share,
  };
  const sorts = Array.from({ length: Math.min(at.lines, Math.round(SORTS * Math.sqrt(at.lines))) }, () =>
    drawing.chance(0.45) ? streetLine(drawing) : plantLine(drawing),
  );
  return Array.from({ length: at.lines }, (_, index) => ({ ...drawing.pick(sorts), tag: `V-${index + 1}` }));
}

/** A buried valve turned by its nut. */
function streetLine({ pick, chance }: Drawing): ScheduleLine {
  const { size, turns, torque, nut } = pick(SIZES);
  const factor = pick([0.8, 1, 1.25]);
  const depth = pick([0.6, 0.9, 1.2, 1.5]);
  return lineOf({
    valveType: sayFact('gate'),
    size: say('m', size),
    state: { condition: sayFact(pick(['free', 'free', 'stiff'] as const)) },
    torque: { turns: say('turn', turns), ...torques({ torque: torque * factor, isKnown: chance(0.7) }) },
    interface: {
      drivenBy: sayFact('nut'),
      nutShape: sayFact('square'),
      nut: { acrossFlats: chance(0.7) ? say('m', nut) : ranged('m', nut - 0.003, nut + 0.004) },
    },
    place: {
      depthToNut: chance(0.6) ? say('m', depth) : ranged('m', depth, depth + 0.3),
      anchor: sayFact('none'),
      surface: sayFact('asphalt'),
      faces: sayFact('up'),
      accessTime: say('s', pick([60, 120, 300])),
      ...(chance(0.1) ? { misalignment: say('°', 10) } : {}),
    },
  });
}

/** A valve with a wheel in a plant. */
function plantLine({ pick, chance }: Drawing): ScheduleLine {
  const { size, turns, torque, wheel } = pick(SIZES);
  const factor = pick([0.8, 1, 1.25]);
  const rises = chance(0.25);
  return lineOf({
    valveType: sayFact(pick(['gate', 'wedge gate', 'globe'] as const)),
    size: say('m', size),
    state: { condition: sayFact(pick(['free', 'free', 'stiff'] as const)) },
    stem: {
      kind: sayFact(rises ? 'rising through the wheel' : 'non-rising'),
      ...(rises ? { diameter: say('m', 0.024 + size / 20), travel: say('m', size) } : {}),
    },
    torque: { turns: say('turn', turns), ...torques({ torque: torque * factor, isKnown: chance(0.7) }) },
    interface: {
      drivenBy: sayFact('handwheel'),
      wheelDiameter: chance(0.7) ? say('m', wheel) : ranged('m', wheel - 0.05, wheel + 0.1),
      ...(chance(0.5) ? { wheelSpokes: sayFact(pick([3, 4, 5, 6])) } : {}),
      ...(rises ? { stemProtrusion: say('m', size), protrusionMeasuredAt: sayFact('open') } : {}),
    },
    place: {
      anchor: sayFact(pick(['structure', 'structure', 'large pipe', 'none'])),
      faces: sayFact(pick(['up', 'up', 'side'] as const)),
      surface: sayFact('concrete'),
      accessTime: say('s', pick([60, 180, 420])),
      ...(chance(0.15) ? { reach: say('m', 1.1) } : {}),
      ...(chance(0.15) ? { clearRadius: say('m', 0.6) } : {}),
    },
  });
}

function torques(at: { readonly torque: number; readonly isKnown: boolean }): ScheduleLine['torque'] {
  const max = { max: say('N·m', Math.round(at.torque * 2.2)), closes: sayFact('clockwise' as const) };
  if (!at.isKnown) return max;
  return { ...max, starting: say('N·m', Math.round(at.torque)), running: say('N·m', Math.round(at.torque * 0.45)) };
}

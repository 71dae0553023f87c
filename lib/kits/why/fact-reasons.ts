/*
 * Facts of a line that a rule looked at, each as a sentence with its number, basis and source.
 * Invariant: nothing is told that the line, its duty or its site does not hold.
 * Not here: which facts a rule looks at (each rule's `speaksOf`).
 * Read next: conflict-tree.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { sayLength, sayPlain, sayPressure, sayTorque, sayTorqueDown } from '#lib/rules/say-number.ts';
import type { Fact, Known } from '#lib/units/known-value.ts';
import { tell } from '#lib/units/say-figure.ts';
import type { Reason } from './reason.ts';

/** The facts of these names that are known, in the order of the names. */
export function factReasons(facts: LineFacts, names: readonly string[]): readonly Reason[] {
  return [...new Set(names)].flatMap((name) => {
    const found = FACTS[name]?.(facts);
    if (found === undefined) return [];
    const { words, source } = found;
    return [{ kind: 'fact', ...tell(words), source, children: [] } as const];
  });
}

interface FactTold {
  readonly words: string;
  readonly source: string;
}

type Teller = (facts: LineFacts) => FactTold | undefined;

const FACTS: Readonly<Record<string, Teller>> = {
  starting_torque: ({ duty }) => numbered('Torque to start, the worse way', worse(duty, 'starting'), sayTorque),
  running_torque: ({ duty }) => numbered('Torque to run, the worse way', worse(duty, 'running'), sayTorque),
  max_torque: ({ duty }) => neverAbove(duty),
  turns: ({ duty }) => numbered('Turns for a stroke', duty.turns, sayPlain),
  max_input_speed: ({ duty }) => numbered('Highest speed in turns a minute', duty.maxInputSpeed, sayPlain),
  min_stroke_time: ({ duty }) => numbered('Shortest stroke in seconds', duty.minStrokeTime ?? undefined, sayPlain),
  wheel_diameter: ({ duty }) => numbered('Wheel diameter', duty.grip.wheelDiameter, sayLength),
  wheel_spokes: ({ duty: { grip } }) =>
    grip.wheelSpokes && {
      words: `Spokes: ${grip.wheelSpokes.low} to ${grip.wheelSpokes.high}.`,
      source: 'What is known of the wheel',
    },
  nut_size: ({ duty: { grip } }) => {
    const [first] = grip.nutSizes ?? [];
    const sizes = (grip.nutSizes ?? []).map(({ nominal }) => sayLength(nominal)).join(', ');
    return first && { words: `Nut, across flats: ${sizes}.`, source: sourceOf(first) };
  },
  depth_to_nut: ({ duty }) => numbered('Depth to the nut', duty.grip.depthToNut, sayLength),
  stem_diameter: ({ duty }) => numbered('Stem diameter', duty.grip.stemDiameter, sayLength),
  stem_protrusion: ({ duty }) => numbered('Stem through the wheel', duty.grip.stemProtrusion, sayLength),
  travel: ({ duty }) => numbered('Travel', duty.grip.travel, sayLength),
  stem: ({ duty: { grip }, line }) => ({
    words: `Stem rises through the wheel: ${grip.stemRisesThroughWheel}; wheel rises with its stem: ${grip.wheelRises}.`,
    source: line.stem.kind === undefined ? 'Nothing is said of the stem' : sourceOf(line.stem.kind),
  }),
  driven_by: ({ line }) => worded('Driven by', line.interface.drivenBy),
  clear_radius: ({ line }) => numbered('Clear radius around it', line.place.clearRadius, sayLength),
  headroom: ({ line }) => numbered('Headroom', line.place.headroom, sayLength),
  reach: ({ line }) => numbered('Reach', line.place.reach, sayLength),
  misalignment: ({ line }) => numbered('Misalignment in degrees', line.place.misalignment, sayPlain),
  anchor: ({ place }) => ({
    words: `Anchor to hold the reaction: ${place.anchorText || place.anchor}.`,
    source: 'Line and site',
  }),
  vehicle_distance: ({ place }) => ({ words: `Vehicle: ${vehicleWords(place.vehicle_m)}.`, source: 'Line and site' }),
  sources_allowed: ({ site }) => ({
    words: `Power sources the site allows: ${site.sourcesAllowed.join(', ')}.`,
    source: 'The site',
  }),
  air_pressure: ({ site }) => numbered('Compressed air on site', site.airPressure, sayPressure),
  zone: ({ place }) => ({ words: `Hazardous zone: ${place.zone ?? 'none'}.`, source: 'Line and site' }),
  enclosed: ({ place }) => ({ words: `Enclosed place: ${place.enclosed ? 'yes' : 'no'}.`, source: 'Line and site' }),
  surface: ({ place }) => ({ words: `Ground: ${place.surface}.`, source: 'Line and site' }),
  persons_per_crew: ({ site }) => ({ words: `Persons in a crew: ${site.personsPerCrew}.`, source: 'The site' }),
};

function worse(duty: Duty, name: 'starting' | 'running'): Known<'N·m'> {
  const { opening, closing } = duty;
  return opening[name].high >= closing[name].high ? opening[name] : closing[name];
}

function neverAbove({ opening, closing }: Duty): FactTold {
  const lower = opening.neverExceed.torque.low <= closing.neverExceed.torque.low ? opening : closing;
  const { torque, kind } = lower.neverExceed;
  return { words: `Never above ${sayTorqueDown(torque.low)} (${kind}).`, source: sourceOf(torque) };
}

type AnyKnown = Pick<Known<'1'>, 'basis' | 'source'> & { readonly low: number; readonly high: number };

function numbered(name: string, value: AnyKnown | undefined, say: (value: number) => string): FactTold | undefined {
  if (value === undefined) return undefined;
  const { low, high } = value;
  return { words: `${name}: ${low === high ? say(low) : `${say(low)} to ${say(high)}`}.`, source: sourceOf(value) };
}

function worded(name: string, value: Fact<string> | undefined): FactTold | undefined {
  return value && { words: `${name}: ${value.value}.`, source: sourceOf(value) };
}

function sourceOf({ basis, source }: Pick<Known<'1'>, 'basis' | 'source'>): string {
  return `${basis}: ${source.replace(/\.$/, '')}`;
}

function vehicleWords(vehicle: LineFacts['place']['vehicle_m']): string {
  if (vehicle === 'none') return 'none can come near';
  if (vehicle === 'near') return 'the site lets one come near';
  return `within ${sayLength(vehicle)}`;
}

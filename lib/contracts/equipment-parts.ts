/*
 * Heads, adapters and extensions in catalogue files: schema, reading into facts and writing back.
 * Invariant: an adapter says what wheel it grips or what nuts it takes, never neither.
 * Not here: restraints, options and accessories (equipment-supports.ts).
 * Read next: equipment-supports.ts.
 */
import { z } from 'zod';
import type {
  AdapterFacts,
  ExtensionFacts,
  HeadFacts,
  NutSocket,
  ShaftSection,
  WheelGrip,
} from '#lib/equipment/parts.ts';
import { degrees, type Metres, millimetres, newtonMetres, perMinute, ratio, seconds } from '#lib/units/quantity.ts';
import { couplingSchema, couplingToJson } from './equipment-coupling.ts';
import { notNegative, positive, range, share, text, toMillimetres } from './equipment-quantity.ts';

export const HEAD_KINDS = ['inline', 'right-angle', 'open-centre'] as const;
export const ADAPTER_KINDS = [
  'peg plate',
  'self-centring driver',
  'spoke driver',
  'bolt-on plate',
  'drive socket',
  'valve key',
] as const satisfies readonly AdapterFacts['kind'][];

export const headFactsSchema = z
  .strictObject({
    kind: z.enum(HEAD_KINDS),
    ratio: positive,
    efficiency: z
      .strictObject({ low: share, high: share })
      .refine((pair) => pair.low <= pair.high, 'low is above high'),
    reverses: z.boolean(),
    torque_rating_nm: positive,
    max_input_speed_rpm: positive,
    input: couplingSchema,
    output: couplingSchema,
    bore_mm: positive.optional(),
    bore_depth_mm: positive.optional(),
    swing_radius_mm: positive,
    height_mm: positive,
  })
  .refine((facts) => facts.kind !== 'open-centre' || facts.bore_mm !== undefined, {
    path: ['bore_mm'],
    message: 'is missing: an open-centre head has a bore',
  })
  .transform(
    (facts): HeadFacts => ({
      kind: facts.kind,
      ratio: ratio(facts.ratio),
      efficiency: { low: ratio(facts.efficiency.low), high: ratio(facts.efficiency.high) },
      reverses: facts.reverses,
      torqueRating: newtonMetres(facts.torque_rating_nm),
      maxInputSpeed: perMinute(facts.max_input_speed_rpm),
      input: facts.input,
      output: facts.output,
      ...readBore(facts.bore_mm),
      ...(facts.bore_depth_mm === undefined ? {} : { boreDepth: millimetres(facts.bore_depth_mm) }),
      swingRadius: millimetres(facts.swing_radius_mm),
      height: millimetres(facts.height_mm),
    }),
  );

export function headFactsToJson(facts: HeadFacts): z.input<typeof headFactsSchema> {
  return {
    kind: facts.kind,
    ratio: facts.ratio,
    efficiency: { low: facts.efficiency.low, high: facts.efficiency.high },
    reverses: facts.reverses,
    torque_rating_nm: facts.torqueRating,
    max_input_speed_rpm: facts.maxInputSpeed,
    input: couplingToJson(facts.input),
    output: couplingToJson(facts.output),
    ...writeBore(facts.bore),
    ...(facts.boreDepth === undefined ? {} : { bore_depth_mm: toMillimetres(facts.boreDepth) }),
    swing_radius_mm: toMillimetres(facts.swingRadius),
    height_mm: toMillimetres(facts.height),
  };
}

const wheelSchema = z
  .strictObject({
    diameter_mm: range,
    spokes: z
      .strictObject({ low: z.int().min(1), high: z.int().min(1) })
      .refine((pair) => pair.low <= pair.high, 'low is above high'),
    dish_up_to_deg: notNegative,
    rim_up_to_mm: positive,
  })
  .transform(
    (wheel): WheelGrip => ({
      diameter: readLength(wheel.diameter_mm),
      spokes: wheel.spokes,
      dishUpTo: degrees(wheel.dish_up_to_deg),
      rimUpTo: millimetres(wheel.rim_up_to_mm),
    }),
  );

const socketSchema = z.strictObject({ shape: text, across_flats_mm: positive, slack_mm: notNegative }).transform(
  (socket): NutSocket => ({
    shape: socket.shape,
    acrossFlats: millimetres(socket.across_flats_mm),
    slack: millimetres(socket.slack_mm),
  }),
);

/** Outer and inner diameter of a shaft at its thinnest; inner 0 when solid. */
const sectionSchema = z
  .strictObject({ outer: positive, inner: notNegative })
  .refine((section) => section.inner < section.outer, { path: ['inner'], message: 'is not below the outer diameter' });

export const adapterFactsSchema = z
  .strictObject({
    kind: z.enum(ADAPTER_KINDS),
    input: couplingSchema,
    wheel: wheelSchema.optional(),
    sockets: z.array(socketSchema).min(1).optional(),
    length_mm: range.optional(),
    section_mm: sectionSchema.optional(),
    takes_extension: z.boolean(),
    bore_mm: positive.optional(),
    retention: z.enum(['none', 'clamped', 'pinned', 'bolted']),
    torque_rating_nm: positive,
    fitting_time_s: positive,
    stays_on_wheel: z.boolean(),
    holds_sideways: z.boolean(),
    height_mm: positive,
  })
  .refine((facts) => (facts.wheel === undefined) !== (facts.sockets === undefined), {
    path: ['wheel'],
    message: 'or sockets must be given, and only one of them',
  })
  .refine((facts) => (facts.kind === 'valve key') === (facts.length_mm !== undefined), {
    path: ['length_mm'],
    message: 'is given for valve keys, and only for them',
  })
  .transform(
    (facts): AdapterFacts => ({
      kind: facts.kind,
      input: facts.input,
      ...(facts.wheel === undefined ? {} : { wheel: facts.wheel }),
      ...(facts.sockets === undefined ? {} : { sockets: facts.sockets }),
      ...(facts.length_mm === undefined ? {} : { length: readLength(facts.length_mm) }),
      ...readSection(facts.section_mm),
      takesExtension: facts.takes_extension,
      ...readBore(facts.bore_mm),
      retention: facts.retention,
      torqueRating: newtonMetres(facts.torque_rating_nm),
      fittingTime: seconds(facts.fitting_time_s),
      staysOnWheel: facts.stays_on_wheel,
      holdsSideways: facts.holds_sideways,
      height: millimetres(facts.height_mm),
    }),
  );

export function adapterFactsToJson(facts: AdapterFacts): z.input<typeof adapterFactsSchema> {
  return {
    kind: facts.kind,
    input: couplingToJson(facts.input),
    ...(facts.wheel === undefined ? {} : { wheel: wheelToJson(facts.wheel) }),
    ...(facts.sockets === undefined ? {} : { sockets: facts.sockets.map(socketToJson) }),
    ...(facts.length === undefined ? {} : { length_mm: writeLength(facts.length) }),
    ...writeSection(facts.section),
    takes_extension: facts.takesExtension,
    ...writeBore(facts.bore),
    retention: facts.retention,
    torque_rating_nm: facts.torqueRating,
    fitting_time_s: facts.fittingTime,
    stays_on_wheel: facts.staysOnWheel,
    holds_sideways: facts.holdsSideways,
    height_mm: toMillimetres(facts.height),
  };
}

export const extensionFactsSchema = z
  .strictObject({
    kind: z.enum(['extension shaft', 'universal joint']),
    input: couplingSchema,
    output: couplingSchema,
    length_mm: range,
    torque_rating_nm: positive,
    bore_mm: positive.optional(),
    section_mm: sectionSchema.optional(),
    highest_angle_deg: positive.optional(),
    joints: z.union([z.literal(1), z.literal(2)]).optional(),
    max_speed_rpm: positive,
  })
  .refine((facts) => (facts.kind === 'universal joint') === (facts.highest_angle_deg !== undefined), {
    path: ['highest_angle_deg'],
    message: 'is given for universal joints, and only for them',
  })
  .transform(
    (facts): ExtensionFacts => ({
      kind: facts.kind,
      input: facts.input,
      output: facts.output,
      length: readLength(facts.length_mm),
      torqueRating: newtonMetres(facts.torque_rating_nm),
      ...readBore(facts.bore_mm),
      ...readSection(facts.section_mm),
      ...(facts.highest_angle_deg === undefined ? {} : { highestAngle: degrees(facts.highest_angle_deg) }),
      ...(facts.joints === undefined ? {} : { joints: facts.joints }),
      maxSpeed: perMinute(facts.max_speed_rpm),
    }),
  );

export function extensionFactsToJson(facts: ExtensionFacts): z.input<typeof extensionFactsSchema> {
  return {
    kind: facts.kind,
    input: couplingToJson(facts.input),
    output: couplingToJson(facts.output),
    length_mm: writeLength(facts.length),
    torque_rating_nm: facts.torqueRating,
    ...writeBore(facts.bore),
    ...writeSection(facts.section),
    ...(facts.highestAngle === undefined ? {} : { highest_angle_deg: facts.highestAngle }),
    ...(facts.joints === undefined ? {} : { joints: facts.joints }),
    max_speed_rpm: facts.maxSpeed,
  };
}

function wheelToJson(wheel: WheelGrip): z.input<typeof wheelSchema> {
  return {
    diameter_mm: writeLength(wheel.diameter),
    spokes: { low: wheel.spokes.low, high: wheel.spokes.high },
    dish_up_to_deg: wheel.dishUpTo,
    rim_up_to_mm: toMillimetres(wheel.rimUpTo),
  };
}

function socketToJson(socket: NutSocket): z.input<typeof socketSchema> {
  return {
    shape: socket.shape,
    across_flats_mm: toMillimetres(socket.acrossFlats),
    slack_mm: toMillimetres(socket.slack),
  };
}

function readSection(pair: z.output<typeof sectionSchema> | undefined): { readonly section?: ShaftSection } {
  return pair === undefined ? {} : { section: { outer: millimetres(pair.outer), inner: millimetres(pair.inner) } };
}

function writeSection(section: ShaftSection | undefined): { readonly section_mm?: z.input<typeof sectionSchema> } {
  return section === undefined
    ? {}
    : { section_mm: { outer: toMillimetres(section.outer), inner: toMillimetres(section.inner) } };
}

function readLength(pair: { readonly low: number; readonly high: number }): {
  readonly low: Metres;
  readonly high: Metres;
} {
  return { low: millimetres(pair.low), high: millimetres(pair.high) };
}

function writeLength(pair: { readonly low: Metres; readonly high: Metres }): { low: number; high: number } {
  return { low: toMillimetres(pair.low), high: toMillimetres(pair.high) };
}

function readBore(bore_mm: number | undefined): { readonly bore?: Metres } {
  return bore_mm === undefined ? {} : { bore: millimetres(bore_mm) };
}

function writeBore(bore: Metres | undefined): { bore_mm?: number } {
  return bore === undefined ? {} : { bore_mm: toMillimetres(bore) };
}

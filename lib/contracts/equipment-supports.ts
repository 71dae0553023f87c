/*
 * Restraints, options and accessories in catalogue files: schema, reading into facts and writing back.
 * Invariant: a torque limiter states its range, error, overshoot and step; a turns counter states how far it counts.
 * Not here: heads, adapters and extensions (equipment-parts.ts).
 * Read next: equipment.ts.
 */
import { z } from 'zod';
import { type AccessoryFacts, type OptionFacts, RESTRAINT_KINDS, type RestraintFacts } from '#lib/equipment/parts.ts';
import { kilograms, metres, millimetres, minutes, newtonMetres, newtons, ratio, seconds } from '#lib/units/quantity.ts';
import { couplingSchema, couplingToJson } from './equipment-coupling.ts';
import { HEAD_KINDS } from './equipment-parts.ts';
import { notNegative, positive, range, share, text, toMillimetres, toMinutes } from './equipment-quantity.ts';

/** What a restraint may need on site; any one of those named is enough. */
export const SITE_NEEDS = [
  'structure',
  'large pipe',
  'flange',
  'yoke',
  'vehicle',
  'firm ground',
  'hard floor',
  'street surface',
  'workshop',
] as const;

export const restraintFactsSchema = z
  .strictObject({
    kind: z.enum(RESTRAINT_KINDS),
    torque_rating_nm: positive,
    force_rating_n: positive,
    arm_mm: range,
    directions: z.enum(['one way', 'both ways']),
    follows_travel: z.boolean(),
    side_load: z.enum(['single anchor', 'balanced']),
    facings: z.array(z.enum(['up', 'side', 'down'])).min(1),
    reach_mm: positive,
    needs: z.array(z.enum(SITE_NEEDS)).min(1),
    set_up_time_min: positive,
    weight_on_plate_kg: positive.optional(),
    plate_side_mm: positive.optional(),
    head_kinds: z.array(z.enum(HEAD_KINDS)).min(1),
  })
  .transform(
    (facts): RestraintFacts => ({
      kind: facts.kind,
      torqueRating: newtonMetres(facts.torque_rating_nm),
      forceRating: newtons(facts.force_rating_n),
      arm: { low: millimetres(facts.arm_mm.low), high: millimetres(facts.arm_mm.high) },
      directions: facts.directions,
      followsTravel: facts.follows_travel,
      sideLoad: facts.side_load,
      facings: facts.facings,
      reach: millimetres(facts.reach_mm),
      needs: facts.needs,
      setUpTime: minutes(facts.set_up_time_min),
      ...(facts.weight_on_plate_kg === undefined ? {} : { weightOnPlate: kilograms(facts.weight_on_plate_kg) }),
      ...(facts.plate_side_mm === undefined ? {} : { plateSide: millimetres(facts.plate_side_mm) }),
      headKinds: facts.head_kinds,
    }),
  );

export function restraintFactsToJson(facts: RestraintFacts): z.input<typeof restraintFactsSchema> {
  return {
    kind: facts.kind,
    torque_rating_nm: facts.torqueRating,
    force_rating_n: facts.forceRating,
    arm_mm: { low: toMillimetres(facts.arm.low), high: toMillimetres(facts.arm.high) },
    directions: facts.directions,
    follows_travel: facts.followsTravel,
    side_load: facts.sideLoad,
    facings: [...facts.facings],
    reach_mm: toMillimetres(facts.reach),
    needs: facts.needs.map((need) => z.enum(SITE_NEEDS).parse(need)),
    set_up_time_min: toMinutes(facts.setUpTime),
    ...(facts.weightOnPlate === undefined ? {} : { weight_on_plate_kg: facts.weightOnPlate }),
    ...(facts.plateSide === undefined ? {} : { plate_side_mm: toMillimetres(facts.plateSide) }),
    head_kinds: [...facts.headKinds],
  };
}

export const optionFactsSchema = z
  .strictObject({
    kind: z.enum(['turns counter', 'torque limiter']),
    lowest_nm: positive.optional(),
    highest_nm: positive.optional(),
    error: share.optional(),
    overshoot_nm: notNegative.optional(),
    step_nm: positive.optional(),
    both_directions: z.boolean().optional(),
    input: couplingSchema.optional(),
    output: couplingSchema.optional(),
    bore_mm: positive.optional(),
    highest_turns: z.int().positive().optional(),
    set_up_time_s: positive,
    sits: z.enum(['after drive', 'after head', 'clip-on']),
    electronic: z.boolean(),
  })
  .superRefine((facts, context) => {
    const needed =
      facts.kind === 'torque limiter'
        ? (['lowest_nm', 'highest_nm', 'error', 'overshoot_nm', 'step_nm', 'both_directions'] as const)
        : (['highest_turns'] as const);
    for (const field of needed) {
      if (facts[field] === undefined) {
        context.addIssue({ code: 'custom', path: [field], message: `is missing: a ${facts.kind} states it` });
      }
    }
  })
  .transform(
    (facts): OptionFacts => ({
      kind: facts.kind,
      ...(facts.lowest_nm === undefined ? {} : { lowest: newtonMetres(facts.lowest_nm) }),
      ...(facts.highest_nm === undefined ? {} : { highest: newtonMetres(facts.highest_nm) }),
      ...(facts.error === undefined ? {} : { error: ratio(facts.error) }),
      ...(facts.overshoot_nm === undefined ? {} : { overshoot: newtonMetres(facts.overshoot_nm) }),
      ...(facts.step_nm === undefined ? {} : { step: newtonMetres(facts.step_nm) }),
      ...(facts.both_directions === undefined ? {} : { bothDirections: facts.both_directions }),
      ...(facts.input === undefined ? {} : { input: facts.input }),
      ...(facts.output === undefined ? {} : { output: facts.output }),
      ...(facts.bore_mm === undefined ? {} : { bore: millimetres(facts.bore_mm) }),
      ...(facts.highest_turns === undefined ? {} : { highestTurns: facts.highest_turns }),
      setUpTime: seconds(facts.set_up_time_s),
      sits: facts.sits,
      electronic: facts.electronic,
    }),
  );

export function optionFactsToJson(facts: OptionFacts): z.input<typeof optionFactsSchema> {
  return {
    kind: facts.kind,
    ...(facts.lowest === undefined ? {} : { lowest_nm: facts.lowest }),
    ...(facts.highest === undefined ? {} : { highest_nm: facts.highest }),
    ...(facts.error === undefined ? {} : { error: facts.error }),
    ...(facts.overshoot === undefined ? {} : { overshoot_nm: facts.overshoot }),
    ...(facts.step === undefined ? {} : { step_nm: facts.step }),
    ...(facts.bothDirections === undefined ? {} : { both_directions: facts.bothDirections }),
    ...(facts.input === undefined ? {} : { input: couplingToJson(facts.input) }),
    ...(facts.output === undefined ? {} : { output: couplingToJson(facts.output) }),
    ...(facts.bore === undefined ? {} : { bore_mm: toMillimetres(facts.bore) }),
    ...(facts.highestTurns === undefined ? {} : { highest_turns: facts.highestTurns }),
    set_up_time_s: facts.setUpTime,
    sits: facts.sits,
    electronic: facts.electronic,
  };
}

export const ACCESSORY_KINDS = [
  'charger',
  'spare pack',
  'air hose',
  'hose restraint',
  'filter-regulator-lubricator',
  'dry filter-regulator',
  'fuel can',
  'retaining pins',
  'pegs',
  'lanyards',
  'key guide',
  'second chain',
  'case',
  'sling support',
  'flame arrester',
] as const satisfies readonly AccessoryFacts['kind'][];

export const accessoryFactsSchema = z
  .strictObject({
    kind: z.enum(ACCESSORY_KINDS),
    fits: z.array(text),
    mains_voltage_v: positive.optional(),
    mains_plug: text.optional(),
    hose_bore_mm: positive.optional(),
    hose_length_m: positive.optional(),
    sale_item: z.boolean(),
  })
  .transform(
    (facts): AccessoryFacts => ({
      kind: facts.kind,
      fits: facts.fits,
      ...(facts.mains_voltage_v === undefined ? {} : { mainsVoltage: facts.mains_voltage_v }),
      ...(facts.mains_plug === undefined ? {} : { mainsPlug: facts.mains_plug }),
      ...(facts.hose_bore_mm === undefined ? {} : { hoseBore: millimetres(facts.hose_bore_mm) }),
      ...(facts.hose_length_m === undefined ? {} : { hoseLength: metres(facts.hose_length_m) }),
      saleItem: facts.sale_item,
    }),
  );

export function accessoryFactsToJson(facts: AccessoryFacts): z.input<typeof accessoryFactsSchema> {
  return {
    kind: facts.kind,
    fits: [...facts.fits],
    ...(facts.mainsVoltage === undefined ? {} : { mains_voltage_v: facts.mainsVoltage }),
    ...(facts.mainsPlug === undefined ? {} : { mains_plug: facts.mainsPlug }),
    ...(facts.hoseBore === undefined ? {} : { hose_bore_mm: toMillimetres(facts.hoseBore) }),
    ...(facts.hoseLength === undefined ? {} : { hose_length_m: facts.hoseLength }),
    sale_item: facts.saleItem,
  };
}

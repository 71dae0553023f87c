/*
 * Drives in catalogue files: schema of the JSON, reading it into DriveFacts and writing it back.
 * Invariant: stall torque is at least rated torque in every gear, and lowest ≤ rated ≤ highest air pressure.
 * Not here: what every model shares (equipment.ts).
 * Read next: equipment-parts.ts.
 */
import { z } from 'zod';
import { type BuiltInLimiter, type DriveFacts, DUTY_CLASSES, type Gear } from '#lib/equipment/drive.ts';
import {
  bar,
  celsius,
  cubicMetresPerSecond,
  decibels,
  metres,
  metresPerSecondSquared,
  millimetres,
  minutes,
  newtonMetres,
  perMinute,
  ratio,
  volts,
  watts,
} from '#lib/units/quantity.ts';
import { couplingSchema, couplingToJson } from './equipment-coupling.ts';
import {
  fromLitresPerMinute,
  notNegative,
  positive,
  share,
  text,
  toBar,
  toLitresPerMinute,
  toMillimetres,
  toMinutes,
} from './equipment-quantity.ts';

/** As many gears as forms and files have room for. */
export const MOST_GEARS = 4;

const gearSchema = z
  .strictObject({
    name: text,
    stall_torque_nm: positive,
    rated_torque_nm: positive,
    free_speed_rpm: positive,
    curve: z
      .array(z.strictObject({ torque_nm: notNegative, speed_rpm: notNegative }))
      .min(2)
      .optional(),
  })
  .refine((gear) => gear.rated_torque_nm <= gear.stall_torque_nm, {
    path: ['rated_torque_nm'],
    message: 'is above the stall torque',
  })
  .refine((gear) => gear.curve === undefined || spansGear({ ...gear, curve: gear.curve }), {
    path: ['curve'],
    message: 'does not run from free speed without torque to stall torque without speed',
  })
  .transform(
    (gear): Gear => ({
      name: gear.name,
      stallTorque: newtonMetres(gear.stall_torque_nm),
      ratedTorque: newtonMetres(gear.rated_torque_nm),
      freeSpeed: perMinute(gear.free_speed_rpm),
      ...(gear.curve === undefined
        ? {}
        : { curve: gear.curve.map((at) => ({ torque: newtonMetres(at.torque_nm), speed: perMinute(at.speed_rpm) })) }),
    }),
  );

interface CurvedGear {
  readonly stall_torque_nm: number;
  readonly free_speed_rpm: number;
  readonly curve: readonly { readonly torque_nm: number; readonly speed_rpm: number }[];
}

/** Torque rises and speed falls from one end of the curve to the other. */
function spansGear({ stall_torque_nm, free_speed_rpm, curve }: CurvedGear): boolean {
  const ends = [curve[0], curve.at(-1)];
  const falls = curve.every((at, index) => {
    const before = curve[index - 1];
    return before === undefined || (at.torque_nm > before.torque_nm && at.speed_rpm < before.speed_rpm);
  });
  return (
    falls &&
    ends[0]?.torque_nm === 0 &&
    ends[0].speed_rpm === free_speed_rpm &&
    ends[1]?.torque_nm === stall_torque_nm &&
    ends[1].speed_rpm === 0
  );
}

const batterySchema = z
  .strictObject({
    kind: z.literal('battery'),
    voltage_v: positive,
    capacity_ah: positive,
    packs_included: z.int().min(1),
    pack_number: text,
    efficiency: share,
    recharge_time_min: positive,
  })
  .transform((store) => ({
    kind: store.kind,
    voltage: volts(store.voltage_v),
    capacity_ah: store.capacity_ah,
    packsIncluded: store.packs_included,
    packNumber: store.pack_number,
    efficiency: ratio(store.efficiency),
    rechargeTime: minutes(store.recharge_time_min),
  }));

const airSchema = z
  .strictObject({
    kind: z.literal('air'),
    rated_pressure_bar: positive,
    lowest_pressure_bar: positive,
    highest_pressure_bar: positive,
    consumption_l_min: positive,
    hose_bore_mm: positive,
  })
  .refine(
    (supply) =>
      supply.lowest_pressure_bar <= supply.rated_pressure_bar &&
      supply.rated_pressure_bar <= supply.highest_pressure_bar,
    { path: ['rated_pressure_bar'], message: 'does not lie between the lowest and the highest pressure' },
  )
  .transform((supply) => ({
    kind: supply.kind,
    ratedPressure: bar(supply.rated_pressure_bar),
    lowestPressure: bar(supply.lowest_pressure_bar),
    highestPressure: bar(supply.highest_pressure_bar),
    consumption: cubicMetresPerSecond(fromLitresPerMinute(supply.consumption_l_min)),
    hoseBore: millimetres(supply.hose_bore_mm),
  }));

const petrolSchema = z
  .strictObject({ kind: z.literal('petrol'), tank_l: positive, litres_per_hour: positive, rated_power_w: positive })
  .transform((store) => ({
    kind: store.kind,
    tank_l: store.tank_l,
    litresPerHour: store.litres_per_hour,
    ratedPower: watts(store.rated_power_w),
  }));

const limiterSchema = z
  .strictObject({
    lowest_nm: positive,
    highest_nm: positive,
    error: share,
    overshoot_nm: notNegative,
    step_nm: positive,
    both_directions: z.boolean(),
  })
  .refine((limiter) => limiter.lowest_nm < limiter.highest_nm, {
    path: ['lowest_nm'],
    message: 'is not below the highest',
  })
  .transform(
    (limiter): BuiltInLimiter => ({
      lowest: newtonMetres(limiter.lowest_nm),
      highest: newtonMetres(limiter.highest_nm),
      error: ratio(limiter.error),
      overshoot: newtonMetres(limiter.overshoot_nm),
      step: newtonMetres(limiter.step_nm),
      bothDirections: limiter.both_directions,
    }),
  );

export const driveFactsSchema = z
  .strictObject({
    duty_class: z.enum(DUTY_CLASSES),
    gears: z.array(gearSchema).min(1).max(MOST_GEARS),
    output: couplingSchema,
    reversible: z.boolean(),
    hold_to_run: z.boolean(),
    continuous_run_min: positive,
    rest_after_run_min: notNegative,
    sound_pressure_db: positive,
    vibration_m_s2: notNegative,
    power: z.discriminatedUnion('kind', [batterySchema, airSchema, petrolSchema]),
    lowest_temperature_c: z.number(),
    highest_temperature_c: z.number(),
    highest_altitude_m: positive,
    limiter: limiterSchema.nullable(),
  })
  .transform(
    (facts): DriveFacts => ({
      dutyClass: facts.duty_class,
      gears: facts.gears,
      output: facts.output,
      reversible: facts.reversible,
      holdToRun: facts.hold_to_run,
      continuousRun: minutes(facts.continuous_run_min),
      restAfterRun: minutes(facts.rest_after_run_min),
      soundPressure: decibels(facts.sound_pressure_db),
      vibration: metresPerSecondSquared(facts.vibration_m_s2),
      power: facts.power,
      lowestTemperature: celsius(facts.lowest_temperature_c),
      highestTemperature: celsius(facts.highest_temperature_c),
      highestAltitude: metres(facts.highest_altitude_m),
      limiter: facts.limiter,
    }),
  );

export function driveFactsToJson(facts: DriveFacts): z.input<typeof driveFactsSchema> {
  return {
    duty_class: facts.dutyClass,
    gears: facts.gears.map(gearToJson),
    output: couplingToJson(facts.output),
    reversible: facts.reversible,
    hold_to_run: facts.holdToRun,
    continuous_run_min: toMinutes(facts.continuousRun),
    rest_after_run_min: toMinutes(facts.restAfterRun),
    sound_pressure_db: facts.soundPressure,
    vibration_m_s2: facts.vibration,
    power: powerToJson(facts.power),
    lowest_temperature_c: facts.lowestTemperature,
    highest_temperature_c: facts.highestTemperature,
    highest_altitude_m: facts.highestAltitude,
    limiter: facts.limiter === null ? null : limiterToJson(facts.limiter),
  };
}

function gearToJson(gear: Gear): z.input<typeof gearSchema> {
  return {
    name: gear.name,
    stall_torque_nm: gear.stallTorque,
    rated_torque_nm: gear.ratedTorque,
    free_speed_rpm: gear.freeSpeed,
    ...(gear.curve === undefined
      ? {}
      : { curve: gear.curve.map((at) => ({ torque_nm: at.torque, speed_rpm: at.speed })) }),
  };
}

function powerToJson(power: DriveFacts['power']): z.input<typeof driveFactsSchema>['power'] {
  switch (power.kind) {
    case 'battery':
      return {
        kind: power.kind,
        voltage_v: power.voltage,
        capacity_ah: power.capacity_ah,
        packs_included: power.packsIncluded,
        pack_number: power.packNumber,
        efficiency: power.efficiency,
        recharge_time_min: toMinutes(power.rechargeTime),
      };
    case 'air':
      return {
        kind: power.kind,
        rated_pressure_bar: toBar(power.ratedPressure),
        lowest_pressure_bar: toBar(power.lowestPressure),
        highest_pressure_bar: toBar(power.highestPressure),
        consumption_l_min: toLitresPerMinute(power.consumption),
        hose_bore_mm: toMillimetres(power.hoseBore),
      };
    case 'petrol':
      return {
        kind: power.kind,
        tank_l: power.tank_l,
        litres_per_hour: power.litresPerHour,
        rated_power_w: power.ratedPower,
      };
  }
}

function limiterToJson(limiter: BuiltInLimiter): z.input<typeof limiterSchema> {
  return {
    lowest_nm: limiter.lowest,
    highest_nm: limiter.highest,
    error: limiter.error,
    overshoot_nm: limiter.overshoot,
    step_nm: limiter.step,
    both_directions: limiter.bothDirections,
  };
}

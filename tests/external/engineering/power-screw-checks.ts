import { coupleTorque, leverTorque, rimForce } from '#lib/engineering/hand-force.ts';
import { leadAngle, screwEfficiency, selfLockingFriction, stemLoad, stemTorque } from '#lib/engineering/power-screw.ts';
import { penstockThrust } from '#lib/engineering/stem-thrust.ts';
import { threadLead } from '#lib/engineering/thread-geometry.ts';
import { strokeWork } from '#lib/engineering/turns.ts';
import { degrees, metres, millimetres, newtonMetres, newtons, ratio, turns } from '#lib/units/quantity.ts';
import type { Check, Checks, Value } from './entry.ts';
import { each, has, inUnit, number, si } from './given.ts';

/* Power screws: raising, lowering, efficiency, self-locking. */
interface Screw {
  readonly meanDiameter: number;
  readonly lead: number;
  readonly flankHalfAngle: number;
  readonly friction: number;
  readonly collarFriction: number;
  readonly collarMeanDiameter: number;
}

function screwOf(inputs: Value): Screw {
  return {
    meanDiameter: si(inputs, 'dm', 'length'),
    lead: has(inputs, 'p_mm')
      ? threadLead({ pitch: metres(si(inputs, 'p', 'length')), starts: ratio(number(inputs, 'starts')) })
      : si(inputs, 'lead', 'length'),
    flankHalfAngle: si(inputs, 'alpha', 'angle'),
    friction: number(inputs, 'mu'),
    collarFriction: has(inputs, 'fc') ? number(inputs, 'fc') : 0,
    collarMeanDiameter: has(inputs, 'dc_mm') ? si(inputs, 'dc', 'length') : 0,
  };
}

const typed = (screw: Screw) => ({
  meanDiameter: metres(screw.meanDiameter),
  lead: metres(screw.lead),
  flankHalfAngle: degrees(screw.flankHalfAngle),
  friction: ratio(screw.friction),
  collarFriction: ratio(screw.collarFriction),
  collarMeanDiameter: metres(screw.collarMeanDiameter),
});

const torque = (inputs: Value, load: number) => stemTorque({ ...typed(screwOf(inputs)), load: newtons(load) });
const raise = (inputs: Value) => torque(inputs, si(inputs, 'F', 'force'));
/** Lowering: the load helps. */
const lower = (inputs: Value) => torque(inputs, -si(inputs, 'F', 'force'));
const efficiency = (inputs: Value) =>
  screwEfficiency({
    load: newtons(si(inputs, 'F', 'force')),
    lead: metres(screwOf(inputs).lead),
    torque: raise(inputs),
  });
const atLever = (inputs: Value, one: number) =>
  one / leverTorque({ force: newtons(1), length: metres(si(inputs, 'lever', 'length')) });

const FIGURES: Readonly<Record<string, (inputs: Value) => number>> = {
  T_raise_Nm: raise,
  T_raise_inlb: (inputs) => inUnit('in lb', 'torque', raise(inputs)),
  T_lower_Nm: lower,
  efficiency,
  lead_angle_deg: (inputs) => {
    const { lead, meanDiameter } = screwOf(inputs);
    return leadAngle({ lead: metres(lead), meanDiameter: metres(meanDiameter) });
  },
  ratio_raise_lower: (inputs) => raise(inputs) / lower(inputs),
  force_at_500mm_N: (inputs) =>
    rimForce({ torque: raise(inputs), wheelDiameter: metres(2 * si(inputs, 'arm', 'length')) }),
  rim_force_N: (inputs) =>
    rimForce({ torque: raise(inputs), wheelDiameter: metres(number(inputs, 'handwheel_D_mm') / 1000) }),
  P_raise_N: (inputs) => atLever(inputs, raise(inputs)),
  P_lower_N: (inputs) => atLever(inputs, lower(inputs)),
  /** Work of 175 turns, spread over a minute. */
  power_hp_at_175rpm: (inputs) => inUnit('hp', 'power', strokeWork({ torque: raise(inputs), turns: turns(175) }) / 60),
};

const screw: Check = {
  find: ({ inputs, shape }) =>
    each(shape, (name) => {
      const figure = FIGURES[name];
      if (figure === undefined) throw new Error(`No figure of a screw is called “${name}”.`);
      return figure(inputs);
    }),
};

/** A gate that is lifted by its screw with two arms: its weight and its friction, as a penstock. */
const gate: Check = {
  find: ({ inputs }) => {
    const door = {
      weight: newtons(number(inputs, 'weight_N')),
      friction: ratio(1),
      waterLoad: newtons(number(inputs, 'friction_N')),
    };
    const up = penstockThrust({ movement: 'opening', ...door });
    const down = penstockThrust({ movement: 'closing', ...door });
    const perNewton = coupleTorque({
      forcePerHand: newtons(1),
      radius: metres(number(inputs, 'arm_radius_mm') / 1000),
    });
    return {
      T_raise_Nm: torque(inputs, up),
      P_raise_N: torque(inputs, up) / perNewton,
      P_lower_N: torque(inputs, down) / perNewton,
      efficiency: screwEfficiency({ load: up, lead: metres(screwOf(inputs).lead), torque: torque(inputs, up) }),
    };
  },
};

const clamp: Check = {
  find: ({ inputs }) => {
    const applied = leverTorque({
      force: newtons(number(inputs, 'hand_force_N')),
      length: metres(number(inputs, 'radius_mm') / 1000),
    });
    const load = stemLoad({ ...typed(screwOf(inputs)), torque: applied });
    return { F_N: load, efficiency: screwEfficiency({ load, lead: metres(screwOf(inputs).lead), torque: applied }) };
  },
};

/** Efficiency of raising at the least friction that still holds the load, over many leads. */
const selfLocking: Check = {
  find: () => {
    const meanDiameter = millimetres(40);
    const efficiencies = [0.5, 2, 6, 12, 24, 48].map((lead) => {
      const size = { lead: millimetres(lead), meanDiameter, flankHalfAngle: degrees(0) };
      const thread = {
        ...size,
        friction: selfLockingFriction(size),
        collarFriction: ratio(0),
        collarMeanDiameter: metres(0),
      };
      const load = newtons(1000);
      return screwEfficiency({ load, lead: size.lead, torque: newtonMetres(stemTorque({ ...thread, load })) });
    });
    return { max_eff_self_locking: Math.max(...efficiencies) };
  },
};

export const POWER_SCREW_CHECKS: Checks = {
  'PS-01': screw,
  'PS-02': screw,
  'PS-04': gate,
  'PS-05': screw,
  'PS-07': clamp,
  'PS-08': screw,
  'PS-09': screw,
  'PS-11': screw,
  'PS-12': screw,
  'PS-15': screw,
  'PS-16': screw,
  'PS-18': screw,
  'PS-19': selfLocking,
  'VT-05': {
    find: ({ inputs }) => {
      const thread = {
        meanDiameter: metres(si(inputs, 'd', 'length')),
        lead: metres(si(inputs, 'lead', 'length')),
        flankHalfAngle: degrees(14.5),
        friction: ratio(number(inputs, 'mu')),
        collarFriction: ratio(0),
        collarMeanDiameter: metres(0),
      };
      return { SF_ft: inUnit('ft', 'length', stemTorque({ ...thread, load: newtons(1) })) };
    },
  },
};

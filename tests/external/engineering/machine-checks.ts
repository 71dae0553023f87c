import { airMotorFactors, airTaken, freeAirOf, hoseLoss, needsCutOff } from '#lib/engineering/air-supply.ts';
import { gearOutputTorque, wormEfficiency, wormRatio } from '#lib/engineering/gear-reduction.ts';
import { altitudeShare, chargeShare, heatShare, powerCorrection } from '#lib/engineering/petrol-derating.ts';
import {
  hollowShaftStress,
  solidShaftStress,
  solidShaftTorque,
  solidShaftTwist,
  squareShaftStress,
  squareShaftTwist,
} from '#lib/engineering/shaft-torsion.ts';
import { highestPower, speedAtTorque } from '#lib/engineering/torque-speed.ts';
import { evenPosition, jointRatioAt, jointSpeeds, largestJointAngle } from '#lib/engineering/universal-joint.ts';
import {
  celsius,
  cubicMetresPerSecond,
  degrees,
  metres,
  millimetres,
  newtonMetres,
  pascals,
  perMinute,
  ratio,
} from '#lib/units/quantity.ts';
import type { Check, Checks, Value } from './entry.ts';
import { each, fromUnit, has, inUnit, number, numbers, si } from './given.ts';

/* Shafts, joints, gears, motors, air and petrol: what stands between the store and the valve. */
const WORKED_OUT = 'worked out from the machine’s electrical data, which nothing of ours speaks of';

function linearMotor(inputs: Value) {
  const perTurn =
    (number(inputs, 'V') - number(inputs, 'I_FL_A') * number(inputs, 'Ra_ohm')) /
    number(inputs, 'N_FL_without_added_R_rpm');
  const torquePerAmpere = (perTurn * 60) / (2 * Math.PI);
  const gear = {
    stallTorque: newtonMetres((torquePerAmpere * number(inputs, 'V')) / number(inputs, 'R_total_ohm')),
    freeSpeed: perMinute(number(inputs, 'V') / perTurn),
  };
  return { gear, full: torquePerAmpere * number(inputs, 'I_FL_A') };
}

function exerciseMotor(inputs: Value) {
  return {
    stallTorque: newtonMetres((number(inputs, 'Kt') * number(inputs, 'V')) / number(inputs, 'R_ohm')),
    freeSpeed: perMinute((1000 * number(inputs, 'V')) / number(inputs, 'Ke_V_per_krpm')),
  };
}

/** Where the power of a straight line peaks, by trying. */
function peakOfStraightLine() {
  const gear = { stallTorque: newtonMetres(1), freeSpeed: perMinute(1) };
  const power = (torque: number) => torque * speedAtTorque({ gear, torque: newtonMetres(torque) });
  const best = Array.from({ length: 1001 }, (_, index) => index / 1000).reduce((a, b) => (power(b) > power(a) ? b : a));
  return { torque: best, speed: speedAtTorque({ gear, torque: newtonMetres(best) }) };
}

function lossInHose(inputs: Value): number {
  const pressure = has(inputs, 'p_psig')
    ? fromUnit('psi', 'pressure', number(inputs, 'p_psig'))
    : fromUnit('psi', 'pressure', 14.7) * (number(inputs, 'CR') - 1);
  const loss = hoseLoss({
    length: metres(si(inputs, 'L', 'length')),
    bore: metres(si(inputs, 'd', 'length')),
    freeAir: cubicMetresPerSecond(si(inputs, 'Q', 'flow')),
    pressure: pascals(pressure),
  });
  return inUnit('psi', 'pressure', loss);
}

const bore = (inputs: Value) => ({
  outerDiameter: millimetres(number(inputs, 'd_out_mm')),
  innerDiameter: millimetres(number(inputs, 'd_in_mm')),
});

const pressureSharesAt = (row: string): Value => {
  const factors = airMotorFactors(pascals(fromUnit('bar', 'pressure', Number(row))));
  return factors === null ? null : [factors.power, factors.speed, factors.torque, factors.air];
};

const highUp: Check = {
  find: ({ inputs }) => ({ P_hp: number(inputs, 'P0_hp') * altitudeShare(metres(si(inputs, 'h', 'length'))) }),
};

export const MACHINE_CHECKS: Checks = {
  'TO-03': {
    find: ({ inputs }) => {
      const diameter = metres(si(inputs, 'd', 'length'));
      const torque = newtonMetres(si(inputs, 'T', 'torque'));
      const bar = {
        torque,
        length: metres(si(inputs, 'L', 'length')),
        shearModulus: pascals(si(inputs, 'G', 'pressure')),
      };
      const stress = pascals(fromUnit('psi', 'pressure', number(inputs, 'tau_allow_psi')));
      return {
        tau_psi: inUnit('psi', 'pressure', solidShaftStress({ torque, diameter })),
        phi_deg: solidShaftTwist({ ...bar, diameter }),
        T_allow_lbft: inUnit('lbf ft', 'torque', solidShaftTorque({ stress, diameter })),
      };
    },
  },
  'TO-04': {
    find: ({ inputs }) => ({
      tau_MPa: hollowShaftStress({ torque: newtonMetres(number(inputs, 'T_Nm')), ...bore(inputs) }) / 1e6,
    }),
  },
  'TO-05': {
    besides: { tau_inner_MPa: 'ours says the highest stress of the section, which is outside' },
    find: ({ inputs }) => {
      const torque = number(inputs, 'F_N') * (number(inputs, 'l1_m') + number(inputs, 'l2_m'));
      return {
        T_Nm: torque,
        tau_outer_MPa: hollowShaftStress({ torque: newtonMetres(torque), ...bore(inputs) }) / 1e6,
      };
    },
  },
  'TO-06': {
    unmoved: 'the input says that the bar is square, and only square bars are ours',
    find: () => {
      const bar = { torque: newtonMetres(100), length: metres(1), shearModulus: pascals(80e9) };
      const side = metres(0.02);
      const twist = (squareShaftTwist({ ...bar, side }) * Math.PI) / 180;
      return {
        c1: bar.torque / (squareShaftStress({ torque: bar.torque, side }) * side ** 3),
        c2: (bar.torque * bar.length) / (twist * side ** 4 * bar.shearModulus),
      };
    },
  },
  'UJ-01': {
    find: ({ inputs }) => {
      const inputSpeed = perMinute(number(inputs, 'N_rpm'));
      const angle = largestJointAngle(ratio(number(inputs, 'total_fluctuation_rpm') / inputSpeed));
      const { low, high } = jointSpeeds({ inputSpeed, angle });
      return { angle_deg: angle, N_max_rpm: high, N_min_rpm: low };
    },
  },
  'UJ-02': { find: ({ inputs }) => ({ angle_deg: largestJointAngle(ratio(number(inputs, 'total_fluctuation'))) }) },
  'UJ-04': {
    find: ({ inputs }) => {
      const angle = degrees(number(inputs, 'angle_deg'));
      const first = evenPosition(angle);
      const mirrored = degrees(180 - first);
      const isEven = Math.abs(jointRatioAt({ angle, rotation: mirrored }) - 1) < 1e-9;
      return { theta_deg: isEven ? [first, mirrored] : [first] };
    },
  },
  'GB-01': {
    find: ({ inputs }) => {
      const angular = (number(inputs, 'n_rpm') * 2 * Math.PI) / 60;
      const input = newtonMetres(fromUnit('hp', 'power', number(inputs, 'hp')) / angular);
      const gear = { ratio: ratio(number(inputs, 'ratio')), efficiency: ratio(number(inputs, 'eff')) };
      return {
        T_in_inlb: inUnit('in lb', 'torque', input),
        T_out_inlb: inUnit('in lb', 'torque', gearOutputTorque({ inputTorque: input, ...gear })),
      };
    },
  },
  'GB-02': {
    find: ({ inputs }) => ({
      eff: wormEfficiency({
        leadAngle: degrees(number(inputs, 'lead_angle_deg')),
        friction: ratio(number(inputs, 'f')),
      }),
    }),
  },
  'GB-03': {
    find: ({ inputs }) => {
      const reduction = wormRatio({
        wheelTeeth: ratio(number(inputs, 'teeth')),
        starts: ratio(number(inputs, 'starts')),
      });
      return { ratio: reduction, n_out_rpm: number(inputs, 'n_in_rpm') / reduction };
    },
  },
  'DM-01': {
    besides: { N0_rpm: WORKED_OUT, T_FL_Nm: WORKED_OUT, T_stall_Nm: WORKED_OUT },
    find: ({ inputs }) => {
      const { gear, full } = linearMotor(inputs);
      return {
        N_at_TFL_rpm: speedAtTorque({ gear, torque: newtonMetres(full) }),
        N_at_2TFL_rpm: speedAtTorque({ gear, torque: newtonMetres(2 * full) }),
      };
    },
  },
  'DM-04': {
    besides: { N0_rpm: WORKED_OUT, I_stall_A: WORKED_OUT, T_stall_Nm: WORKED_OUT },
    find: ({ inputs }) => {
      const gear = exerciseMotor(inputs);
      return { Pmax_W: highestPower(gear), N_at_0p6Nm_rpm: speedAtTorque({ gear, torque: newtonMetres(0.6) }) };
    },
  },
  'AM-01': {
    besides: {
      start_over_stall: 'a drive’s lowest starting torque is a figure of its own data, never a share of its stall',
    },
    find: () => {
      const peak = peakOfStraightLine();
      return { peak_speed_fraction: peak.speed, stall_over_rated: 1 / peak.torque };
    },
  },
  'AM-02': {
    unmoved: 'the pressures stand in the names of what is expected; 6.3 bar is the reference of our table too',
    find: ({ shape }) => each(shape, pressureSharesAt),
  },
  'AH-02': {
    besides: { d_pow_5p31: 'a part result of the formula' },
    find: ({ inputs }) => ({ dp_psi: lossInHose(inputs) }),
  },
  'AH-03': { find: ({ inputs }) => ({ dp_psi: lossInHose(inputs) }) },
  'AC-01': {
    find: ({ inputs }) => {
      const free = freeAirOf({
        actualFlow: cubicMetresPerSecond(si(inputs, 'Q2', 'flow')),
        pressure: pascals(fromUnit('psi', 'pressure', number(inputs, 'p2_psig'))),
        temperature: celsius(si(inputs, 'T2', 'temperature')),
        freeTemperature: celsius(si(inputs, 'T1', 'temperature')),
      });
      return { Q_free_cfm: inUnit('cfm', 'flow', free) };
    },
  },
  'EN-01': highUp,
  'EN-02': {
    find: ({ inputs }) => ({ P_hp: number(inputs, 'P0_hp') * heatShare(celsius(si(inputs, 'T', 'temperature'))) }),
  },
  'EN-04': {
    besides: { p2_bar: 'the example’s own rule of 10 mmHg for each 100 m; ours takes the pressure of the place' },
    find: ({ inputs }) => {
      const rated = number(inputs, 'p1_bar') * 1e5;
      const site = rated - fromUnit('mmHg', 'pressure', number(inputs, 'h_m') / 10);
      const kelvin = (name: string) => celsius(fromUnit('K', 'temperature', number(inputs, name)));
      const share = chargeShare({
        pressures: { rated: pascals(rated), site: pascals(site) },
        temperatures: { rated: kelvin('T1_K'), site: kelvin('T2_K') },
      });
      return { BP_kW: number(inputs, 'IP_or_BP_kW') * share };
    },
  },
  'EN-05': {
    find: ({ inputs }) => ({
      CF: powerCorrection({
        dryPressure: pascals(fromUnit('mbar', 'pressure', number(inputs, 'Pd_mbar'))),
        temperature: celsius(number(inputs, 'Tc_C')),
      }),
    }),
  },
  'EN-06': {
    find: ({ inputs }) => {
      const step = number(inputs, 'h_m');
      return { loss: altitudeShare(metres(1000)) - altitudeShare(metres(1000 + step)) };
    },
  },
  'AIR-1926': {
    find: ({ inputs }) => ({ device_required: numbers(inputs, 'id_mm').map((one) => needsCutOff(millimetres(one))) }),
  },
  'AIR-REF': {
    find: ({ inputs }) => ({
      L_per_s: numbers(inputs, 'cfm').map((one) => inUnit('l/s', 'flow', fromUnit('cfm', 'flow', one))),
    }),
  },
  'AIR-SCALE': {
    find: ({ inputs }) => {
      const bar = (name: string) => pascals(fromUnit('bar', 'pressure', number(inputs, name)));
      const freeAir = cubicMetresPerSecond(fromUnit('l/s', 'flow', number(inputs, 'Q1')));
      const taken = airTaken({ freeAir, ratedPressure: bar('p1'), pressure: bar('p2') });
      return { Q2_L_per_s: inUnit('l/s', 'flow', taken) };
    },
  },
};

import {
  dailyNoise,
  NOISE_LIMIT,
  NOISE_LOWER_ACTION,
  NOISE_UPPER_ACTION,
  noisePoints,
  timeToNoise,
} from '#lib/engineering/noise.ts';
import {
  dailyVibration,
  timeToVibration,
  VIBRATION_ACTION_VALUE,
  VIBRATION_LIMIT_VALUE,
  vibrationPoints,
} from '#lib/engineering/vibration.ts';
import { decibels, metresPerSecondSquared, seconds } from '#lib/units/quantity.ts';
import type { Check, Checks, Value } from './entry.ts';
import { each, list, number, printed } from './given.ts';

/* Hand-arm vibration and noise of a day. */
const hours = (value: number) => seconds(value * 3600);
const use = (vibration: number, time: number) => ({ vibration: metresPerSecondSquared(vibration), time: hours(time) });
const exposure = (inputs: Value) => [use(number(inputs, 'a_hv'), number(inputs, 'T_h'))];

const reckoner: Check = {
  find: ({ inputs }) => {
    const points = vibrationPoints(exposure(inputs));
    return { points_formula: points, points_printed: points, A8: dailyVibration(exposure(inputs)) };
  },
};

const triggerTime: Check = {
  find: ({ inputs }) => {
    const vibration = metresPerSecondSquared(number(inputs, 'a_hv'));
    return {
      T_EAV_h: timeToVibration({ vibration, limit: VIBRATION_ACTION_VALUE }) / 3600,
      T_ELV_h: timeToVibration({ vibration, limit: VIBRATION_LIMIT_VALUE }) / 3600,
    };
  },
};

function band(inputs: Value): string {
  const day = dailyVibration(exposure(inputs));
  const against = (limit: number, name: string) => `${day > limit ? 'above' : 'below'} ${name}`;
  return `${against(VIBRATION_ACTION_VALUE, 'EAV')}, ${against(VIBRATION_LIMIT_VALUE, 'ELV')}`;
}

const noiseDay: Check = {
  find: ({ inputs }) => {
    const points = noisePoints(decibels(number(inputs, 'LEPd')));
    return { points_printed: points, points_formula: points };
  },
};

/** A week is the average of five days; a day of so many points is a time at 85 dB. */
const noiseWeek: Check = {
  find: ({ inputs }) => {
    const share = number(inputs, 'weekly_points') / 5 / 100;
    return { LEPw: dailyNoise([{ level: NOISE_UPPER_ACTION, time: hours(8 * share) }]) };
  },
};

const equalDose: Check = {
  find: ({ inputs }) => ({
    LEX8h: dailyNoise([{ level: decibels(number(inputs, 'L')), time: hours(number(inputs, 'T_h')) }]),
  }),
};

const noiseTime = (inputs: Value, limit: typeof NOISE_LIMIT) =>
  timeToNoise({ level: decibels(number(inputs, 'L')), limit }) / 3600;

const timeToUpperAction: Check = {
  besides: { printed: 'the same time in words, rounded' },
  find: ({ inputs }) => ({ T_formula_h: noiseTime(inputs, NOISE_UPPER_ACTION) }),
};

/** The table stops at eight hours of a shift: its criterion is our limit value. */
const timeToLimit: Check = { find: ({ inputs }) => ({ T_h: noiseTime(inputs, NOISE_LIMIT) }) };

const PEAK = 'peaks are not planned: the drives’ data give none';

function numbered(prefix: string, numbers: readonly (number | string)[], check: Check): Checks {
  return Object.fromEntries(numbers.map((one) => [`${prefix}${one}`, check]));
}

export const EXPOSURE_CHECKS: Checks = {
  'HAV-LIMITS': { find: () => ({ EAV_ms2: VIBRATION_ACTION_VALUE, ELV_ms2: VIBRATION_LIMIT_VALUE }) },
  'HAV-PTS-DEF': {
    find: () => ({
      EAV_points: vibrationPoints([use(VIBRATION_ACTION_VALUE, 8)]),
      ELV_points: vibrationPoints([use(VIBRATION_LIMIT_VALUE, 8)]),
    }),
  },
  'HAV-RR-HSE': { find: ({ inputs }) => ({ points: vibrationPoints(exposure(inputs)), band: band(inputs) }) },
  ...numbered(
    'HAV-RR-',
    Array.from({ length: 20 }, (_, index) => String(index + 1).padStart(2, '0')),
    reckoner,
  ),
  ...numbered('HAV-TIME-', [1, 2, 3, 4, 5], triggerTime),
  'HAV-EX-EU': {
    find: ({ inputs }) => {
      const day = list(inputs).map((one) => use(number(one, 'a'), number(one, 'T_h')));
      const total = dailyVibration(day);
      return {
        partials: day.map((one) => dailyVibration([one])),
        A8: total,
        printed_A8: total,
        points: vibrationPoints(day),
      };
    },
  },
  'NOI-UKVAL': {
    besides: { 'LEAV > 1': PEAK, 'UEAV > 1': PEAK, 'ELV > 1': PEAK },
    find: ({ shape }) => {
      const level = decibels(91);
      const times = [decibels(85), decibels(88)].map((limit) => timeToNoise({ level, limit }));
      const doublings = Math.log2((times[1] ?? Number.NaN) / (times[0] ?? Number.NaN));
      const levels: Readonly<Record<string, Value>> = {
        LEAV: [NOISE_LOWER_ACTION],
        UEAV: [NOISE_UPPER_ACTION],
        ELV: [NOISE_LIMIT],
        exchange_dB: printed(3 / doublings, 0),
      };
      return each(shape, (name) => levels[name] ?? null);
    },
  },
  ...numbered('NOI-RR-D', [95, 94, 93, 91, 90, 89, 88, 86, 85, 84, 83, 81, 80, 79, 78], noiseDay),
  ...numbered('NOI-RR-W', [4000, 3200, 2500, 2000, 1250, 1000, 790, 630, 315, 250, 200, 160], noiseWeek),
  ...numbered('NOI-EQ80-', [1, 2, 3, 4], equalDose),
  ...numbered('NOI-T85-', [1, 2, 3, 4, 6], timeToUpperAction),
  ...numbered('NOI-CA-', [87, 88, 89, 93, 96, 99], timeToLimit),
  'NOI-MIX-1': {
    find: ({ inputs }) => ({
      LEX8h: dailyNoise(
        list(inputs).map((one) => ({ level: decibels(number(one, 'L')), time: hours(number(one, 'h')) })),
      ),
    }),
  },
};

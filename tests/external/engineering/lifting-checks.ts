import {
  filterMass,
  filterShare,
  type Lift,
  liftFlag,
  recommendedWeight,
  teamCapability,
} from '#lib/engineering/lifting.ts';
import { forceWithShock, reactionForce } from '#lib/engineering/reaction.ts';
import { LIFT_MARKS, liftMark } from '#lib/packing/lift-mark.ts';
import { RULES_OF } from '#lib/rules/all-rules.ts';
import { judge } from '#lib/rules/rule.ts';
import { reactionFacts } from '#lib/rules/sample-facts.ts';
import { sampleRestraint } from '#lib/rules/sample-parts.ts';
import { degrees, kilograms, metres, newtonMetres, newtons, ratio, seconds } from '#lib/units/quantity.ts';
import type { Check, Checks, Value } from './entry.ts';
import { each, fromUnit, inUnit, number, numbers, text } from './given.ts';

/* Lifting, and the force that takes the reaction. */
const IDEAL: Lift = {
  horizontal: metres(0.25),
  vertical: metres(0.75),
  travel: metres(0.25),
  twist: degrees(0),
  perMinute: 0.2,
  duration: seconds(3600),
  coupling: 'good',
  outside: [],
};

function limit(change: Partial<Lift>): number {
  const answer = recommendedWeight({ ...IDEAL, ...change });
  return answer.ok ? answer.value : Number.NaN;
}

const cm = (value: number) => metres(value / 100);

/** The highest of the values tried at which the limit is still `held`. */
function highest(values: readonly number[], held: (value: number) => boolean): number {
  return Math.max(...values.filter(held));
}

const whole = (to: number) => Array.from({ length: to }, (_, index) => index + 1);
const same = (change: (value: number) => Partial<Lift>) => (value: number) =>
  Math.abs(limit(change(value)) - limit(change(0.01))) < 1e-9;
const above = (change: (value: number) => Partial<Lift>) => (value: number) => limit(change(value)) > 0;

const clamps: Check = {
  find: () => ({
    H_min_cm: highest(
      whole(100),
      same((value) => ({ horizontal: cm(value) })),
    ),
    H_max_cm: highest(
      whole(200),
      above((value) => ({ horizontal: cm(value) })),
    ),
    V_max_cm: highest(
      whole(300),
      above((value) => ({ vertical: cm(value) })),
    ),
    D_min_cm: highest(
      whole(100),
      same((value) => ({ travel: cm(value) })),
    ),
    D_max_cm: highest(
      whole(300),
      above((value) => ({ travel: cm(value) })),
    ),
    A_max_deg: highest(
      whole(300),
      above((value) => ({ twist: degrees(value) })),
    ),
    F_min_per_min: highest(
      whole(100).map((one) => one / 100),
      same((perMinute) => ({ perMinute })),
    ),
  }),
};

/** Below and from 75 cm; the share against a good grip at the same height. */
function gripShares(name: string): Value {
  const coupling = name === 'fair' || name === 'poor' ? name : 'good';
  return [0.7, 0.8].map(
    (vertical) => limit({ vertical: metres(vertical), coupling }) / limit({ vertical: metres(vertical) }),
  );
}

/** Columns as the table has them: up to 1, 2 and 8 h, each below and from 75 cm. */
function frequencyShares(perMinute: string): Value {
  return [1, 2, 8].flatMap((hours) =>
    [0.7, 0.8].map((height) => {
      const vertical = metres(height);
      const often = limit({ vertical, perMinute: Number(perMinute), duration: seconds(hours * 3600) });
      return often / limit({ vertical });
    }),
  );
}

const METRIC =
  'worked with the US constants; ours are the manual’s metric ones, up to 3.3 % apart, and are held to that in tests/reference';

const filter: Check = {
  find: ({ inputs, shape }) => {
    const zone = text(inputs, 'zone');
    if (!isZone(zone)) throw new Error(`The filter has no zone “${zone}”.`);
    return each(shape, (name) => {
      const persons = name.startsWith('women') ? 'women' : 'men';
      return filterMass({ zone, persons, reach: name.endsWith('close') ? 'close' : 'far' });
    });
  },
};

/** `1-2/min` at both its ends, which must agree; `>12/min` just beyond. */
function paceShare(pace: string): Value {
  const ends = [...pace.matchAll(/\d+/g)].map(([digits]) => Number(digits) + (pace.startsWith('>') ? 0.01 : 0));
  const shares = [...new Set(ends.map(filterShare))];
  return shares.length === 1 ? (shares[0] ?? null) : shares;
}

const LIFT_ZONES = [
  'shoulder and above',
  'shoulder to elbow',
  'elbow to knuckle',
  'knuckle to mid lower leg',
  'below mid lower leg',
] as const;

function isZone(name: string): name is (typeof LIFT_ZONES)[number] {
  return LIFT_ZONES.some((zone) => zone === name);
}

const FLAG_NAMES: Readonly<Record<string, string>> = {
  'one person': 'none',
  'one person, near the limit': 'near-limit',
  'two persons': 'two-person',
  'mechanical aid': 'mechanical',
};

/** The flag of a piece; the mark of a packed case must stand at the same step. */
function flagOf(mass: number): string {
  const flag = liftFlag(kilograms(mass));
  const step = Object.keys(FLAG_NAMES).indexOf(flag);
  return LIFT_MARKS[step] === liftMark(kilograms(mass)).mark ? (FLAG_NAMES[flag] ?? flag) : 'flag and mark differ';
}

const pull = (inputs: Value, names: readonly [torque: string, arm: string, angle: string]) =>
  reactionForce({
    torque: newtonMetres(number(inputs, names[0])),
    arm: metres(number(inputs, names[1])),
    pullAngle: degrees(number(inputs, names[2])),
  });

const reaction: Check = {
  find: ({ inputs }) => {
    const force = pull(inputs, ['T_Nm', 'L_m', 'theta_deg']);
    return { F_N: force, F_kgf: inUnit('kgf', 'force', force) };
  },
};

/** What a slanting pull is worth: the force of a straight one over its own. */
const slant: Check = {
  find: ({ inputs }) => {
    const one = { torque: newtonMetres(100), arm: metres(1) };
    const slanting = reactionForce({ ...one, pullAngle: degrees(number(inputs, 'angle_h_deg')) });
    return { factor: reactionForce({ ...one, pullAngle: degrees(90) }) / slanting };
  },
};

/** Whether the rule of the house lets a restraint of this rating take this force. */
function holds(forceRating: number, force: number): boolean {
  const rule = RULES_OF.reaction.find(({ id }) => id === 'restraint-force-within-rating');
  if (rule === undefined) throw new Error('There is no rule on the force rating of a restraint.');
  const restraint = sampleRestraint({ facts: { forceRating: newtons(forceRating) } });
  return judge(rule, reactionFacts({ restraint, reaction: { force: newtons(force) } })) === null;
}

/** The rating stands in the name; a 6 mm chain of grade 8 to EN 818-4 is good for 1.12 t. */
function ratingIn(name: string): number {
  const daN = /_LC(\d+)daN_/.exec(name)?.[1];
  return daN === undefined ? fromUnit('tf', 'force', 1.12) : fromUnit('daN', 'force', Number(daN));
}

const restraint: Check = {
  find: ({ inputs, shape }) => {
    const force = forceWithShock({ force: pull(inputs, ['T', 'L', 'theta']), shock: ratio(number(inputs, 'k')) });
    return each(shape, (name) => (name === 'F_req_N' ? force : holds(ratingIn(name), force)));
  },
};

function numbered(prefix: string, numbersOf: readonly number[], check: Check): Checks {
  return Object.fromEntries(numbersOf.map((one) => [`${prefix}${one}`, check]));
}

export const LIFTING_CHECKS: Checks = {
  'MH-N-CONST-SI': { find: () => ({ LC_kg: limit({}) }) },
  'MH-N-CLAMP': clamps,
  'MH-N-CM': { find: ({ shape }) => each(shape, gripShares) },
  'MH-N-FM': { find: ({ shape }) => each(shape, frequencyShares) },
  'MH-N-IDEAL': { find: ({ inputs }) => ({ RWL_kg: limit(metricLift(inputs)) }) },
  'MH-N-KIT': {
    find: ({ inputs }) => {
      const recommended = limit(metricLift(inputs));
      return { RWL_kg: recommended, LI: number(inputs, 'L_kg') / recommended };
    },
  },
  'MH-N-EX2': {
    besides: { RWL_lb: METRIC, RWL_full: METRIC },
    find: ({ inputs }) => ({ LI: number(inputs, 'L_lb') / pounds(inputs) }),
  },
  'MH-N-EX3': {
    besides: { RWL_lb: METRIC, LI: METRIC },
    find: ({ inputs }) => ({ RWL_full: pounds(inputs) }),
  },
  ...numbered('MH-L23-', [1, 2, 3, 4, 5], filter),
  'MH-L23-FREQ': { find: ({ shape }) => each(shape, paceShare) },
  'MH-TEAM': {
    find: ({ inputs }) => {
      const capabilities = numbers(inputs, 'c');
      return {
        two_person_kg: teamCapability(capabilities),
        three_person_kg_25each: teamCapability([...capabilities, ...capabilities.slice(0, 1)]),
      };
    },
  },
  'MH-TOOLRULE': { find: ({ inputs }) => ({ flags: numbers(inputs, 'mass_kg').map(flagOf) }) },
  ...numbered('TRQ-F-', [1, 2, 3, 4, 5, 6, 7, 8, 9], reaction),
  ...numbered('RES-SLANG-', [90, 75, 60, 30], slant),
  'RES-CHECK': restraint,
};

/** The limit of a lift that is given in inches, in pounds. */
function pounds(inputs: Value): number {
  const metric = Object.fromEntries(
    ['H', 'V', 'D'].map((name) => [name, fromUnit('in', 'length', number(inputs, name)) * 100]),
  );
  const rest = { A: number(inputs, 'A'), F: number(inputs, 'F'), coupling: text(inputs, 'coupling') };
  return inUnit('lb', 'mass', limit(metricLift({ ...metric, ...rest })));
}

function metricLift(inputs: Value): Partial<Lift> {
  const coupling = text(inputs, 'coupling');
  if (coupling !== 'good' && coupling !== 'fair' && coupling !== 'poor') throw new Error(`No grip is “${coupling}”.`);
  return {
    horizontal: cm(number(inputs, 'H')),
    vertical: cm(number(inputs, 'V')),
    travel: cm(number(inputs, 'D')),
    twist: degrees(number(inputs, 'A')),
    perMinute: number(inputs, 'F'),
    coupling,
  };
}

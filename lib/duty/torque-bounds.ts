/*
 * All known bounds on the torque at the valve's input: what it must never see, each with its basis.
 * Invariant: a bound that is a thrust becomes a torque at the lowest friction; age only weakens.
 * Not here: choosing the lowest (never-exceed.ts) and the strength of hired parts.
 * Read next: stem-bounds.ts, never-exceed.ts.
 */
import { coupleTorque, rimTorque } from '#lib/engineering/hand-force.ts';
import { solidShaftTorque, squareShaftTorque } from '#lib/engineering/shaft-torsion.ts';
import { allowableShear } from '#lib/engineering/stem-strength.ts';
import { OVERLOAD_PULL, spokeTorque, wheelTorque } from '#lib/engineering/wheel-strength.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import { metres, newtons, pascals, ratio } from '#lib/units/quantity.ts';
import { DIRECTIONS, type TorqueBound } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { calculate, lookUp, type Sheet, term } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';
import { spreadOf, type ValveLoads } from './valve-loads.ts';

const SPOKE_STRESS = spreadOf('Pa', [50e6, 70e6, 120e6], {
  basis: 'assumed',
  source: 'Bending of cast-iron spokes; common practice, no source.',
});
const SPOKE_SHARE = spreadOf('1', [0.042, 0.05, 0.06], {
  basis: 'assumed',
  source: 'A spoke is about a twentieth of its wheel thick; common practice, no source.',
});

export interface BoundGiven {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly sheet: Sheet;
  readonly wheel: Known<'m'> | null;
}

export function both(kind: string, torque: Known<'N·m'>): TorqueBound {
  return { kind, directions: DIRECTIONS, torque };
}

/** What age leaves of a table's strength. */
export function strengthLeft({ age }: ValveCharacter): Known<'1'> {
  return age !== null && age >= HOUSE_CONSTANTS.yearsUntilOld.nominal
    ? HOUSE_CONSTANTS.oldStrength
    : HOUSE_CONSTANTS.soundStrength;
}

/** A table's bound with what age leaves of it. */
export function weakened(
  { sheet, character }: Pick<BoundGiven, 'sheet' | 'character'>,
  id: string,
  name: string,
  bound: Known<'N·m'>,
): Known<'N·m'> {
  const left = strengthLeft(character);
  if (left.low === 1) return bound;
  return calculate(sheet, {
    id,
    name: `${name}, weakened by age`,
    formula: 'T = T0·k',
    unit: 'N·m',
    source: left.source,
    terms: { bound: term('T0', 'bound of a sound valve', bound), left: term('k', 'strength that age leaves', left) },
    evaluate: (at) => at('bound') * at('left'),
  });
}

/** Bounds at the wheel or nut itself, whatever is behind it. */
export function inputBounds(given: BoundGiven): readonly TorqueBound[] {
  const { line } = given;
  const stated = line.torque.max;
  const endStop = statedEndStop(line);
  return [
    ...(stated === undefined ? [] : [both('stated', stated)]),
    ...(endStop === null ? [] : [both('end stop', endStop)]),
    ...wheelBound(given),
    ...spokesBound(given),
    ...nutBound(given),
    ...spindleBounds(given),
  ];
}

/** A torque named in the end-stop column, e.g. `stops 400 N·m`. */
function statedEndStop({ torque }: ScheduleLine): Known<'N·m'> | null {
  const text = torque.endStops;
  const number = text === undefined ? undefined : /(\d+(?:[.,]\d+)?)\s*N\s*[·.*⋅]?\s*m/i.exec(text.value)?.[1];
  if (text === undefined || number === undefined) return null;
  const value = Number(number.replace(',', '.'));
  return value > 0 ? exactly('N·m', value, text) : null;
}

function wheelBound({ line, character, sheet, wheel }: BoundGiven): readonly TorqueBound[] {
  if (line.interface.wheelDiameter === undefined || wheel === null) return [];
  const material = line.interface.wheelMaterial?.value ?? '';
  const strong = /steel|ductile|malleable|forged|sg iron|nodular/i.test(material);
  const strength = strong
    ? spreadOf('1', [1.4, 2.2, 3], {
        basis: 'rule of thumb',
        source: `Wheel of ${material} against a plain cast wheel; common practice, no source.`,
      })
    : spreadOf('1', [1, 1.6, 2.4], {
        basis: material === '' ? 'assumed' : 'rule of thumb',
        source: 'A cast-iron wheel, the weaker, is taken at its least; common practice, no source.',
      });
  const torque = calculate(sheet, {
    id: 'bound-wheel',
    name: 'What the wheel bears',
    formula: 'T = F·D/2·k·a',
    unit: 'N·m',
    source: 'AWWA C504: 200 lbf (890 N) in total at the rim, from memory.',
    terms: {
      pull: term(
        'F',
        'total tangential force at the rim',
        exactly('N', OVERLOAD_PULL, { basis: 'standard', source: 'AWWA C504, from memory.' }),
      ),
      wheel: term('D', 'wheel diameter', wheel),
      strength: term('k', 'strength of the wheel', strength),
      left: term('a', 'strength that age leaves', strengthLeft(character)),
    },
    evaluate: (at) =>
      wheelTorque({
        overload: newtons(at('pull')),
        wheelDiameter: metres(at('wheel')),
        strength: ratio(at('strength')),
      }) * at('left'),
  });
  return [both('wheel', torque)];
}

/** Spokes that are driven all together; their thickness follows the wheel. */
function spokesBound({ line, character, sheet, wheel }: BoundGiven): readonly TorqueBound[] {
  const spokes = line.interface.wheelSpokes;
  if (spokes === undefined || line.interface.wheelDiameter === undefined || wheel === null) return [];
  if (!Number.isFinite(spokes.value) || spokes.value < 1 || spokes.value > 24) return [];
  const torque = calculate(sheet, {
    id: 'bound-spokes',
    name: 'What the spokes bear',
    formula: 'T = 2·n·σ·π·(s·D)³/32·R/(R − r)·a; R = 0.38·D, r = 0.09·D',
    unit: 'N·m',
    source: 'Statics of a beam held at both ends; sizes of wheels common practice, no source.',
    terms: {
      spokes: term('n', 'spokes', exactly('1', spokes.value, spokes)),
      stress: term('σ', 'bending stress allowed', SPOKE_STRESS),
      share: term('s', 'spoke against wheel', SPOKE_SHARE),
      wheel: term('D', 'wheel diameter', wheel),
      left: term('a', 'strength that age leaves', strengthLeft(character)),
    },
    evaluate: (at) =>
      spokeTorque({
        spokes: ratio(at('spokes')),
        stress: pascals(at('stress')),
        spokeDiameter: metres(at('share') * at('wheel')),
        contactRadius: metres(0.38 * at('wheel')),
        hubRadius: metres(0.09 * at('wheel')),
      }) * at('left'),
  });
  return [both('spokes', torque)];
}

function nutBound({ line, character, sheet }: BoundGiven): readonly TorqueBound[] {
  const nut = line.interface.nut?.acrossFlats;
  if (nut === undefined) return [];
  const wear = line.interface.nutWear?.value ?? 'good';
  const left = {
    good: spreadOf('1', [0.9, 1, 1], said('good')),
    worn: spreadOf('1', [0.5, 0.7, 0.9], said('worn')),
    rounded: spreadOf('1', [0.2, 0.35, 0.5], said('rounded')),
  }[wear];
  const torque = calculate(sheet, {
    id: 'bound-nut',
    name: 'What the nut or square bears',
    formula: 'T = 0.208·a³·0.577·Re/S·w·k',
    unit: 'N·m',
    source: 'Beer & Johnston, Mechanics of Materials, table 3.1, from memory; wear common practice, no source.',
    terms: {
      side: term('a', 'across flats', nut),
      yield: term('Re', 'yield stress', HOUSE_CONSTANTS.yieldOfUnknownStem),
      wear: term('w', 'what wear leaves', left),
      left: term('k', 'strength that age leaves', strengthLeft(character)),
    },
    evaluate: (at) =>
      squareShaftTorque({ side: metres(at('side')), stress: shear(at('yield')) }) * at('wear') * at('left'),
  });
  return [both('nut', torque)];
}

function said(wear: string): { readonly basis: 'rule of thumb'; readonly source: string } {
  return { basis: 'rule of thumb', source: `Grip of a ${wear} nut; common practice, no source.` };
}

function spindleBounds({ line, character, sheet }: BoundGiven): readonly TorqueBound[] {
  const isExtended = character.drivenBy.value === 'extension spindle';
  const size =
    line.interface.spindleSize ??
    (isExtended
      ? lookUp(sheet, {
          id: 'spindle-size',
          name: 'Extension spindle',
          value: spreadOf('m', [0.024, 0.027, 0.032], {
            basis: 'assumed',
            source: 'The list gives no spindle size: the common sizes are covered, the weaker counts.',
          }),
        })
      : undefined);
  if (size === undefined) return [];
  const shared = {
    size: term('d', 'spindle', size),
    yield: term('Re', 'yield stress', HOUSE_CONSTANTS.yieldOfSpindle),
    left: term('k', 'strength that age leaves', strengthLeft(character)),
  };
  const spindle = calculate(sheet, {
    id: 'bound-spindle',
    name: 'What the extension spindle bears',
    formula: 'T = π·d³/16·0.577·Re/S·k',
    unit: 'N·m',
    source: 'Gere, Mechanics of Materials, section 3.3.',
    terms: shared,
    evaluate: (at) => solidShaftTorque({ diameter: metres(at('size')), stress: shear(at('yield')) }) * at('left'),
  });
  const pin = calculate(sheet, {
    id: 'bound-spindle-pin',
    name: 'What the pin of the spindle bears',
    formula: 'T = π·(s·d)²/4·d·0.577·Re/S·k',
    unit: 'N·m',
    source: 'Statics of a pin in double shear; its size common practice, no source.',
    terms: { ...shared, share: term('s', 'pin against spindle', HOUSE_CONSTANTS.pinShare) },
    evaluate: (at) => ((Math.PI * (at('share') * at('size')) ** 2) / 4) * at('size') * shear(at('yield')) * at('left'),
  });
  return [both('spindle', spindle), both('spindle pin', pin)];
}

export function shear(yieldStress: number): ReturnType<typeof pascals> {
  return allowableShear({ yieldStress: pascals(yieldStress), safetyFactor: HOUSE_CONSTANTS.strengthFactor.nominal });
}

/** Where nothing else is known: what a person can put on that wheel, or two hands on the bar of a key. */
export function handBound({ character, sheet, wheel }: BoundGiven): TorqueBound {
  if (wheel !== null) {
    return both(
      'hand force',
      calculate(sheet, {
        id: 'bound-hand-force',
        name: 'What a person puts on this wheel',
        formula: 'T = F·D/2',
        unit: 'N·m',
        source: 'One total force at the radius; API Spec 6D and MSS SP-91.',
        terms: {
          force: term('F', 'total force of a person at the rim', HOUSE_CONSTANTS.handForce),
          wheel: term('D', 'wheel diameter', wheel),
        },
        evaluate: (at) => rimTorque({ force: newtons(at('force')), wheelDiameter: metres(at('wheel')) }),
      }),
    );
  }
  const small = character.type === 'stop tap';
  return both(
    'hand force',
    calculate(sheet, {
      id: 'bound-hand-force',
      name: 'What a person puts on a key',
      formula: 'T = 2·(F/2)·r',
      unit: 'N·m',
      source: 'Two hands, each at the radius, half of the total force each; API Spec 6D and MSS SP-91.',
      terms: {
        force: term('F', 'total force of both hands', HOUSE_CONSTANTS.handForce),
        radius: term(
          'r',
          'half of the bar of the key',
          small
            ? spreadOf('m', [0.1, 0.15, 0.2], {
                basis: 'rule of thumb',
                source: 'Half of the bar of a stop-tap key; common practice, no source.',
              })
            : HOUSE_CONSTANTS.keyBarRadius,
        ),
      },
      evaluate: (at) => coupleTorque({ forcePerHand: newtons(at('force') / 2), radius: metres(at('radius')) }),
    }),
  );
}

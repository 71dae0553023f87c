/*
 * Bounds behind the input: stem torsion and buckling, iron gate practice, flange and gearbox, referred to the input.
 * Invariant: thrust becomes torque at the lowest friction, output becomes input at the highest efficiency and ratio.
 * Not here: wheel, nut and spindle (torque-bounds.ts).
 * Read next: never-exceed.ts.
 */
import { multiTurnFlangeThrust, multiTurnFlangeTorque, partTurnFlangeTorque } from '#lib/engineering/flange-limits.ts';
import { gearInputTorque } from '#lib/engineering/gear-reduction.ts';
import { rimTorque } from '#lib/engineering/hand-force.ts';
import { stemTorque } from '#lib/engineering/power-screw.ts';
import { solidShaftTorque } from '#lib/engineering/shaft-torsion.ts';
import { BRONZE_MODULUS, bucklingLoad, STEEL_MODULUS } from '#lib/engineering/stem-strength.ts';
import { OVERLOAD_PULL } from '#lib/engineering/wheel-strength.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import { degrees, metres, newtonMetres, newtons, pascals, ratio } from '#lib/units/quantity.ts';
import type { Direction, TorqueBound } from './duty.ts';
import type { Gearing } from './geared-duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import { calculate, lookUp, settle, term, withEffect } from './sheet.ts';
import { type BoundGiven, both, shear, strengthLeft } from './torque-bounds.ts';
import { spreadOf } from './valve-loads.ts';
import type { ValveStem } from './valve-stem.ts';

type StemGiven = BoundGiven & { readonly stem: ValveStem };

/** Bounds of a screw-driven valve at its stem or yoke nut. */
export function stemBounds(given: StemGiven): readonly TorqueBound[] {
  const iron =
    given.character.family === 'gate' &&
    given.character.setting === 'waterworks' &&
    given.character.type !== 'knife gate';
  return [
    ...(iron ? [ironGateBound(given)] : []),
    ...(given.stem.grounded || !iron ? [torsionBound(given)] : []),
    ...bucklingBound(given),
    ...multiTurnFlange(given),
  ];
}

/** Iron gate valves of waterworks by size. */
function ironGateBound({ loads, character, sheet }: BoundGiven): TorqueBound {
  const at = (size: number): readonly [number, number, number] =>
    size < 0.07
      ? [100, 140, 200]
      : size < 0.115
        ? [200, 235, 271]
        : size < 0.18
          ? [270, 330, 407]
          : size < 0.32
            ? [320, 380, 450]
            : size < 0.5
              ? [400, 500, 700]
              : [450, 650, 1000];
  const [least, likely, most] = [at(loads.size.low)[0], at(loads.size.nominal)[1], at(loads.size.high)[2]];
  const rule = lookUp(sheet, {
    id: 'iron-gate-rule',
    name: 'Torque that iron gate valves are built for',
    value: settle(
      'N·m',
      { low: least, nominal: likely, high: most },
      {
        basis: loads.size.basis === 'assumed' ? 'assumed' : 'rule of thumb',
        source:
          'AWWA C509 and C515, from memory: 200 lbf·ft (271 N·m) at 3 to 4 in, 300 lbf·ft (407 N·m) from 6 in; metric valves about 2 N·m for each mm of size at the low end, common practice.',
      },
    ),
  });
  return both('standard', weakened({ sheet, character }, 'bound-iron-gate', 'Iron gate valves by size', rule));
}

function weakened(
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

function yieldStress({ line, character }: BoundGiven): Known<'Pa'> {
  const material = line.stem.material?.value ?? '';
  if (/bronze|brass|copper|gunmetal|alumin/i.test(material)) return HOUSE_CONSTANTS.yieldOfBronzeStem;
  if (material === '' && character.setting === 'plant')
    return {
      ...HOUSE_CONSTANTS.yieldOfSteelStem,
      basis: 'assumed',
      source: 'The stem’s material is not given: steel or 13 % chromium is taken, as usual in plants.',
    };
  return /steel|13\s*cr|410|416|420|431|304|316|stainless|chrom|duplex|monel|17-4/i.test(material)
    ? HOUSE_CONSTANTS.yieldOfSteelStem
    : HOUSE_CONSTANTS.yieldOfUnknownStem;
}

function torsionBound(given: StemGiven): TorqueBound {
  const { stem, character, sheet } = given;
  return both(
    'stem torsion',
    calculate(sheet, {
      id: 'bound-stem-torsion',
      name: 'Stem torsion at the thread root',
      formula: 'T = π·d3³/16·0.577·Re/S·k',
      unit: 'N·m',
      source: 'Gere, Mechanics of Materials, section 3.3; Shigley, distortion-energy theory.',
      terms: {
        root: term('d3', 'root diameter', stem.rootDiameter),
        yield: term('Re', 'yield stress of the stem', yieldStress(given)),
        left: term('k', 'strength that age leaves', strengthLeft(character)),
      },
      evaluate: (at) => solidShaftTorque({ stress: shear(at('yield')), diameter: metres(at('root')) }) * at('left'),
    }),
  );
}

/** Rising stems are pushed when closing; a non-rising stem of a gate pushes over a short length inside. */
function bucklingBound(given: StemGiven): readonly TorqueBound[] {
  const { line, character, stem, sheet } = given;
  if (character.stemKind.value === 'non-rising' && character.family !== 'penstock') return [];
  const length =
    character.family === 'penstock'
      ? penstockLength(given)
      : settle(
          'm',
          {
            low: stem.travel.low,
            nominal: stem.travel.nominal + 2 * stem.diameter.nominal,
            high: stem.travel.high + 3 * stem.diameter.high,
          },
          {
            basis: stem.travel.basis === 'assumed' ? 'assumed' : 'rule of thumb',
            source: 'Free length of the stem: its travel and the neck of its bonnet; common practice, no source.',
          },
        );
  const bronze = /bronze|brass|gunmetal/i.test(line.stem.material?.value ?? '');
  const load = calculate(sheet, {
    id: 'buckling-load',
    name: 'Compression that the stem bears',
    formula: 'F = π²·E·A/(S·(K·L/(d/4))²), Johnson when stout',
    unit: 'N',
    source: 'Shigley’s Mechanical Engineering Design, sections 4-12 and 4-13.',
    terms: {
      root: term('d', 'root diameter', stem.rootDiameter),
      length: withEffect('lowers', term('L', 'free length', length)),
      ends: withEffect('lowers', term('K', 'end factor', HOUSE_CONSTANTS.bucklingEnds)),
      yield: term('Re', 'yield stress of the stem', yieldStress(given)),
    },
    evaluate: (at) =>
      bucklingLoad({
        diameter: metres(at('root')),
        length: metres(at('length')),
        endFactor: ratio(at('ends')),
        modulus: bronze ? BRONZE_MODULUS : STEEL_MODULUS,
        yieldStress: pascals(at('yield')),
        safetyFactor: HOUSE_CONSTANTS.bucklingFactor.nominal,
      }),
  });
  return [{ kind: 'stem buckling', directions: ['closing'], torque: thrustAsTorque(given, 'stem-buckling', load) }];
}

/** Guides stand so close that the stem stays stout: a slenderness of 100 to 200 of its root. */
function penstockLength({ line, sheet, stem }: StemGiven): Known<'m'> {
  const said = line.interface.spindleLength ?? line.place.depthToNut;
  if (said !== undefined) return said;
  const at = (slenderness: number): number => (slenderness * stem.rootDiameter.nominal) / 4;
  return lookUp(sheet, {
    id: 'stem-free-length',
    name: 'Free length of the stem',
    value: settle(
      'm',
      { low: at(100), nominal: at(140), high: at(200) },
      {
        basis: 'assumed',
        source:
          'Distance between the guides of the stem is not given: a slenderness of 100 to 200 is taken, 200 being the usual limit (AWWA C560, from memory).',
      },
    ),
  });
}

/** The lowest friction turns torque into most thrust: there the bound lies. */
function thrustAsTorque({ stem, sheet }: StemGiven, id: string, load: Known<'N'>): Known<'N·m'> {
  const least = exactly('1', stem.friction.low, {
    basis: stem.friction.basis,
    source: `The lowest friction, where torque turns into most thrust: ${stem.friction.source}`,
  });
  const collar =
    stem.collar === null
      ? null
      : {
          friction: exactly('1', stem.collar.friction.low, stem.collar.friction),
          diameter: exactly('m', stem.collar.meanDiameter.low, stem.collar.meanDiameter),
        };
  const none = { basis: 'computed', source: 'No collar turns under thrust.' } as const;
  return calculate(sheet, {
    id: `bound-${id}`,
    name: `Torque that makes this thrust at the lowest friction (${id.replace('-', ' ')})`,
    formula: 'T = F·dm/2·tan(λ + φ) + F·fc·dc/2',
    unit: 'N·m',
    source: 'Shigley’s Mechanical Engineering Design, eq. 8-5 and 8-6.',
    terms: {
      load: term('F', 'thrust that is borne', load),
      diameter: term('dm', 'mean diameter', stem.meanDiameter),
      lead: term('l', 'lead', stem.lead),
      angle: term('α', 'half flank angle', stem.flankHalfAngle),
      friction: term('f', 'thread friction, lowest', least),
      collarFriction: term('fc', 'collar friction, lowest', collar?.friction ?? exactly('1', 0, none)),
      collarDiameter: term('dc', 'collar diameter, lowest', collar?.diameter ?? exactly('m', 0, none)),
    },
    evaluate: (at) =>
      stemTorque({
        load: newtons(at('load')),
        meanDiameter: metres(at('diameter')),
        lead: metres(at('lead')),
        flankHalfAngle: degrees(at('angle')),
        friction: ratio(at('friction')),
        collarFriction: ratio(at('collarFriction')),
        collarMeanDiameter: metres(at('collarDiameter')),
      }),
  });
}

function multiTurnFlange(given: StemGiven): readonly TorqueBound[] {
  const flange = given.line.torque.flange;
  const torque = flange === undefined ? null : multiTurnFlangeTorque(flange.value);
  const thrust = flange === undefined ? null : multiTurnFlangeThrust(flange.value);
  if (flange === undefined || torque === null || thrust === null) return [];
  const origin = {
    basis: 'standard',
    source: `ISO 5210, flange ${flange.value}, from memory: a bound on what may pass, not on what is needed.`,
  } as const;
  const direct = lookUp(given.sheet, {
    id: 'bound-flange',
    name: 'Torque that the flange may pass',
    value: exactly('N·m', torque, origin),
  });
  return [
    both('flange', direct),
    both('flange thrust', thrustAsTorque(given, 'flange-thrust', exactly('N', thrust, origin))),
  ];
}

/** Bounds of a quarter-turn valve at its shaft. */
export function shaftBounds({ line, sheet }: BoundGiven): readonly TorqueBound[] {
  const flange = line.torque.flange;
  const torque = flange === undefined ? null : partTurnFlangeTorque(flange.value);
  if (flange === undefined || torque === null) return [];
  return [
    both(
      'flange',
      lookUp(sheet, {
        id: 'bound-flange',
        name: 'Torque that the flange may pass',
        value: exactly('N·m', torque, {
          basis: 'standard',
          source: `ISO 5211, flange ${flange.value}, from memory: a bound on what may pass, not on what is needed.`,
        }),
      }),
    ),
  ];
}

/** Refers bounds behind a gearbox to its input, at the highest efficiency and the highest ratio for the low end. */
export function throughGear({
  bounds,
  gear,
  sheet,
}: Pick<BoundGiven, 'sheet'> & {
  readonly bounds: readonly TorqueBound[];
  readonly gear: Gearing;
}): readonly TorqueBound[] {
  const efficiency = exactly('1', gear.efficiency.high, {
    basis: gear.efficiency.basis,
    source: `The highest efficiency, where the input makes most output: ${gear.efficiency.source}`,
  });
  return bounds.map((bound) => ({
    ...bound,
    torque: calculate(sheet, {
      id: `bound-${bound.kind.replaceAll(' ', '-')}-input`,
      name: `Bound of ${bound.kind} at the gearbox input`,
      formula: 'Tin = T/(i·η)',
      unit: 'N·m',
      source: 'Wentzell, Machine Design, ch. 13.',
      terms: {
        bound: term('T', `bound of ${bound.kind}`, bound.torque),
        ratio: withEffect('lowers', term('i', 'ratio', gear.ratio)),
        efficiency: withEffect('lowers', term('η', 'efficiency, highest', efficiency)),
      },
      evaluate: (at) =>
        gearInputTorque({
          outputTorque: newtonMetres(at('bound')),
          ratio: ratio(at('ratio')),
          efficiency: ratio(at('efficiency')),
        }),
    }),
  }));
}

/** What the input and the end stops of a gearbox stand. */
export function gearboxBound({ loads, character, sheet, wheel }: BoundGiven): TorqueBound {
  if (wheel !== null) {
    const strength = spreadOf('1', [0.9, 1, 1.5], {
      basis: 'rule of thumb',
      source: 'Gearboxes that are weaker or stronger than AWWA C504 asks; common practice, no source.',
    });
    return both(
      'gearbox input',
      calculate(sheet, {
        id: 'bound-gearbox-input',
        name: 'What gearbox input and end stops stand',
        formula: 'T = F·D/2·k·a',
        unit: 'N·m',
        source: 'AWWA C504: stops stand 200 lbf (890 N) in total at the rim, from memory.',
        terms: {
          pull: term(
            'F',
            'total pull at the rim',
            exactly('N', OVERLOAD_PULL, { basis: 'standard', source: 'AWWA C504, from memory.' }),
          ),
          wheel: term('D', 'wheel diameter', wheel),
          strength: term('k', 'against AWWA C504', strength),
          left: term('a', 'strength that age leaves', strengthLeft(character)),
        },
        evaluate: (at) =>
          rimTorque({ force: newtons(at('pull')), wheelDiameter: metres(at('wheel')) }) * at('strength') * at('left'),
      }),
    );
  }
  const small = loads.size.nominal < 0.3;
  const rule = lookUp(sheet, {
    id: 'gearbox-nut-rule',
    name: 'What gearbox input and end stops stand on a nut',
    value: spreadOf('N·m', small ? [120, 203, 407] : [203, 300, 407], {
      basis: 'rule of thumb',
      source:
        'AWWA C504, from memory: rated torque at 150 lbf·ft (203 N·m) on the nut, stops stand 300 lbf·ft (407 N·m); smaller gearboxes less.',
    }),
  });
  return both(
    'gearbox input',
    weakened({ sheet, character }, 'bound-gearbox-input', 'Gearbox input and end stops', rule),
  );
}

export function appliesTo(bound: TorqueBound, direction: Direction): boolean {
  return bound.directions.includes(direction);
}

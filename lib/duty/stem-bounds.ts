/*
 * Bounds at the stem of a screw-driven valve: iron gate practice, torsion, buckling and the multi-turn flange.
 * Invariant: a thrust becomes a torque at the lowest friction.
 * Not here: wheel, nut and spindle (torque-bounds.ts); gearboxes (gear-bounds.ts).
 * Read next: gear-bounds.ts.
 */
import { multiTurnFlangeThrust, multiTurnFlangeTorque } from '#lib/engineering/flange-limits.ts';
import { stemTorque } from '#lib/engineering/power-screw.ts';
import { solidShaftTorque } from '#lib/engineering/shaft-torsion.ts';
import { BRONZE_MODULUS, bucklingLoad, STEEL_MODULUS } from '#lib/engineering/stem-strength.ts';
import { exactly, type Known, type Origin } from '#lib/units/known-value.ts';
import { degrees, metres, newtons, pascals, ratio } from '#lib/units/quantity.ts';
import type { TorqueBound } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import { calculate, combine, lookUp, settle, term, withEffect } from './sheet.ts';
import { type BoundGiven, both, shear, strengthLeft, weakened } from './torque-bounds.ts';
import { spreadOf } from './valve-loads.ts';
import type { ValveStem } from './valve-stem.ts';

const PLANT_STEM: Known<'Pa'> = {
  ...HOUSE_CONSTANTS.yieldOfSteelStem,
  basis: 'assumed',
  source: 'The stem’s material is not given: steel or 13 % chromium is taken, as usual in plants.',
};

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

function yieldStress({ line, character }: BoundGiven): Known<'Pa'> {
  const material = line.stem.material?.value ?? '';
  if (/bronze|brass|copper|gunmetal|alumin/i.test(material)) return HOUSE_CONSTANTS.yieldOfBronzeStem;
  if (material === '' && character.setting === 'plant') return PLANT_STEM;
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

/** Rising stems are pushed when closing (reverse-acting ones when opening); a non-rising stem of a gate pushes over a short length inside. */
function bucklingBound(given: StemGiven): readonly TorqueBound[] {
  const { line, character, stem, sheet } = given;
  if (character.stemKind.value === 'non-rising' && character.family !== 'penstock') return [];
  const length = character.family === 'penstock' ? penstockLength(given) : freeLength(given);
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
  // A reverse-acting valve pushes its stem in to open.
  const pushed = line.action?.value === 'reverse' ? 'opening' : 'closing';
  return [{ kind: 'stem buckling', directions: [pushed], torque: thrustAsTorque(given, 'stem-buckling', load) }];
}

/** Between bonnet and disc, and the neck of the bonnet on top. */
function freeLength({ stem, sheet }: StemGiven): Known<'m'> {
  const origin: Origin = {
    basis: stem.travel.basis === 'assumed' ? 'assumed' : 'rule of thumb',
    source: 'Free length of the stem: its travel and the neck of its bonnet; common practice, no source.',
  };
  return combine(sheet, {
    unit: 'm',
    origin,
    terms: {
      travel: term('s', 'travel', stem.travel),
      diameter: term('d', 'stem diameter', stem.diameter),
      neck: term('k', 'neck of the bonnet against the stem', spreadOf('1', [0, 2, 3], origin)),
    },
    evaluate: (at) => at('travel') + at('neck') * at('diameter'),
  });
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

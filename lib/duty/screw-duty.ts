/*
 * Torque and turns of a screw-driven valve at its stem or yoke nut.
 * Invariant: collar friction counts wherever a nut or stem turns against a shoulder; turns follow the lead.
 * Not here: gearboxes in front of the stem (geared-duty.ts) and what the stem must never see (torque-bounds.ts).
 * Read next: geared-duty.ts.
 */
import { collarTorque, selfLockingFriction, threadTorque } from '#lib/engineering/power-screw.ts';
import { packingTorque } from '#lib/engineering/stem-thrust.ts';
import { turnsFromTravel, waterworksTurns } from '#lib/engineering/turns.ts';
import { type Known, type Origin, worstBasis } from '#lib/units/known-value.ts';
import { degrees, metres, newtons, ratio, turns } from '#lib/units/quantity.ts';
import type { Direction, DutyThread } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import { noteTurnsRule } from './line-findings.ts';
import { calculate, remember, settle, term, withEffect } from './sheet.ts';
import type { StartingFactors } from './starting-factor.ts';
import type { StemThrusts } from './stem-thrusts.ts';
import type { ThrustGiven } from './thrust-parts.ts';
import { spreadOf } from './valve-loads.ts';
import type { ValveStem } from './valve-stem.ts';

export interface DirectionTorque {
  readonly starting: Known<'N·m'>;
  readonly running: Known<'N·m'>;
  readonly thrust: Known<'N'> | null;
}

export type ScrewGiven = ThrustGiven & { readonly thrusts: StemThrusts; readonly factors: StartingFactors };

export function screwTorque(given: ScrewGiven, direction: Direction): DirectionTorque {
  const { thrusts, sheet, factors } = given;
  const thrust = thrusts[direction];
  const running = runningTorque(given, direction, thrust);
  const starting = calculate(sheet, {
    id: `starting-torque-${direction}`,
    name: `Starting torque at the stem, ${direction}`,
    formula: 'T0 = T·k',
    unit: 'N·m',
    source: factors[direction].source,
    terms: {
      running: term('T', 'running torque', running),
      factor: withEffect(running.low < 0 ? 'either' : 'raises', term('k', 'starting factor', factors[direction])),
    },
    evaluate: (at) => at('running') * at('factor'),
  });
  return { starting, running, thrust };
}

function runningTorque(given: ScrewGiven, direction: Direction, thrust: Known<'N'>): Known<'N·m'> {
  const { stem, thrusts, sheet, character } = given;
  const parts = [
    threadPart(given, direction, thrust),
    collarPart(given, direction, thrust),
    swivelPart(given, direction, thrust),
  ].filter((part) => part !== null);
  if (character.stemKind.value !== 'rising through the wheel') {
    parts.push(
      calculate(sheet, {
        id: `packing-torque-${direction}`,
        name: `Torque of the packing, ${direction}`,
        formula: 'T = Fp·d/2',
        unit: 'N·m',
        source: 'Statics: the stem turns in its packing.',
        terms: {
          packing: term('Fp', 'packing load', thrusts.packing),
          diameter: term('d', 'stem diameter', stem.diameter),
        },
        evaluate: (at) => packingTorque({ packing: newtons(at('packing')), stemDiameter: metres(at('diameter')) }),
      }),
    );
  }
  const terms = Object.fromEntries(
    parts.map((part, index) => [`part${index}`, term(`T${index + 1}`, part.source.split(':')[0] ?? 'part', part)]),
  );
  return calculate(sheet, {
    id: `running-torque-${direction}`,
    name: `Running torque at the stem, ${direction}`,
    formula: parts.map((_, index) => `T${index + 1}`).join(' + '),
    unit: 'N·m',
    source: 'Sum of thread, collar or swivel, and packing.',
    terms,
    evaluate: (at) => parts.reduce((sum, _part, index) => sum + at(`part${index}`), 0),
  });
}

function threadPart({ stem, sheet }: ScrewGiven, direction: Direction, thrust: Known<'N'>): Known<'N·m'> {
  return calculate(sheet, {
    id: `thread-torque-${direction}`,
    name: `Torque in the thread, ${direction}`,
    unit: 'N·m',
    formula: 'T = F·dm/2·tan(λ + φ); helping load: |F|·dm/2·tan(φ − λ)',
    source: 'Shigley’s Mechanical Engineering Design, eq. 8-1, 8-2 and 8-5.',
    terms: {
      load: withEffect('bends', term('F', 'stem thrust', thrust)),
      diameter: term('dm', 'mean diameter', stem.meanDiameter),
      lead: withEffect(thrust.low >= 0 ? 'raises' : 'either', term('l', 'lead', stem.lead)),
      angle: term('α', 'half flank angle', stem.flankHalfAngle),
      friction: term('f', 'thread friction', stem.friction),
    },
    evaluate: (at) =>
      threadTorque({
        load: newtons(at('load')),
        meanDiameter: metres(at('diameter')),
        lead: metres(at('lead')),
        flankHalfAngle: degrees(at('angle')),
        friction: ratio(at('friction')),
      }),
  });
}

/** A non-rising stem's collar also carries the pressure on the stem's end. */
function collarPart(
  { stem, thrusts, sheet }: ScrewGiven,
  direction: Direction,
  thrust: Known<'N'>,
): Known<'N·m'> | null {
  if (stem.collar === null) return null;
  const sign = direction === 'opening' ? -1 : 1;
  const carriesMore = thrusts.collarOnly.high > 0;
  const load = carriesMore
    ? calculate(sheet, {
        id: `collar-load-${direction}`,
        name: `Load on the collar, ${direction}`,
        unit: 'N',
        formula: `Fc = F ${sign < 0 ? '−' : '+'} Fs`,
        source: 'Statics: the collar of a non-rising stem carries the pressure on the stem’s end too.',
        terms: {
          load: term('F', 'stem thrust', thrust),
          end: withEffect(sign < 0 ? 'lowers' : 'raises', term('Fs', 'stem-end load', thrusts.collarOnly)),
        },
        evaluate: (at) => at('load') + sign * at('end'),
      })
    : thrust;
  return calculate(sheet, {
    id: `collar-torque-${direction}`,
    name: `Torque in the collar, ${direction}`,
    unit: 'N·m',
    formula: 'T = |Fc|·fc·dc/2',
    source: 'Shigley’s Mechanical Engineering Design, eq. 8-6.',
    terms: {
      load: withEffect('bends', term('Fc', 'load on the collar', load)),
      friction: term('fc', 'collar friction', stem.collar.friction),
      diameter: term('dc', 'mean diameter of the collar', stem.collar.meanDiameter),
    },
    evaluate: (at) =>
      collarTorque({
        load: newtons(at('load')),
        collarFriction: ratio(at('friction')),
        collarMeanDiameter: metres(at('diameter')),
      }),
  });
}

/** Where stem and wheel rise together only the pivot at the disc rubs, and only when seating. */
function swivelPart(
  { stem, character, sheet }: ScrewGiven,
  direction: Direction,
  thrust: Known<'N'>,
): Known<'N·m'> | null {
  if (character.stemKind.value !== 'rising with the wheel' || direction !== 'closing') return null;
  const { swivelFriction, swivelShare } = HOUSE_CONSTANTS;
  return calculate(sheet, {
    id: 'swivel-torque-closing',
    name: 'Torque in the disc swivel when seating',
    formula: 'T = |F|·fs·(k·d)/2',
    unit: 'N·m',
    source: 'Statics of a pivot; share of the stem common practice, no source.',
    terms: {
      load: withEffect('bends', term('F', 'stem thrust', thrust)),
      friction: term('fs', 'pivot friction', swivelFriction),
      share: term('k', 'pivot against stem', swivelShare),
      diameter: term('d', 'stem diameter', stem.diameter),
    },
    evaluate: (at) =>
      collarTorque({
        load: newtons(at('load')),
        collarFriction: ratio(at('friction')),
        collarMeanDiameter: metres(at('share') * at('diameter')),
      }),
  });
}

/** Turns by geometry; for waterworks gates of unknown thread the trade's rule is covered as well. */
export function screwTurns({ line, character, loads, stem, sheet }: ThrustGiven): Known<'turn'> {
  const fromGeometry = calculate(sheet, {
    id: 'turns-of-the-stem',
    name: 'Turns of a stroke at the stem',
    formula: 'N = s/l + N0',
    unit: 'turn',
    source: 'Geometry.',
    terms: {
      travel: term('s', 'travel', stem.travel),
      lead: withEffect('lowers', term('l', 'lead', stem.lead)),
      lost: term('N0', 'lost motion', HOUSE_CONSTANTS.lostMotion),
    },
    evaluate: (at) =>
      turnsFromTravel({ travel: metres(at('travel')), lead: metres(at('lead')), lostMotion: turns(at('lost')) }),
  });
  const isWaterworksGate = character.setting === 'waterworks' && character.family === 'gate';
  if (!isWaterworksGate || line.torque.turns !== undefined) return fromGeometry;
  const extra = spreadOf('turn', [1, 2.5, 3], {
    basis: 'rule of thumb',
    source: 'Two to three turns beyond three for each inch.',
  });
  const byRule = calculate(sheet, {
    id: 'turns-by-rule',
    name: 'Turns by the waterworks rule',
    formula: 'N = 3·D/25.4 mm + k',
    unit: 'turn',
    source:
      'Waterworks rule of thumb; Kansas Rural Water Association, The Kansas Lifeline, November 2011: 27 turns at 8 in.',
    terms: { size: term('D', 'nominal size', loads.size), extra: term('k', 'turns beyond', extra) },
    evaluate: (at) => waterworksTurns({ size: metres(at('size')), extra: turns(at('extra')) }),
  });
  if (line.stem.thread !== undefined || line.stem.threadStarts !== undefined) {
    noteTurnsRule(sheet, { byThread: fromGeometry, byRule });
    return fromGeometry;
  }
  const basis = worstBasis([byRule.basis, 'rule of thumb']);
  const origin: Origin = {
    basis,
    source:
      'Turns by the waterworks rule and by travel and usual threads, both covered: practice differs between countries.',
  };
  const range = {
    low: Math.min(byRule.low, fromGeometry.low),
    nominal: (byRule.nominal + fromGeometry.nominal) / 2,
    high: Math.max(byRule.high, fromGeometry.high),
  };
  return remember(sheet, settle('turn', range, origin), {
    terms: {
      rule: term('N1', 'turns by the waterworks rule', byRule),
      geometry: term('N2', 'turns of a stroke at the stem', fromGeometry),
      practice: withEffect('picks', term('k', 'practice of the country', spreadOf('1', [0, 0.5, 1], origin))),
    },
    evaluate: (at) => at('rule') + (at('geometry') - at('rule')) * at('practice'),
  });
}

/** Self-locking over the range of friction; the thread alone, as a collar may roll. */
export function dutyThread(stem: ValveStem): DutyThread {
  const least = (lead: number, meanDiameter: number): number =>
    selfLockingFriction({
      lead: metres(lead),
      meanDiameter: metres(meanDiameter),
      flankHalfAngle: degrees(stem.flankHalfAngle.nominal),
    });
  const holds = stem.friction.low >= least(stem.lead.high, stem.meanDiameter.low);
  const slips = stem.friction.high < least(stem.lead.low, stem.meanDiameter.high);
  return { meanDiameter: stem.meanDiameter, lead: stem.lead, selfLocking: holds ? 'yes' : slips ? 'no' : 'depends' };
}

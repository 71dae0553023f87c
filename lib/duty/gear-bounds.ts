/*
 * Bounds of gearboxes: input and end stops, the flange of a quarter-turn valve, and bounds behind a gearbox at its input.
 * Invariant: output becomes input at the highest efficiency; the low end at the highest ratio too.
 * Not here: bounds of stems (stem-bounds.ts), wheel and nut (torque-bounds.ts).
 * Read next: never-exceed.ts.
 */
import { partTurnFlangeTorque } from '#lib/engineering/flange-limits.ts';
import { gearInputTorque } from '#lib/engineering/gear-reduction.ts';
import { rimTorque } from '#lib/engineering/hand-force.ts';
import { OVERLOAD_PULL } from '#lib/engineering/wheel-strength.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import { metres, newtonMetres, newtons, ratio } from '#lib/units/quantity.ts';
import type { TorqueBound } from './duty.ts';
import { CHANGING_RATIO, type Gearing } from './geared-duty.ts';
import { calculate, lookUp, term, withEffect } from './sheet.ts';
import { type BoundGiven, both, strengthLeft, weakened } from './torque-bounds.ts';
import { spreadOf } from './valve-loads.ts';

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

interface ThroughGear extends Pick<BoundGiven, 'sheet'> {
  readonly bounds: readonly TorqueBound[];
  readonly gear: Gearing;
}

/** Refers bounds behind a gearbox to its input, at the highest efficiency and the highest ratio for the low end. */
export function throughGear({ bounds, gear, sheet }: ThroughGear): readonly TorqueBound[] {
  const efficiency = exactly('1', gear.efficiency.high, {
    basis: gear.efficiency.basis,
    source: `The highest efficiency, where the input makes most output: ${gear.efficiency.source}`,
  });
  return bounds.map((bound) => {
    const torque = calculate(sheet, {
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
    });
    return {
      ...bound,
      torque: gear.kind === 'travelling nut' ? whereRatioIsHighest({ bound, torque, sheet }) : torque,
    };
  });
}

/** A travelling nut or link makes more of the same input at some places of its stroke than at others: the worst place counts. */
function whereRatioIsHighest({
  bound,
  torque,
  sheet,
}: Pick<BoundGiven, 'sheet'> & { readonly bound: TorqueBound; readonly torque: Known<'N·m'> }): Known<'N·m'> {
  return calculate(sheet, {
    id: `bound-${bound.kind.replaceAll(' ', '-')}-changing-ratio`,
    name: `Bound of ${bound.kind} at the gearbox input, over the whole stroke`,
    formula: 'T = k·Tin',
    unit: 'N·m',
    source: CHANGING_RATIO.source,
    terms: {
      bound: term('Tin', `bound of ${bound.kind} at the mean ratio`, torque),
      changing: term('k', 'change along the stroke', CHANGING_RATIO),
    },
    evaluate: (at) => at('bound') * at('changing'),
  });
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

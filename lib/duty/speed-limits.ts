/*
 * How fast a valve may be moved: stated limits, conservative speed with flow, and what a closure does to the pipe.
 * Invariant: a stated limit is hard; unknown flow is treated as flow; an unknown pipe length gives the full surge.
 * Not here: what a drive can do (tool side).
 * Read next: line-findings.ts.
 */
import { closureSurge, fullSurge, shortestClosure } from '#lib/engineering/surge.ts';
import { inUsUnits } from '#lib/units/format-quantity.ts';
import { exactly, type Known, worstBasis } from '#lib/units/known-value.ts';
import { metres, metresPerSecond, pascals, seconds } from '#lib/units/quantity.ts';
import { figure } from '#lib/units/say-figure.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { calculate, lookUp, note, type Sheet, term, withEffect } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';
import type { ValveLoads } from './valve-loads.ts';

interface SpeedGiven {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly turns: Known<'turn'>;
  readonly sheet: Sheet;
}

export interface SpeedLimits {
  readonly maxInputSpeed: Known<'1/min'>;
  readonly minStrokeTime: Known<'s'> | null;
}

export function speedLimits(given: SpeedGiven): SpeedLimits {
  const { line, character } = given;
  const still = line.process.flowing?.value === 'still';
  const usual = still
    ? character.geared
      ? HOUSE_CONSTANTS.gearboxInputSpeed
      : HOUSE_CONSTANTS.speedWithoutFlow
    : HOUSE_CONSTANTS.speedWithFlow;
  const maxInputSpeed = line.torque.maxInputSpeed ?? usual;
  if (still) return { maxInputSpeed, minStrokeTime: line.torque.minStrokeTime ?? null };
  const needed = strokeTimeForSurge(given);
  const minStrokeTime = line.torque.minStrokeTime ?? longer(needed, usualStroke(given));
  surgeFinding(given, { maxInputSpeed, minStrokeTime });
  return { maxInputSpeed, minStrokeTime };
}

/** With flow or unknown flow no stroke is quicker than this, whatever the turns. */
function usualStroke({ loads, sheet }: SpeedGiven): Known<'s'> {
  const { least, perMetre } = HOUSE_CONSTANTS.strokeWithFlow;
  const time = Math.max(least.nominal, loads.size.nominal * perMetre.nominal);
  const basis = worstBasis([loads.size.basis, perMetre.basis]);
  return lookUp(sheet, {
    id: 'stroke-with-flow',
    name: 'Shortest stroke while water may flow',
    value: exactly('s', time, { basis, source: perMetre.source }),
  });
}

function longer(one: Known<'s'> | null, other: Known<'s'>): Known<'s'> {
  return one !== null && one.nominal > other.nominal ? one : other;
}

function velocityOf({ line }: SpeedGiven): Known<'m/s'> {
  return line.process.flowVelocity ?? HOUSE_CONSTANTS.flowVelocity;
}

function effectiveShare({ character }: SpeedGiven): Known<'1'> {
  return character.family === 'gate' || character.family === 'penstock'
    ? HOUSE_CONSTANTS.effectiveShare.gate
    : HOUSE_CONSTANTS.effectiveShare.other;
}

/** Where the pipe's length is known: the stroke that keeps the surge within the house's share of the rating. */
function strokeTimeForSurge(given: SpeedGiven): Known<'s'> | null {
  const length = given.line.process.pipeLength;
  if (length === undefined) return null;
  return calculate(given.sheet, {
    id: 'min-stroke-time',
    name: 'Shortest stroke for the surge allowed',
    formula: 't = 2·ρ·L·Δv/(k·p)/e',
    unit: 's',
    source: 'Michaud’s formula; effective share and surge allowed common practice, no source.',
    terms: {
      length: term('L', 'pipe length', length),
      velocity: term('Δv', 'velocity stopped', velocityOf(given)),
      wave: term('a', 'wave speed', HOUSE_CONSTANTS.waveSpeed),
      rated: withEffect('lowers', term('p', 'rated pressure', given.loads.rated)),
      allowed: withEffect('lowers', term('k', 'surge allowed against the rating', HOUSE_CONSTANTS.surgeShare)),
      share: withEffect('lowers', term('e', 'part of the stroke that closes', effectiveShare(given))),
    },
    evaluate: (at) =>
      shortestClosure({
        length: metres(at('length')),
        waveSpeed: metresPerSecond(at('wave')),
        velocity: metresPerSecond(at('velocity')),
        highestSurge: pascals(at('rated') * at('allowed')),
      }) / at('share'),
  });
}

function surgeFinding(given: SpeedGiven, limits: SpeedLimits): void {
  const { line, loads, sheet, turns } = given;
  if (given.character.type === 'stop tap') return;
  const length = line.process.pipeLength;
  const velocity = velocityOf(given);
  const shared = {
    velocity: term('Δv', 'velocity stopped', velocity),
    wave: term('a', 'wave speed', HOUSE_CONSTANTS.waveSpeed),
  };
  const stroke = Math.max((turns.nominal / limits.maxInputSpeed.nominal) * 60, limits.minStrokeTime?.nominal ?? 0);
  const surge =
    length === undefined
      ? calculate(sheet, {
          id: 'surge',
          name: 'Surge of a quick closure',
          formula: 'Δp = ρ·a·Δv',
          unit: 'Pa',
          source: 'Joukowsky’s equation; the pipe’s length is not known, so the full surge is taken.',
          terms: shared,
          evaluate: (at) =>
            fullSurge({ waveSpeed: metresPerSecond(at('wave')), velocity: metresPerSecond(at('velocity')) }),
        })
      : calculate(sheet, {
          id: 'surge',
          name: 'Surge of the closure',
          formula: 'Δp = ρ·a·Δv within 2L/a, else 2·ρ·L·Δv/t',
          unit: 'Pa',
          source: 'Joukowsky’s equation; Michaud’s formula for slow closures.',
          terms: {
            ...shared,
            length: term('L', 'pipe length', length),
            share: withEffect('lowers', term('e', 'part of the stroke that closes', effectiveShare(given))),
          },
          evaluate: (at) =>
            closureSurge({
              length: metres(at('length')),
              waveSpeed: metresPerSecond(at('wave')),
              velocity: metresPerSecond(at('velocity')),
              closure: seconds(stroke * at('share')),
            }),
        });
  const known = line.process.flowing?.value === 'flowing';
  const heavy = surge.nominal > loads.rated.nominal * HOUSE_CONSTANTS.surgeShare.nominal;
  const bars = (value: number): string => (value / 1e5).toFixed(value < 1e6 ? 1 : 0);
  note(sheet, {
    id: 'surge-estimate',
    severity: known && heavy ? 'warning' : 'note',
    about: ['flowing', 'min_stroke_time'],
    sentence: `${known ? 'Water is flowing' : 'Whether water flows is not given, so it is taken to flow'}: closing ${length === undefined ? 'quickly may raise the pressure by' : 'at the speed allowed may raise the pressure by about'} ${figure({ si: `${bars(surge.low)} to ${bars(surge.high)} bar`, us: inUsUnits('Pa', surge.low, surge.high) })}. Close slowly, the last part of the stroke slowest; ${limits.maxInputSpeed.nominal} turns a minute at most.`,
    source: 'Joukowsky’s equation; an estimate that warns, not a surge study.',
  });
}

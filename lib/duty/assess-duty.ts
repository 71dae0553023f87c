/*
 * The duty of a line: torque, turns, never-exceed, limiter window, speed limits, grip and findings, with the whole calculation.
 * Invariant: pure and total: any line gives a duty; a missing value widens a range and is never refused.
 * Not here: equipment and its limiter (kits).
 * Read next: valve-character.ts, screw-duty.ts, geared-duty.ts, torque-bounds.ts, measure-first.ts.
 */

import { strokeWork } from '#lib/engineering/turns.ts';
import type { Known } from '#lib/units/known-value.ts';
import { newtonMetres, turns as turnsOf } from '#lib/units/quantity.ts';
import { raiseGuessedBounds } from './borne-torque.ts';
import type { Direction, DirectionDuty, Duty, TorqueBound } from './duty.ts';
import { gripOf, wheelOf } from './grip.ts';
import { hazardFindings } from './hazard-questions.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import { judgeLine } from './judge-line.ts';
import { noteDisagreement, noteFindings, SEATED_BY_POSITION } from './line-findings.ts';
import { measureFirst, type Narrowness } from './measure-first.ts';
import { idealWindow, neverExceed } from './never-exceed.ts';
import type { ScheduleLine } from './schedule-line.ts';
import type { DirectionTorque } from './screw-duty.ts';
import { writeSettingSteps } from './setting-steps.ts';
import {
  calculate,
  combine,
  note,
  openSheet,
  type Sheet,
  scratchSheet,
  tapedSheet,
  term,
  withEffect,
} from './sheet.ts';
import type { Site } from './site.ts';
import { speedLimits } from './speed-limits.ts';
import type { Tape } from './tape.ts';
import { handBound, inputBounds } from './torque-bounds.ts';
import { characterise, type ValveCharacter } from './valve-character.ts';
import { type ValveLoads, valveLoads } from './valve-loads.ts';
import { type ValveWork, workOfValve } from './valve-work.ts';
import { withVisitTorque } from './visit-torque.ts';

export function assessDuty({ line, site }: { readonly line: ScheduleLine; readonly site: Site }): Duty {
  const sheet = openSheet();
  const { line: given, findings } = judgeLine(line);
  for (const finding of [...findings, ...hazardFindings({ line, site })]) note(sheet, finding);
  const sound = withVisitTorque({ line: given, site, sheet });
  const core = workOut({ line: sound, site, sheet });
  const duty = wholeDuty({ line: sound, sheet, core });
  const tryOut = (tried: ScheduleLine): Narrowness => workOut({ line: tried, site, sheet: scratchSheet() });
  const effect = measureFirst({ line: sound, duty, steps: sheet.steps, tryOut });
  return { ...duty, measureFirst: effect?.what ?? null, measureFirstEffect: effect };
}

/** The numbers of a duty with all that they follow from, for drawing them anew. */
export function tapedDuty({ line, site }: { readonly line: ScheduleLine; readonly site: Site }): TapedDuty {
  const sheet = tapedSheet();
  const { opening, closing, turns } = workOut({
    line: withVisitTorque({ line: judgeLine(line).line, site, sheet }),
    site,
    sheet,
  });
  return { tape: sheet.tape, opening, closing, turns };
}

export interface TapedDuty extends Narrowness {
  readonly tape: Tape;
}

/** What the numbers of a duty follow from, without grip, speed and findings. */
interface Core {
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly wheel: Known<'m'> | null;
  readonly work: ValveWork;
  readonly bounds: readonly TorqueBound[];
  readonly opening: DirectionDuty;
  readonly closing: DirectionDuty;
  readonly turns: Known<'turn'>;
}

function workOut({
  line,
  site,
  sheet,
}: {
  readonly line: ScheduleLine;
  readonly site: Site;
  readonly sheet: Sheet;
}): Core {
  const character = characterise({ line, site });
  const loads = valveLoads({ line, character, sheet });
  const wheel = wheelOf({ line, character, loads });
  const given = { line, character, loads, sheet, wheel };
  const work = workOfValve(given);
  const known: readonly TorqueBound[] = [...inputBounds(given), ...work.bounds];
  const guessed = known.length > 0 ? known : [handBound(given)];
  const bounds = raiseGuessedBounds({ bounds: guessed, line, character, sheet });
  const opening = directionDuty({ line, sheet, work, bounds }, 'opening');
  const closing = directionDuty({ line, sheet, work, bounds }, 'closing');
  return { character, loads, wheel, work, bounds, opening, closing, turns: chosenTurns({ line, sheet, work }) };
}

function wholeDuty({
  line,
  sheet,
  core,
}: {
  readonly line: ScheduleLine;
  readonly sheet: Sheet;
  readonly core: Core;
}): Duty {
  const { character, loads, wheel, work, bounds, opening, closing, turns } = core;
  const limits = speedLimits({ line, character, loads, turns, sheet });
  strokeWorkStep({ opening, turns, sheet });
  writeSettingSteps({ duty: { opening, closing }, maxInputSpeed: limits.maxInputSpeed, sheet });
  noteFindings({ line, character, sheet, opening, closing, thread: work.thread, wheel });
  const byPosition = SEATED_BY_POSITION.has(character.type);
  return {
    tag: line.tag,
    qty: line.qty,
    strokes: line.strokes,
    movement: work.movement,
    opening,
    closing,
    turns,
    bounds,
    thread: work.thread,
    closes: line.torque.closes?.value ?? 'unknown',
    minStrokeTime: limits.minStrokeTime,
    maxInputSpeed: limits.maxInputSpeed,
    grip: gripOf({ line, character, loads, stem: work.stem }),
    countTurns: turns.high >= HOUSE_CONSTANTS.turnsThatNeedCounting.nominal || character.geared || byPosition,
    seized: line.state.condition?.value === 'seized',
    findings: sheet.findings,
    steps: sheet.steps ?? [],
    measureFirst: null,
    measureFirstEffect: null,
  };
}

interface DirectionGiven {
  readonly line: ScheduleLine;
  readonly sheet: Sheet;
  readonly work: ValveWork;
  readonly bounds: readonly TorqueBound[];
}

function directionDuty({ line, sheet, work, bounds }: DirectionGiven, direction: Direction): DirectionDuty {
  const { starting, running, thrust } = chosenTorque({ line, sheet, work }, direction);
  const limit = neverExceed({ bounds, direction, sheet });
  return { starting, running, neverExceed: limit, limiter: idealWindow({ starting, limit: limit.torque }), thrust };
}

/** A stated torque replaces the computed one; the other of the pair follows by the starting factor. */
function chosenTorque({ line, sheet, work }: Omit<DirectionGiven, 'bounds'>, direction: Direction): DirectionTorque {
  const computed = notNegative(sheet, work.torque[direction]);
  const { starting: saidStart, running: saidRun } = line.torque;
  const factor = work.factors[direction];
  if (saidStart !== undefined && direction === 'opening')
    noteDisagreement(sheet, {
      id: 'starting-torque-stated-against-computed',
      about: ['starting_torque'],
      what: 'starting torque',
      stated: saidStart,
      computed: computed.starting,
      unit: 'N·m',
    });
  if (saidRun !== undefined && direction === 'opening')
    noteDisagreement(sheet, {
      id: 'running-torque-stated-against-computed',
      about: ['running_torque'],
      what: 'running torque',
      stated: saidRun,
      computed: computed.running,
      unit: 'N·m',
    });
  const starting =
    saidStart ??
    (saidRun === undefined
      ? computed.starting
      : calculate(sheet, {
          id: `starting-from-running-${direction}`,
          name: `Starting torque from the running torque given, ${direction}`,
          formula: 'T0 = T·k',
          unit: 'N·m',
          source: factor.source,
          terms: { running: term('T', 'running torque given', saidRun), factor: term('k', 'starting factor', factor) },
          evaluate: (at) => at('running') * at('factor'),
        }));
  const running =
    saidRun ??
    (saidStart === undefined
      ? computed.running
      : calculate(sheet, {
          id: `running-from-starting-${direction}`,
          name: `Running torque from the starting torque given, ${direction}`,
          formula: 'T = T0/k',
          unit: 'N·m',
          source: factor.source,
          terms: {
            starting: term('T0', 'starting torque given', saidStart),
            factor: withEffect('lowers', term('k', 'starting factor', factor)),
          },
          evaluate: (at) => at('starting') / at('factor'),
        }));
  return { starting, running, thrust: computed.thrust };
}

/** Torque to drive: below nought the load drives, which thrust, steps and findings show; a drive then gives none. */
function notNegative(sheet: Sheet, { starting, running, thrust }: DirectionTorque): DirectionTorque {
  const lift = (torque: Known<'N·m'>): Known<'N·m'> =>
    torque.low >= 0
      ? torque
      : combine(sheet, {
          unit: 'N·m',
          origin: torque,
          terms: { torque: term('T', 'torque', torque) },
          evaluate: (at) => Math.max(0, at('torque')),
        });
  return { starting: lift(starting), running: lift(running), thrust };
}

function chosenTurns({ line, sheet, work }: Omit<DirectionGiven, 'bounds'>): Known<'turn'> {
  const stated = line.torque.turns;
  if (stated === undefined) return work.turns;
  noteDisagreement(sheet, {
    id: 'turns-stated-against-computed',
    about: ['turns', 'travel', 'stem_thread', 'gear_ratio'],
    what: 'number of turns',
    stated,
    computed: work.independentTurns,
    unit: 'turns',
  });
  return stated;
}

function strokeWorkStep({
  opening,
  turns,
  sheet,
}: {
  readonly opening: DirectionDuty;
  readonly turns: Known<'turn'>;
  readonly sheet: Sheet;
}): void {
  calculate(sheet, {
    id: 'work-of-a-stroke',
    name: 'Work of an opening stroke',
    formula: 'W = 2π·T·N',
    unit: 'J',
    source: 'Definition of work.',
    terms: { torque: term('T', 'running torque, opening', opening.running), turns: term('N', 'turns', turns) },
    evaluate: (at) => strokeWork({ torque: newtonMetres(Math.max(0, at('torque'))), turns: turnsOf(at('turns')) }),
  });
}

/*
 * What a line's duty has to say besides its numbers: states, traps, disagreements and doubts.
 * Invariant: thermal binding and pressure locking are findings, never factors; every finding says what to do.
 * Not here: equipment rules (lib/rules).
 * Read next: assess-duty.ts.
 */

import { HIGHEST_DESIGN_PULL, rimForce } from '#lib/engineering/hand-force.ts';
import type { Finding, Severity } from '#lib/kernel/finding.ts';
import { inUsUnits } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { figure } from '#lib/units/say-figure.ts';
import type { Direction, DirectionDuty, DutyThread } from './duty.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine, ValveType } from './schedule-line.ts';
import { note, type Sheet } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';

export interface FindingGiven {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly sheet: Sheet;
  readonly opening: DirectionDuty;
  readonly closing: DirectionDuty;
  readonly thread: DutyThread | null;
  readonly wheel: Known<'m'> | null;
}

const COMMON = 'common practice, no source';

export function noteFindings(given: FindingGiven): void {
  stateFindings(given);
  trapFindings(given);
  methodFindings(given);
  stemFindings(given);
  doubtFindings(given);
  windowFindings(given);
}

function say(
  sheet: Sheet,
  id: string,
  finding: {
    readonly severity: Severity;
    readonly about: readonly string[];
    readonly sentence: string;
    readonly source?: string;
  },
): void {
  const { severity, about, sentence, source = COMMON } = finding;
  const whole: Finding = { id, severity, about, sentence, source };
  note(sheet, whole);
}

function stateFindings({ line, character, sheet }: FindingGiven): void {
  if (line.state.condition?.value === 'seized') {
    say(sheet, 'valve-seized', {
      severity: 'refusal',
      about: ['condition'],
      sentence:
        'The valve is said to be seized: it goes to the Desk, who agree with the owner what may be risked; it is not planned as a valve that turns.',
      source: 'house rule',
    });
  }
  if (line.torque.closes === undefined) {
    say(sheet, 'closing-direction-unknown', {
      severity: 'warning',
      about: ['closes'],
      sentence:
        'Which way the valve closes is not given and is never taken as clockwise: try gently by hand first and write down what the wheel or nut does.',
      source: 'house rule',
    });
  }
  const age = character.age;
  if (age !== null && age >= HOUSE_CONSTANTS.yearsUntilOld.nominal) {
    say(sheet, 'old-weaker-than-table', {
      severity: 'warning',
      about: ['age'],
      sentence: `The valve is ${age} years old: old and corroded parts are weaker than any table, so the bounds are lowered to ${HOUSE_CONSTANTS.oldStrength.low * 100} to 100 %. A stated highest torque may no longer hold either.`,
    });
  } else if (line.state.condition?.value === 'stiff') {
    say(sheet, 'stiff-weaker-than-table', {
      severity: 'note',
      about: ['condition'],
      sentence:
        'The valve is stiff: corrosion that makes it stiff also makes it weaker than any table. Start low, work to and fro, raise in steps.',
    });
  }
  if (line.valveType === undefined || line.valveType.value === 'unknown') {
    say(sheet, 'valve-type-assumed', {
      severity: 'warning',
      about: ['valve_type'],
      sentence: `The kind of valve is not given and is taken as a gate valve in ${character.setting === 'plant' ? 'a plant' : 'waterworks'}: a quarter-turn valve would need quite another drive. Ask.`,
    });
  }
  if (line.size === undefined)
    say(sheet, 'size-unknown', {
      severity: 'warning',
      about: ['size'],
      sentence:
        'The size is not given: the ranges cover the usual sizes and are too wide to rely on. Ask for the nominal size first.',
    });
  if (line.interface.drivenBy === undefined)
    say(sheet, 'drive-assumed', { severity: 'note', about: ['driven_by'], sentence: character.drivenBy.source });
}

function trapFindings({ line, character, sheet }: FindingGiven): void {
  const { type } = character;
  const hot = (line.process.temperature?.high ?? 0) >= 90 || /steam|condensate/i.test(line.process.medium?.value ?? '');
  const wedge =
    type === 'wedge gate' || type === 'flexible wedge gate' || (type === 'gate' && character.setting === 'plant');
  if (hot && wedge) {
    say(sheet, 'thermal-binding', {
      severity: 'warning',
      about: ['valve_type', 'temperature'],
      sentence:
        'A wedge that was closed hot can be clamped by its cooling body. Warm it, do not force it: no torque in these figures allows for it.',
      source: 'US NRC Generic Letter 95-07 (pressure locking and thermal binding), from memory.',
    });
  }
  if (type === 'flexible wedge gate' || type === 'double disc gate' || (type === 'parallel slide gate' && hot)) {
    say(sheet, 'pressure-locking', {
      severity: 'warning',
      about: ['valve_type'],
      sentence:
        'Pressure shut in between the discs or in the bonnet can lock this kind of valve. Vent or equalise it, do not force it: no torque in these figures allows for it.',
      source: 'US NRC Generic Letter 95-07 (pressure locking and thermal binding), from memory.',
    });
  }
}

/** Kinds that shut by position; their turns are counted. */
export const SEATED_BY_POSITION: ReadonlySet<ValveType> = new Set(['parallel slide gate', 'knife gate', 'penstock']);

function methodFindings({ line, character, sheet }: FindingGiven): void {
  const { type } = character;
  if (SEATED_BY_POSITION.has(type)) {
    say(sheet, 'position-seated', {
      severity: 'note',
      about: ['valve_type'],
      sentence: 'This kind of valve shuts by position: stop by count, never by torque.',
    });
  }
  if (type === 'double disc gate') {
    say(sheet, 'discs-spread-at-the-end', {
      severity: 'note',
      about: ['valve_type'],
      sentence:
        'Wedges between the two discs spread them in the last part of the closing stroke: the torque rises there. Stop short by count and bring the last turns home by hand; pull them loose by hand before opening under power.',
      source: 'US NRC Motor-Operated Valves Course Manual, double-disc gate valves, from memory.',
    });
  }
  if (character.geared) {
    say(sheet, 'end-stops-not-under-power', {
      severity: 'note',
      about: ['gearbox'],
      sentence: 'The end stops of the gearbox are not to be met under power: stop short by count and finish by hand.',
    });
    if (line.torque.gearbox?.value === 'travelling nut')
      say(sheet, 'ratio-not-constant', {
        severity: 'note',
        about: ['gearbox'],
        sentence:
          'A travelling-nut gearbox has no constant ratio: turns are a wide range unless they are stated, and the torque changes along the stroke.',
      });
    if (line.torque.gearbox === undefined)
      say(sheet, 'gearbox-assumed', {
        severity: 'warning',
        about: ['gearbox', 'gear_ratio'],
        sentence:
          'A gearbox is taken to be there, but neither its kind nor its ratio is given for certain: read its nameplate.',
      });
    if (line.torque.flange !== undefined)
      say(sheet, 'flange-is-a-bound-only', {
        severity: 'note',
        about: ['flange'],
        sentence: 'The flange bounds what may pass; it says nothing of what the valve needs, nor of its end stops.',
        source: 'ISO 5210 and ISO 5211.',
      });
  } else if (character.family === 'quarter turn') {
    say(sheet, 'quarter-turn-without-gearbox', {
      severity: 'warning',
      about: ['valve_type', 'gearbox'],
      sentence:
        'A quarter-turn valve without a gearbox shuts in a quarter of a turn: a powered drive is far too fast for it. Turn it by hand or fit a gearbox.',
    });
  }
  const dp = line.process.differentialPressure;
  const pressure = line.process.linePressure;
  if (dp !== undefined && pressure !== undefined && dp.nominal > pressure.nominal * 1.001) {
    say(sheet, 'differential-above-line-pressure', {
      severity: 'note',
      about: ['differential_pressure', 'line_pressure'],
      sentence: `The differential pressure given (${bars(dp)}) is above the line pressure given (${bars(pressure)}); both are used as they stand. Check them.`,
    });
  }
}

function stemFindings({ line, thread, sheet, closing, opening }: FindingGiven): void {
  if (thread === null) return;
  const guessed = thread.lead.basis === 'rule of thumb' || thread.lead.basis === 'assumed';
  const mayDrop = (closing.thrust?.low ?? 0) < 0 || (opening.thrust?.low ?? 0) < 0;
  if (thread.selfLocking === 'no') {
    say(sheet, 'stem-overhauls', {
      severity: 'warning',
      about: ['stem_thread', 'thread_friction'],
      sentence: 'The thread is not self-locking: the load can turn the stem back. Never take the drive off under load.',
      source: 'Shigley’s Mechanical Engineering Design, eq. 8-3.',
    });
  } else if (thread.selfLocking === 'depends' && (mayDrop || !guessed)) {
    say(sheet, 'self-locking-depends', {
      severity: mayDrop ? 'warning' : 'note',
      about: ['stem_thread', 'thread_friction'],
      sentence:
        'Whether the thread holds itself depends on its friction: treat it as one that can turn back, and do not take the drive off under load.',
      source: 'Shigley’s Mechanical Engineering Design, eq. 8-3.',
    });
  }
  if (closing.thrust !== null && closing.thrust.low < 0 && line.valveType?.value === 'penstock') {
    say(sheet, 'closing-may-overhaul', {
      severity: thread.selfLocking === 'yes' ? 'note' : 'warning',
      about: ['valve_type'],
      sentence: `When closing, the weight of the door may pull the stem (thrust down to ${figure({ si: `${(closing.thrust.low / 1000).toFixed(1)} kN`, us: inUsUnits('N', closing.thrust.low) })}): lower it under control.`,
      source: 'Statics of a sliding door.',
    });
  }
}

/** A hand-operated valve that seems to need several times a person's force gets a question. */
function doubtFindings({ opening, closing, wheel, sheet, line }: FindingGiven): void {
  if (wheel === null || line.interface.drivenBy?.value === 'actuator hand drive') return;
  const worst = opening.starting.nominal >= closing.starting.nominal ? opening : closing;
  const pull = rimForce({ torque: worst.starting.nominal, wheelDiameter: wheel.nominal });
  const times = pull / HIGHEST_DESIGN_PULL;
  if (times < HOUSE_CONSTANTS.handForceQuestion.nominal) return;
  say(sheet, 'hand-force-question', {
    severity: 'warning',
    about: ['wheel_diameter', 'starting_torque'],
    sentence: `Is this valve really turned by hand? At its wheel of about ${figure({ si: `${Math.round(wheel.nominal * 1000)} mm`, us: inUsUnits('m', wheel.nominal) })} it would take ${figure({ si: `${Math.round(pull / 10) * 10} N`, us: inUsUnits('N', pull) })}, ${times.toFixed(1)} times what a wheel should ask of a person (${figure({ si: '360 N', us: inUsUnits('N', HIGHEST_DESIGN_PULL) })}). Check size, pressure and gearbox.`,
    source: 'API Spec 6D, section 4.12 (360 N).',
  });
}

function windowFindings({ opening, closing, sheet }: FindingGiven): void {
  const empty: readonly (readonly [Direction, DirectionDuty])[] = [
    ['opening', opening],
    ['closing', closing],
  ];
  for (const [direction, duty] of empty) {
    if (duty.limiter !== null) continue;
    const impossible = duty.starting.low > duty.neverExceed.torque.high;
    const numbers = `starting takes ${torque(duty.starting)}, the valve must never see more than ${torque(duty.neverExceed.torque)} (${duty.neverExceed.kind})`;
    say(sheet, `limiter-window-empty-${direction}`, {
      severity: impossible ? 'refusal' : 'warning',
      about: ['starting_torque', 'max_torque'],
      sentence: impossible
        ? `It cannot be moved safely when ${direction}: ${numbers}.`
        : `It may not move at the torque allowed when ${direction}: ${numbers}; to be agreed before hire.`,
      source: 'house rule: limiter window',
    });
  }
}

/** Two values for one thing, both kept; the better basis is used. */
export function noteDisagreement<U extends Unit>(
  sheet: Sheet,
  given: {
    readonly id: string;
    readonly about: readonly string[];
    readonly what: string;
    readonly stated: Known<U>;
    readonly computed: Known<U>;
    readonly unit: string;
  },
): void {
  const { id, about, what, stated, computed, unit } = given;
  const slack = HOUSE_CONSTANTS.disagreement.nominal;
  const apart = stated.low > computed.high * slack || stated.high < computed.low / slack;
  if (!apart) return;
  const text = (value: Known<U>): string => {
    const ends = value.low === value.high ? [value.nominal] : [value.low, value.high];
    return figure({ si: `${ends.map(short).join(' to ')} ${unit}`, us: inUsUnits(value.unit, ...ends) });
  };
  say(sheet, id, {
    severity: 'warning',
    about,
    sentence: `The ${what} given is ${text(stated)}, the calculation gives ${text(computed)}; the one given is used. Check which is right.`,
    source: computed.source,
  });
}

/** Turns by thread and rule that differ by more than this point to starts or travel that are not as given; practice alone differs by less. */
const RULE_SLACK = 1.75;

/** The turns of a waterworks gate by its thread, held against the trade's rule; the thread is taken. */
export function noteTurnsRule(
  sheet: Sheet,
  { byThread, byRule }: { readonly byThread: Known<'turn'>; readonly byRule: Known<'turn'> },
): void {
  if (byThread.low <= byRule.high * RULE_SLACK && byThread.high >= byRule.low / RULE_SLACK) return;
  const text = ({ low, high }: Known<'turn'>): string => `${short(low)} to ${short(high)}`;
  say(sheet, 'turns-by-thread-against-rule', {
    severity: 'note',
    about: ['stem_thread', 'thread_starts', 'travel'],
    sentence: `By travel and thread a stroke takes ${text(byThread)} turns, by the waterworks rule of three to the inch ${text(byRule)}: the thread is taken. Check the number of starts and the travel, and count the turns from the closed end.`,
    source: byRule.source,
  });
}

function short(value: number): string {
  return Math.abs(value) >= 100 ? String(Math.round(value)) : value.toPrecision(3).replace(/\.?0+$/, '');
}

function torque(value: Known<'N·m'>): string {
  const ends = value.low === value.high ? [value.low] : [value.low, value.high];
  return figure({ si: `${ends.map(short).join(' to ')} N·m`, us: inUsUnits('N·m', ...ends) });
}

function bars(value: Known<'Pa'>): string {
  return figure({ si: `${short(value.nominal / 1e5)} bar`, us: inUsUnits('Pa', value.nominal) });
}

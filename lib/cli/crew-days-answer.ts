/*
 * The crews' planned days in the JSON answer, and their lines on the terminal.
 * Invariant: quantities carry their unit in the key; crews are counted from 1.
 * Not here: planning the days (../planning/crew-days.ts).
 * Read next: answer.ts, plan-summary.ts.
 */

import type { CrewDaysInput } from '#lib/documents/papers/paper-inputs.ts';
import { crewDayFindings, crewDayRow } from '#lib/documents/words/crew-day-words.ts';
import type { CrewDay, DayVibration } from '#lib/equipment/crew-day.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { sentenceIn } from '#lib/units/say-figure.ts';

export function crewDaysAnswer(crews: readonly CrewDaysInput[]) {
  return crews.flatMap(({ crew, days, heaviestCase }) =>
    days.map((day) => ({ ...dayAnswer(day), crew, heaviest_case_kg: heaviestCase?.mass_kg ?? null })),
  );
}

function dayAnswer(day: CrewDay) {
  const { lifts, turns, alone } = day;
  return {
    crew: day.crew,
    day: day.day,
    work: day.work.map(({ tag, qty }) => ({ tag, qty })),
    valves: day.valves,
    hours: day.time / 3600,
    trigger_s: range(day.trigger),
    one_person: vibration(alone),
    in_turns: turns === null ? null : { persons: turns.persons, ...vibration(turns) },
    l_ex_8h_db: range(day.noise),
    lifts: {
      count: lifts.count,
      heaviest_kg: lifts.heaviest,
      heaviest_part: lifts.number,
      filter_from_ground_kg: lifts.filter.fromGround,
      filter_at_waist_kg: lifts.filter.atWaist,
      equation: {
        valves: lifts.equation.valves,
        weight_limit_kg: lifts.equation.worst?.limit ?? null,
        lifting_index: lifts.equation.worst?.index ?? null,
        refused: lifts.equation.refused,
      },
    },
    findings: day.findings,
    steps: day.steps,
  };
}

function vibration({ exposure, points }: DayVibration) {
  return { a8_m_s2: range(exposure), points };
}

function range({ low, nominal, high, basis, source }: Known<Unit>) {
  return { low, nominal, high, basis, source };
}

export function tellCrewDays(crews: readonly CrewDaysInput[], system: UnitSystem): readonly string[] {
  return crews.flatMap(({ crew, days }) => [
    ...days.map((day) => {
      const row = crewDayRow(day, system);
      const marks = row.marks.length === 0 ? '' : `; passes: ${row.marks.join(', ')}`;
      return `  Crew ${crew}, day ${row.day}: ${row.valves} valves, ${row.hours}, ${row.trigger} at the drive, A(8) ${row.vibration} m/s² (${row.points} points, in turns ${row.turns}), L_EX,8h ${row.noise} dB(A), heaviest ${row.lift}${marks}`;
    }),
    ...crewDayFindings(days)
      .filter(({ severity }) => severity !== 'note')
      .map((finding) => `    ${sentenceIn(finding, system)}`),
  ]);
}

/*
 * Questions about a thread whose pitch or lead does not suit its diameter, and about years that contradict each other.
 * Invariant: nothing is set aside here; what is asked names its columns, its value and what is usual.
 * Not here: threads that cannot be (sound-line.ts).
 * Read next: unlikely-values.ts.
 */
import type { Finding } from '#lib/kernel/finding.ts';
import type { ScheduleLine } from './schedule-line.ts';

/** ISO 2904 spans pitches from 0.04 (Tr300x12) to 0.36 (Tr22x8) of the diameter; a stem of four starts leads 0.8 of it. */
const PITCH_SHARE = [0.03, 0.4] as const;
const LEAD_SHARE = 0.8;

export function threadQuestions({ stem }: ScheduleLine): readonly Finding[] {
  const thread = stem.thread?.value;
  if (thread === undefined) return [];
  const { majorDiameter_m: major, pitch_m: pitch, designation } = thread;
  const starts = stem.threadStarts?.value ?? thread.starts ?? 1;
  const ask = (about: readonly string[], sentence: string): Finding => ({
    id: 'value-unlikely',
    severity: 'warning',
    about,
    sentence,
    source: 'ISO 2904, pitches of trapezoidal threads by diameter (from memory), with a margin.',
  });
  const odd = pitch < PITCH_SHARE[0] * major || pitch > PITCH_SHARE[1] * major;
  const lead = pitch * starts;
  return [
    ...(odd
      ? [
          ask(
            ['stem_thread'],
            `Stem thread ${designation}: a pitch of ${mm(pitch)} mm is unlikely on ${mm(major)} mm; usual is ${mm(PITCH_SHARE[0] * major)} to ${mm(PITCH_SHARE[1] * major)} mm. Is it meant so? It is kept as it stands; measure ten threads.`,
          ),
        ]
      : []),
    ...(lead > LEAD_SHARE * major
      ? [
          ask(
            ['stem_thread', 'thread_starts'],
            `Stem thread ${designation} with ${starts} starts leads ${mm(lead)} mm a turn, which is unlikely on ${mm(major)} mm; usual is up to ${mm(LEAD_SHARE * major)} mm. Is it meant so? It is kept as it stands; count the starts.`,
          ),
        ]
      : []),
  ];
}

/** Numbers from here on are calendar years. */
const FIRST_CALENDAR_YEAR = 1800;

export function yearQuestions({ state }: ScheduleLine): readonly Finding[] {
  const age = state.age?.value;
  const moved = state.lastOperated?.value;
  if (age === undefined || moved === undefined) return [];
  const calendar = age >= FIRST_CALENDAR_YEAR && moved >= FIRST_CALENDAR_YEAR;
  const years = age < FIRST_CALENDAR_YEAR && moved < FIRST_CALENDAR_YEAR;
  /** “Never” is read as a hundred years, which is no contradiction. */
  const never = moved === 100;
  const before = (calendar && moved < age) || (years && moved > age && !never);
  if (!before) return [];
  return [
    {
      id: 'value-unlikely',
      severity: 'warning',
      about: ['last_operated', 'age'],
      sentence: `Last operated ${moved} and age ${age} contradict each other: a valve was last moved after it was put in, so plausible is ${calendar ? `${age} or later` : `0 to ${age} years`}. Both are kept as they stand; ask which is right.`,
      source: 'common practice, no source',
    },
  ];
}

function mm(metre: number): string {
  return String(Number((metre * 1000).toPrecision(3)));
}

/*
 * The lead of a stem's thread: from its designation and starts, from stated turns, else as usual for its size.
 * Invariant: lead = pitch × starts; two sources of starts that differ stay visible as a finding.
 * Not here: diameters and collar (valve-stem.ts).
 * Read next: valve-stem.ts.
 */
import { mediumPitch } from '#lib/engineering/thread-geometry.ts';
import { basisRank, exactly, type Known, worstBasis } from '#lib/units/known-value.ts';
import { metres } from '#lib/units/quantity.ts';
import type { ScheduleLine } from './schedule-line.ts';
import { calculate, combine, lookUp, note, type Sheet, term, withEffect } from './sheet.ts';
import type { ValveCharacter } from './valve-character.ts';
import { shareOf, type ValveLoads } from './valve-loads.ts';

interface Given {
  readonly line: ScheduleLine;
  readonly character: ValveCharacter;
  readonly loads: ValveLoads;
  readonly sheet: Sheet;
}

/** The coarsest lead behind the waterworks rule of three turns to the inch. */
const THREE_TURNS_AN_INCH = 0.0254 / 3;

/** Medium pitch as usual; coarser down to three turns an inch where practice differs. */
export function usualPitch(sheet: Sheet, majorDiameter: Known<'m'>): Known<'m'> {
  return combine(sheet, {
    unit: 'm',
    origin: {
      basis: worstBasis([majorDiameter.basis, 'rule of thumb']),
      source: 'Medium pitch of a trapezoidal thread of this size (ISO 2902).',
    },
    terms: { diameter: term('d', 'outside of the thread', majorDiameter) },
    evaluate: (at) => mediumPitch(metres(at('diameter'))),
  });
}

export function leadOf({
  line,
  character,
  loads,
  sheet,
  travel,
  majorDiameter,
  pitch,
}: Given & {
  readonly travel: Known<'m'>;
  readonly majorDiameter: Known<'m'>;
  readonly pitch: Known<'m'>;
}): Known<'m'> {
  const thread = line.stem.thread;
  if (thread !== undefined) {
    const starts = startsOf(line, sheet);
    return calculate(sheet, {
      id: 'lead',
      name: 'Lead',
      formula: 'l = P·n',
      unit: 'm',
      source: 'Shigley’s Mechanical Engineering Design, section 8-1; ISO 2901.',
      terms: { pitch: term('P', 'pitch', pitch), starts: term('n', 'starts', starts) },
      evaluate: (at) => at('pitch') * at('starts'),
    });
  }
  const turns = line.torque.turns;
  if (turns !== undefined && !character.geared) {
    return calculate(sheet, {
      id: 'lead',
      name: 'Lead',
      formula: 'l = s/N, at most 0.9·d',
      unit: 'm',
      source: 'Geometry; a lead near the diameter of the stem is not met on valves.',
      terms: {
        travel: term('s', 'travel', travel),
        turns: withEffect('lowers', term('N', 'stated turns', turns)),
        diameter: term('d', 'outside of the thread', majorDiameter),
      },
      evaluate: (at) => Math.min(at('travel') / at('turns'), at('diameter') * 0.9),
    });
  }
  const starts = line.stem.threadStarts;
  if (starts !== undefined)
    return combine(sheet, {
      unit: 'm',
      origin: { basis: 'rule of thumb', source: 'Usual pitch of this stem times the starts given.' },
      terms: { pitch: term('P', 'pitch', pitch) },
      evaluate: (at) => at('pitch') * starts.value,
    });
  return lookUp(sheet, { id: 'lead', name: 'Lead', value: usualLead({ character, loads, sheet, pitch }) });
}

function usualLead({
  character,
  loads,
  sheet,
  pitch,
}: Omit<Given, 'line'> & { readonly pitch: Known<'m'> }): Known<'m'> {
  const usual = { name: 'lead against the usual pitch', of: 'usual pitch', base: pitch };
  if (character.setting === 'waterworks' && character.family === 'gate') {
    const free = shareOf(sheet, {
      ...usual,
      share: [0.95, 1.2, 1.6],
      source:
        'Usual pitch of this stem up to three turns an inch, as practice differs between countries; common practice, no source.',
    });
    const cap = loads.size.high <= 0.32 ? THREE_TURNS_AN_INCH : Number.POSITIVE_INFINITY;
    return combine(sheet, {
      unit: 'm',
      origin: free,
      terms: { lead: term('l', 'lead', free) },
      evaluate: (at) => Math.min(at('lead'), cap),
    });
  }
  const risesLarge =
    character.stemKind.value === 'rising through the wheel' &&
    loads.size.high > 0.19 &&
    character.family !== 'penstock';
  return risesLarge
    ? shareOf(sheet, {
        ...usual,
        share: [0.85, 1.05, 2],
        source: 'Usual pitch of this stem; large rising stems may have two starts; common practice, no source.',
      })
    : shareOf(sheet, {
        ...usual,
        share: [0.85, 1, 1.25],
        source: 'Usual pitch of this stem with one start; common practice, no source.',
      });
}

function startsOf(line: ScheduleLine, sheet: Sheet): Known<'1'> {
  const thread = line.stem.thread;
  const named = thread?.value.starts;
  const column = line.stem.threadStarts;
  if (thread !== undefined && named !== undefined && column !== undefined && named !== column.value) {
    const columnWins = basisRank(column.basis) < basisRank(thread.basis);
    note(sheet, {
      id: 'thread-starts-conflict',
      severity: 'warning',
      about: ['stem_thread', 'thread_starts'],
      sentence: `The thread ${thread.value.designation} has ${named} starts but the column says ${column.value}; ${columnWins ? 'the column' : 'the designation'} is used. Count the thread ends on the stem.`,
      source: 'ISO 2901: lead is pitch times starts.',
    });
    return columnWins ? exactly('1', column.value, column) : exactly('1', named, thread);
  }
  if (column !== undefined) return exactly('1', column.value, column);
  if (thread !== undefined && named !== undefined) return exactly('1', named, thread);
  return exactly('1', 1, { basis: 'assumed', source: 'One start taken: the designation names the pitch only.' });
}

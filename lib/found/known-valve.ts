/*
 * A line with what earlier visits to its valve found: turns, sizes, condition and direction in their fields, torques for the duty to age.
 * Invariant: a line without a record comes back as it was; a contradiction with the list is covered and told, never decided in silence.
 * Not here: which records are this valve's (valve-identity.ts) and what torques come to (duty/visit-torque.ts).
 * Read next: gather.ts, ../duty/visit-torque.ts.
 */
import type { ScheduleLine, VisitTorque } from '#lib/duty/schedule-line.ts';
import { chooseSource } from '#lib/duty/two-sources.ts';
import type { Column } from '#lib/intake/columns.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { formatRange } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Found, KnownFromVisits, Notes } from './found.ts';
import { gather } from './gather.ts';
import { stateFromVisits } from './state-from-visits.ts';

export interface KnownValve {
  readonly line: ScheduleLine;
  readonly known: readonly KnownFromVisits[];
}

/** Ratios from which two counts or two sizes of one valve contradict each other; common practice, no source. */
const TURNS_SLACK = 1.1;
const SIZE_SLACK = 1.05;

export function knowValve(asked: {
  readonly line: ScheduleLine;
  /** Records of this valve that may be used. */
  readonly records: readonly Found[];
  readonly startsOn: IsoDate;
}): KnownValve {
  const { line, startsOn } = asked;
  const records = asked.records.filter(({ on }) => on < startsOn).toSorted((a, b) => b.on.localeCompare(a.on));
  if (records.length === 0) return { line, known: [] };
  const notes: Notes = { known: [], findings: [] };
  const given = { qty: line.qty, records, notes };
  const { interface: grip, torque } = line;
  const turns = numberOf({
    ...given,
    column: 'turns',
    listed: torque.turns,
    pick: (found) => (found.fullStroke === 'yes' ? found.turns : undefined),
    slack: TURNS_SLACK,
  });
  const wheel = numberOf({
    ...given,
    column: 'wheel_diameter',
    listed: grip.wheelDiameter,
    pick: ({ wheelDiameter }) => wheelDiameter,
    slack: SIZE_SLACK,
  });
  const flats = numberOf({
    ...given,
    column: 'nut_size',
    listed: grip.nut?.acrossFlats,
    pick: ({ nutSize }) => nutSize,
    slack: SIZE_SLACK,
  });
  const seen = torqueOf(given);
  const withSizes: ScheduleLine = {
    ...line,
    torque: { ...torque, ...(turns && { turns }) },
    interface: {
      ...grip,
      ...(wheel && { wheelDiameter: wheel }),
      ...(flats && { nut: { ...grip.nut, acrossFlats: flats } }),
    },
  };
  const whole = stateFromVisits({ line: withSizes, records, startsOn, notes });
  return {
    line: { ...whole, visits: { ...(seen && { torque: seen }), findings: notes.findings } },
    known: notes.known,
  };
}

interface Given {
  readonly qty: number;
  readonly records: readonly Found[];
  readonly notes: Notes;
}

interface NumberGiven<U extends Unit> extends Given {
  readonly column: Column;
  readonly listed: Known<U> | undefined;
  readonly pick: (found: Found) => Known<U> | undefined;
  readonly slack: number;
}

/** A value that does not age; absent where the list's own stays. */
function numberOf<U extends Unit>(given: NumberGiven<U>): Known<U> | undefined {
  const { column, listed, notes, slack } = given;
  const gathered = gather(given);
  if (gathered === null) return undefined;
  if (gathered === 'of some valves') {
    notes.findings.push(ofSomeValves(column, given.qty));
    return undefined;
  }
  const { value: seen } = gathered;
  const { value, from } = chooseSource({ listed, seen, slack });
  const text = formatRange(seen, 'si');
  if (gathered.visits === 'disagree')
    notes.findings.push({
      id: `visits-disagree-${spoken(column)}`,
      severity: 'warning',
      about: [column],
      sentence: `Earlier visits read ${text} for ${named(column)}, which do not agree: all are covered. Look whether it is the same valve, and set the wrong record aside.`,
      source: seen.source,
    });
  if (from === 'both' && listed !== undefined)
    notes.findings.push({
      id: `visit-against-list-${spoken(column)}`,
      severity: 'warning',
      about: [column],
      sentence: `The list gives ${formatRange(listed, 'si')} for ${named(column)}, an earlier visit ${text}: both are covered. Find out which holds, then correct the list or set the visit's record aside.`,
      source: seen.source,
    });
  notes.known.push({ column, text, source: seen.source, use: USES[from] });
  return from === 'list' ? undefined : value;
}

const USES = { visit: 'used', both: 'covered beside the list', list: 'the list has it measured' } as const;

function ofSomeValves(column: Column, qty: number): Finding {
  return {
    id: 'visits-of-some-valves',
    severity: 'note',
    about: [column],
    sentence: `Of the ${qty} valves of this line earlier visits know ${named(column)} of some only, so it is not used: split the line, or record the others too.`,
    source: 'house rule',
  };
}

/** Torques as they were that day: the newest of each kind, with the oldest day among them. */
function torqueOf({ qty, records, notes }: Given): VisitTorque | undefined {
  const days: IsoDate[] = [];
  const one = (name: string, pick: (found: Found) => Known<'N·m'> | undefined): Known<'N·m'> | undefined => {
    const gathered = gather({ qty, records, pick, slack: null });
    if (gathered === 'of some valves') notes.findings.push(ofSomeValves('starting_torque', qty));
    if (gathered === null || gathered === 'of some valves') return undefined;
    const { value, on } = gathered;
    days.push(on);
    const text = formatRange(value, 'si');
    notes.known.push({ column: name, text, source: value.source, use: 'weighed in the calculation' });
    return value;
  };
  const starting = one('starting_torque', (found) => found.starting);
  const running = one('running_torque', (found) => found.running);
  const highest = one('highest_torque', (found) => found.highest);
  const [on] = days.sort();
  return on === undefined
    ? undefined
    : { on, ...(starting && { starting }), ...(running && { running }), ...(highest && { highest }) };
}

function named(column: Column): string {
  return `the ${spoken(column).replaceAll('-', ' ')}`;
}

function spoken(column: Column): string {
  return column.replaceAll('_', '-');
}

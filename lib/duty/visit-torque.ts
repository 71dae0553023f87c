/*
 * Torques that were read off this valve on an earlier visit, brought to the day of this hire.
 * Invariant: the highest torque seen bounds what starting took that day and never what the valve may see; a range only widens with years.
 * Not here: turns and sizes, which do not age (lib/found).
 * Read next: two-sources.ts, assess-duty.ts.
 */
import { daysBetween } from '#lib/kernel/date-range.ts';
import { formatRange } from '#lib/units/format-quantity.ts';
import { exactly, type Known } from '#lib/units/known-value.ts';
import { HOUSE_CONSTANTS } from './house-constants.ts';
import type { ScheduleLine, VisitTorque } from './schedule-line.ts';
import { calculate, lookUp, note, type Sheet, settle, term } from './sheet.ts';
import type { Site } from './site.ts';
import { chooseSource } from './two-sources.ts';

/** The line with what earlier visits say: their findings, and their torques where the list has none or contradicts them. */
export function withVisitTorque({
  line,
  site,
  sheet,
}: {
  readonly line: ScheduleLine;
  readonly site: Site;
  readonly sheet: Sheet;
}): ScheduleLine {
  const { visits } = line;
  if (visits === undefined) return line;
  for (const finding of visits.findings) note(sheet, finding);
  if (visits.torque === undefined) return line;
  const seen = agedTorque({ torque: visits.torque, site, sheet });
  const starting = settleTorque({ line, sheet, name: 'starting', seen: seen.starting });
  const running = settleTorque({ line, sheet, name: 'running', seen: seen.running });
  return {
    ...line,
    torque: {
      ...line.torque,
      ...(starting === undefined ? {} : { starting }),
      ...(running === undefined ? {} : { running }),
    },
  };
}

interface Aged {
  readonly starting: Known<'N·m'> | undefined;
  readonly running: Known<'N·m'> | undefined;
}

function agedTorque({
  torque,
  site,
  sheet,
}: {
  readonly torque: VisitTorque;
  readonly site: Site;
  readonly sheet: Sheet;
}): Aged {
  const years = yearsAfterTheFirst(torque.on, site);
  const age = (id: string, name: string, value: Known<'N·m'> | undefined) =>
    value === undefined ? undefined : aged({ id, name, value, years, sheet });
  const highest = age('visit-highest-torque', 'Highest torque of a stroke', torque.highest);
  const read = age('visit-starting-torque', 'Starting torque', torque.starting);
  return {
    starting: startingOf({ read, highest, sheet }),
    running: age('visit-running-torque', 'Running torque', torque.running),
  };
}

/** A year changes nothing; growth over more years than this is not told apart from a valve that nobody knows. */
const MOST_YEARS = 20;
const DAYS_A_YEAR = 365.25;

function yearsAfterTheFirst(on: string, site: Site): number {
  const years = daysBetween({ starts_on: on, ends_before: site.startsOn }) / DAYS_A_YEAR - 1;
  return Number.isFinite(years) ? Math.min(MOST_YEARS, Math.max(0, Math.round(years * 10) / 10)) : MOST_YEARS;
}

function aged({
  id,
  name,
  value,
  years,
  sheet,
}: {
  readonly id: string;
  readonly name: string;
  readonly value: Known<'N·m'>;
  readonly years: number;
  readonly sheet: Sheet;
}): Known<'N·m'> {
  const seen = `${name} read on an earlier visit`;
  if (years === 0) return lookUp(sheet, { id, name: seen, value });
  return calculate(sheet, {
    id,
    name: `${name} of an earlier visit, brought to this hire`,
    formula: 'T = Tm·(1 + a·n)',
    unit: 'N·m',
    source: `What is read once may grow with the years: ${years} after the first; common practice, no source.`,
    terms: {
      read: term('Tm', `${name.toLowerCase()} as read`, value),
      growth: term('a', 'growth a year', HOUSE_CONSTANTS.torqueGrowth),
      years: term('n', 'years after the first', exactly('1', years, { basis: 'computed', source: 'From the dates.' })),
    },
    evaluate: (at) => at('read') * (1 + at('growth') * at('years')),
  });
}

/** Starting took no more than the highest torque of its stroke; how much less is a rule of thumb unless it was read too. */
function startingOf({
  read,
  highest,
  sheet,
}: {
  readonly read: Known<'N·m'> | undefined;
  readonly highest: Known<'N·m'> | undefined;
  readonly sheet: Sheet;
}): Known<'N·m'> | undefined {
  if (highest === undefined) return read;
  if (read !== undefined)
    return calculate(sheet, {
      id: 'starting-up-to-highest',
      name: 'Starting torque up to the highest torque of its stroke',
      formula: 'T0 = Tr + s',
      unit: 'N·m',
      source: 'Starting is part of the stroke: the highest torque seen is the upper end of what it took.',
      terms: {
        read: term('Tr', 'starting torque as read', read),
        surplus: term('s', 'what the stroke took beyond', surplusOf(read, highest)),
      },
      evaluate: (at) => at('read') + at('surplus'),
    });
  return calculate(sheet, {
    id: 'starting-from-highest',
    name: 'Starting torque from the highest torque of a stroke',
    formula: 'T0 = Th·k',
    unit: 'N·m',
    source:
      'The highest torque of a stroke is met on starting or on seating, so that starting took no more; common practice, no source.',
    terms: {
      highest: term('Th', 'highest torque of a stroke', highest),
      share: term('k', 'starting against highest', HOUSE_CONSTANTS.startOfHighest),
    },
    evaluate: (at) => at('highest') * at('share'),
  });
}

function surplusOf(read: Known<'N·m'>, highest: Known<'N·m'>): Known<'N·m'> {
  const high = Math.max(0, highest.high - read.high);
  return settle('N·m', { low: 0, nominal: 0, high }, { basis: highest.basis, source: highest.source });
}

function settleTorque({
  line,
  sheet,
  name,
  seen,
}: {
  readonly line: ScheduleLine;
  readonly sheet: Sheet;
  readonly name: 'starting' | 'running';
  readonly seen: Known<'N·m'> | undefined;
}): Known<'N·m'> | undefined {
  const listed = line.torque[name];
  if (seen === undefined) return listed;
  const { value, from } = chooseSource({ listed, seen, slack: HOUSE_CONSTANTS.disagreement.nominal });
  if (from === 'both' && listed !== undefined)
    note(sheet, {
      id: `visit-against-list-${name}-torque`,
      severity: 'warning',
      about: [`${name}_torque`],
      sentence: `The list gives ${formatRange(listed, 'si')} to ${name === 'starting' ? 'start' : 'run'}, an earlier visit ${formatRange(seen, 'si')}: both are covered. Find out which holds, then correct the list or set the visit's record aside.`,
      source: seen.source,
    });
  return value;
}

/*
 * Condition, closing direction, when it was last moved and how it was left, from earlier visits.
 * Invariant: of two conditions the worse counts; of two closing directions none does, for unknown is never silently clockwise.
 * Not here: numbers (known-valve.ts).
 * Read next: known-valve.ts.
 */
import { CONDITIONS, type ScheduleLine } from '#lib/duty/schedule-line.ts';
import { yearsAgo } from '#lib/duty/years-idle.ts';
import type { Column } from '#lib/intake/columns.ts';
import { daysBetween, type IsoDate } from '#lib/kernel/date-range.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import { basisRank, type Fact, fact } from '#lib/units/known-value.ts';
import type { Found, KnownFromVisits, Notes } from './found.ts';
import { dayText } from './read-date.ts';

interface Given {
  readonly line: ScheduleLine;
  /** The newest first. */
  readonly records: readonly Found[];
  readonly startsOn: IsoDate;
  readonly notes: Notes;
}

/** “Free” holds so long; stiff and seized hold until somebody says otherwise. Common practice, no source. */
const FREE_FOR_YEARS = 2;
const DAYS_A_YEAR = 365.25;

export function stateFromVisits(given: Given): ScheduleLine {
  return withDirection(given, withCondition(given, withMovement(given, given.line)));
}

function withMovement({ records, startsOn }: Given, line: ScheduleLine): ScheduleLine {
  const [newest] = records;
  const moved = records.find((found) => found.turns ?? found.starting ?? found.running ?? found.highest);
  const { state } = line;
  const years = moved === undefined ? null : yearsBetween(moved.on, startsOn);
  const listed = state.lastOperated;
  const listedYears = yearsAgo(listed, { startsOn });
  const lastOperated =
    years === null || moved === undefined || (listedYears !== null && listedYears <= years)
      ? listed
      : fact(years, { basis: 'measured', source: `Moved on site on ${dayText(moved.on)} by ${moved.by}.` });
  const position = state.position ?? (line.qty === 1 ? newest?.positionLeft : undefined);
  return { ...line, state: { ...state, ...(lastOperated && { lastOperated }), ...(position && { position }) } };
}

function yearsBetween(on: IsoDate, startsOn: IsoDate): number {
  return Math.round((daysBetween({ starts_on: on, ends_before: startsOn }) / DAYS_A_YEAR) * 10) / 10;
}

function withCondition({ records, startsOn, notes }: Given, line: ScheduleLine): ScheduleLine {
  const seen = worstCondition(records, line.qty);
  if (seen === null) return line;
  const listed = line.state.condition;
  const { condition, on } = seen;
  const tell = (use: KnownFromVisits['use']) =>
    notes.known.push({ column: 'condition', text: condition.value, source: condition.source, use });
  if (condition.value === 'free' && yearsBetween(on, startsOn) > FREE_FOR_YEARS) {
    tell('kept, not used');
    return line;
  }
  if (listed !== undefined && listed.value !== condition.value) {
    notes.findings.push(contradiction('condition', listed, condition, 'the worse of the two counts'));
    tell('covered beside the list');
    return rank(condition.value) > rank(listed.value) ? { ...line, state: { ...line.state, condition } } : line;
  }
  tell(better(condition, listed) ? 'used' : 'the list has it measured');
  return better(condition, listed) ? { ...line, state: { ...line.state, condition } } : line;
}

/** Of several valves the worst; of one its newest. */
function worstCondition(records: readonly Found[], qty: number) {
  const newest = new Map<number, { readonly condition: NonNullable<Found['condition']>; readonly on: IsoDate }>();
  for (const { condition, number, on } of records)
    if (condition !== undefined && number <= qty && !newest.has(number)) newest.set(number, { condition, on });
  const found = [...newest.values()].sort((a, b) => rank(b.condition.value) - rank(a.condition.value))[0];
  const isSure = newest.size === qty || (found !== undefined && found.condition.value !== 'free');
  return found !== undefined && isSure ? found : null;
}

function rank(condition: (typeof CONDITIONS)[number]): number {
  return CONDITIONS.indexOf(condition);
}

function withDirection({ records, notes }: Given, line: ScheduleLine): ScheduleLine {
  const seen = records.flatMap(({ closes, number }) => (closes && number <= line.qty ? [closes] : []));
  const [newest] = seen;
  if (newest === undefined) return line;
  const listed = line.torque.closes;
  const told = { column: 'closes', text: newest.value, source: newest.source } as const;
  const against = [...(listed ? [listed] : []), ...seen].find(({ value }) => value !== newest.value);
  if (against !== undefined) {
    notes.findings.push(
      contradiction('closes', against, newest, 'the direction is taken as not known; try gently by hand first'),
    );
    notes.known.push({ ...told, use: 'covered beside the list' });
    const { closes: _dropped, ...torque } = line.torque;
    return { ...line, torque };
  }
  notes.known.push({ ...told, use: better(newest, listed) ? 'used' : 'the list has it measured' });
  return better(newest, listed) ? { ...line, torque: { ...line.torque, closes: newest } } : line;
}

function better(seen: Fact<unknown>, listed: Fact<unknown> | undefined): boolean {
  return listed === undefined || basisRank(seen.basis) < basisRank(listed.basis);
}

function contradiction(column: Column, one: Fact<string>, seen: Fact<string>, what: string): Finding {
  return {
    id: `visit-against-list-${column}`,
    severity: 'warning',
    about: [column],
    sentence: `For ${column === 'closes' ? 'the closing direction' : 'the condition'} one source says ${one.value}, a visit ${seen.value}: ${what}. Find out which holds, then correct the list or set the visit's record aside.`,
    source: `${one.source} ${seen.source}`,
  };
}

/*
 * Years since something was done, told from a number of years or from a calendar year.
 * Invariant: a number from 1800 on is a year and is counted back from the hire's first day; a smaller one is years already.
 * Not here: reading the cell (intake/read-cell.ts).
 * Read next: valve-character.ts.
 */
import type { Fact } from '#lib/units/known-value.ts';
import type { ScheduleLine } from './schedule-line.ts';
import type { Site } from './site.ts';

/** Numbers from here on are calendar years; no valve that is still in use was made before. */
const FIRST_CALENDAR_YEAR = 1800;
/** More years than this are taken for a slip of the pen. */
const MOST_YEARS = 300;

/** Years since the valve was last moved; null where the line does not say, or says what cannot be. */
export function yearsIdle({ line, site }: { readonly line: ScheduleLine; readonly site: Site }): number | null {
  return yearsAgo(line.state.lastOperated, site);
}

export function yearsAgo(given: Fact<number> | undefined, site: Pick<Site, 'startsOn'>): number | null {
  if (given === undefined || !Number.isFinite(given.value) || given.value < 0) return null;
  if (given.value < FIRST_CALENDAR_YEAR) return given.value <= MOST_YEARS ? given.value : null;
  const thisYear = Number(site.startsOn.slice(0, 4));
  return Number.isFinite(thisYear) ? Math.max(0, thisYear - given.value) : null;
}

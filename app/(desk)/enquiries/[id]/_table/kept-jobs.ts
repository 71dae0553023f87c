import type { Job } from './schedule-jobs.ts';

export interface Kept {
  readonly jobs: readonly Job[];
  readonly past: readonly (readonly number[])[];
  readonly future: readonly (readonly number[])[];
}

const NONE: Kept = { jobs: [], past: [], future: [] };

/** Steps back that are kept; older ones stay in the list of changes. */
const STEPS_KEPT = 200;

/** What this window has yet to save and can take back, kept while it visits other screens or is loaded again. */
export function readKept(enquiryId: number): Kept {
  try {
    const text = window.sessionStorage.getItem(keyOf(enquiryId));
    return text === null ? NONE : { ...NONE, ...(JSON.parse(text) as Partial<Kept>) };
  } catch {
    return NONE;
  }
}

export function writeKept(enquiryId: number, kept: Kept): void {
  try {
    const past = kept.past.slice(-STEPS_KEPT);
    window.sessionStorage.setItem(keyOf(enquiryId), JSON.stringify({ ...kept, past }));
  } catch {
    // A browser that keeps nothing still saves; only the way over other screens is lost.
  }
}

function keyOf(enquiryId: number): string {
  return `kitwright-schedule-${enquiryId}`;
}

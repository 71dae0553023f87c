/*
 * Shares jobs out over crews whose kits are given: cheapest crew first, as long as its hours last, in one of two orders.
 * Invariant: no crew gets more work than its hours; what does not fit is counted as unserved.
 * Not here: which kits to try (search-plan.ts).
 * Read next: search-plan.ts.
 */
import { type Program, pick, type Use } from './program.ts';
import type { Service } from './services.ts';

export interface Shared {
  readonly unserved: number;
  readonly weight: number;
}

export type ServicesByCrew = readonly (readonly (Service | undefined)[])[];

/** Where only one crew can do a job, placing it first keeps that crew's hours for it; neither order is always the better one. */
export type Sharing = 'longest first' | 'jobs of one crew first';

/** Adds up what sharing out would give; `record` is told every use. */
export function shareOut(request: {
  readonly program: Program;
  readonly services: ServicesByCrew;
  /** Jobs in the order in which they are placed: longest first. */
  readonly order: readonly number[];
  readonly sharing: Sharing;
  readonly record?: (use: Use) => void;
}): Shared {
  const { services, order, sharing } = request;
  const draft = { ...request, left: services.map(() => request.program.secondsPerCrew + 1e-9), unserved: 0, weight: 0 };
  if (sharing === 'longest first') {
    for (const job of order) place(draft, job);
  } else {
    for (const job of order) if (!hasChoice(services, job)) place(draft, job);
    for (const job of order) if (hasChoice(services, job)) place(draft, job);
  }
  return { unserved: draft.unserved, weight: draft.weight };
}

interface Draft {
  readonly program: Program;
  readonly services: ServicesByCrew;
  readonly record?: (use: Use) => void;
  /** Hours left, by crew. */
  readonly left: number[];
  unserved: number;
  weight: number;
}

function hasChoice(services: ServicesByCrew, job: number): boolean {
  let crews = 0;
  for (let crew = 0; crew < services.length; crew += 1) if (services[crew]?.[job] !== undefined) crews += 1;
  return crews > 1;
}

function place(draft: Draft, job: number): void {
  const { services, left, record } = draft;
  let open = pick(draft.program.jobs, job).qty;
  let used = 0;
  while (open > 0) {
    const crew = cheapestCrew(draft, job, used);
    const service = services[crew]?.[job];
    if (service === undefined) break;
    used |= 1 << crew;
    const qty = service.time > 0 ? Math.min(open, Math.floor(pick(left, crew) / service.time)) : open;
    if (qty <= 0) continue;
    open -= qty;
    left[crew] = pick(left, crew) - qty * service.time;
    draft.weight += qty * service.weight;
    record?.({ job, crew, branch: service.branch, options: service.options, qty });
  }
  draft.unserved += open;
}

/** The crew that does the job at the least weight, of equals the one with most hours left; crews whose bit is set in `used` are passed over. */
function cheapestCrew({ services, left }: Draft, job: number, used: number): number {
  let best = -1;
  let bestWeight = Number.POSITIVE_INFINITY;
  for (let crew = 0; crew < services.length; crew += 1) {
    const service = services[crew]?.[job];
    if (service === undefined || (used & (1 << crew)) !== 0) continue;
    const isBetter =
      service.weight < bestWeight || (service.weight === bestWeight && pick(left, crew) > pick(left, best));
    if (isBetter) {
      best = crew;
      bestWeight = service.weight;
    }
  }
  return best;
}

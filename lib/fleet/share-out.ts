/*
 * Shares jobs out over crews whose kits are given: cheapest crew first, as long as its hours last.
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

/** Adds up what sharing out would give; `record` is told every use. */
export function shareOut(request: {
  readonly program: Program;
  readonly services: ServicesByCrew;
  /** Jobs in the order in which they are placed: longest first. */
  readonly order: readonly number[];
  readonly record?: (use: Use) => void;
}): Shared {
  const { program, services, order, record } = request;
  const left = services.map(() => program.secondsPerCrew + 1e-9);
  let unserved = 0;
  let weight = 0;
  for (const job of order) {
    let open = pick(program.jobs, job).qty;
    const used: boolean[] = [];
    while (open > 0) {
      const crew = cheapestCrew({ services, job, left, used });
      if (crew < 0) break;
      used[crew] = true;
      const service = services[crew]?.[job];
      if (service === undefined) break;
      const qty = service.time > 0 ? Math.min(open, Math.floor(pick(left, crew) / service.time)) : open;
      if (qty <= 0) continue;
      open -= qty;
      left[crew] = pick(left, crew) - qty * service.time;
      weight += qty * service.weight;
      record?.({ job, crew, branch: service.branch, options: service.options, qty });
    }
    unserved += open;
  }
  return { unserved, weight };
}

/** The crew that does the job at the least weight; of equals the one with most hours left. */
function cheapestCrew(request: {
  readonly services: ServicesByCrew;
  readonly job: number;
  readonly left: readonly number[];
  readonly used: readonly boolean[];
}): number {
  const { services, job, left, used } = request;
  let best = -1;
  let bestWeight = Number.POSITIVE_INFINITY;
  for (let crew = 0; crew < services.length; crew += 1) {
    const service = services[crew]?.[job];
    if (service === undefined || used[crew] === true) continue;
    const isBetter =
      service.weight < bestWeight || (service.weight === bestWeight && pick(left, crew) > pick(left, best));
    if (isBetter) {
      best = crew;
      bestWeight = service.weight;
    }
  }
  return best;
}

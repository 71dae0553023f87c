/*
 * A work order on a unit: washing, cleaning, inspecting, repairing, calibrating; its steps and what its end means for the unit.
 * Invariant: a unit is ready again only when no work order on it is open; a contaminated unit is washed before any other work begins.
 * Not here: what makes an order necessary (check-in.ts), writing it down (lib/services/yard).
 * Read next: check-in.ts.
 */
import { failed, ok, type Result } from '#lib/kernel/result.ts';

/** In the order in which they are done on one unit. */
export const WORK_KINDS = ['wash', 'cleaning', 'inspection', 'repair', 'calibration'] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

export const WORK_STATES = ['open', 'doing', 'done', 'withdrawn'] as const;
export type WorkState = (typeof WORK_STATES)[number];

/** What came of it: fit for hire, in need of a repair, or the end of the unit. */
export const WORK_RESULTS = ['fit', 'repair', 'retired'] as const;
export type WorkResult = (typeof WORK_RESULTS)[number];

interface Order {
  readonly number: string;
  readonly kind: WorkKind;
  readonly state: WorkState;
}

export interface WorkStep {
  readonly order: Order;
  readonly to: 'doing' | 'done';
  /** Other orders on the same unit. */
  readonly others: readonly Order[];
}

export function decideWorkStep({ order, to, others }: WorkStep): Result<WorkState> {
  if (order.state === 'done' || order.state === 'withdrawn')
    return failed({
      code: 'work-ended',
      sentence: `${order.number} is ${order.state}; open another one if there is more to do.`,
    });
  const wash = others.find(({ kind, state }) => kind === 'wash' && (state === 'open' || state === 'doing'));
  if (order.kind !== 'wash' && wash !== undefined)
    return failed({
      code: 'work-wash-first',
      sentence: `Wash it first (${wash.number}): nobody works on a contaminated piece.`,
    });
  if (to === 'doing' && order.state === 'doing')
    return failed({ code: 'work-begun', sentence: `${order.number} was begun already.` });
  return ok(to);
}

/** What the unit becomes when an order ends. */
export function unitAfterWork({
  result,
  stillOpen,
}: {
  readonly result: WorkResult;
  readonly stillOpen: readonly WorkKind[];
}): 'ready' | 'back' | 'quarantine' | 'retired' {
  if (result === 'retired') return 'retired';
  if (result === 'repair' || stillOpen.some((kind) => kind !== 'cleaning')) return 'quarantine';
  return stillOpen.length > 0 ? 'back' : 'ready';
}

/** After these a new due date must be said: the certificate is what the order was for. */
export function asksDueDate(kind: WorkKind): 'inspection' | 'calibration' | null {
  return kind === 'inspection' || kind === 'calibration' ? kind : null;
}

import type { Unit } from '#lib/stock/unit.ts';

/** A unit of D-1 that may leave its bay, with nothing that falls due. */
export function readyUnit(serial: string, change: Partial<Unit> = {}): Unit {
  return {
    serial,
    model: 'D-1',
    depot: 'VEN',
    bay: 'A01',
    state: 'ready',
    inspectionDueOn: null,
    calibrationDueOn: null,
    ...change,
  };
}

/*
 * What becomes of a unit that comes back: from its condition, what was declared on it and what it saw, to its state and the work it needs.
 * Invariant: nothing that is damaged, incomplete, overloaded or contaminated is ready for hire; a contaminated piece is washed before any other work.
 * Not here: writing it down (lib/services/yard), charging it (pricing).
 * Read next: work-order.ts.
 */
import type { WorkKind } from './work-order.ts';

export const CONTAMINATIONS = ['none', 'water', 'sewage', 'product', 'unknown'] as const;
export type Contamination = (typeof CONTAMINATIONS)[number];

export const CONDITIONS = ['good', 'dirty', 'damaged', 'missing'] as const;
export type Condition = (typeof CONDITIONS)[number];

export interface SeenPiece {
  readonly condition: Condition;
  /** Declared for the whole return before anything was touched. */
  readonly contamination: Contamination;
  /** Parts that should be on it and are not; empty where it is whole. */
  readonly missingParts: string;
  /** What is broken or was noticed; empty where nothing was. */
  readonly note: string;
  /** A limiter that tripped or was passed by an overload. */
  readonly sawOverload: boolean;
}

export interface NeededWork {
  readonly kind: WorkKind;
  readonly reason: string;
}

export interface Consequence {
  readonly unitState: 'ready' | 'back' | 'quarantine' | 'lost';
  /** In the order in which it is done. */
  readonly work: readonly NeededWork[];
}

const DECLARED: Readonly<Record<Exclude<Contamination, 'none'>, string>> = {
  water: 'was in water or silt',
  sewage: 'was in sewage',
  product: 'was in a product',
  unknown: 'may be contaminated, nobody knows with what',
};

export function consequenceOf(seen: SeenPiece): Consequence {
  if (seen.condition === 'missing') return { unitState: 'lost', work: [] };
  const work = workFor(seen);
  const isHeldBack = work.some(({ kind }) => kind !== 'cleaning');
  return { unitState: isHeldBack ? 'quarantine' : work.length > 0 ? 'back' : 'ready', work };
}

/** Nobody knows what a piece went through before it was found: it is looked over before it is hired again. */
export function consequenceOfFound(seen: SeenPiece): Consequence {
  const inspection = { kind: 'inspection', reason: 'was charged as lost and has been found' } as const;
  return { unitState: 'quarantine', work: [...workFor(seen), inspection] };
}

function workFor({ condition, contamination, missingParts, note, sawOverload }: SeenPiece): readonly NeededWork[] {
  const broken = [
    ...(condition === 'damaged' ? [note === '' ? 'came back damaged' : note] : []),
    ...(missingParts === '' ? [] : [`missing from it: ${missingParts}`]),
  ];
  return [
    ...(contamination === 'none' ? [] : [{ kind: 'wash', reason: DECLARED[contamination] } as const]),
    ...(contamination === 'none' && condition === 'dirty'
      ? [{ kind: 'cleaning', reason: note === '' ? 'came back dirty' : note } as const]
      : []),
    ...(broken.length === 0 ? [] : [{ kind: 'repair', reason: broken.join('; ') } as const]),
    ...(sawOverload ? [{ kind: 'calibration', reason: 'the limiter saw an overload' } as const] : []),
  ];
}

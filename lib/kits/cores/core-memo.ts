/*
 * What the cores of one line share: what the line gives, drive with gear and head, and each limiter where it sits.
 * Invariant: kept for one line and one `limiterUpTo` only; whoever holds the same facts, the search or the why, holds the same memo.
 * Not here: how any of it is worked out (core-figures.ts, limiter-at.ts).
 * Read next: core-figures.ts.
 */
import type { Direction } from '#lib/duty/duty.ts';
import type { DriveModel, HeadModel, Model } from '#lib/equipment/model.ts';
import type { ChainLimiter, CoreDirection, CoreFigures, LineFacts } from '#lib/rules/facts.ts';
import type { Range } from '#lib/units/known-value.ts';
import type { NewtonMetres, RevolutionsPerMinute, Seconds } from '#lib/units/quantity.ts';
import type { SupplyShare } from '../chain/supply-share.ts';
import type { Frame } from './frames.ts';

export interface CoreInput {
  readonly facts: LineFacts;
  readonly frame: Frame;
  readonly gearIndex: number;
  /** `needed`: limiter no higher than the line asks; a number: up to what every part and the valve allow. */
  readonly limiterUpTo: 'needed' | NewtonMetres;
}

/** What many cores of one line share; for one line and one `limiterUpTo` only. */
export interface CoreMemo {
  /** For each head the first that has its ratio and efficiency: heads of one kind give the same figures. */
  readonly kinds: Map<HeadModel, HeadModel>;
  readonly kindsByFacts: Map<string, HeadModel>;
  /** By drive and kind of head, gear by gear. */
  readonly meshes: Map<DriveModel, Map<HeadModel, Mesh[]>>;
  /** By limiter, or drive where it is built in, and then by kind of head. */
  readonly limiters: Map<Model, Map<HeadModel | 'any head', LimiterAt>>;
  readonly supply: Map<DriveModel, SupplyShare>;
  visit: Visit | null;
}

/** What the line alone gives. */
export interface Visit {
  readonly energy: CoreFigures['energyPerVisit'];
  readonly neverExceed: NewtonMetres;
  readonly isNeverGuessed: boolean;
  readonly wanted: Readonly<Record<Direction, number>>;
  readonly toAndFro: number;
}

/** What drive, gear and head give, whatever limits them. */
export interface Mesh {
  /** Figures by what limits them. */
  readonly figures: Map<LimiterAt | null, CoreFigures>;
  readonly factor: Range<'1'>;
  readonly stallAtValve: NewtonMetres;
  readonly stallAtDrive: NewtonMetres;
  readonly sureAtValve: NewtonMetres;
  readonly limiterRequired: boolean;
  readonly inputSpeed: RevolutionsPerMinute;
  readonly supplyShare: number;
  readonly start: number;
  readonly opening: MeshWay;
  readonly closing: MeshWay;
  readonly runTime: Seconds;
}

export type MeshWay = Pick<CoreDirection, 'fastest' | 'speed' | 'strokeTime'>;

/** A limiter where it sits, and how far each direction lets it go. */
export interface LimiterAt {
  readonly limiter: ChainLimiter;
  readonly opening: LimiterReach;
  readonly closing: LimiterReach;
}

export interface LimiterReach {
  readonly ceiling: CoreDirection['ceiling'];
  /** What never-exceed alone would allow on the limiter's scale. */
  readonly allowed: () => number;
}

export const newCoreMemo = (): CoreMemo => ({
  kinds: new Map(),
  kindsByFacts: new Map(),
  meshes: new Map(),
  limiters: new Map(),
  supply: new Map(),
  visit: null,
});

const memos = new WeakMap<LineFacts, CoreMemo>();

/** The memo of a line for limiters no higher than it needs. */
export function memoOf(facts: LineFacts): CoreMemo {
  const known = memos.get(facts) ?? newCoreMemo();
  memos.set(facts, known);
  return known;
}

/** Heads of one kind have one ratio and efficiency. */
export function headKind({ facts: { ratio, efficiency } }: HeadModel): string {
  return `${ratio} ${efficiency.low} ${efficiency.high}`;
}

/** The first head of a head's kind that the memo saw. */
export function kindOf(head: HeadModel, memo: CoreMemo): HeadModel {
  const known = memo.kinds.get(head);
  if (known !== undefined) return known;
  const key = headKind(head);
  const kind = memo.kindsByFacts.get(key) ?? head;
  memo.kindsByFacts.set(key, kind);
  memo.kinds.set(head, kind);
  return kind;
}

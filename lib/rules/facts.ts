/*
 * What rules may look at: the line with its duty and place, one part, a pair of parts, and growing pieces of a chain.
 * Invariant: facts are plain data, worked out before a rule is asked; a rule never works out a torque itself.
 * Not here: how a chain's figures come about (kits) and the rules themselves.
 * Read next: rule.ts, place-facts.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Gear } from '#lib/equipment/drive.ts';
import type {
  AccessoryModel,
  AdapterModel,
  DriveModel,
  ExtensionModel,
  HeadModel,
  Model,
  OptionModel,
  RestraintModel,
} from '#lib/equipment/model.ts';
import type { Range } from '#lib/units/known-value.ts';
import type { Joules, NewtonMetres, Newtons, Ratio, RevolutionsPerMinute, Seconds } from '#lib/units/quantity.ts';
import type { Place } from './place-facts.ts';

export interface LineFacts {
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly site: Site;
  readonly place: Place;
}

/** One of the sizes that the wheel or nut may have: a range is judged case by case. */
export type GripCase =
  | { readonly kind: 'wheel'; readonly diameter_m: number; readonly spokes: number | null; readonly dish_deg: number }
  | {
      readonly kind: 'nut';
      readonly shape: string | null;
      readonly acrossFlats_m: number | null;
      readonly depth_m: number;
    };

/** A limiter as it sits in a chain, built in or not. */
export interface ChainLimiter {
  readonly lowest: NewtonMetres;
  readonly highest: NewtonMetres;
  readonly error: Ratio;
  readonly overshoot: NewtonMetres;
  readonly step: NewtonMetres;
  readonly bothDirections: boolean;
  /** Torque factor from the limiter to the valve. */
  readonly factor: Range<'1'>;
  readonly number: string;
}

export interface CoreDirection {
  /** Highest limiter setting that keeps the valve below never-exceed, on the limiter's scale; null without a limiter or where its scale starts above. */
  readonly ceiling: NewtonMetres | null;
  /** Highest torque that the chain can bring to the valve this way, limiter at its ceiling with its error. */
  readonly highest: NewtonMetres;
  /** Highest torque at which the limiter surely still turns the valve; equals the sure torque without one. */
  readonly sure: NewtonMetres;
  /** Torque that this line asks the chain to reach. */
  readonly needed: NewtonMetres;
  /** Speed at the lowest running torque, the fastest it can be. */
  readonly fastest: RevolutionsPerMinute;
  readonly speed: RevolutionsPerMinute;
  readonly strokeTime: Range<'s'>;
}

export interface CoreFigures {
  readonly totalRatio: number;
  readonly factor: Range<'1'>;
  /** Highest stall torque of any gear at the valve, nothing limiting. */
  readonly stallAtValve: NewtonMetres;
  /** Same at the drive's own output. */
  readonly stallAtDrive: NewtonMetres;
  readonly sureAtValve: NewtonMetres;
  readonly highestAtValve: NewtonMetres;
  /** Smallest never-exceed (low) of both directions. */
  readonly neverExceed: NewtonMetres;
  readonly limiterRequired: boolean;
  readonly limiter: ChainLimiter | null;
  readonly inputSpeed: RevolutionsPerMinute;
  readonly opening: CoreDirection;
  readonly closing: CoreDirection;
  readonly energyPerVisit: Joules;
  /** Powered time of one visit. */
  readonly runTime: Seconds;
  /** Gauge pressure that the tool gets, as a share of rated; 1 for other sources. */
  readonly supplyShare: number;
}

/** Power source to head output. */
export interface Core {
  readonly drive: DriveModel;
  readonly gear: Gear;
  readonly gearIndex: number;
  readonly limiter: OptionModel | null;
  readonly head: HeadModel;
  readonly counter: OptionModel | null;
  readonly figures: CoreFigures;
}

export interface ReactionFigures {
  readonly arm_m: number;
  readonly force: Newtons;
  readonly sideLoad: Newtons;
}

export interface PartFacts extends LineFacts {
  readonly part: Model;
}
/** An adapter behind its extensions, whatever the size of wheel or nut. */
export interface LinkFacts extends LineFacts {
  readonly adapter: AdapterModel;
  /** Between head and adapter, head side first. */
  readonly extensions: readonly ExtensionModel[];
}
/** The same for one case; of a wheel, extensions change nothing. */
export interface CaseFacts extends LinkFacts {
  readonly gripCase: GripCase;
}
export interface PairFacts extends LineFacts {
  readonly upstream: Model;
  readonly downstream: Model;
}
export interface CoreFacts extends LineFacts {
  readonly core: Core;
}
/**
 * What rules on grips and restraints may know of a core. The search asks them once for cores that are alike in this,
 * so that it is kept as narrow as it can be; the drive's number is for sentences.
 */
export interface CoreView {
  readonly drive: Pick<DriveModel, 'number'>;
  readonly head: HeadModel;
  readonly figures: Pick<CoreFigures, 'stallAtValve' | 'highestAtValve'> & {
    readonly opening: Pick<CoreDirection, 'fastest'>;
    readonly closing: Pick<CoreDirection, 'fastest'>;
  };
}
export interface GripFacts extends LineFacts {
  readonly core: CoreView;
  readonly extensions: readonly ExtensionModel[];
  readonly adapter: AdapterModel;
}
export interface ReactionFacts extends LineFacts {
  readonly core: CoreView;
  readonly restraint: RestraintModel;
  readonly secondChain: AccessoryModel | null;
  readonly reaction: ReactionFigures;
}
/** The adapters that cover the line, the likeliest first, each behind its extensions. */
export interface WholeFacts extends ReactionFacts {
  readonly core: Core;
  readonly links: readonly { readonly adapter: AdapterModel; readonly extensions: readonly ExtensionModel[] }[];
}

export interface FactsOf {
  readonly line: LineFacts;
  readonly part: PartFacts;
  readonly link: LinkFacts;
  readonly case: CaseFacts;
  readonly pair: PairFacts;
  readonly core: CoreFacts;
  readonly grip: GripFacts;
  readonly reaction: ReactionFacts;
  readonly whole: WholeFacts;
}
/** From one line alone to the whole chain with its torque interval. */
export type Scope = keyof FactsOf;

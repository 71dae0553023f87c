/*
 * Typed facts of heads, adapters, extensions, restraints, options and accessories.
 * Invariant: every rating is at that part's own output unless its name says otherwise.
 * Not here: which part goes with which: that follows from facts by the rules.
 * Read next: coupling.ts, assembly.ts.
 */
import type {
  Degrees,
  Kilograms,
  Metres,
  NewtonMetres,
  Newtons,
  Ratio,
  RevolutionsPerMinute,
  Seconds,
} from '#lib/units/quantity.ts';
import type { Coupling } from './coupling.ts';

export interface HeadFacts {
  readonly kind: 'inline' | 'right-angle' | 'open-centre';
  readonly ratio: Ratio;
  readonly efficiency: { readonly low: Ratio; readonly high: Ratio };
  readonly reverses: boolean;
  readonly torqueRating: NewtonMetres;
  readonly maxInputSpeed: RevolutionsPerMinute;
  readonly input: Coupling;
  readonly output: Coupling;
  /** Through bore; absent where nothing can pass. */
  readonly bore?: Metres;
  /** How much stem the bore or cover can take above the wheel; absent means no limit (open at the top). */
  readonly boreDepth?: Metres;
  readonly swingRadius: Metres;
  readonly height: Metres;
}

export interface NutSocket {
  readonly shape: string;
  /** Nominal size across flats; tolerance says how much smaller the nut may be. */
  readonly acrossFlats: Metres;
  readonly slack: Metres;
}

export interface WheelGrip {
  readonly diameter: { readonly low: Metres; readonly high: Metres };
  readonly spokes: { readonly low: number; readonly high: number };
  readonly dishUpTo: Degrees;
  /** Spoke or rim thickness the gripping pieces take. */
  readonly rimUpTo: Metres;
}

/** Round section of a shaft or key at its thinnest, of steel; inner diameter 0 when solid. */
export interface ShaftSection {
  readonly outer: Metres;
  readonly inner: Metres;
}

export interface AdapterFacts {
  readonly kind: 'peg plate' | 'self-centring driver' | 'spoke driver' | 'bolt-on plate' | 'drive socket' | 'valve key';
  readonly input: Coupling;
  /** Wheel-side adapters only. */
  readonly wheel?: WheelGrip;
  /** Nut-side adapters only. */
  readonly sockets?: readonly NutSocket[];
  /** Valve key: shortest and longest length, working height included. */
  readonly length?: { readonly low: Metres; readonly high: Metres };
  /** Valve key: its shaft; absent where nobody stated it. */
  readonly section?: ShaftSection;
  readonly takesExtension: boolean;
  /** A stem may pass through it. */
  readonly bore?: Metres;
  readonly retention: 'none' | 'clamped' | 'pinned' | 'bolted';
  readonly torqueRating: NewtonMetres;
  /** Time to fit at a valve; a plate that stays on the wheel pays it once per valve. */
  readonly fittingTime: Seconds;
  readonly staysOnWheel: boolean;
  /** Works when the wheel faces sideways or down. */
  readonly holdsSideways: boolean;
  readonly height: Metres;
}

export interface ExtensionFacts {
  readonly kind: 'extension shaft' | 'universal joint';
  readonly input: Coupling;
  readonly output: Coupling;
  readonly length: { readonly low: Metres; readonly high: Metres };
  readonly torqueRating: NewtonMetres;
  readonly bore?: Metres;
  /** Shafts; absent where nobody stated it, and of a joint. */
  readonly section?: ShaftSection;
  readonly highestAngle?: Degrees;
  /** Joints in one piece: two are in phase as they come from their maker. */
  readonly joints?: 1 | 2;
  readonly maxSpeed: RevolutionsPerMinute;
}

export const RESTRAINT_KINDS = [
  'reaction arm with chain',
  'reaction arm with strap',
  'reaction arm with fixed bar',
  'twin-point arm',
  'yoke clamp',
  'tow-bar brace',
  'ground plate',
  'two-leg prop',
  'street stand',
  'purpose-made restraint',
] as const;
export type RestraintKind = (typeof RESTRAINT_KINDS)[number];

export interface RestraintFacts {
  readonly kind: RestraintKind;
  readonly torqueRating: NewtonMetres;
  readonly forceRating: Newtons;
  readonly arm: { readonly low: Metres; readonly high: Metres };
  readonly directions: 'one way' | 'both ways';
  readonly followsTravel: boolean;
  readonly sideLoad: 'single anchor' | 'balanced';
  readonly facings: readonly ('up' | 'side' | 'down')[];
  /** Farthest distance from the valve to what takes the reaction. */
  readonly reach: Metres;
  /** What it needs on site, any one of: `structure`, `large pipe`, `flange`, `yoke`, `vehicle`, `firm ground`, `hard floor`, `street surface`, `workshop`. */
  readonly needs: readonly string[];
  readonly setUpTime: Seconds;
  /** Ground plates: least mass that surely stands on the plate, and the side of its square. */
  readonly weightOnPlate?: Kilograms;
  readonly plateSide?: Metres;
  /** Mounts on this coupling face or clamps on any head. */
  readonly headKinds: readonly ('inline' | 'right-angle' | 'open-centre')[];
}

export interface OptionFacts {
  readonly kind: 'turns counter' | 'torque limiter';
  readonly lowest?: NewtonMetres;
  readonly highest?: NewtonMetres;
  readonly error?: Ratio;
  readonly overshoot?: NewtonMetres;
  readonly step?: NewtonMetres;
  readonly bothDirections?: boolean;
  readonly input?: Coupling;
  readonly output?: Coupling;
  readonly bore?: Metres;
  readonly highestTurns?: number;
  readonly setUpTime: Seconds;
  /** Sits between drive and head, or between head and adapter, or clips on. */
  readonly sits: 'after drive' | 'after head' | 'clip-on';
  readonly electronic: boolean;
}

export interface AccessoryFacts {
  readonly kind:
    | 'charger'
    | 'spare pack'
    | 'air hose'
    | 'hose restraint'
    | 'filter-regulator-lubricator'
    | 'dry filter-regulator'
    | 'fuel can'
    | 'retaining pins'
    | 'pegs'
    | 'lanyards'
    | 'key guide'
    | 'second chain'
    | 'case'
    | 'sling support'
    | 'flame arrester';
  /** Numbers of the models it fits; empty when it fits by facts. */
  readonly fits: readonly string[];
  readonly mainsVoltage?: number;
  readonly mainsPlug?: string;
  readonly hoseBore?: Metres;
  readonly hoseLength?: Metres;
  readonly saleItem: boolean;
}

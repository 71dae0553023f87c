/*
 * One line of a valve schedule: what a customer's list says about one valve, or several identical ones.
 * Invariant: everything but tag, quantity and strokes may be missing; what is there carries its basis and source.
 * Not here: reading text (intake) and what the valve needs (assess-duty.ts).
 * Read next: site.ts, duty.ts.
 */
import type { IsoDate } from '#lib/kernel/date-range.ts';
import type { Finding } from '#lib/kernel/finding.ts';
import type { Fact, Known } from '#lib/units/known-value.ts';

export const VALVE_TYPES = [
  'gate',
  'wedge gate',
  'flexible wedge gate',
  'double disc gate',
  'parallel slide gate',
  'knife gate',
  'globe',
  'penstock',
  'diaphragm',
  'pinch',
  'butterfly',
  'ball',
  'plug',
  'hydrant',
  'stop tap',
  'unknown',
] as const;
export type ValveType = (typeof VALVE_TYPES)[number];

export const DRIVEN_BY = [
  'handwheel',
  'nut',
  'square',
  'key cap',
  'chain wheel',
  'gearbox wheel',
  'gearbox nut',
  'pillar',
  'extension spindle',
  'actuator hand drive',
] as const;
export type DrivenBy = (typeof DRIVEN_BY)[number];

export const STEM_KINDS = ['rising through the wheel', 'rising with the wheel', 'non-rising'] as const;
export type StemKind = (typeof STEM_KINDS)[number];

export const GEARBOX_KINDS = ['worm', 'travelling nut', 'bevel', 'spur'] as const;
export type GearboxKind = (typeof GEARBOX_KINDS)[number];

export const NUT_SHAPES = ['square', 'tapered square', 'hexagon', 'pentagon'] as const;
export type NutShape = (typeof NUT_SHAPES)[number];

export const CONDITIONS = ['free', 'stiff', 'seized'] as const;
export type ValveCondition = (typeof CONDITIONS)[number];

export const SERVICES = ['potable', 'oxygen', 'sewage', 'food', 'toxic', 'other'] as const;
export type Service = (typeof SERVICES)[number];

/** Stem thread as read from `Tr36x6`, `Tr36x12(P6)`, `Acme 1-1/2-4`, `sq 50x6`. */
export interface StemThread {
  readonly form: 'trapezoidal' | 'acme' | 'square';
  readonly majorDiameter_m: number;
  readonly pitch_m: number;
  /** Given by the designation itself (ISO form with P) or by its own column; otherwise absent. */
  readonly starts?: number;
  readonly designation: string;
}

export interface NutSize {
  /** Across flats, at the top for a tapered square. */
  readonly acrossFlats: Known<'m'>;
  readonly acrossFlatsAtBase?: Known<'m'>;
}

/** What the line says of pressure and flow. */
export interface LineProcess {
  readonly linePressure?: Known<'Pa'>;
  readonly differentialPressure?: Known<'Pa'>;
  readonly flowing?: Fact<'flowing' | 'still'>;
  readonly medium?: Fact<string>;
  readonly temperature?: Known<'°C'>;
  readonly service?: Fact<Service>;
  readonly pipeLength?: Known<'m'>;
  readonly flowVelocity?: Known<'m/s'>;
}

export interface LineState {
  readonly age?: Fact<number>;
  readonly lastOperated?: Fact<number>;
  readonly condition?: Fact<ValveCondition>;
  readonly position?: Fact<string>;
  readonly normalPosition?: Fact<'open' | 'closed'>;
  readonly leaveAt?: Fact<string>;
  readonly bypass?: Fact<boolean>;
  readonly locked?: Fact<boolean>;
}

export interface LineStem {
  readonly kind?: Fact<StemKind>;
  readonly thread?: Fact<StemThread>;
  readonly threadStarts?: Fact<number>;
  readonly threadHand?: Fact<'right' | 'left'>;
  readonly diameter?: Known<'m'>;
  readonly material?: Fact<string>;
  readonly threadFriction?: Known<'1'>;
  readonly collarFriction?: Known<'1'>;
  readonly collarMeanDiameter?: Known<'m'>;
  readonly collarBearing?: Fact<'plain' | 'rolling'>;
  readonly thrust?: Known<'N'>;
  readonly packingLoad?: Known<'N'>;
  readonly seatDiameter?: Known<'m'>;
  readonly travel?: Known<'m'>;
  readonly valveFactor?: Known<'1'>;
}

export interface LineTorque {
  readonly turns?: Known<'turn'>;
  readonly starting?: Known<'N·m'>;
  readonly running?: Known<'N·m'>;
  readonly max?: Known<'N·m'>;
  readonly minStrokeTime?: Known<'s'>;
  readonly maxInputSpeed?: Known<'1/min'>;
  readonly gearbox?: Fact<GearboxKind>;
  readonly gearRatio?: Known<'1'>;
  readonly gearEfficiency?: Known<'1'>;
  readonly outputTorque?: Known<'N·m'>;
  readonly endStops?: Fact<string>;
  readonly flange?: Fact<string>;
  readonly closes?: Fact<'clockwise' | 'anticlockwise'>;
}

export interface LineInterface {
  readonly drivenBy?: Fact<DrivenBy>;
  readonly wheelDiameter?: Known<'m'>;
  readonly wheelSpokes?: Fact<number>;
  /** How far the rim stands away from the hub plane. */
  readonly wheelDish?: Known<'°'>;
  readonly wheelMaterial?: Fact<string>;
  readonly stemProtrusion?: Known<'m'>;
  readonly protrusionMeasuredAt?: Fact<'open' | 'closed'>;
  readonly stemCover?: Fact<boolean>;
  readonly nut?: NutSize;
  readonly nutShape?: Fact<NutShape>;
  readonly nutWear?: Fact<'good' | 'worn' | 'rounded'>;
  readonly spindleSize?: Known<'m'>;
  readonly spindleLength?: Known<'m'>;
}

export interface LinePlace {
  readonly location?: string;
  readonly placeOrder?: number;
  readonly accessTime?: Known<'s'>;
  readonly depthToNut?: Known<'m'>;
  readonly misalignment?: Known<'°'>;
  readonly surfaceBox?: Fact<string>;
  readonly surface?: Fact<string>;
  readonly faces?: Fact<'up' | 'side' | 'down'>;
  readonly reach?: Known<'m'>;
  readonly clearRadius?: Known<'m'>;
  readonly headroom?: Known<'m'>;
  readonly standingPlace?: Fact<string>;
  readonly vehicleDistance?: Known<'m'>;
  /** What stands near that may take the reaction: `structure`, `large pipe`, `flange`, `yoke`, `none`, or free text. */
  readonly anchor?: Fact<string>;
  readonly zone?: Fact<string>;
  readonly gasGroup?: Fact<string>;
  readonly temperatureClass?: Fact<string>;
  readonly enclosed?: Fact<boolean>;
  readonly noiseLimit?: Known<'dB'>;
}

/** Torques read off this valve on an earlier visit, as they were that day: what ages is worked out with the duty. */
export interface VisitTorque {
  readonly on: IsoDate;
  readonly starting?: Known<'N·m'>;
  readonly running?: Known<'N·m'>;
  /** The highest of a whole stroke: no less than starting or running took that day, and no bound of what the valve bears. */
  readonly highest?: Known<'N·m'>;
}

/** What earlier visits say beside the list; sizes and turns of theirs stand in their own fields already. */
export interface LineVisits {
  readonly torque?: VisitTorque;
  readonly findings: readonly Finding[];
}

export interface ScheduleLine {
  readonly tag: string;
  readonly qty: number;
  /** Strokes per visit; 2 is out and back. */
  readonly strokes: number;
  readonly valveType?: Fact<ValveType>;
  readonly action?: Fact<'direct' | 'reverse'>;
  /** Nominal size as a length: DN 150 is 0.150 m, NPS 6 is DN 150. */
  readonly size?: Known<'m'>;
  /** `PN 16`, `Class 150`, as a normalised text. */
  readonly rating?: Fact<string>;
  readonly process: LineProcess;
  readonly state: LineState;
  readonly stem: LineStem;
  readonly torque: LineTorque;
  readonly interface: LineInterface;
  readonly place: LinePlace;
  readonly visits?: LineVisits;
  readonly notes?: string;
  readonly photo?: string;
  /** Numbers that the list gives and that cannot be taken, each with a sentence that names column, value and range. */
  readonly leftOut?: readonly LeftOut[];
}

export interface LeftOut {
  readonly column: string;
  readonly sentence: string;
}

/*
 * Whether a line may be served without a person of the Desk, and if not, why: each reason a code with what it speaks of.
 * Invariant: any one reason hands the line over; the reasons only ever come from facts, never from who asks.
 * Not here: the sentences (lib/wording) and the value of the whole order (whole-order.ts).
 * Read next: ../wording/wording.ts, next-question.ts.
 */
import type { Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import { zoneName } from '#lib/engineering/hazardous-marking.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Known } from '#lib/units/known-value.ts';

export const HAND_OVER_CODES = [
  'zone',
  'zone-unknown',
  'locked',
  'seized',
  'service',
  'nothing-fits',
  'made-to-fit',
  'never-exceed-guessed',
  'window-empty',
  'range-too-wide',
  'not-in-these-days',
  'value',
] as const;
export type HandOverCode = (typeof HAND_OVER_CODES)[number];

export interface HandOver {
  readonly code: HandOverCode;
  /** Facts that the sentence names, in the units of their names. */
  readonly facts: Readonly<Record<string, string | number>>;
}

/** Where self-service ends, as the house decides it (lib/contracts/self-service-facts.ts). */
export interface SelfServiceBounds {
  /** Hire and all charges without tax, in whole units of the currency. */
  readonly value_limit: number;
  /** Starting torque at the valve above which what it must never see has to be known and not guessed. */
  readonly guessed_ceiling_nm: number;
  /** A range of the starting torque as wide as this, high over low … */
  readonly widest_ratio: number;
  /** … matters only where its high end is above this. */
  readonly wide_above_nm: number;
}

interface Judged {
  readonly line: ScheduleLine;
  readonly duty: Duty;
  readonly site: Site;
  readonly bounds: SelfServiceBounds;
}

/** Reasons that follow from the line and its duty alone. */
export function handOversOfDuty({ line, duty, site, bounds }: Judged): readonly HandOver[] {
  return [...placeReasons({ line, site }), ...stateReasons({ line, duty }), ...torqueReasons(duty, bounds)];
}

/** Reasons that follow from what was found to serve it: the models that would go along, or none. */
export function handOversOfKit(kit: readonly Model[] | null): readonly HandOver[] {
  if (kit === null) return [{ code: 'nothing-fits', facts: {} }];
  const made = kit.find(({ madeToOrder }) => madeToOrder);
  return made === undefined
    ? []
    : [{ code: 'made-to-fit', facts: { part: made.name, part_de: made.germanName ?? made.name } }];
}

interface Valued {
  readonly net_minor: number;
  readonly minorPerUnit: number;
  readonly limit: number;
}

export function handOverOfValue({ net_minor, minorPerUnit, limit }: Valued): readonly HandOver[] {
  return net_minor / minorPerUnit > limit ? [{ code: 'value', facts: { limit } }] : [];
}

function placeReasons({ line, site }: Pick<Judged, 'line' | 'site'>): readonly HandOver[] {
  const text = line.place.zone?.value ?? site.zone;
  if (text === undefined) return [{ code: 'zone-unknown', facts: {} }];
  const zone = zoneName(text);
  return zone === null ? [] : [{ code: 'zone', facts: { zone } }];
}

function stateReasons({ line, duty }: Pick<Judged, 'line' | 'duty'>): readonly HandOver[] {
  const service = line.process.service?.value;
  return [
    ...(line.state.locked?.value === true ? [{ code: 'locked', facts: {} } as const] : []),
    ...(duty.seized ? [{ code: 'seized', facts: {} } as const] : []),
    ...(service === 'oxygen' || service === 'toxic' ? [{ code: 'service', facts: { service } } as const] : []),
  ];
}

function torqueReasons({ opening, closing }: Duty, bounds: SelfServiceBounds): readonly HandOver[] {
  const worse = closing.starting.high > opening.starting.high ? closing : opening;
  const { starting, neverExceed } = worse;
  const high = Math.round(starting.high);
  const isGuessed = isGuess(neverExceed.torque) && high > bounds.guessed_ceiling_nm;
  const isWide = high > bounds.wide_above_nm && starting.high > starting.low * bounds.widest_ratio;
  // Where only the far ends of both ranges meet, the crew starts low and stops at the ceiling: a caution, no reason to stop here.
  const isEmpty = [opening, closing].some(
    (side) => side.limiter === null && side.starting.nominal > side.neverExceed.torque.nominal,
  );
  const ceiling = Math.floor(neverExceed.torque.low);
  return [
    ...(isGuessed ? [{ code: 'never-exceed-guessed', facts: { high_nm: high } } as const] : []),
    ...(isWide
      ? [{ code: 'range-too-wide', facts: { low_nm: Math.round(starting.low), high_nm: high } } as const]
      : []),
    ...(isEmpty && !isWide ? [{ code: 'window-empty', facts: { high_nm: high, ceiling_nm: ceiling } } as const] : []),
  ];
}

function isGuess({ basis }: Known<'N·m'>): boolean {
  return basis === 'assumed' || basis === 'rule of thumb';
}

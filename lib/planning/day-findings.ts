/*
 * What is to be said of a crew's day: action and limit values that it passes, heavy pieces, a day longer than the shift, work spread over days.
 * Invariant: a limit value that is passed, or may be, is always told with its numbers and with what would help.
 * Not here: the figures (day-exposure.ts, day-lifts.ts).
 * Read next: crew-days.ts.
 */
import { teamCapability } from '#lib/engineering/lifting.ts';
import { OUTSIDE_LIFTING_EQUATION, TEMPERATE } from '#lib/engineering/lifting-tables.ts';
import { NOISE_LIMIT, NOISE_LOWER_ACTION, NOISE_UPPER_ACTION } from '#lib/engineering/noise.ts';
import { VIBRATION_ACTION_VALUE, VIBRATION_LIMIT_VALUE } from '#lib/engineering/vibration.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import { WORKING_CONSTANTS } from '#lib/equipment/working-constants.ts';
import type { Finding, Severity } from '#lib/kernel/finding.ts';
import { sayMass, sayMinutes, sayPlain, sayTemperatures } from '#lib/rules/say-number.ts';
import { tell } from '#lib/units/say-figure.ts';

type Figures = Omit<CrewDay, 'findings'>;

export interface DayContext {
  /** `Crew 2, day 3` */
  readonly name: string;
  readonly shift_s: number;
  /** Days over which the crew's work stays below the action value; null where it does not within the site's. */
  readonly daysForAction: number | null;
  readonly days: number;
  /** A crew that has most days free, and how many; null where none has. */
  readonly other: { readonly name: string; readonly days: number } | null;
  /** Days that filling each shift would take, where the work was spread over more. */
  readonly spreadFrom: number | null;
  readonly daysUsed: number;
}

export function dayFindings(figures: Figures, context: DayContext): readonly Finding[] {
  return [
    ...vibrationFindings(figures, context),
    ...noiseFindings(figures, context),
    ...liftFindings(figures, context),
    ...shiftFindings(figures, context),
  ];
}

const EU_VIBRATION = 'Directive 2002/44/EC, Art. 3 and 5; screening figure from declared values';
const EU_NOISE = 'Directive 2003/10/EC, Art. 3; screening figure from declared values';

function vibrationFindings(figures: Figures, context: DayContext): readonly Finding[] {
  const { exposure } = figures.alone;
  const spread = spreadNote(figures, context);
  if (exposure.high > VIBRATION_LIMIT_VALUE) return [limitFinding(figures, context), ...spread];
  if (exposure.nominal <= VIBRATION_ACTION_VALUE) return spread;
  const { daysForAction, daysUsed, days } = context;
  const wider =
    daysForAction !== null && daysForAction > daysUsed
      ? `, or spread the work over ${daysForAction} of the ${days} days, which keeps below it`
      : '';
  const sentence = `${head(figures, context)}, above the action value of ${VIBRATION_ACTION_VALUE}: ${takeTurns(figures)}${wider}. Give breaks and warm hands, and see that health surveillance is in place.`;
  return [finding({ id: 'crew-day-vibration-action', severity: 'warning', sentence, source: EU_VIBRATION }), ...spread];
}

function head({ trigger, alone }: Figures, { name }: DayContext): string {
  const { nominal, high } = alone.exposure;
  const most = high > nominal * 1.02 ? ` (${oneUp(high)} with the longest strokes)` : '';
  return `${name}: ${sayTime(trigger.nominal)} at the drive is A(8) ${oneUp(nominal)} m/s²${most} for one person`;
}

function takeTurns({ turns }: Figures): string {
  if (turns === null) return 'a second person to take turns would help';
  const each = turns.exposure.nominal;
  const still = each > VIBRATION_ACTION_VALUE ? ', still above the action value' : '';
  return `take turns between ${turns.persons} persons (${oneUp(each)} each${still})`;
}

/** To one decimal, upwards: a limit that is passed never reads as kept. */
function oneUp(value: number): string {
  return (Math.ceil(value * 10 - 1e-9) / 10).toFixed(1);
}

function sayTime(value_s: number): string {
  return value_s < 5400 ? sayMinutes(value_s) : `${sayPlain(value_s / 3600)} h`;
}

function limitFinding(figures: Figures, context: DayContext): Finding {
  const { alone, turns } = figures;
  const passes = alone.exposure.nominal > VIBRATION_LIMIT_VALUE ? 'passes' : 'may pass';
  const limit = `${head(figures, context)}, which ${passes} the limit value of ${VIBRATION_LIMIT_VALUE}`;
  const held = turns !== null && turns.exposure.high <= VIBRATION_LIMIT_VALUE;
  const elsewhere =
    context.other === null ? '' : `, hand valves to ${context.other.name} (${context.other.days} days free)`;
  const sentence = held
    ? `${limit}: nobody holds the drive alone; ${takeTurns(figures)}${elsewhere}, and stop in time.`
    : `${limit}${turns === null ? '' : `, and ${turns.persons} persons who take turns still have ${oneUp(turns.exposure.high)} at the most`}: allow more days${elsewhere}, bring more persons or use a drive with less vibration; do not work the day as it stands.`;
  return finding({
    id: 'crew-day-vibration-limit',
    severity: held ? 'warning' : 'refusal',
    sentence,
    source: EU_VIBRATION,
  });
}

/** Said once, on the first day. */
function spreadNote({ day }: Figures, { name, spreadFrom, daysUsed }: DayContext): readonly Finding[] {
  if (spreadFrom === null || day !== 1) return [];
  const crew = name.split(',')[0] ?? name;
  return [
    finding({
      id: 'crew-day-spread',
      severity: 'note',
      sentence: `${crew}: its work would fill ${plural(spreadFrom, 'day')}; it is spread over ${daysUsed}, so that a person’s vibration on any day is less.`,
      source: EU_VIBRATION,
    }),
  ];
}

function noiseFindings({ noise }: Figures, { name }: DayContext): readonly Finding[] {
  const level = `${name}: L_EX,8h is ${oneUp(noise.nominal)} dB(A) near the drive without hearing protection`;
  const at = noise.nominal;
  const told = (id: string, severity: Severity, words: string): readonly Finding[] => [
    finding({ id, severity, sentence: `${level}, ${words}`, source: EU_NOISE }),
  ];
  if (at > NOISE_LIMIT)
    return told(
      'crew-day-noise-limit',
      'warning',
      `past the limit value of ${NOISE_LIMIT}, which counts at the ear under protection: everyone near wears protection that takes off at least ${Math.ceil(at - NOISE_UPPER_ACTION)} dB in real wear, and others keep away.`,
    );
  if (at > NOISE_UPPER_ACTION)
    return told(
      'crew-day-noise-upper',
      'warning',
      `above the upper action value of ${NOISE_UPPER_ACTION}: hearing protection is worn near the drive.`,
    );
  if (at > NOISE_LOWER_ACTION)
    return told(
      'crew-day-noise-lower',
      'note',
      `above the lower action value of ${NOISE_LOWER_ACTION}: have hearing protection at hand.`,
    );
  return [];
}

function liftFindings({ lifts, valves }: Figures, { name }: DayContext): readonly Finding[] {
  const { heaviest, number, filter, equation } = lifts;
  const piece = `${name}: the heaviest piece is ${number} with ${sayMass(heaviest)}`;
  const refused =
    equation.refused.length === 0
      ? ''
      : ` The lifting equation does not speak of ${unsaid(equation, valves)}; have a competent person look at these lifts.`;
  const { worst } = equation;
  const index =
    worst === null
      ? ''
      : ` Lifting index ${oneUp(worst.index)} (limit ${sayMass(worst.limit)}) for one person from the ground to working height.`;
  const { id, severity, words } = liftWords(lifts, `(${sayMass(filter.fromGround)})`);
  if (id === null && (worst === null || worst.index <= 1) && refused === '') return [];
  return [
    finding({
      id: id ?? 'crew-day-lift',
      severity: worst !== null && worst.index > 3 ? 'warning' : severity,
      sentence: `${piece}${words}.${index}${refused}`,
      source: 'HSE L23 filter; DHHS (NIOSH) 94-110; screening figures with assumed places of the hands',
    }),
  ];
}

function unsaid({ refused }: Figures['lifts']['equation'], all: number): string {
  return refused
    .map(({ why, valves }) => {
      const said = why === OUTSIDE_LIFTING_EQUATION.temperature ? `outside ${sayTemperatures(TEMPERATE)}` : why;
      return valves === all ? `these lifts (${said})` : `those at ${valves} of ${all} valves (${said})`;
    })
    .join(', nor of ');
}

function liftWords({ heaviest, filter }: Figures['lifts'], ground: string) {
  const alone = WORKING_CONSTANTS.onePersonLift;
  const two = teamCapability([alone, alone]);
  if (heaviest > two)
    return {
      id: 'crew-day-lift-aid',
      severity: 'warning',
      words: ', more than two persons lift: use a lifting aid',
    } as const;
  if (heaviest > alone)
    return { id: 'crew-day-lift-two', severity: 'warning', words: ', which two persons lift together' } as const;
  if (heaviest > filter.atWaist)
    return {
      id: 'crew-day-lift',
      severity: 'note',
      words: `, above the screening filter at any height at this pace (${sayMass(filter.atWaist)} at waist height): two lift it, or it is lifted seldom and close to the body`,
    } as const;
  if (heaviest > filter.fromGround)
    return {
      id: 'crew-day-lift',
      severity: 'note',
      words: `, above the screening filter from the ground ${ground} and within it at waist height (${sayMass(filter.atWaist)}): lift it from a tailboard or a stand, close to the body, or two together`,
    } as const;
  return { id: null, severity: 'note', words: ', within the screening filter from the ground up' } as const;
}

function shiftFindings({ time }: Figures, { name, shift_s }: DayContext): readonly Finding[] {
  if (time <= shift_s + 1) return [];
  return [
    finding({
      id: 'crew-day-over-shift',
      severity: 'warning',
      sentence: `${name}: the work takes ${sayPlain(time / 3600)} h, ${sayTime(time - shift_s)} more than the shift, as no valve is left half done: start early or leave a valve for another day.`,
      source: 'The plan',
    }),
  ];
}

function finding(of: Omit<Finding, 'about'>): Finding {
  return { ...of, ...tell(of.sentence), about: ['crews', 'days', 'persons_per_crew', 'drive'] };
}

function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/*
 * Changes worth trying for a line that cannot be served, from the cheapest to the dearest, each with its sentence.
 * Invariant: a trial changes facts only; whether it helps is for the search to say.
 * Not here: running the trials (repairs.ts).
 * Read next: repairs.ts.
 */
import type { DirectionDuty, Duty } from '#lib/duty/duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { POWER_SOURCES, type Site } from '#lib/duty/site.ts';
import type { LineFacts } from '#lib/rules/facts.ts';
import { placeOf } from '#lib/rules/place-facts.ts';
import { sayLength, sayPlain, sayPressure, sayTorque, sayTorqueDown } from '#lib/rules/say-number.ts';
import { exactly, type Known, known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { ClassQuestion } from './search-class.ts';

export interface Trial {
  readonly sentence: string;
  readonly facts?: LineFacts;
  readonly wishes?: 'none';
  readonly cost?: string;
  /** Looks for the number at which it starts to work. */
  readonly narrow?: (works: (facts: LineFacts) => boolean) => string | null;
}

const SIX_BAR = sayPressure(6e5);
const TRIED = { basis: 'assumed', source: 'A change tried out as a repair.' } as const;

export function trialsFor({
  question,
  conflict,
}: {
  readonly question: ClassQuestion;
  readonly conflict: readonly string[];
}): readonly Trial[] {
  const { facts } = question;
  return [
    ...(question.wishes.length > 0
      ? [{ sentence: 'It can be served when it is not held to that part.', wishes: 'none' } as const]
      : []),
    ...measureTrials(facts),
    ...siteTrials(facts),
    ...placeTrials(question),
    ...torqueTrials(facts, conflict),
  ];
}

function changed(
  facts: LineFacts,
  change: { readonly line?: ScheduleLine; readonly duty?: Duty; readonly site?: Site },
): LineFacts {
  const line = change.line ?? facts.line;
  const duty = change.duty ?? facts.duty;
  const site = change.site ?? facts.site;
  return { line, duty, site, place: placeOf({ line, duty, site }) };
}

function atNominal<U extends Unit>(value: Known<U>): Known<U> {
  return exactly(value.unit, value.nominal, TRIED);
}

function measureTrials(facts: LineFacts): readonly Trial[] {
  const { grip } = facts.duty;
  const withGrip = (change: Partial<Duty['grip']>): LineFacts =>
    changed(facts, { duty: { ...facts.duty, grip: { ...grip, ...change } } });
  const trials: Trial[] = [];
  if (grip.wheelDiameter !== undefined && grip.wheelDiameter.low < grip.wheelDiameter.high) {
    trials.push({
      sentence: `Measure the wheel: ${sayLength(grip.wheelDiameter.low)} to ${sayLength(grip.wheelDiameter.high)} is too wide a range; at about ${sayLength(grip.wheelDiameter.nominal)} it can be served.`,
      facts: withGrip({ wheelDiameter: atNominal(grip.wheelDiameter) }),
      cost: 'a measurement',
    });
  }
  if (grip.wheelSpokes !== undefined && grip.wheelSpokes.low < grip.wheelSpokes.high) {
    const spokes = Math.round((grip.wheelSpokes.low + grip.wheelSpokes.high) / 2);
    trials.push({
      sentence: `Count the spokes: ${grip.wheelSpokes.low} to ${grip.wheelSpokes.high} is too wide a range; with ${spokes} it can be served.`,
      facts: withGrip({ wheelSpokes: { low: spokes, high: spokes } }),
      cost: 'a look',
    });
  }
  const [likeliest] = grip.nutSizes ?? [];
  if (likeliest !== undefined && (grip.nutSizes?.length ?? 0) > 1) {
    trials.push({
      sentence: `Measure the nut: several sizes are possible; at ${sayLength(likeliest.nominal)} across flats it can be served.`,
      facts: withGrip({ nutSizes: [likeliest] }),
      cost: 'a measurement',
    });
  }
  if (grip.depthToNut !== undefined && grip.depthToNut.low < grip.depthToNut.high) {
    trials.push({
      sentence: `Measure the depth to the nut: at about ${sayLength(grip.depthToNut.nominal)} it can be served.`,
      facts: withGrip({ depthToNut: atNominal(grip.depthToNut) }),
      cost: 'a measurement',
    });
  }
  if (grip.stemRisesThroughWheel === 'maybe') {
    trials.push({
      sentence: 'Find out whether the stem rises through the wheel: where it does not, it can be served.',
      facts: withGrip({ stemRisesThroughWheel: 'no' }),
      cost: 'a look',
    });
  }
  if (grip.wheelRises === 'maybe') {
    trials.push({
      sentence: 'Find out whether the wheel rises with its stem: where it does not, it can be served.',
      facts: withGrip({ wheelRises: 'no' }),
      cost: 'a look',
    });
  }
  return trials;
}

function siteTrials(facts: LineFacts): readonly Trial[] {
  const { site } = facts;
  const sources = POWER_SOURCES.filter((source) => !site.sourcesAllowed.includes(source)).map((source) => ({
    sentence: `It can be served if the site allows ${source}${source === 'air' && site.airPressure === undefined ? ` and gives ${SIX_BAR} of it` : ''}.`,
    facts: changed(facts, {
      site: {
        ...site,
        sourcesAllowed: [...site.sourcesAllowed, source],
        ...(source === 'air' && site.airPressure === undefined ? { airPressure: exactly('Pa', 6e5, TRIED) } : {}),
      },
    }),
  }));
  const air =
    site.sourcesAllowed.includes('air') && (site.airPressure === undefined || site.airPressure.low < 6e5)
      ? [
          {
            sentence: `It can be served with compressed air of ${SIX_BAR} at the valve${site.airPressure === undefined ? ', of which the site says nothing' : ''}.`,
            facts: changed(facts, { site: { ...site, airPressure: exactly('Pa', 6e5, TRIED) } }),
          },
        ]
      : [];
  const rules = site.houseRules.map((rule) => ({
    sentence: `It can be served without the house rule “${rule.sentence}”`,
    facts: changed(facts, { site: { ...site, houseRules: site.houseRules.filter((other) => other !== rule) } }),
  }));
  return [...sources, ...air, ...rules];
}

function placeTrials({ facts, stock }: ClassQuestion): readonly Trial[] {
  const { line, site } = facts;
  const at = (place: Partial<ScheduleLine['place']>, more: Partial<Site> = {}): LineFacts =>
    changed(facts, { line: { ...line, place: { ...line.place, ...place } }, site: { ...site, ...more } });
  const reaches = stock.restraints.filter((one) => one.facts.needs.includes('vehicle')).map((one) => one.facts.reach);
  const trials: Trial[] = [];
  if (reaches.length > 0) {
    const reach = Math.max(...reaches);
    trials.push({
      sentence: `It can be served if a vehicle may stand within ${sayLength(reach)} of the valve.`,
      facts: at({ vehicleDistance: exactly('m', reach, TRIED) }, { vehicleAccess: true }),
    });
  }
  trials.push({
    sentence: 'It can be served if a structure to take the reaction stands near and may be used.',
    facts: at(
      { anchor: { value: 'structure', ...TRIED } },
      site.anchorsAllowed === undefined ? {} : { anchorsAllowed: [...site.anchorsAllowed, 'structure'] },
    ),
  });
  const { clearRadius, headroom } = line.place;
  if (clearRadius !== undefined)
    trials.push(
      roomTrial({
        facts,
        name: 'a clear radius',
        low: clearRadius.low,
        high: 2,
        to: (value) => at({ clearRadius: exactly('m', value, TRIED) }),
      }),
    );
  if (headroom !== undefined)
    trials.push(
      roomTrial({
        facts,
        name: 'a headroom',
        low: headroom.low,
        high: 3,
        to: (value) => at({ headroom: exactly('m', value, TRIED) }),
      }),
    );
  return trials;
}

function roomTrial(room: {
  readonly facts: LineFacts;
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly to: (value: number) => LineFacts;
}): Trial {
  return {
    sentence: '',
    narrow: (works) => {
      const found = leastThat({ low: room.low, high: room.high, step: 0.05, works: (value) => works(room.to(value)) });
      return found === null ? null : `It can be served with ${room.name} of ${sayLength(found)}.`;
    },
  };
}

function torqueTrials(facts: LineFacts, conflict: readonly string[]): readonly Trial[] {
  const { duty } = facts;
  const most = Math.max(duty.opening.starting.high, duty.closing.starting.high);
  const scaled = (factor: number): LineFacts => {
    const way = (one: DirectionDuty): DirectionDuty => ({
      ...one,
      starting: times(one.starting, factor),
      running: times(one.running, factor),
    });
    return changed(facts, { duty: { ...duty, opening: way(duty.opening), closing: way(duty.closing) } });
  };
  const never = (factor: number): LineFacts => {
    const way = (one: DirectionDuty): DirectionDuty => ({
      ...one,
      neverExceed: { ...one.neverExceed, torque: { ...times(one.neverExceed.torque, factor), basis: 'stated' } },
    });
    return changed(facts, { duty: { ...duty, opening: way(duty.opening), closing: way(duty.closing) } });
  };
  const lowest = Math.min(duty.opening.neverExceed.torque.low, duty.closing.neverExceed.torque.low);
  const speed = facts.duty.maxInputSpeed.nominal;
  return [
    {
      sentence: '',
      cost: 'a torque reading',
      narrow: (works) => {
        const found = mostThat({ low: 0.02, high: 1, works: (factor) => works(scaled(factor)) });
        return found === null
          ? null
          : `It can be served at a torque of at most ${sayTorqueDown(most * found)} (planned: ${sayTorque(most)}).`;
      },
    },
    {
      sentence: '',
      cost: 'the maker’s figure',
      narrow: (works) => {
        const found = leastThat({ low: 1, high: 8, step: 0.05, works: (factor) => works(never(factor)) });
        return found === null
          ? null
          : `It can be served if the valve may see ${sayTorque(lowest * found)} (known now: ${sayTorque(lowest)}), on its maker’s word.`;
      },
    },
    ...(conflict.some((id) => ['input-speed', 'stroke-time', 'extension-speed'].includes(id))
      ? [
          {
            sentence: '',
            cost: 'the maker’s figure',
            narrow: (works: (facts: LineFacts) => boolean) => {
              const to = (value: number): LineFacts =>
                changed(facts, {
                  duty: { ...duty, maxInputSpeed: exactly('1/min', value, TRIED), minStrokeTime: null },
                });
              const found = leastThat({ low: speed, high: 10 * speed, step: 1, works: (value) => works(to(value)) });
              return found === null
                ? null
                : `It can be served if it may be turned at ${sayPlain(found)} 1/min (allowed now: ${sayPlain(speed)}).`;
            },
          },
        ]
      : []),
  ];
}

function times<U extends Unit>(value: Known<U>, factor: number): Known<U> {
  return known(
    value.unit,
    { low: value.low * factor, nominal: value.nominal * factor, high: value.high * factor },
    value,
  );
}

interface Narrowing {
  readonly low: number;
  readonly high: number;
  readonly works: (value: number) => boolean;
}

/** Least value, up to a step, that works; null when not even the highest does. */
function leastThat({ low, high, step, works }: Narrowing & { readonly step: number }): number | null {
  if (!works(high)) return null;
  let bad = low;
  let good = high;
  while (good - bad > step) {
    const middle = (good + bad) / 2;
    if (works(middle)) good = middle;
    else bad = middle;
  }
  return Math.ceil(good / step - 1e-9) * step;
}

/** Greatest share that works, to one part in a hundred of itself; null when not even the least does. */
function mostThat({ low, high, works }: Narrowing): number | null {
  if (!works(low)) return null;
  let good = low;
  let bad = high;
  while (bad / good > 1.01) {
    const middle = Math.sqrt(good * bad);
    if (works(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

import { describe, expect, it } from 'vitest';
import type { Site } from '#lib/duty/site.ts';
import type { CrewDay } from '#lib/equipment/crew-day.ts';
import { crewDays } from '#lib/planning/crew-days.ts';
import { ranged, said, sampleDuty, stated } from '#lib/rules/sample-facts.ts';
import { decibels, kilograms, metresPerSecondSquared } from '#lib/units/quantity.ts';
import { OUTCOME } from '#tests/support/papers/sample-outcome.ts';

interface Change {
  readonly vibration?: number;
  readonly sound?: number;
  readonly drive_kg?: number;
  readonly site?: Partial<Site>;
  readonly place?: (typeof OUTCOME.lines)[number]['place'];
}

/** The sample outcome with another drive, site or place; three valves V-1 and one V-2 for crew 0, one V-2 and two H-1 for crew 1. */
function planned({ vibration, sound, drive_kg, site = {}, place = {} }: Change): readonly CrewDay[] {
  const models = OUTCOME.models.map((model) => {
    if (model.role !== 'drive') return model;
    const facts = {
      ...model.facts,
      vibration: metresPerSecondSquared(vibration ?? model.facts.vibration),
      soundPressure: decibels(sound ?? model.facts.soundPressure),
    };
    return { ...model, mass: kilograms(drive_kg ?? model.mass), facts };
  });
  return crewDays({
    ...OUTCOME.outcome,
    lineDuties: OUTCOME.lines.map((line) => ({
      line: { ...line, place: { ...line.place, ...place } },
      duty: sampleDuty({ tag: line.tag, strokes: line.strokes }),
    })),
    site: { ...OUTCOME.site, ...site },
    models,
    crewOffset: 1,
  });
}

const told = (days: readonly CrewDay[], id: string) =>
  days.flatMap(({ findings }) => findings.filter((finding) => finding.id === id));
const said0 = (days: readonly CrewDay[], id: string) => told(days, id)[0]?.sentence ?? '';

describe('crewDays', () => {
  it('works one day of a crew out as by hand', () => {
    // Four visits of 2 strokes; a stroke is 112 to 203.2 s, so 1260.8 s are likely: A(8) = 2·√(1260.8/28800) = 0.418.
    const [day] = planned({});
    expect(day?.time).toBe(4400);
    expect(day?.trigger).toMatchObject({ low: 896, nominal: 1260.8, high: 1625.6 });
    expect(day?.alone.exposure.nominal).toBeCloseTo(0.41846, 4);
    expect(day?.alone.points).toBeCloseTo(2.8018, 3);
    expect(day?.turns).toMatchObject({ persons: 2 });
    expect(day?.turns?.exposure.nominal).toBeCloseTo(0.41846 / Math.SQRT2, 4);
    expect(day?.turns?.points).toBeCloseTo(1.4009, 3);
    // 78 dB(A) for 1260.8 s: 78 + 10·lg(1260.8/28800).
    expect(day?.noise.nominal).toBeCloseTo(64.4125, 3);
    // Six pieces above 3 kg at a wheel, on and off, four times in 4400 s: 0.65 a minute, so 70 % of 7 and 16 kg.
    expect(day?.lifts).toMatchObject({ count: 48, heaviest: 7, number: 'SA-2' });
    expect(day?.lifts.filter.fromGround).toBeCloseTo(4.9, 9);
    expect(day?.lifts.filter.atWaist).toBeCloseTo(11.2, 9);
  });

  it('keeps the working order and counts days from 1', () => {
    const days = planned({ site: { shiftHours: 0.7 } });
    expect(days.map(({ crew, day, work }) => [crew, day, ...work.map(({ tag, qty }) => `${qty} ${tag}`)])).toEqual([
      [0, 1, '2 V-1'],
      [0, 2, '1 V-1', '1 V-2'],
      [1, 1, '2 H-1'],
      [1, 2, '1 V-2'],
    ]);
  });

  it('spreads over the days of the site before it passes the vibration limit, and says so', () => {
    // 22 m/s²: four visits of at most 406.4 s are A(8) 5.23, two are 3.70.
    const days = planned({ vibration: 22 });
    expect(days.map(({ crew, valves }) => [crew, valves])).toEqual([
      [0, 3],
      [0, 1],
      [1, 3],
    ]);
    expect(days.every(({ alone }) => alone.exposure.high <= 5)).toBe(true);
    expect(said0(days, 'crew-day-spread')).toBe(
      'Crew 1: its work would fill 1 day; it is spread over 2, so that a person’s vibration on any day is less.',
    );
    expect(told(days, 'crew-day-vibration-limit')).toEqual([]);
    expect(told(days, 'crew-day-vibration-action').length).toBeGreaterThan(0);
  });

  it('asks for turns where one person passes the limit and two in turns do not', () => {
    const days = planned({ vibration: 28, site: { days: 1 } });
    const [finding] = told(days, 'crew-day-vibration-limit');
    expect(finding?.severity).toBe('warning');
    expect(finding?.sentence).toBe(
      'Crew 1, day 1: 21 min at the drive is A(8) 5.9 m/s² (6.7 with the longest strokes) for one person, which passes the limit value of 5: nobody holds the drive alone; take turns between 2 persons (4.2 each, still above the action value), and stop in time.',
    );
  });

  it('refuses the day as it stands where turns do not help, and names a crew with days free', () => {
    const days = planned({ vibration: 40, site: { days: 2, personsPerCrew: 1 } });
    const [finding] = told(days, 'crew-day-vibration-limit');
    expect(finding?.severity).toBe('refusal');
    expect(finding?.sentence).toMatch(
      /^Crew 1, day 1: .* passes the limit value of 5: allow more days.*do not work the day as it stands\.$/,
    );
    const spare = planned({ vibration: 40, site: { days: 4 } });
    expect(told(spare, 'crew-day-vibration-limit')).toEqual([]);
  });

  it.each([
    [78, null],
    [94, 'crew-day-noise-lower'],
    [99.5, 'crew-day-noise-upper'],
    [102, 'crew-day-noise-limit'],
  ])('says of a drive of %d dB(A): %s', (sound, id) => {
    const ids = planned({ sound })[0]?.findings.map((finding) => finding.id) ?? [];
    expect(ids.filter((one) => one.startsWith('crew-day-noise'))).toEqual(id === null ? [] : [id]);
  });

  it.each([
    [26, 'crew-day-lift-two', 'two persons lift together'],
    [34, 'crew-day-lift-aid', 'use a lifting aid'],
    [12, 'crew-day-lift', 'above the screening filter at any height'],
  ])('says of a piece of %d kg: %s', (drive_kg, id, words) => {
    expect(said0(planned({ drive_kg }), id)).toContain(words);
  });

  it('tells masses in both unit systems', () => {
    const [finding] = told(planned({}), 'crew-day-lift');
    expect(finding?.sentence).toBe(
      'Crew 1, day 1: the heaviest piece is SA-2 with 7 kg, above the screening filter from the ground (4.9 kg) and within it at waist height (11.2 kg): lift it from a tailboard or a stand, close to the body, or two together. Lifting index 0.8 (limit 9.07 kg) for one person from the ground to working height.',
    );
    expect(finding?.inUs).toContain('SA-2 with 15.4 lb, above the screening filter from the ground (10.8 lb)');
  });

  it('tells the temperatures of the lifting equation in both unit systems', () => {
    const [finding] = told(planned({ site: { temperature: ranged('°C', 5, 22) } }), 'crew-day-lift');
    expect(finding?.sentence).toContain('these lifts (outside 19 to 26 °C)');
    expect(finding?.inUs).toContain('these lifts (outside 66 to 79 °F)');
  });

  it('tells a day that runs over the shift', () => {
    expect(said0(planned({ site: { shiftHours: 0.5 } }), 'crew-day-over-shift')).toMatch(
      /^Crew 1, day 1: the work takes 0\.611 h, 6\.67 min more than the shift/,
    );
  });
});

describe('the lifting equation in a crew’s day', () => {
  const refusedWith = (change: Change) => planned(change)[0]?.lifts.equation;

  it('speaks where nothing keeps it from it', () => {
    // 23 · 25/40 · (1 − 0.3·0.55) · 0.95 · (0.82 + 0.045/0.8) · FM between 0.5 and 1 a minute over 1 to 2 h: 9.07 kg.
    expect(refusedWith({})?.worst?.limit).toBeCloseTo(9.069, 3);
    expect(refusedWith({})?.worst?.index).toBeCloseTo(7 / 9.069, 3);
  });

  it.each([
    ['lifted by two or more persons', { drive_kg: 26 }],
    ['a cramped or enclosed place', { place: { enclosed: said(true) } }],
    ['a cramped or enclosed place', { place: { headroom: stated('m', 1.5) } }],
    ['seated or kneeling', { place: { standingPlace: said('kneeling in the pit') } }],
    ['poor or unsteady footing', { place: { standingPlace: said('Ladder') } }],
    ['carried more than a step or two', { place: { vehicleDistance: stated('m', 30) } }],
    ['carried more than a step or two', { site: { vehicleAccess: false } }],
    ['outside 19 to 26 °C', { site: { temperature: ranged('°C', 5, 22) } }],
  ] as const)('refuses: %s', (why, change) => {
    expect(refusedWith(change)).toEqual({ valves: 0, worst: null, refused: [{ why, valves: 4 }] });
    expect(said0(planned(change), change === undefined ? '' : idOf(change))).toContain(
      `The lifting equation does not speak of these lifts (${why}); have a competent person look at these lifts.`,
    );
  });

  const idOf = (change: Change) => (change.drive_kg === undefined ? 'crew-day-lift' : 'crew-day-lift-two');
});

import { describe, expect, it } from 'vitest';
import { type Random, seededRandom } from '#lib/kernel/random.ts';
import { crewPortions } from '#lib/planning/crew-portions.ts';
import { dayExposure } from '#lib/planning/day-exposure.ts';
import { fillDays, highestDose, splitDays } from '#lib/planning/split-days.ts';
import { sampleDuty } from '#lib/rules/sample-facts.ts';
import { OUTCOME } from '#tests/support/papers/sample-outcome.ts';

const CASES = 400;
const { site, lines, models, outcome } = OUTCOME;
const between = (random: Random, low: number, high: number): number => low + random() * (high - low);
const whole = (random: Random, low: number, high: number): number => Math.floor(between(random, low, high + 1));

/** Portions of the sample crew, with any vibration, sound and count. */
function somePortions(random: Random) {
  const base = crewPortions({
    ...outcome,
    crew: whole(random, 0, 1),
    lineDuties: lines.map((line) => ({ line, duty: sampleDuty({ tag: line.tag, strokes: whole(random, 1, 5) }) })),
    site,
    models: new Map(models.map((model) => [model.number, model])),
  });
  return base.map((portion) => {
    const vibration = between(random, 0.5, 30);
    const facts = { ...portion.drive.facts, vibration, soundPressure: between(random, 60, 110) };
    const drive = { ...portion.drive, facts } as typeof portion.drive;
    return {
      ...portion,
      drive: { ...drive, number: `D-${Math.round(vibration)}` },
      qty: whole(random, 1, 30),
      dose: vibration ** 2 * portion.trigger.high,
    };
  });
}

function hold(law: string, check: (random: Random) => void): void {
  it(law, () => {
    for (let seed = 1; seed <= CASES; seed += 1) check(seededRandom(seed));
    console.info(`${law}: ${CASES} cases checked`);
  });
}

describe('laws of a crew’s days', () => {
  hold('more trigger time never lowers A(8), points or noise', (random) => {
    const day = somePortions(random);
    const more = day.map((portion) => ({ ...portion, qty: portion.qty + whole(random, 0, 3) }));
    const [few, many] = [dayExposure(day, 2), dayExposure(more, 2)];
    for (const end of ['low', 'nominal', 'high'] as const) {
      expect(many.alone.exposure[end]).toBeGreaterThanOrEqual(few.alone.exposure[end]);
      expect(many.noise[end]).toBeGreaterThanOrEqual(few.noise[end]);
    }
    expect(many.alone.points).toBeGreaterThanOrEqual(few.alone.points);
  });

  hold('sharing the drive between more persons never raises a figure', (random) => {
    const day = somePortions(random);
    const persons = whole(random, 2, 6);
    const [alone, some, more] = [1, persons, persons + 1].map((count) => dayExposure(day, count));
    expect(alone?.turns).toBeNull();
    expect(some?.turns?.exposure.high).toBeLessThanOrEqual(alone?.alone.exposure.high ?? 0);
    expect(more?.turns?.exposure.high).toBeLessThanOrEqual(some?.turns?.exposure.high ?? 0);
    expect(some?.turns?.points).toBeCloseTo((some?.alone.points ?? 0) / persons, 6);
  });

  hold('the days hold the work, each valve once and in order, on no more days than there are', (random) => {
    const portions = somePortions(random);
    const all = portions.reduce((sum, { qty, time }) => sum + qty * time, 0);
    const days = whole(random, 1, 12);
    const caps = { days, shift: all / days / between(random, 0.5, 1), dose: between(random, 1e4, 1e6) };
    const split = splitDays(portions, caps);
    expect(split.days.length).toBeLessThanOrEqual(days);
    const valves = split.days.flat().flatMap(({ line, qty }) => Array.from({ length: qty }, () => line.tag));
    expect(valves).toEqual(portions.flatMap(({ line, qty }) => Array.from({ length: qty }, () => line.tag)));
  });

  hold('a day passes the limit only where no split in order into those days keeps it', (random) => {
    const portions = somePortions(random).map((portion) => ({ ...portion, qty: Math.min(portion.qty, 4) }));
    const days = whole(random, 1, 4);
    const all = portions.reduce((sum, { qty, time }) => sum + qty * time, 0);
    const caps = { days, shift: all, dose: between(random, 1e4, 3e5) };
    const worst = highestDose(splitDays(portions, caps).days);
    const least = leastWorst(
      portions.flatMap(({ qty, dose }) => Array.from({ length: qty }, () => dose)),
      days,
    );
    if (least <= caps.dose) expect(worst).toBeLessThanOrEqual(caps.dose);
    else expect(worst).toBeLessThanOrEqual(least * (1 + 1e-6));
  });

  hold('filling by hours takes no more days than any shorter shift', (random) => {
    const portions = somePortions(random);
    const time = between(random, 2000, 20_000);
    const count = (room: number) => fillDays(portions, { time: room, dose: Number.POSITIVE_INFINITY }).length;
    expect(count(time * 1.5)).toBeLessThanOrEqual(count(time));
  });
});

/** By trying every split in order: the least that the worst of so many days may have. */
function leastWorst(doses: readonly number[], days: number): number {
  if (days === 1 || doses.length <= 1) return doses.reduce((sum, dose) => sum + dose, 0);
  let [least, first] = [Number.POSITIVE_INFINITY, 0];
  for (let end = 1; end <= doses.length; end += 1) {
    first += doses[end - 1] ?? 0;
    least = Math.min(least, Math.max(first, leastWorst(doses.slice(end), days - 1)));
  }
  return least;
}

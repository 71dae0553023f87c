import { describe, expect, it } from 'vitest';
import { modelToJson, parseModels } from '#lib/contracts/equipment.ts';
import { checkCoherence, matesOf } from '#lib/equipment/coherence.ts';
import type { Model } from '#lib/equipment/model.ts';
import { heldOn } from '#lib/equipment/rate-on.ts';
import { demoModels } from '#seeds/load.ts';

const MODELS = demoModels();

/** The demo catalogue with one model changed in its JSON, or taken out. */
function withChange(number: string, change: ((json: Record<string, unknown>) => void) | null): readonly Model[] {
  const list = MODELS.filter((model) => change !== null || model.number !== number).map((model) => {
    const json = structuredClone(modelToJson(model)) as unknown as Record<string, unknown>;
    if (model.number === number) change?.(json);
    return json;
  });
  const parsed = parseModels(list);
  if (!parsed.ok) throw new Error(parsed.reason.sentence);
  return parsed.value;
}

const facts = (json: Record<string, unknown>) => json.facts as Record<string, unknown>;
const told = (models: readonly Model[]) => checkCoherence(models).map(({ sentence }) => sentence);

describe('a catalogue hangs together', () => {
  it('where it is the demo house’s', () => {
    expect(told(MODELS)).toEqual([]);
  });

  it.each<[string, string, ((json: Record<string, unknown>) => void) | null, string]>([
    [
      'a coupling that joins nothing',
      'W-103',
      (json) => Object.assign(facts(json), { input: { form: 'square', size: '40', gender: 'male' } }),
      'W-103: its input square 40 male joins nothing in the catalogue',
    ],
    [
      'a head too weak for its drive',
      'H-101',
      (json) => Object.assign(facts(json), { torque_rating_nm: 2 }),
      'H-101: its rating of 2 N·m is below what D-112 gives through it at rated torque in every gear',
    ],
    [
      'a drive that no restraint bears',
      'H-348',
      (json) => Object.assign(facts(json), { ratio: 30 }),
      'D-153: with head H-348 it stalls at up to',
    ],
    ['a pack that is missing', 'S-164', null, 'D-153: its pack S-164 is not in the catalogue as a spare pack'],
    [
      'no charger',
      'D-112',
      (json) => Object.assign(facts(json).power as Record<string, unknown>, { pack_number: 'S-203' }),
      'D-112: no charger fits its pack S-203',
    ],
    [
      'packs of which nobody says the energy',
      'D-112',
      (json) => {
        delete json.lithium;
      },
      'D-112: it says nothing of its packs’ energy',
    ],
    ['no regulator', 'S-222', (json) => Object.assign(facts(json), { fits: [], kind: 'hose restraint' }), ''],
    ['no fuel can', 'S-231', null, 'D-316: no fuel can fits it'],
    ['no hose wide enough', 'S-209', null, 'D-252: no air hose has a bore of 25 mm or more'],
    [
      'a chain that holds one way only',
      'S-319',
      null,
      'R-111: its chain holds one way only and no second chain names it',
    ],
    [
      'a number that is not there',
      'S-103',
      (json) => Object.assign(facts(json), { fits: ['S-151', 'X-999'] }),
      'S-103: it says that it fits X-999, which is not in the catalogue',
    ],
    [
      'a week that costs too much',
      'H-101',
      (json) => Object.assign(json.rates as object, { week_minor: 9_000_000, four_weeks_minor: 1 }),
      'H-101: a week costs more than seven days',
    ],
    [
      'four weeks that cost too much',
      'H-101',
      (json) => Object.assign(json.rates as object, { four_weeks_minor: 9_000_000 }),
      'H-101: four weeks cost more than four times a week',
    ],
  ])('and says so where there is %s', (_name, number, change, sentence) => {
    const sentences = told(withChange(number, change));
    expect(sentences.some((one) => one.startsWith(sentence)) || sentence === '', sentences.join(' | ')).toBe(true);
  });

  it('misses both kinds of filter-regulator together', () => {
    const without = MODELS.filter(({ number }) => number !== 'S-222' && number !== 'S-226');
    expect(told(without).some((one) => one.startsWith('D-214: no filter-regulator fits it'))).toBe(true);
  });

  it('and a model names what it joins, by the end that joins', () => {
    const head = MODELS.find(({ number }) => number === 'H-101');
    if (head === undefined) return expect.fail('H-101 is not in the demo house.');
    const mates = matesOf(MODELS, head);
    expect(mates.map(({ side }) => side)).toEqual(['input', 'output']);
    expect(mates[0]?.numbers).toContain('D-112');
    expect(mates[0]?.numbers).not.toContain('D-131');
  });
});

describe('what holds on a day', () => {
  const cards = [{ starts_on: '2026-06-01' }, { starts_on: '2026-01-01' }, { starts_on: '2026-03-01' }];

  it.each([
    ['2025-12-31', undefined],
    ['2026-01-01', '2026-01-01'],
    ['2026-02-28', '2026-01-01'],
    ['2026-03-01', '2026-03-01'],
    ['2030-01-01', '2026-06-01'],
  ])('is what began last: %s', (day, held) => {
    expect(heldOn(cards, day)?.starts_on).toBe(held);
  });
});

import { describe, expect, it } from 'vitest';
import { factTexts } from '#app/(desk)/equipment/fact-texts.ts';
import { modelToJson } from '#lib/contracts/equipment.ts';
import { demoModels } from '#seeds/load.ts';

const FACTS = {
  torque_rating_nm: 270,
  reach_mm: { low: 300, high: 620 },
  fitting_time_s: 90,
  continuous_run_min: 8,
  consumption_l_min: 900,
  stays_on_wheel: true,
  sockets: [{ shape: 'square', across_flats_mm: 32 }],
  section_mm: { outer: 28, inner: 0 },
  capacity_ah: 5.5,
  needs: [],
};

describe('facts of a model in words', () => {
  it('carry their unit, in the system that is asked for', () => {
    const si = Object.fromEntries(factTexts(FACTS, 'si').map(({ label, text }) => [label, text]));
    expect(si).toEqual({
      'torque rating': '270 N·m',
      reach: '300 mm to 620 mm',
      'fitting time': '1 min 30 s',
      'continuous run': '8 min 00 s',
      consumption: '15 l/s',
      'stays on wheel': 'yes',
      sockets: 'shape square, across flats 32 mm',
      section: 'outer 28 mm, inner 0 mm',
      capacity: '5.5 Ah',
      needs: 'none',
    });
    const us = Object.fromEntries(factTexts(FACTS, 'us').map(({ label, text }) => [label, text]));
    expect(us).toMatchObject({ 'torque rating': '199 lbf·ft', reach: '11.8 in to 24.4 in', consumption: '31.8 cfm' });
  });

  it('of the whole catalogue leave no metric unit in US customary units and no bare name of one', () => {
    let told = 0;
    for (const model of demoModels()) {
      const json = modelToJson(model);
      const facts = json !== null && typeof json === 'object' && 'facts' in json ? json.facts : {};
      for (const { label, text } of factTexts({ ...Object(facts) }, 'us')) {
        expect(`${label}: ${text}`).not.toMatch(/\d (N·m|mm|kg|bar|kN|l\/s)\b| (nm|mm|kg)\b/);
        told += 1;
      }
    }
    console.info(`${told} facts of the catalogue told in US customary units`);
    expect(told).toBeGreaterThan(500);
  });
});

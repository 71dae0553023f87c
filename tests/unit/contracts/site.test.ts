import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseSite, siteToJson } from '#lib/contracts/site.ts';

const defaults = { startsOn: '2027-05-03' };

function siteOf(json: unknown) {
  const site = parseSite(json, defaults);
  if (!site.ok) throw new Error(site.reason.sentence);
  return site.value;
}

function sentenceOf(json: unknown): string {
  const site = parseSite(json, defaults);
  return site.ok ? 'read' : site.reason.sentence;
}

describe('a site', () => {
  it('that says nothing has the named defaults and nothing else', () => {
    expect(siteOf({})).toEqual({
      sourcesAllowed: ['battery', 'air', 'petrol'],
      shiftHours: 8,
      crews: 1,
      personsPerCrew: 2,
      moveMinutes: 10,
      startsOn: '2027-05-03',
      days: 1,
      transport: 'road',
      operated: false,
      houseRules: [],
    });
  });

  it('gives its quantities in any unit, with basis and source', () => {
    const site = siteOf({
      air_pressure: '90 psi',
      air_flow: '100 cfm',
      altitude: '2000 ft',
      temperature: '-5-10 °C',
      noise_limit: 85,
    });
    expect(site.airPressure).toMatchObject({
      unit: 'Pa',
      basis: 'stated',
      source: 'Stated for the site: air pressure “90 psi”.',
    });
    expect(site.airPressure?.nominal).toBeCloseTo(620_528.156, 2);
    expect(site.airFlow?.nominal).toBeCloseTo(0.047_194_745, 8);
    expect(site.altitude?.nominal).toBe(609.6);
    expect(site.temperature).toMatchObject({ low: -5, high: 10 });
    expect(site.noiseLimit).toMatchObject({ nominal: 85, unit: 'dB' });
  });

  it.each([
    [{ crew: 2 }, 'Site: there is no “crew”; did you mean “crews”?'],
    [{ air_presure: '6 bar' }, 'Site: there is no “air_presure”; did you mean “air_pressure”?'],
    [{ sources: ['air'] }, 'Site: there is no “sources”; did you mean “sources_allowed”?'],
    [{ startsOn: '2027-01-01' }, 'Site: there is no “startsOn”; did you mean “starts_on”?'],
    [{ air_pressure: '600 bar' }, 'Site, air_pressure: is outside what is plausible (0.5 to 40 bar).'],
    [
      { air_pressure: 'high' },
      'Site, air_pressure: is not readable: write a number and its unit, for example “40 bar”.',
    ],
    [{ starts_on: '2027-02-30' }, 'Site, starts_on: is not a date in the form YYYY-MM-DD.'],
    [{ temperature: '900 °C' }, 'Site, temperature: is outside what is plausible (-60 to 65 °C).'],
  ])('%o is refused in a sentence', (json, sentence) => {
    expect(sentenceOf(json)).toBe(sentence);
  });

  it.each([
    null,
    7,
    'site',
    [],
    { crews: 0 },
    { crews: 1.5 },
    { days: 100_000 },
    { transport: 'rail' },
    { sources_allowed: [] },
    { operated: 'yes' },
    { shift_hours: 40 },
  ])('%o is refused', (json) => {
    expect(parseSite(json, defaults)).toMatchObject({ ok: false, reason: { code: 'site-unreadable' } });
  });

  it('every unknown key is named, not only the first', () => {
    expect(sentenceOf({ crew: 1, dayz: 2 })).toBe(
      'Site: there is no “crew”; did you mean “crews”? Site: there is no “dayz”; did you mean “days”?',
    );
  });

  it('the sites of the demo enquiries are read', () => {
    const folder = new URL('../../../seeds/enquiries/', import.meta.url);
    const files = readdirSync(folder).filter((name) => name.endsWith('.json'));
    expect(files.length).toBeGreaterThan(3);
    for (const file of files) {
      const enquiry: { readonly site: unknown } = JSON.parse(readFileSync(new URL(file, folder), 'utf8'));
      expect(sentenceOf(enquiry.site), file).toBe('read');
    }
  });

  it('written as JSON and read again it is the same site', () => {
    const text = fc.string({ minLength: 1, maxLength: 20 }).filter((value) => value.trim().length > 0);
    const cases = fc.record(
      {
        name: text,
        sources_allowed: fc.constantFrom(['air'], ['battery', 'petrol']),
        air_pressure: fc.integer({ min: 1, max: 39 }).map((value) => `${value}.37 bar`),
        air_flow: fc.constantFrom('4000 l/min', '80 cfm', '1-2 m³/min'),
        altitude: fc.constantFrom('12 m', '-100 ft', '1 to 2 km'),
        temperature: fc.constantFrom('68 °F', '-4 °C', '5 to 30 °C'),
        noise_limit: fc.integer({ min: 31, max: 139 }),
        mains_voltage: fc.constantFrom(110, 230),
        zone: fc.constantFrom('none', '1'),
        enclosed: fc.boolean(),
        crews: fc.integer({ min: 1, max: 12 }),
        days: fc.integer({ min: 1, max: 366 }),
        starts_on: fc.constant('2027-03-01'),
        transport: fc.constantFrom('road', 'air', 'sea'),
        operated: fc.boolean(),
      },
      { requiredKeys: [] },
    );
    let checked = 0;
    fc.assert(
      fc.property(cases, (json) => {
        const first = siteOf(json);
        const again = siteOf(JSON.parse(JSON.stringify(siteToJson(first))));
        const bare = (site: typeof first) =>
          JSON.parse(JSON.stringify(site, (key, value) => (key === 'source' ? '' : value)));
        expect(bare(again)).toEqual(bare(first));
        checked += 1;
      }),
      { seed: 20_260_403, numRuns: 400 },
    );
    console.info(`site JSON: ${checked} of 400 cases checked`);
    expect(checked).toBe(400);
  });

  it('keeps a zone that cannot be read as it is written, and a remark on the area beside it', () => {
    const json = {
      zone: 'red',
      gas_group: 'Group D',
      temperature_class: 'warm',
      area_remark: 'Tank field 3, see drawing',
    };
    const site = parseSite(json, defaults);
    expect(site).toMatchObject({
      ok: true,
      value: { zone: 'red', gasGroup: 'Group D', temperatureClass: 'warm', areaRemark: 'Tank field 3, see drawing' },
    });
    if (site.ok) expect(siteToJson(site.value)).toMatchObject(json);
  });
});

import { describe, expect, it } from 'vitest';
import { crewNeeds } from '#lib/checking/crew-needs.ts';
import type { CrewNeedsInput } from '#lib/checking/crew-work.ts';
import type { Site } from '#lib/duty/site.ts';
import type { DriveFacts } from '#lib/equipment/drive.ts';
import type { Model } from '#lib/equipment/model.ts';
import { crewAccessories } from '#lib/kits/carried/accessories.ts';
import { sampleSite, stated } from '#lib/rules/sample-facts.ts';
import { SAMPLE_AIR, SAMPLE_PETROL, sampleDrive } from '#lib/rules/sample-parts.ts';
import { metres, seconds } from '#lib/units/quantity.ts';
import { accessory, assemblyOf, OUTCOME_MODELS } from '#tests/support/papers/sample-outcome.ts';

const drive = (number: string, power: DriveFacts['power']): Model => sampleDrive({ number, facts: { power } });
const { power: BATTERY } = sampleDrive().facts;
const ROUND = { mainsVoltage: 230, mainsPlug: 'round' } as const;

const MODELS: readonly Model[] = [
  ...OUTCOME_MODELS,
  drive('SD-2', BATTERY),
  drive('SD-3', SAMPLE_AIR),
  drive('SD-4', SAMPLE_PETROL),
  accessory('SE-1', 'charger', { fits: ['SP-1'], mainsVoltage: 110, mainsPlug: 'yellow' }),
  accessory('SE-2', 'charger', { fits: ['SP-1'], mainsVoltage: 230, mainsPlug: 'round' }),
  accessory('SE-3', 'charger', { fits: ['SP-1'], mainsVoltage: 230, mainsPlug: 'round' }),
  accessory('SF-1', 'air hose', { hoseBore: metres(0.01), hoseLength: metres(10) }),
  accessory('SF-2', 'air hose', { hoseBore: metres(0.013), hoseLength: metres(5) }),
  accessory('SF-3', 'air hose', { hoseBore: metres(0.013), hoseLength: metres(8) }),
  accessory('SF-4', 'air hose', { hoseBore: metres(0.019), hoseLength: metres(20) }),
  accessory('SF-5', 'hose restraint'),
  accessory('SF-6', 'filter-regulator-lubricator'),
  accessory('SF-7', 'dry filter-regulator'),
  accessory('SG-1', 'fuel can', { fits: ['SD-4'] }),
  accessory('SG-2', 'flame arrester', { fits: ['other'] }),
];

/** 144 Wh a pack, a drive of 60 % and a head of 80 %: a load is 144 × 3600 × 0.6 × 0.8 = 248 832 J at the valve. */
const LOAD = 248_832;

/** What runs the drives, besides parts and lanyards. */
function runs(
  change: {
    readonly site?: Partial<Site>;
    readonly oxygen?: true;
    readonly models?: readonly Model[];
    readonly time?: number;
    /** Chargers that are there; as many as are wanted where nothing is said. */
    readonly chargers?: number;
  },
  loads: Readonly<Record<string, number>>,
): Readonly<Record<string, number>> {
  const has = () => change.chargers ?? 9;
  const input: CrewNeedsInput = {
    time: change.time ?? 3600,
    has,
    pieces: Object.entries(loads).map(([number, count]) => ({
      assembly: assemblyOf(number, { drive: number }, count * LOAD),
      qty: 1,
      oxygen: change.oxygen ?? false,
    })),
    site: sampleSite({ days: 1, ...change.site }),
    models: change.models ?? MODELS,
  };
  const needs = [...crewNeeds(input)].filter(([number]) => /^S[EFG]|SP-1$/.test(number));
  if (change.oxygen === undefined) {
    const planned = crewAccessories({ ...input, time: seconds(input.time), work: input.pieces, free: has });
    expect(Object.fromEntries(planned.map(({ item, count }) => [item, count]))).toEqual({
      ...Object.fromEntries(needs),
      'SN-1': 1,
    });
  }
  return Object.fromEntries(needs);
}

describe('what a crew needs to run its drives, counted by hand', () => {
  it('carries packs for all the work of a shift where nothing recharges them, less the two that come with the drive', () => {
    expect(runs({}, { 'SD-1': 6 })).toEqual({ 'SP-1': 4 });
    expect(runs({}, { 'SD-1': 2 })).toEqual({});
    // Three shifts of eight hours: a third of twelve loads each.
    expect(runs({ time: 24 * 3600 }, { 'SD-1': 12 })).toEqual({ 'SP-1': 2 });
  });

  it('carries packs for all the work where it is done in the first of several days', () => {
    expect(runs({ site: { days: 3 }, time: 7 * 3600 }, { 'SD-1': 12 })).toEqual({ 'SP-1': 10 });
  });

  it('counts nothing as recharged where the charger for the place is not free', () => {
    expect(runs({ site: ROUND }, { 'SD-1': 10 })).toEqual({ 'SE-2': 1, 'SP-1': 2 });
    expect(runs({ site: ROUND, chargers: 0 }, { 'SD-1': 10 })).toEqual({ 'SE-2': 1, 'SP-1': 8 });
  });

  it('lets two kinds of pack not share a charger that fits both', () => {
    const both = accessory('SE-0', 'charger', { fits: ['SP-1', 'SP-2'], mainsVoltage: 230, mainsPlug: 'round' });
    const models = [
      both,
      ...MODELS.filter(({ number }) => number !== 'SD-2' && number !== 'SE-2'),
      drive('SD-2', BATTERY.kind === 'battery' ? { ...BATTERY, packNumber: 'SP-2' } : BATTERY),
    ];
    const loads = { 'SD-1': 10, 'SD-2': 10 };
    expect(runs({ site: ROUND, models }, loads)).toEqual({ 'SE-0': 2, 'SP-1': 2 });
    // One for the two: it serves the packs that are named first, and the others are not recharged.
    expect(runs({ site: ROUND, models, chargers: 1 }, loads)).toEqual({ 'SE-0': 2, 'SP-1': 2 });
    expect(runs({ site: ROUND, models, chargers: 0 }, loads)).toEqual({ 'SE-0': 2, 'SP-1': 8 });
  });

  it('adds the work of drives that share a pack', () => {
    // Six loads each: twelve packs, of which four come with the drives.
    expect(runs({}, { 'SD-1': 6, 'SD-2': 6 })).toEqual({ 'SP-1': 8 });
  });

  it('takes the first charger for the plug and fewer packs where one recharges', () => {
    // Ten loads in eight hours are 48 minutes apart, recharging takes 60: at the ninth change, after 432, six are charged, so it takes four.
    expect(runs({ site: ROUND }, { 'SD-1': 10 })).toEqual({ 'SE-2': 1, 'SP-1': 2 });
    expect(runs({ site: ROUND }, { 'SD-1': 4 })).toEqual({ 'SE-2': 1 });
  });

  it('counts a cold pack for less', () => {
    // At 0 °C a pack gives 0.8: four loads are five packs.
    expect(runs({ site: { temperature: stated('°C', 0) } }, { 'SD-1': 4 })).toEqual({ 'SP-1': 3 });
  });

  it('takes the thinnest hose that is wide enough, in its longest length, to reach 20 m, with a restraint each and a filter', () => {
    expect(runs({}, { 'SD-3': 1 })).toEqual({ 'SF-3': 3, 'SF-5': 3, 'SF-6': 1 });
    expect(runs({ oxygen: true }, { 'SD-3': 1 })).toEqual({ 'SF-3': 3, 'SF-5': 3, 'SF-7': 1 });
  });

  it('takes a restraint for a wide connection even where the house has no hose', () => {
    const models = MODELS.filter((model) => model.role !== 'accessory' || model.facts.kind !== 'air hose');
    expect(runs({ models }, { 'SD-3': 1 })).toEqual({ 'SF-5': 1, 'SF-6': 1 });
  });

  it('takes what fits a petrol drive', () => {
    expect(runs({}, { 'SD-4': 1 })).toEqual({ 'SG-1': 1 });
  });
});

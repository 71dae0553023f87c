import { describe, expect, it } from 'vitest';
import { checkPacking, type PackedFigures, type PackingFacts } from '#lib/checking/check-packing.ts';
import type { Model } from '#lib/equipment/model.ts';
import { sampleDrive, sampleHead, sampleRestraint } from '#lib/rules/sample-parts.ts';
import { metres, wattHours } from '#lib/units/quantity.ts';
import { codesOf } from '#tests/support/discrepancy-codes.ts';
import { mutationsOf } from '#tests/support/mutate.ts';

const MODELS: readonly Model[] = [
  { ...sampleDrive({ mass_kg: 9 }), lithium: { energy: wattHours(180), packs: 2 } },
  sampleHead({ mass_kg: 5 }),
  sampleRestraint({ mass_kg: 30 }),
];

/** By hand: a case of 2 kg with a drive of 9 and a head of 5 is 16 kg; another with a head is 7; the restraint goes loose. */
const PACKED: readonly PackedFigures[] = [
  {
    label: 1,
    name: 'Case',
    pieces: [
      { number: 'SD-1', serial: 'D7' },
      { number: 'SH-1', serial: 'H1' },
    ],
    mass: 16,
    lift: { mark: 'one person' },
    wattHours: 360,
  },
  {
    label: 2,
    name: 'Case',
    pieces: [{ number: 'SH-1', serial: 'H2' }],
    mass: 7,
    lift: { mark: 'one person' },
    wattHours: 0,
  },
  {
    label: 3,
    name: 'loose',
    pieces: [{ number: 'SR-1', serial: null }],
    mass: 30,
    lift: { mark: 'two persons' },
    wattHours: 0,
  },
];

const FACTS: PackingFacts = {
  items: [
    { item: 'SD-1', count: 1 },
    { item: 'SH-1', count: 2 },
    { item: 'SR-1', count: 1 },
  ],
  models: MODELS,
  liftLimit: 25,
  cases: [{ name: 'Case', size: { length: metres(0.7), width: metres(0.5), height: metres(0.5) }, mass: 2 }],
  packed: PACKED,
};

const first = (change: Partial<PackedFigures>): Partial<PackingFacts> => ({
  packed: PACKED.map((one, index) => (index === 0 ? { ...one, ...change } : one)),
});
const codes = (change: Partial<PackingFacts>) => checkPacking({ ...FACTS, ...change }).map(({ code }) => code);

const VIOLATIONS: Readonly<Record<string, Partial<PackingFacts>>> = {
  'packing-piece-missing': { packed: PACKED.slice(1) },
  'packing-piece-surplus': { items: FACTS.items.slice(1) },
  'packing-unit-twice': first({
    pieces: [
      { number: 'SD-1', serial: 'D7' },
      { number: 'SH-1', serial: 'H2' },
    ],
  }),
  'packing-label': first({ label: 2 }),
  'packing-mass': first({ mass: 15 }),
  'packing-watt-hours': first({ wattHours: 180 }),
  'packing-lift-mark': first({ lift: { mark: 'two persons' } }),
  'packing-loose': first({ name: 'a box of nobody' }),
  'packing-too-heavy': { liftLimit: 15 },
  'packing-no-room': { cases: FACTS.cases.map((one) => ({ ...one, size: { ...one.size, height: metres(0.32) } })) },
};

describe('checking what was packed', () => {
  it('finds nothing wrong with a load packed by hand', () => expect(checkPacking(FACTS)).toEqual([]));

  it.each(Object.entries(VIOLATIONS))('says %s', (code, change) => expect(codes(change)).toContain(code));

  it('has a violation for every kind of discrepancy that its sources can tell', () => {
    expect(Object.keys(VIOLATIONS).toSorted()).toEqual(codesOf('packing'));
  });

  it('notices every change of a number, a name or an entry', () => {
    // Another serial number of the same model is another sound load; stock and the booking say which units are this crew's.
    const mutations = mutationsOf(PACKED).filter(({ at }) => !at.endsWith('.serial'));
    const missed = mutations.filter((one) => codes({ packed: one.value }).length === 0);
    console.info(`packing mutations: ${mutations.length} made, ${mutations.length - missed.length} noticed`);
    expect(missed.map((one) => `${one.at} ${one.how}`)).toEqual([]);
    expect(mutations.length).toBeGreaterThan(35);
  });
});

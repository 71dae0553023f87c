import { describe, expect, it } from 'vitest';
import { packEnergy } from '#lib/engineering/energy.ts';
import { namedGas, temperatureClassFor } from '#lib/engineering/gas-classes.ts';
import { suitsPlace } from '#lib/engineering/hazardous-marking.ts';
import { parseMarking } from '#lib/engineering/plate-marking.ts';
import {
  ADR_POINT_LIMIT,
  adrPoints,
  lithiumGoods,
  petrolGoods,
  petrolMachineGoods,
} from '#lib/engineering/transport.ts';
import { celsius, litres, volts, wattHours } from '#lib/units/quantity.ts';

describe('marking for explosive atmospheres', () => {
  // 2014/34/EU Annex II 1.0.5, IEC 60079-0 clause 29, ISO 80079-36 clause 11; the strings are chosen here or from memory.
  it.each([
    [
      'II 2 G Ex db IIB T4 Gb',
      {
        category: '2',
        atmosphere: 'G',
        protections: ['db'],
        subgroup: 'IIB',
        temperature: 'T4',
        level: 'Gb',
        special: false,
      },
    ],
    [
      'II 1 G Ex ia IIC T4 Ga',
      {
        category: '1',
        atmosphere: 'G',
        protections: ['ia'],
        subgroup: 'IIC',
        temperature: 'T4',
        level: 'Ga',
        special: false,
      },
    ],
    [
      'II 3 G Ex ec IIC T3 Gc',
      {
        category: '3',
        atmosphere: 'G',
        protections: ['ec'],
        subgroup: 'IIC',
        temperature: 'T3',
        level: 'Gc',
        special: false,
      },
    ],
    [
      'II 2 G Ex db h IIA T4 Gb',
      {
        category: '2',
        atmosphere: 'G',
        protections: ['db', 'h'],
        subgroup: 'IIA',
        temperature: 'T4',
        level: 'Gb',
        special: false,
      },
    ],
    [
      'II 2 D Ex tb IIIC T135°C Db',
      {
        category: '2',
        atmosphere: 'D',
        protections: ['tb'],
        subgroup: 'IIIC',
        temperature: 'T135°C',
        level: 'Db',
        special: false,
      },
    ],
    [
      'II 3 G Ex h IIA T3 Gc X',
      {
        category: '3',
        atmosphere: 'G',
        protections: ['h'],
        subgroup: 'IIA',
        temperature: 'T3',
        level: 'Gc',
        special: true,
      },
    ],
  ])('reads %s', (text, parts) => {
    expect(parseMarking(text)).toMatchObject({ ok: true, value: { group: 'II', ...parts } });
  });

  it('refuses a category that its own level contradicts (IEC 60079-0, from memory)', () => {
    expect(parseMarking('II 2 G Ex db IIB T4 Gc')).toMatchObject({
      ok: false,
      reason: { code: 'marking-contradictory' },
    });
  });

  it('reads an old mark and calls it old (EN 13463 letters, from memory)', () => {
    expect(parseMarking('II 2 G EEx c IIC T4')).toMatchObject({ ok: true, value: { old: true, level: null } });
  });
});

describe('zones and categories', () => {
  // 1999/92/EC Annex II B as given in the HyPer installation guidance for hydrogen, section 4.4.2, and a public table of zones, categories and levels.
  const allowed: Readonly<Record<string, readonly string[]>> = {
    '0': ['1 G'],
    '1': ['1 G', '2 G'],
    '2': ['1 G', '2 G', '3 G'],
    '20': ['1 D'],
    '21': ['1 D', '2 D'],
    '22': ['1 D', '2 D', '3 D'],
  };
  const markings: Readonly<Record<string, string>> = {
    '1 G': 'II 1 G Ex h IIC T6 Ga',
    '2 G': 'II 2 G Ex h IIC T6 Gb',
    '3 G': 'II 3 G Ex h IIC T6 Gc',
    '1 D': 'II 1 D Ex h IIIC T80°C Da',
    '2 D': 'II 2 D Ex h IIIC T80°C Db',
    '3 D': 'II 3 D Ex h IIIC T80°C Dc',
  };

  it.each(Object.keys(allowed))('zone %s takes only the categories that may stand in it', (zone) => {
    const place = { zone, gasGroup: 'IIC', temperatureClass: 'T6' };
    const taken = Object.entries(markings).filter(([, marking]) => suitsPlace({ marking, place }).ok);
    expect(taken.map(([category]) => category)).toEqual(allowed[zone]);
  });

  // IEC 60079 gas groups, public knowledge-base page: IIC for all, IIB for IIA and IIB, IIA for IIA.
  it.each([
    ['IIA', ['IIA']],
    ['IIB', ['IIA', 'IIB']],
    ['IIC', ['IIA', 'IIB', 'IIC']],
  ])('equipment of group %s may stand in %s', (group, places) => {
    const marking = `II 2 G Ex h ${group} T6 Gb`;
    const taken = ['IIA', 'IIB', 'IIC'].filter(
      (gasGroup) => suitsPlace({ marking, place: { zone: '1', gasGroup, temperatureClass: 'T6' } }).ok,
    );
    expect(taken).toEqual(places);
  });

  it('T4 equipment serves T1 to T4 and not T5 or T6 (IEC 60079-14, from memory)', () => {
    const marking = 'II 2 G Ex h IIC T4 Gb';
    const taken = ['T1', 'T2', 'T3', 'T4', 'T5', 'T6'].filter(
      (temperatureClass) => suitsPlace({ marking, place: { zone: '1', gasGroup: 'IIC', temperatureClass } }).ok,
    );
    expect(taken).toEqual(['T1', 'T2', 'T3', 'T4']);
  });

  // NEC Article 500, table of temperature codes (read in a secondary source); the marked degrees are chosen here.
  it.each([
    ['T2', 300],
    ['T2A', 280],
    ['T2B', 260],
    ['T2C', 230],
    ['T2D', 215],
    ['T3', 200],
    ['T3B', 165],
    ['T3C', 160],
    ['T4', 135],
    ['T4A', 120],
    ['T5', 100],
  ])('a place of %s takes a surface of %d °C and not a degree more', (temperatureClass, highest) => {
    const taken = [highest, highest + 1].map(
      (surface) =>
        suitsPlace({
          marking: `II 2 G Ex h IIC T${surface}°C Gb`,
          place: { zone: '1', gasGroup: 'IIA', temperatureClass },
        }).ok,
    );
    expect(taken).toEqual([true, false]);
  });

  // Worked out from the three rules above.
  it.each([
    ['1', 'IIA', 'T3', 'II 2 G Ex db IIB T4 Gb', true],
    ['0', 'IIA', 'T3', 'II 2 G Ex db IIB T4 Gb', false],
    ['2', 'IIC', 'T1', 'II 2 G Ex db IIB T4 Gb', false],
    ['1', 'IIC', 'T2', 'II 2 G Ex h IIC T4 Gb', true],
    ['1', 'IIB', 'T4', 'II 3 G Ex ec IIC T4 Gc', false],
    ['2', 'IIB', 'T4', 'II 3 G Ex ec IIC T4 Gc', true],
    ['1', 'IIC', 'T6', 'II 2 G Ex h IIC T4 Gb', false],
    ['1', 'IIA', 'T1', 'II 2 D Ex tb IIIC T135°C Db', false],
    ['2', 'IIA', 'T3', null, false],
    ['none', 'IIA', 'T1', null, true],
  ])('zone %s, %s, %s with %s: %s', (zone, gasGroup, temperatureClass, marking, may) => {
    expect(suitsPlace({ marking, place: { zone, gasGroup, temperatureClass } }).ok).toBe(may);
  });

  it('equipment for zone 1 is not taken into Division 1, nor equipment for Division 2 into zone 1 (NEC 501.5 and 505.9, from memory)', () => {
    const easiest = { gasGroup: 'IIA', temperatureClass: 'T1' };
    const zoned = suitsPlace({
      marking: 'II 2 G Ex db IIC T6 Gb',
      place: { zone: 'Class I Division 1', ...easiest },
    });
    expect(zoned).toMatchObject({ ok: false, reason: { code: 'zone-north-american' } });
    const divided = suitsPlace({ marking: 'Class I, Division 2, Group D, T4', place: { zone: '1', ...easiest } });
    expect(divided).toMatchObject({ ok: false, reason: { code: 'marking-north-american' } });
  });

  // NEC 500.6 and 505.6 (from memory): groups A (acetylene) and B (hydrogen) of the divisions are IIC.
  it.each(['A', 'B'])('a place of group %s asks for IIC, as the North American group does', (gasGroup) => {
    const taken = ['IIA', 'IIB', 'IIC'].filter(
      (group) =>
        suitsPlace({
          marking: `II 2 G Ex h ${group} T6 Gb`,
          place: { zone: '1', gasGroup, temperatureClass: 'T1' },
        }).ok,
    );
    expect(taken).toEqual(['IIC']);
  });

  it('an unmarked air motor is not exempt (2014/34/EU Art. 1 and 2, ISO 80079-36, from memory)', () => {
    const refused = suitsPlace({ marking: null, place: { zone: '2', gasGroup: null, temperatureClass: null } });
    expect(refused).toMatchObject({ ok: false, reason: { code: 'marking-missing' } });
  });
});

describe('the gas that a valve carries', () => {
  // In the way of IEC 60079-20-1, annex B; groups and ignition temperatures from memory, editions differ by up to 20 °C.
  it.each([
    ['hydrogen', 'IIC', 560, 'T1'],
    ['acetylene', 'IIC', 305, 'T2'],
    ['carbon disulphide', 'IIC', 90, 'T6'],
    ['diethyl ether', 'IIB', 175, 'T4'],
    ['ethylene', 'IIB', 440, 'T2'],
    ['hydrogen sulphide', 'IIB', 260, 'T3'],
    ['methane', 'IIA', 600, 'T1'],
    ['ammonia', 'IIA', 630, 'T1'],
    ['petrol', 'IIA', 280, 'T3'],
  ])(
    '%s needs group %s and, igniting at %d °C, class %s (from memory)',
    (medium, group, ignition, temperatureClass) => {
      const gas = namedGas(medium);
      expect(gas).toMatchObject({ gasGroup: group, ignition });
      expect(temperatureClassFor(celsius(ignition))).toBe(temperatureClass);
    },
  );
});

describe('dangerous goods', () => {
  // The plate's volts times ampere-hours; 7.4 V × 1.1 Ah and 3.7 V × 10 Ah are published, the others chosen here.
  it.each([
    [7.4, 1.1, 8.14],
    [3.7, 10, 37],
    [18, 5, 90],
    [18, 6, 108],
    [36, 9, 324],
    [56, 5, 280],
  ])('%d V × %d Ah = %d Wh', (voltage, capacity_ah, energy) => {
    expect(packEnergy({ voltage: volts(voltage), capacity_ah })).toBeCloseTo(energy, 9);
  });

  // ADR/IMDG special provision 188, thresholds read; cases chosen here.
  it.each([
    [90, 'with equipment', 'UN 3481', 'small batteries'],
    [100, 'alone', 'UN 3480', 'small batteries'],
    [108, 'alone', 'UN 3480', 'fully regulated'],
    [324, 'alone', 'UN 3480', 'fully regulated'],
  ] as const)('%d Wh %s: %s, %s', (energy, packing, unNumber, route) => {
    expect(lithiumGoods({ energy: wattHours(energy), packing, mode: 'road' })).toMatchObject({
      unNumber,
      route,
      hazardClass: '9',
    });
  });

  it('IATA packing instruction 965: packs alone by air only on cargo aircraft at no more than 30 % charge', () => {
    const { sentence } = lithiumGoods({ energy: wattHours(90), packing: 'alone', mode: 'air' });
    expect(sentence).toMatch(/cargo aircraft only/);
    expect(sentence).toMatch(/30 %/);
  });

  it('ADR special provision 363: a drained machine that cannot run is not subject to ADR', () => {
    expect(petrolMachineGoods('drained').route).toBe('not subject when drained');
    expect(petrolMachineGoods('fuel in tank').route).toBe('regulated');
  });

  it('UN 1203 PETROL, 3, II, (D/E) (HSE carriage manual; packing group and tunnel code from memory)', () => {
    expect(petrolGoods(litres(10))).toMatchObject({ unNumber: 'UN 1203', hazardClass: '3' });
    expect(petrolGoods(litres(10)).sentence).toContain('UN 1203 PETROL, 3, II, (D/E)');
  });

  // ADR 1.1.3.6: factors 50, 3, 1, 0 and limit 1000; loads chosen here.
  it.each([
    [[['2', 60]], 180, true],
    [[['2', 334]], 1002, false],
    [
      [
        ['2', 40],
        ['2', 25],
      ],
      195,
      true,
    ],
    [
      [
        ['2', 200],
        ['2', 100],
        ['3', 50],
      ],
      950,
      true,
    ],
    [[['1', 20]], 1000, true],
    [[['2', 333]], 999, true],
  ] as const)('load %j has %d points, exempt: %s', (load, points, within) => {
    const found = adrPoints(load.map(([category, quantity]) => ({ category, quantity })));
    expect(found).toBe(points);
    expect(found <= ADR_POINT_LIMIT).toBe(within);
  });
});

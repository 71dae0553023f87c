import { describe, expect, it } from 'vitest';
import { namedGas, temperatureClassFor } from '#lib/engineering/gas-classes.ts';
import { demandsOf } from '#lib/engineering/hazardous-marking.ts';
import { celsius } from '#lib/units/quantity.ts';

describe('gases by name', () => {
  it.each([
    ['Hydrogen make-up, 40 bar', 'hydrogen'],
    ['H2S rich amine', 'hydrogen sulphide'],
    ['hydrogen sulfide', 'hydrogen sulphide'],
    ['unleaded gasoline', 'petrol vapour'],
  ])('finds the gas in “%s”', (medium, name) => {
    expect(namedGas(medium)?.name).toBe(name);
  });

  it.each(['water', 'hydrogen peroxide', 'ethylene glycol', 'polyethylene', 'crude', ''])(
    'finds none in “%s”',
    (medium) => {
      expect(namedGas(medium)).toBeNull();
    },
  );

  it('a class is strictly colder than the gas ignites at, and below the coldest there is none', () => {
    expect(temperatureClassFor(celsius(200))).toBe('T4');
    expect(temperatureClassFor(celsius(200.1))).toBe('T3');
    expect(temperatureClassFor(celsius(85))).toBeNull();
  });

  it('a place that states nothing asks for the hardest', () => {
    expect(demandsOf({ gasGroup: null, temperatureClass: null })).toEqual({ gasGroup: 'IIC', surface_c: 85 });
  });
});

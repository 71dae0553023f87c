import { describe, expect, it } from 'vitest';
import { suitsPlace } from '#lib/engineering/hazardous-marking.ts';
import { readHazardGroup, readZone, surfaceTemperature } from '#lib/engineering/hazardous-place.ts';

const said = <Value>(read: { readonly kind: string; readonly value?: Value }): Value | string =>
  read.value ?? read.kind;

describe('what a list or site says of an explosive atmosphere', () => {
  it.each([
    ['0', '0'],
    ['zone 1', '1'],
    ['Zone-2', '2'],
    ['Z1', '1'],
    ['z21', '21'],
    ['ATEX zone 22', '22'],
    ['Ex Zone 1', '1'],
    ['gas zone 2', '2'],
    ['20 (dust)', '20'],
    ['mine', 'mine'],
    ['Firedamp', 'mine'],
    ['group I', 'mine'],
    ['', 'none'],
    ['safe', 'none'],
    ['Safe area', 'none'],
    ['none', 'none'],
    ['Non-hazardous', 'none'],
    ['non hazardous area', 'none'],
    ['unclassified', 'none'],
    ['not classified', 'none'],
    ['keine', 'none'],
    ['N/A', 'none'],
    ['Class I Div 1', 'north american'],
    ['Cl. I, Division 2, Group D', 'north american'],
    ['C1D2', 'north american'],
    ['Class I Zone 1', 'north american'],
    ['Division 1', 'north american'],
    ['3', 'unreadable'],
    ['10', 'unreadable'],
    ['1/21', 'unreadable'],
    ['zone', 'unreadable'],
    ['red', 'unreadable'],
    ['no idea', 'unreadable'],
  ])('zone “%s”: %s', (text, answer) => {
    expect(said(readZone(text))).toBe(answer);
  });

  it.each([
    ['IIA', 'IIA'],
    ['iib', 'IIB'],
    ['II C', 'IIC'],
    ['Gas group IIB', 'IIB'],
    ['IIB+H2', 'IIB+H2'],
    ['IIB plus hydrogen', 'IIB+H2'],
    ['IIIC', 'IIIC'],
    ['dust group IIIA', 'IIIA'],
    ['I', 'I'],
    ['', 'none'],
    ['Group D', 'north american'],
    ['Groups C, D', 'north american'],
    ['Class I Group B', 'north american'],
    ['A', 'unreadable'],
    ['B', 'unreadable'],
    ['IID', 'unreadable'],
    ['2B', 'unreadable'],
  ])('group “%s”: %s', (text, answer) => {
    expect(said(readHazardGroup(text))).toBe(answer);
  });

  // IEC 60079-0, table of temperature classes; the sub-classes: NEC Article 500 as reproduced in an electrical catalogue.
  it.each([
    ['T1', 450],
    ['t3', 200],
    ['T 4', 135],
    ['class T6', 85],
    ['T2B', 260],
    ['T85 °C', 85],
    ['T135C', 135],
    ['200 °C', 200],
    ['85', null],
    ['T7', null],
    ['hot', null],
    ['', null],
  ])('temperature class “%s”: %s', (text, degrees) => {
    expect(surfaceTemperature(text)).toBe(degrees);
  });

  it('what cannot be read is judged at its hardest: nothing but the best plate passes, and without a zone none does', () => {
    const fits = (marking: string | null, zone: string, gasGroup: string, temperatureClass: string): boolean =>
      suitsPlace({ marking, place: { zone, gasGroup, temperatureClass } }).ok;
    expect(fits('II 1 G Ex h IIC T6 Ga', 'red', 'IIA', 'T1')).toBe(false);
    expect(fits('II 1 G Ex h IIC T6 Ga', 'Class I Div 2', 'Group D', 'T1')).toBe(false);
    expect(fits('II 2 G Ex h IIB T6 Gb', '1', 'Group D', 'T1')).toBe(false);
    expect(fits('II 2 G Ex h IIC T6 Gb', '1', 'Group D', 'warm')).toBe(true);
    expect(fits('I M1 Ex ia I Ma', 'mine', 'I', '')).toBe(true);
    expect(fits('I M2 Ex db I Mb', 'mine', 'I', '')).toBe(false);
    expect(fits('II 1 G Ex h IIC T6 Ga', 'mine', 'I', '')).toBe(false);
  });
});

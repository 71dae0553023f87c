import { describe, expect, it } from 'vitest';
import { suitsPlace } from '#lib/engineering/hazardous-marking.ts';
import { parseMarking, parsePlate } from '#lib/engineering/plate-marking.ts';

/** Forms of IEC 60079-0:2017 clause 29 and 2014/34/EU Annex II 1.0.5; the strings are chosen here or from memory. */
describe('reading a plate', () => {
  it.each([
    ['Ex db eb IIC T6 Gb', { category: '2', atmosphere: 'G', protections: ['db', 'eb'], subgroup: 'IIC', level: 'Gb' }],
    ['Ex h IIIC T85°C Db', { category: '2', atmosphere: 'D', protections: ['h'], subgroup: 'IIIC' }],
    ['Ex ia I Ma', { group: 'I', category: 'M1', subgroup: 'I' }],
    [
      'II 2(1) G Ex db [ia Ga] IIB T4 Gb',
      { category: '2', protections: ['db'], associated: ['ia Ga'], subgroup: 'IIB', level: 'Gb' },
    ],
    ['II 2 G Ex db IIB+H2 T4 Gb', { subgroup: 'IIB+H2' }],
    ['II 2 G Ex db IIB + H₂ T4 Gb', { subgroup: 'IIB+H2' }],
    ['II 2 G Ex h IIC T6…T4 Gb X', { temperature: 'T4', special: true }],
    ['II 2 G Ex h IIC T4/T6 Gb', { temperature: 'T4' }],
    ['II 1/2 G Ex db IIC T6 Ga/Gb', { category: '2', level: 'Gb' }],
    ['CE 0123 II 2 G Ex db IIC T6 Gb IP66', { category: '2', level: 'Gb' }],
    ['II 2 G Ex db IIC T6 Gb -40 °C ≤ Ta ≤ +60 °C', { ambient: { low: -40, high: 60 } }],
    ['Ex ec IIC T4 Gc Ta = -20 °C to 50 °C', { category: '3', ambient: { low: -20, high: 50 } }],
    ['II 3 G Ex nA IIC T4 Gc', { protections: ['nA'] }],
  ])('%s', (text, parts) => {
    expect(parseMarking(text)).toMatchObject({ ok: true, value: parts });
  });

  it.each([
    ['II 2 G Ex db IIZ T4 Gb', 'marking-unreadable', '“IIZ T4 Gb”'],
    ['II 2 G Ex db IIB T7 Gb', 'marking-unreadable', '“T7 Gb”'],
    ['II 2 G Ex db IIB T4 Gd', 'marking-unreadable', '“Gd”'],
    ['II 2 G db IIB T4 Gb', 'marking-unreadable', '“db IIB T4 Gb”'],
    ['II 4 G Ex db IIB T4 Gb', 'marking-unreadable', '“II 4 G Ex db IIB T4 Gb”'],
    ['II 2 G Ex db IIB T4 Gb banana', 'marking-unreadable', '“banana”'],
    ['II 2 G Ex db', 'marking-unreadable', 'its end'],
    ['II 2 G Ex xy IIB T4 Gb', 'marking-unreadable', '(xy)'],
    ['Ex d IIC T6', 'marking-unreadable', 'neither a category'],
    ['II 2 G Ex db IIC T6 Gb U', 'marking-component', 'ends in U'],
    ['II (1) G [Ex ia Ga] IIC', 'marking-unreadable', '“II (1) G'],
    ['[Ex ia Ga] IIC', 'marking-associated', 'outside the zone'],
    ['Ex [ia Ga] IIC', 'marking-associated', 'outside the zone'],
    ['Class I Div 1 Groups C D T4', 'marking-north-american', 'North American'],
    ['AEx db IIC T6 Gb', 'marking-north-american', 'North American'],
    ['II 1 G Ex db IIC T6 Ga', 'marking-contradictory', 'db reaches level b at best'],
    ['Ex ec IIC T4 Gb', 'marking-contradictory', 'ec reaches level c at best'],
    ['', 'marking-unreadable', 'its end'],
  ])('%s is refused as %s, and the part is named', (text, code, part) => {
    const read = parseMarking(text);
    expect(read.ok ? 'read' : read.reason.code).toBe(code);
    expect(read.ok ? '' : read.reason.sentence).toContain(part);
    expect(read.ok ? '' : read.reason.sentence).toContain('counts as unmarked');
  });

  it.each([
    'II 2 G Ex db IIB T4 Gb / II 2 D Ex tb IIIC T85°C Db',
    'II 2 G Ex db IIB T4 Gb; II 2 D Ex tb IIIC T85°C Db',
    'II 2 G Ex db IIB T4 Gb\nII 2 D Ex tb IIIC T85°C Db',
    'II 2 G Ex db IIB T4 Gb II 2 D Ex tb IIIC T85°C Db',
    'Ex db IIB T4 Gb Ex tb IIIC T85°C Db',
  ])('a plate for gas and dust is read as two markings and serves both: %s', (plate) => {
    const read = parsePlate(plate);
    expect(read.ok ? read.value.map(({ atmosphere }) => atmosphere) : []).toEqual(['G', 'D']);
    const fits = (zone: string, gasGroup: string, temperatureClass: string): boolean =>
      suitsPlace({ marking: plate, place: { zone, gasGroup, temperatureClass } }).ok;
    expect(fits('1', 'IIB', 'T4')).toBe(true);
    expect(fits('21', 'IIIC', 'T85°C')).toBe(true);
    expect(fits('1', 'IIC', 'T4')).toBe(false);
    expect(fits('20', 'IIIC', 'T85°C')).toBe(false);
  });

  it('one unreadable marking spoils the plate', () => {
    const read = parsePlate('II 2 G Ex db IIB T4 Gb / II 2 D Ex zz IIIC T85°C Db');
    expect(read.ok ? '' : read.reason.sentence).toContain('(zz)');
  });

  it('IIB with hydrogen stands between IIB and IIC, either way', () => {
    const fits = (marking: string, gasGroup: string): boolean =>
      suitsPlace({ marking, place: { zone: '1', gasGroup, temperatureClass: 'T4' } }).ok;
    expect(fits('II 2 G Ex db IIB+H2 T4 Gb', 'IIB')).toBe(true);
    expect(fits('II 2 G Ex db IIB+H2 T4 Gb', 'IIB+H2')).toBe(true);
    expect(fits('II 2 G Ex db IIB+H2 T4 Gb', 'IIC')).toBe(false);
    expect(fits('II 2 G Ex db IIB T4 Gb', 'IIB+H2')).toBe(false);
    expect(fits('II 2 G Ex db IIC T4 Gb', 'IIB+H2')).toBe(true);
  });

  it('what the brackets supply elsewhere never lifts a part into a better zone', () => {
    const answer = suitsPlace({
      marking: 'II 2(1) G Ex db [ia Ga] IIB T4 Gb',
      place: { zone: '0', gasGroup: 'IIB', temperatureClass: 'T4' },
    });
    expect(answer.ok ? '' : answer.reason.code).toBe('marking-category');
  });

  it('a plate for narrower air than the place may have is refused', () => {
    const answer = suitsPlace({
      marking: 'Ex db IIC T6 Gb Ta -10 to +40 °C',
      place: { zone: '1', gasGroup: 'IIC', temperatureClass: 'T6' },
    });
    expect(answer.ok ? '' : answer.reason.code).toBe('marking-ambient');
  });
});

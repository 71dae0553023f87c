import { describe, expect, it } from 'vitest';
import { suitsPlace, zoneName } from '#lib/engineering/hazardous-marking.ts';
import { parseMarking } from '#lib/engineering/plate-marking.ts';

const at = (zone: string, gasGroup: string | null = null, temperatureClass: string | null = null) => ({
  zone,
  gasGroup,
  temperatureClass,
});
const codeOf = (marking: string | null, place: ReturnType<typeof at>) => {
  const answer = suitsPlace({ marking, place });
  return answer.ok ? 'allowed' : answer.reason.code;
};

describe('hazardous marking', () => {
  it.each(['none', 'None', '', 'safe area', 'unclassified', 'n/a'])('takes “%s” as no zone', (zone) => {
    expect(zoneName(zone)).toBeNull();
    expect(codeOf(null, at(zone))).toBe('allowed');
  });

  it.each([
    ['Zone 1', '1'],
    ['zone 22', '22'],
    ['ATEX zone 0', '0'],
    ['2', '2'],
  ])('reads zone %s', (text, zone) => {
    expect(zoneName(text)).toBe(zone);
  });

  it('names why equipment is refused', () => {
    expect(codeOf(null, at('2'))).toBe('marking-missing');
    expect(codeOf('explosion proof', at('2'))).toBe('marking-unreadable');
    expect(codeOf('II 2 D Ex h IIC T4 Gb', at('1'))).toBe('marking-contradictory');
    expect(codeOf('II 3 G Ex h IIC T6 Gc', at('1'))).toBe('marking-category');
    expect(codeOf('II 2 G Ex h IIB T6 Gb', at('1', 'IIC', 'T1'))).toBe('marking-gas-group');
    expect(codeOf('II 2 G Ex h IIC T3 Gb', at('1', 'IIA', 'T4'))).toBe('marking-temperature-class');
    expect(codeOf('I M2 Ex h I Mb', at('1'))).toBe('marking-category');
  });

  it('refuses where the place is named by something that is no zone', () => {
    expect(codeOf('II 1 G Ex h IIC T6 Ga', at('red area'))).toBe('zone-unknown');
    expect(codeOf('II 1 G Ex h IIC T6 Ga', at('Division 1'))).toBe('zone-north-american');
  });

  it('takes an unknown gas group and temperature class at their hardest, and says so', () => {
    expect(codeOf('II 2 G Ex h IIC T6 Gb', at('1'))).toBe('allowed');
    const refused = suitsPlace({ marking: 'II 2 G Ex h IIB T6 Gb', place: at('1') });
    expect(refused.ok ? '' : refused.reason.sentence).toContain('not known');
    const warm = suitsPlace({ marking: 'II 2 G Ex h IIC T4 Gb', place: at('1') });
    expect(warm.ok ? '' : warm.reason.sentence).toContain('not known');
  });

  it('reads a North American temperature code of the place as the degrees it stands for', () => {
    expect(codeOf('II 2 G Ex h IIC T4 Gb', at('1', 'IIA', 'T3C'))).toBe('allowed');
    expect(codeOf('II 2 G Ex h IIC T3 Gb', at('1', 'IIA', 'T3C'))).toBe('marking-temperature-class');
    expect(codeOf('II 2 G Ex h IIC T4 Gb', at('1', 'IIA', 't4a'))).toBe('marking-temperature-class');
  });

  it('a mark without temperature class never serves a gas zone', () => {
    expect(codeOf('II 2 G Ex h IIC Gb', at('1', 'IIA', 'T1'))).toBe('marking-temperature-class');
  });

  it('bare II covers all gas groups', () => {
    expect(codeOf('II 2 G Ex h II T4 Gb', at('1', 'IIC', 'T4'))).toBe('allowed');
  });

  it('a bare letter may be a North American group, where A and B are the hardest, so it is taken at its hardest', () => {
    for (const group of ['A', 'B', 'C', 'group b', 'Gas group A']) {
      expect(codeOf('II 2 G Ex db IIB T6 Gb', at('1', group, 'T1')), group).toBe('marking-gas-group');
      expect(codeOf('II 2 G Ex db IIC T6 Gb', at('1', group, 'T1')), group).toBe('allowed');
    }
    expect(codeOf('II 2 G Ex db IIA T6 Gb', at('1', 'group IIA', 'T1'))).toBe('allowed');
    const refused = suitsPlace({ marking: 'II 2 G Ex db IIA T6 Gb', place: at('1', 'A', 'T1') });
    expect(refused.ok ? '' : refused.reason.sentence).toContain('may be a North American group');
    expect(codeOf('II 2 D Ex tb IIIB T85°C Db', at('21', 'B', 'T85°C'))).toBe('allowed');
  });

  it('reads tight and spread spelling alike', () => {
    expect(parseMarking(' II 2G  Ex db IIB T4 Gb ')).toEqual(parseMarking('II 2 G Ex db IIB T4 Gb'));
  });

  it('takes a gas group or temperature class that cannot be read at its hardest, and says so', () => {
    for (const group of ['banana', 'B1', 'IIB+H2', 'D', ''])
      expect(codeOf('II 2 G Ex db IIB T6 Gb', at('1', group, 'T1')), group).toBe('marking-gas-group');
    for (const heat of ['banana', 'T9', 'T0', '4', ''])
      expect(codeOf('II 2 G Ex db IIC T4 Gb', at('1', 'IIA', heat)), heat).toBe('marking-temperature-class');
    expect(codeOf('II 2 G Ex db IIC T6 Gb', at('1', 'banana', 'banana'))).toBe('allowed');
    const refused = suitsPlace({ marking: 'II 2 G Ex db IIC T4 Gb', place: at('1', 'IIA', 'banana') });
    expect(refused.ok ? '' : refused.reason.sentence).toContain('“banana” is no temperature class that can be read');
  });

  it('holds a surface temperature in degrees against a class, by its degrees and not by its first digit', () => {
    expect(codeOf('II 2 G Ex db IIC T450°C Gb', at('1', 'IIA', 'T4'))).toBe('marking-temperature-class');
    expect(codeOf('II 2 G Ex db IIC T135°C Gb', at('1', 'IIA', 'T4'))).toBe('allowed');
  });

  it('judges group and surface temperature in dust zones too', () => {
    expect(codeOf('II 2 D Ex tb IIIC T85°C Db', at('21', 'IIIC', 'T85°C'))).toBe('allowed');
    expect(codeOf('II 2 D Ex tb IIIA T85°C Db', at('21', 'IIIC', 'T85°C'))).toBe('marking-gas-group');
    expect(codeOf('II 2 D Ex tb IIIC T400°C Db', at('21', 'IIIC', 'T 85 °C'))).toBe('marking-temperature-class');
    expect(codeOf('II 2 D Ex tb IIIC Db', at('21', 'IIIA', 'T300°C'))).toBe('marking-temperature-class');
    expect(codeOf('II 2 D Ex tb IIIB T85°C Db', at('22'))).toBe('marking-gas-group');
    expect(codeOf('II 2 D Ex tb IIIC T135°C Db', at('22'))).toBe('marking-temperature-class');
  });

  it('refuses a plate whose level denies its category in mines, whose groups disagree, or whose protection is unknown', () => {
    const code = (marking: string) => {
      const read = parseMarking(marking);
      return read.ok ? 'sound' : read.reason.code;
    };
    expect(code('I M1 Ex db I Mb')).toBe('marking-contradictory');
    expect(code('I M2 Ex db I Mb')).toBe('sound');
    expect(code('I M2 Ex db IIB Mb')).toBe('marking-contradictory');
    expect(code('II 2 G Ex zz IIC T6 Gb')).toBe('marking-unreadable');
  });
});

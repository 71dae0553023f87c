import { describe, expect, it } from 'vitest';
import { parseMarking, suitsPlace, zoneName } from '#lib/engineering/hazardous-marking.ts';

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
    expect(codeOf('II 1 G Ex h IIC T6 Ga', at('Division 1'))).toBe('zone-unknown');
  });

  it('takes an unknown gas group and temperature class at their hardest, and says so', () => {
    expect(codeOf('II 2 G Ex h IIC T6 Gb', at('1'))).toBe('allowed');
    const refused = suitsPlace({ marking: 'II 2 G Ex h IIB T6 Gb', place: at('1') });
    expect(refused.ok ? '' : refused.reason.sentence).toContain('not known');
    const warm = suitsPlace({ marking: 'II 2 G Ex h IIC T4 Gb', place: at('1') });
    expect(warm.ok ? '' : warm.reason.sentence).toContain('not known');
  });

  it('a mark without temperature class never serves a gas zone', () => {
    expect(codeOf('II 2 G Ex h IIC Gb', at('1', 'IIA', 'T1'))).toBe('marking-temperature-class');
  });

  it('bare II covers all gas groups, groups may be written without the II', () => {
    expect(codeOf('II 2 G Ex h II T4 Gb', at('1', 'C', 'T4'))).toBe('allowed');
  });

  it('reads tight and spread spelling alike', () => {
    expect(parseMarking(' II 2G  Ex db IIB T4 Gb ')).toEqual(parseMarking('II 2 G Ex db IIB T4 Gb'));
  });
});

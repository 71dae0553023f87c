import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { lineOf, PLAIN_SITE, sayFact } from '#tests/support/lists/duty-lines.ts';

const asked = (place: Parameters<typeof lineOf>[0], site: Partial<typeof PLAIN_SITE> = {}) =>
  assessDuty({ line: lineOf(place), site: { ...PLAIN_SITE, ...site } }).findings.filter(({ id }) =>
    id.startsWith('place-'),
  );

describe('zone, gas group and temperature class of a line or its site', () => {
  it('what can be read asks nothing', () => {
    expect(
      asked({ place: { zone: sayFact('Z1'), gasGroup: sayFact('IIB+H2'), temperatureClass: sayFact('T85 °C') } }),
    ).toEqual([]);
    expect(asked({ place: { zone: sayFact('non-hazardous') } })).toEqual([]);
    expect(asked({})).toEqual([]);
  });

  it('what cannot be read names the column, what is taken and what to write', () => {
    const findings = asked({
      place: { zone: sayFact('red'), gasGroup: sayFact('B'), temperatureClass: sayFact('warm') },
    });
    expect(findings.map(({ about, sentence }) => [about, sentence])).toEqual([
      [
        ['zone'],
        'Zone “red” cannot be read; until then nothing electrical or moving is passed for it. Write 0, 1, 2 (gas), 20, 21, 22 (dust), mine (firedamp), or none.',
      ],
      [
        ['gas_group'],
        'Gas group “B” cannot be read; IIC or IIIC, the hardest, is taken. Write IIA, IIB, IIB+H2, IIC (gas), IIIA, IIIB, IIIC (dust), or I (firedamp).',
      ],
      [
        ['temperature_class'],
        'Temperature class “warm” cannot be read; T6 (85 °C), the hardest, is taken. Write T1 to T6, or the highest surface temperature such as T85 °C.',
      ],
    ]);
  });

  it('a North American class is recognised and answered, also where the site says it', () => {
    const [finding] = asked({}, { zone: 'Class I Div 1' });
    expect(finding?.sentence).toContain('“Class I Div 1” is North American');
    expect(finding?.sentence).toContain('It is said for the whole site.');
  });

  it('a line that says its own zone is not asked about the site’s', () => {
    expect(asked({ place: { zone: sayFact('2') } }, { zone: 'red' })).toEqual([]);
  });

  it('a place that is said to have no zone is no plant by that alone', () => {
    const plain = assessDuty({ line: lineOf(), site: PLAIN_SITE });
    const safe = assessDuty({ line: lineOf({ place: { zone: sayFact('none') } }), site: PLAIN_SITE });
    expect(safe.opening).toEqual(plain.opening);
  });
});

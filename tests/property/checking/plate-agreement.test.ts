import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mayStand } from '#lib/checking/plate-check.ts';
import { suitsPlace } from '#lib/engineering/hazardous-marking.ts';
import { holdsFor } from '#tests/support/checked-property.ts';

const pick = (words: string): fc.Arbitrary<string> => fc.constantFrom(...words.split('|'));

const gas = fc.tuple(
  pick('II 1 G |II 2 G |II 3 G |II 2G |II 2(1) G |II 1/2 G |II (1) G |'),
  pick('Ex|EEx|ex|'),
  pick('db|h|ia|ec|db eb|nA|db [ia Ga]|[ia Ga]|zz|d'),
  pick('IIA|IIB|IIC|II|IIB+H2|IIB + H2|IIIC|IIZ'),
  pick('T1|T3|T4|T6|T135°C|T 85 °C|T6…T4|T4/T6|T9|'),
  pick('Ga|Gb|Gc|Db|Ga/Gb||Gx'),
  pick('| X| U| IP66| -40 °C ≤ Ta ≤ +60 °C| Ta -10 to +40 °C| banana'),
);
const dust = fc.tuple(
  pick('II 1 D |II 2 D |II 3 D |II 2D |'),
  pick('Ex'),
  pick('tb|h|tc|ta'),
  pick('IIIA|IIIB|IIIC|IIC'),
  pick('T85°C|T135 °C|T300°C|T4|'),
  pick('Da|Db|Dc|Gb|'),
  pick('| X'),
);
const mines = fc.constantFrom(
  'I M1 Ex ia I Ma',
  'I M2 Ex db I Mb',
  'I M1 Ex db I Mb',
  'Ex ia I Ma',
  'I M2 Ex db IIB Mb',
);
const text = ([category, mark, codes, group, heat, level, end]: readonly string[]): string =>
  `${category}${mark} ${codes} ${group} ${heat} ${level}${end}`.replace(/ +/g, ' ').trim();
const plates = fc.oneof(
  gas.map(text),
  dust.map(text),
  mines,
  fc.tuple(gas.map(text), pick(' / |; | '), dust.map(text)).map((parts) => parts.join('')),
  fc.constantFrom(null, '', 'Class I Div 1 Groups C D T4', 'explosion proof', '[Ex ia Ga] IIC'),
);
const spots = fc.record({
  zone: pick(
    '0|1|2|20|21|22|zone 1|Z2|ATEX zone 21|gas zone 2|mine|none|safe area|non-hazardous||red|Class I Div 2|1/21',
  ),
  gasGroup: fc.option(pick('I|IIA|IIB|IIC|IIB+H2|II B + H2|gas group IIA|IIIA|IIIB|IIIC|A|B|group B|Group D|banana|')),
  temperatureClass: fc.option(pick('T1|T2|T3|T3C|T4|T6|T85°C|135 °C|class T3|banana|')),
});

describe('two readings of plates', () => {
  it('agree on every plate and place, but for plates that contradict themselves, which the rules refuse more strictly', () => {
    const counts = { allowed: 0, refused: 0 };
    holdsFor({
      law: 'the checker reads plates as the rules do',
      cases: fc.tuple(plates, spots),
      runs: 20_000,
      check: ([marking, place]) => {
        const answer = suitsPlace({ marking, place });
        if (!answer.ok && answer.reason.code === 'marking-contradictory') return false;
        expect(mayStand(marking, place), `${marking} at ${JSON.stringify(place)}`).toBe(answer.ok);
        counts[answer.ok ? 'allowed' : 'refused'] += 1;
        return undefined;
      },
    });
    console.info(`plates: ${counts.allowed} allowed, ${counts.refused} refused by both`);
    expect(counts.allowed).toBeGreaterThan(500);
  });

  it('every worsening of a plate that fits just so is noticed by both', () => {
    const worse: readonly (readonly [what: string, plate: string])[] = [
      ['category', 'II 3 G Ex h IIB T4 Gc'],
      ['level', 'Ex h IIB T4 Gc'],
      ['gas group', 'II 2 G Ex h IIA T4 Gb'],
      ['temperature', 'II 2 G Ex h IIB T3 Gb'],
      ['temperature in degrees', 'II 2 G Ex h IIB T200°C Gb'],
      ['no temperature', 'II 2 G Ex h IIB Gb'],
      ['dust instead of gas', 'II 2 D Ex h IIIB T85°C Db'],
      ['mines instead of gas', 'I M2 Ex h I Mb'],
      ['no Ex', 'II 2 G h IIB T4 Gb'],
      ['no protection', 'II 2 G Ex IIB T4 Gb'],
      ['unknown protection', 'II 2 G Ex zz IIB T4 Gb'],
      ['associated only', 'II 2 G Ex [ia Ga] IIB T4 Gb'],
      ['a component', 'II 2 G Ex h IIB T4 Gb U'],
      ['a remark', 'II 2 G Ex h IIB T4 Gb indoors only'],
      ['a second, unreadable marking', 'II 2 G Ex h IIB T4 Gb / II 2 D Ex zz IIIB T85°C Db'],
    ];
    const place = { zone: '1', gasGroup: 'IIB', temperatureClass: 'T4' };
    expect(mayStand('II 2 G Ex h IIB T4 Gb', place)).toBe(true);
    expect(suitsPlace({ marking: 'II 2 G Ex h IIB T4 Gb', place }).ok).toBe(true);
    for (const [what, marking] of worse) {
      expect(mayStand(marking, place), what).toBe(false);
      expect(suitsPlace({ marking, place }).ok, what).toBe(false);
    }
    console.info(`plate mutations: ${worse.length} made, ${worse.length} noticed by both`);
  });
});

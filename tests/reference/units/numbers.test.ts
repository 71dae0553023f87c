import { describe, expect, it } from 'vitest';
import { seededRandom } from '#lib/kernel/random.ts';
import { parseNumber } from '#lib/units/parse-number.ts';

/**
 * Numbers as people write them, against two independent writers: the JSON number grammar (RFC 8259) of the JavaScript engine, and the
 * Unicode CLDR number patterns of its `Intl.NumberFormat`. What they write must be read as the number it was written from.
 */
const CASES = 3000;
/** CLDR locales by how they set off thousands and decimals. */
const LOCALES = ['en-US', 'de-DE', 'fr-FR', 'de-CH', 'es-ES', 'it-IT', 'pl-PL', 'sv-SE', 'pt-BR', 'ru-RU'] as const;

function drawn(random: () => number): number {
  const size = 10 ** (random() * 9 - 2);
  const decimals = Math.floor(random() * 4);
  return Number((random() < 0.1 ? -size : size).toFixed(decimals));
}

describe('numbers', () => {
  it('that the engine writes as JSON are read to the same bits', () => {
    const random = seededRandom(20_260_402);
    for (let run = 0; run < CASES; run += 1) {
      const value = random() < 0.3 ? (random() - 0.5) * 10 ** (random() * 40 - 20) : drawn(random);
      const text = JSON.stringify(value);
      expect(Object.is(parseNumber(text)?.value, JSON.parse(text)), text).toBe(true);
    }
    console.info(`${CASES} JSON numbers read`);
  });

  it.each(LOCALES)('that CLDR writes for %s are read as the number they stand for', (locale) => {
    const random = seededRandom(20_260_403);
    const format = new Intl.NumberFormat(locale, { maximumFractionDigits: 6 });
    const group = format.formatToParts(1_234_567.5).find(({ type }) => type === 'group')?.value;
    const decimal = format.formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ?? '.';
    let compared = 0;
    let ambiguous = 0;
    let leftOut = 0;
    for (let run = 0; run < CASES; run += 1) {
      const value = drawn(random);
      const text = format.format(value);
      const read = parseNumber(text);
      // One point before three digits is a decimal point here, whatever the locale: `1.234` is 1.234.
      if (group === '.' && /^[-−]?\d{1,3}\.\d{3}$/.test(text)) {
        leftOut += 1;
        continue;
      }
      // One comma before three digits can be either; the thousand is taken, and it is told as ambiguous.
      if (decimal === ',' && read?.ambiguous) {
        expect(read.value).toBe(Math.round(value * 1000));
        ambiguous += 1;
        continue;
      }
      expect(read?.value, text).toBe(value);
      compared += 1;
    }
    console.info(`${locale}: ${compared} compared, ${ambiguous} told as ambiguous, ${leftOut} left out (one point)`);
    expect(compared).toBeGreaterThan(CASES / 2);
  });
});

import { describe, expect, it } from 'vitest';
import { inUsUnits } from '#lib/units/format-quantity.ts';
import { figure, sentenceIn, tell, tellMore } from '#lib/units/say-figure.ts';
import { besideIt } from '#lib/units/us-beside.ts';

describe('sentences with figures', () => {
  const told = tell(`It needs ${figure({ si: '128 N·m', us: inUsUnits('N·m', 128.45) })} to move.`);

  it('are kept in SI and in US customary units, each from the exact value', () => {
    expect(told).toEqual({ sentence: 'It needs 128 N·m to move.', inUs: 'It needs 94.7 lbf·ft to move.' });
    expect(sentenceIn(told, 'si')).toBe('It needs 128 N·m to move.');
    expect(sentenceIn(told, 'us')).toBe('It needs 94.7 lbf·ft to move.');
  });

  it('hold no second text where both read the same', () => {
    expect(tell('It is a gate valve.')).toEqual({ sentence: 'It is a gate valve.' });
    expect(tell(`It takes ${figure({ si: '12 turns', us: '12 turns' })}.`)).toEqual({ sentence: 'It takes 12 turns.' });
  });

  it('take more words in both texts', () => {
    expect(tellMore(told, ' Ask.')).toEqual({
      sentence: 'It needs 128 N·m to move. Ask.',
      inUs: 'It needs 94.7 lbf·ft to move. Ask.',
    });
    expect(tellMore({ sentence: 'No.' }, ' Ask.')).toEqual({ sentence: 'No. Ask.' });
  });

  it('told without figures keep them in SI with the US customary ones beside', () => {
    expect(sentenceIn({ sentence: 'It can be served with air of 6 bar.' }, 'us')).toBe(
      'It can be served with air of 6 bar (87 psi).',
    );
  });

  it('print a range in one unit once', () => {
    expect(inUsUnits('N·m', 100, 200)).toBe('73.8 to 148 lbf·ft');
    expect(inUsUnits('m', 2, 4)).toBe('78.7 in to 13.1 ft');
  });

  it('that a person filled with the inner marks pass through unharmed', () => {
    expect(tell('A\uE000 odd \uE002 tag.').sentence).toBe('A\uE000 odd \uE002 tag.');
  });
});

describe('US customary values beside the SI ones of a text', () => {
  it.each([
    ['6 to 16 bar is taken', '6 to 16 bar (87 to 232 psi) is taken'],
    ['API Spec 6D, section 4.12 (360 N).', 'API Spec 6D, section 4.12 (360 N (80.9 lbf)).'],
    ['A nut of 32 mm, 1.5 m down', 'A nut of 32 mm (1.26 in), 1.5 m (59.1 in) down'],
    ['1,250 N·m', '1,250 N·m (922 lbf·ft)'],
    ['at −5 to 20 °C', 'at −5 to 20 °C (23 to 68 °F)'],
  ])('%s', (text, beside) => {
    expect(besideIt(text)).toBe(beside);
  });

  it.each([
    ['200 lbf·ft (271 N·m) at 3 to 4 in'],
    ['9 kN/m (50 lbf/in)'],
    ['271 N·m (200 lbf·ft)'],
    ['90 kg/m² of door'],
    ['5 m/s² and 12 N·mm'],
    ['ISO 5210 and PN 16, Q-00012 N'],
    ['a gate of 10-20 mm (0.39-0.79 in)'],
    ['Valve M 12'],
    ['Stated in the list: Depth to nut “1.1 m”.'],
  ])('%s stays as it is', (text) => {
    expect(besideIt(text)).toBe(text);
  });
});

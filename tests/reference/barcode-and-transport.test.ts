import { describe, expect, it } from 'vitest';
import { CODE_128_START, code128CheckValue, code128Values, gs1CheckDigit, isGs1Number } from '#lib/packing/barcode.ts';
import { dangerousGoods } from '#lib/packing/dangerous-goods.ts';
import { liftMark } from '#lib/packing/lift-mark.ts';
import type { Piece } from '#lib/packing/piece.ts';
import { transportPoints } from '#lib/packing/transport-points.ts';
import { kilograms, metres, wattHours } from '#lib/units/quantity.ts';

describe('GS1 check digits', () => {
  it.each([
    ['629104150021', 3, 'GS1, how to calculate a check digit manually'],
    ['730001100001', 7, 'GS1 Sweden, GTIN-13 example'],
    ['579800041660', 4, 'GLN in the OASIS UBL 2.1 quotation example'],
    ['123456789012', 8, 'item number in EN 16931 ubl-tc434-example2'],
    ['123876494138', 6, 'GLN in EN 16931 ubl-tc434-example2'],
    ['6000011603060', 3, 'GTIN-14 in a published GS1-128 worked example'],
    ['10614141123456789', 7, 'SSCC in the style of the GS1 General Specifications, from memory'],
    ['400638133393', 1, 'well-known EAN-13, from memory'],
    ['9638507', 4, 'well-known EAN-8, from memory'],
    ['03600029145', 2, 'well-known UPC-A, from memory'],
  ])('%s ends in %i (%s)', (body, digit) => {
    expect(gs1CheckDigit(body)).toBe(digit);
    expect(isGs1Number(`${body}${digit}`)).toBe(true);
  });

  it('refuses the GS1 example with a wrong last digit', () => {
    expect(isGs1Number('6291041500214')).toBe(false);
  });
});

describe('Code 128 check values (published checksum examples)', () => {
  it.each([
    ['PJJ123C in set A', 103, [48, 42, 42, 17, 18, 19, 35], 54],
    ['HI345678, set A then C', 103, [40, 41, 99, 34, 56, 78], 67],
    ['ABCDEF in set A', 103, [33, 34, 35, 36, 37, 38], 42],
    ['345678 in set C', 105, [34, 56, 78], 73],
    ['GS1-128 (01)60000116030603', 105, [102, 1, 60, 0, 1, 16, 3, 6, 3], 71],
  ])('%s', (_, start, values, check) => {
    expect(code128CheckValue({ start, values })).toBe(check);
  });

  it('abcdef in set B, from its text', () => {
    expect(code128Values('abcdef')).toEqual([65, 66, 67, 68, 69, 70]);
    expect(code128CheckValue({ start: CODE_128_START.B, values: code128Values('abcdef') })).toBe(97);
  });
});

describe('the thousand-point sum of ADR 1.1.3.6', () => {
  /* The rule is published; the loads are our own. */
  it.each([
    ['60 l of petrol', [{ category: 2, quantity: 60 }], 180, true],
    ['334 l of petrol', [{ category: 2, quantity: 334 }], 1002, false],
    ['333 kg of lithium packs', [{ category: 2, quantity: 333 }], 999, true],
    [
      '40 l of petrol and 25 kg of packs',
      [
        { category: 2, quantity: 40 },
        { category: 2, quantity: 25 },
      ],
      195,
      true,
    ],
    [
      'a mixed load',
      [
        { category: 2, quantity: 300 },
        { category: 3, quantity: 50 },
      ],
      950,
      true,
    ],
    ['20 kg of category 1', [{ category: 1, quantity: 20 }], 1000, true],
  ] as const)('%s', (_, items, points, within) => {
    expect(transportPoints(items)).toEqual({ points, within });
  });
});

function pack(energy: number, count = 1): Piece {
  const size = { length: metres(0.2), width: metres(0.1), height: metres(0.1) };
  return {
    number: 'S-999',
    name: 'Pack',
    serial: null,
    kind: 'pack',
    mass: kilograms(2),
    size,
    lithium: { energy: wattHours(energy), packs: count },
  };
}

function sentences(pieces: readonly Piece[]): string {
  return dangerousGoods({ pieces, gross: kilograms(12), transport: 'road' })
    .map(({ sentence }) => sentence)
    .join(' ');
}

describe('lithium packs under special provision 188', () => {
  /* ADR and IMDG SP 188: a battery of at most 100 Wh; UN 3480 alone, UN 3481 with equipment. The rule is published, the packs are our own. */
  it('100 Wh alone is a small battery of UN 3480', () => {
    expect(sentences([pack(100)])).toMatch(/^UN 3480, LITHIUM ION BATTERIES: 1 pack.*Small batteries/);
  });

  it('90 Wh with its equipment is a small battery of UN 3481', () => {
    const drive: Piece = { ...pack(90, 2), number: 'D-999', kind: 'battery drive' };
    expect(sentences([drive])).toMatch(
      /^UN 3481, LITHIUM ION BATTERIES PACKED WITH EQUIPMENT: 2 packs.*180 Wh together\. Small batteries/,
    );
  });

  it('18 V of 6 Ah is 108 Wh and no small battery', () => {
    expect(sentences([pack(18 * 6)])).toMatch(/Class 9 in full/);
    expect(sentences([pack(18 * 5)])).toMatch(/Small batteries/);
  });

  it('a package of small batteries alone weighs 30 kg at most (special provision 188)', () => {
    const route = (gross: number) =>
      dangerousGoods({ pieces: [pack(90)], gross: kilograms(gross), transport: 'road' }).map((line) => line.route);
    expect([route(30), route(31)]).toEqual([['eased'], ['full']]);
  });

  it('a case carries the lithium battery mark of 100 × 100 mm with its UN number, or the class 9A label (sheet UN 3480 of an industry e-book, 2025)', () => {
    const marks = (energy: number, transport: 'road' | 'air' = 'road') =>
      dangerousGoods({ pieces: [pack(energy)], gross: kilograms(12), transport })[0]?.marks;
    expect(marks(90)).toEqual(['Lithium battery mark, 100 × 100 mm, with UN 3480']);
    expect(marks(324)).toEqual(['Label 9A, 100 × 100 mm', 'UN 3480', 'LITHIUM ION BATTERIES']);
    // Packing instruction 965: section II, the easing for small packs alone, was deleted in 2022.
    expect(marks(90, 'air')).toEqual(marks(324));
  });

  it('324 Wh alone is UN 3480 in full', () => {
    expect(sentences([pack(324)])).toMatch(/^UN 3480, .*Class 9 in full: label 9A/);
  });
});

describe('lift marks', () => {
  /* HSE L23: 16 and 25 kg close to the body, two persons two thirds of the sum (33.3 kg). The marks are derived from it. */
  it.each([
    [12, 'one person'],
    [16, 'one person'],
    [20, 'one person, near the limit'],
    [25, 'one person, near the limit'],
    [28, 'two persons'],
    [33.3, 'two persons'],
    [40, 'lifting aid'],
  ])('%f kg: %s', (mass, mark) => {
    expect(liftMark(kilograms(mass)).mark).toBe(mark);
  });
});

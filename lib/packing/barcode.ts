/*
 * Check digits and check values of the barcodes on papers and cases.
 * Invariant: a number with one wrong digit never passes.
 * Not here: drawing bars (lib/documents).
 * Read next: pack-cases.ts.
 */
import { invariant } from '#lib/kernel/invariant.ts';

/**
 * Check digit of a GS1 number (GTIN, GLN, SSCC, GRAI) from its other digits.
 * Source: GS1, how to calculate a check digit manually: weights 3, 1, 3, 1 … from the right.
 */
export function gs1CheckDigit(body: string): number {
  invariant(/^\d{1,17}$/.test(body), `A GS1 number holds digits only, not ${body}.`);
  const sum = [...body].reverse().reduce((total, digit, index) => total + Number(digit) * (index % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

export function isGs1Number(number: string): boolean {
  return /^\d{8,18}$/.test(number) && gs1CheckDigit(number.slice(0, -1)) === Number(number.at(-1));
}

/** Start values of the three code sets. Source: Code 128 symbology (ISO/IEC 15417). */
export const CODE_128_START = { A: 103, B: 104, C: 105 } as const;

/** Check value of a Code 128 symbol: start value plus each value times its place, modulo 103. */
export function code128CheckValue({
  start,
  values,
}: {
  readonly start: number;
  readonly values: readonly number[];
}): number {
  return values.reduce((sum, value, index) => sum + value * (index + 1), start) % 103;
}

/** Values of printable ASCII text in code set B, where a character's value is its code less 32. */
export function code128Values(text: string): readonly number[] {
  invariant(/^[\x20-\x7e]+$/.test(text), `Code set B holds printable ASCII only, not ${text}.`);
  return [...text].map((character) => character.charCodeAt(0) - 32);
}

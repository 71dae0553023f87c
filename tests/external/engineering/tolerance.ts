import type { Leaf } from './entry.ts';

/*
 * What the tolerance text of an entry allows.
 * Invariant: a text that is neither a figure nor in the table of words is an error, never a guess.
 * Not here: comparing (agreement.ts).
 * Read next: agreement.ts.
 */
export type Tolerance =
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'absolute'; readonly by: number }
  | { readonly kind: 'reached from below'; readonly share: number };

interface Question {
  readonly text: string;
  readonly path: string;
  readonly expected: Leaf;
}

const EXACT: Tolerance = { kind: 'absolute', by: 0 };
const share = (part: number): Tolerance => ({ kind: 'share', share: part });
const by = (amount: number): Tolerance => ({ kind: 'absolute', by: amount });

/** Tolerances that are words, and how they are taken here: the narrowest reading that the words bear. */
export const WORDED: Readonly<
  Record<string, { readonly taken: string; readonly of: (question: Question) => Tolerance }>
> = {
  exact: { taken: 'to the last digit of binary fractions', of: () => EXACT },
  bound: {
    taken: 'never passed, and reached from below within a hundredth',
    of: () => ({ kind: 'reached from below', share: 0.01 }),
  },
  form: { taken: 'the same word', of: () => EXACT },
  rule: { taken: 'the same word; figures within two per cent, as 1000 ft stand for 300 m', of: () => share(0.02) },
  range: { taken: 'the ends alike', of: () => EXACT },
  ranges: { taken: 'the ends alike', of: () => EXACT },
  limits: { taken: 'the ends alike', of: () => EXACT },
  'rule of thumb': { taken: 'the figures that the rule gives', of: () => EXACT },
  approx: { taken: 'within two per cent', of: () => share(0.02) },
  nominal: { taken: 'within a thousandth: a size in inches printed in millimetres', of: () => share(0.001) },
  'formula exact; printed table rounds to nearest 5 above 100 -> +/-5': {
    taken: 'printed points above 100 within 5, others exact; A(8) to its third decimal',
    of: ({ path, expected }) => {
      if (path === 'points_printed') return typeof expected === 'number' && expected > 100 ? by(5) : EXACT;
      return path === 'A8' ? by(0.0005) : EXACT;
    },
  },
  'printed is rounded: +/-2 points or 2 %': {
    taken: 'printed points within 2 or 2 %, whichever is more; the formula to its first decimal',
    of: ({ path, expected }) => (path === 'points_printed' ? by(Math.max(2, 0.02 * Number(expected))) : by(0.05)),
  },
  'printed rounded': { taken: 'the formula to its fifth decimal', of: () => by(0.000_005) },
  'class exact; AIT differs between editions by up to +/-20 degC': {
    taken: 'the same group and class',
    of: () => EXACT,
  },
  'A8 +/-0.05': {
    taken: 'A(8) within 0.05, its parts to their third decimal, points to a whole number',
    of: ({ path }) => (path.includes('A8') ? by(0.05) : path === 'points' ? by(0.5) : by(0.0005)),
  },
  'RWL +/-0.2; LI +/-0.05': { taken: 'as written', of: ({ path }) => by(path.startsWith('LI') ? 0.05 : 0.2) },
  'RWL +/-0.4 vs full precision; LI +/-0.1': {
    taken: 'as written',
    of: ({ path }) => by(path.startsWith('LI') ? 0.1 : 0.4),
  },
};

export function toleranceOf(question: Question): Tolerance {
  const { text } = question;
  const worded = WORDED[text];
  if (worded !== undefined) return worded.of(question);
  const percent = /^(\d+(?:\.\d+)?) %(?: \(|$)/.exec(text)?.[1];
  if (percent !== undefined) return share(Number(percent) / 100);
  const plusMinus = /^\+\/?-(\d+(?:\.\d+)?)(?: %)?/.exec(text)?.[1];
  if (plusMinus !== undefined) return text.includes('%') ? share(Number(plusMinus) / 100) : by(Number(plusMinus));
  const amount = /^(\d+(?:\.\d+)?)(?: (?:in|bar)| \(|$)/.exec(text)?.[1];
  if (amount !== undefined) return by(Number(amount));
  throw new Error(`The tolerance “${text}” is neither a figure nor in the table of words.`);
}

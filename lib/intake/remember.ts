/*
 * Keeps the answers of a pure function of one text: lists say the same things thousands of times.
 * Invariant: a remembered answer is the answer; the memory is bounded and forgets everything when full.
 * Not here: anything that depends on more than its text.
 * Read next: read-cell.ts, recognise-kind.ts.
 */
const TEXTS_KEPT = 4_000;
/** Longer texts hardly ever repeat. */
const LONGEST_KEPT = 300;

export function remember<Answer>(answer: (text: string) => Answer): (text: string) => Answer {
  const kept = new Map<string, { readonly answer: Answer }>();
  return (text) => {
    const before = kept.get(text);
    if (before !== undefined) return before.answer;
    const fresh = answer(text);
    if (text.length > LONGEST_KEPT) return fresh;
    if (kept.size >= TEXTS_KEPT) kept.clear();
    kept.set(text, { answer: fresh });
    return fresh;
  };
}

/*
 * Assertions for what only a programmer can get wrong.
 * Invariant: a broken assertion throws InvariantError with a sentence; nothing in the core catches it.
 * Not here: bad input and refusals of the domain (see result.ts).
 * Read next: result.ts.
 */
export class InvariantError extends Error {
  override readonly name = 'InvariantError';
}

export function invariant(condition: unknown, sentence: string): asserts condition {
  if (!condition) throw new InvariantError(sentence);
}

/** Ends an exhaustive switch: reaching it is a type error first and a thrown error second. */
export function unreachable(value: never): never {
  throw new InvariantError(`No case was written for ${JSON.stringify(value)}.`);
}

/*
 * A copy of a part of a line without one of its fields.
 * Invariant: the part itself is never changed.
 * Not here: which field is left out, and why (sound-line.ts).
 * Read next: sound-line.ts.
 */
export function without<Part extends object>(part: Part, field: string): Part {
  const copy = { ...part };
  Reflect.deleteProperty(copy, field);
  return copy;
}

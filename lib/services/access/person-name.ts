/*
 * What may stand as a person's name: anything that is not empty, not endless and fits on one line.
 * Invariant: no letters of any script are refused.
 * Not here: emails (add-user.ts).
 * Read next: add-user.ts.
 */
export function isPersonName(name: string): boolean {
  return name.trim() !== '' && name.length <= 120 && !/\p{Cc}/u.test(name);
}

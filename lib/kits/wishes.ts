/*
 * A person's wishes for one class of lines: parts that must be in, and parts that must stay out.
 * Invariant: a wish narrows the choice of a role to the parts named for it, and never adds a part.
 * Not here: what happens when a wish cannot be met (find-choices.ts).
 * Read next: find-choices.ts.
 */
import type { Model, Role } from '#lib/equipment/model.ts';

/** Same shape as what the requests hold. */
export interface KitConstraints {
  readonly lockedParts: readonly string[];
  readonly excludedParts: readonly string[];
  readonly pins: readonly { readonly tag: string; readonly part: string }[];
}

export function modelsLeft(
  models: readonly Model[],
  { excludedParts }: Pick<KitConstraints, 'excludedParts'>,
): readonly Model[] {
  const out = new Set(excludedParts);
  return out.size === 0 ? models : models.filter((model) => !out.has(model.number));
}

/** Numbers wished for in a role, or null when the role is free. */
export function wishedIn(wishes: readonly Model[], role: Role): ReadonlySet<string> | null {
  const numbers = wishes.filter((model) => model.role === role).map((model) => model.number);
  return numbers.length === 0 ? null : new Set(numbers);
}

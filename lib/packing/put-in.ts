/*
 * Whether one more piece may go into a case that a person packs.
 * Invariant: a case never goes over its limit or its room, and what travels loose stays alone.
 * Not here: which case is best (fewest-cases.ts).
 * Read next: load.ts.
 */
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import type { CaseKind } from './case-kinds.ts';
import { type LoadInput, loadOf } from './load.ts';
import type { Piece } from './piece.ts';

export interface PutIn extends Pick<LoadInput, 'cases' | 'onePerson' | 'twoPersons'> {
  /** As it stands on its label. */
  readonly label: string;
  readonly kind: CaseKind;
  /** What lies in it already, and what is to go in. */
  readonly inside: readonly Piece[];
  readonly pieces: readonly Piece[];
}

export function decidePutIn({ label, kind, inside, pieces, ...limits }: PutIn): Result<true> {
  const load = loadOf({ pieces: [...inside, ...pieces], ...limits });
  const { types } = load;
  const forTwo = types.some(({ needsTwo }) => needsTwo);
  const at = load.holders.findIndex((one) => one.kind.name === kind.name && (one.persons === 2) === forTwo);
  const holder = load.holders[at];
  const bulky = load.loose[0] ?? types.find(({ goesInto }) => goesInto[at] !== true)?.pieces[0];
  if (holder === undefined || bulky !== undefined)
    return no('piece-too-large', `${bulky?.serial ?? bulky?.number ?? 'It'} does not go into ${label}.`);
  const grams = types.reduce((sum, type) => sum + type.grams * type.pieces.length, 0);
  const volume = types.reduce((sum, type) => sum + type.volume * type.pieces.length, 0);
  if (grams > holder.grams) {
    const [limit, mass] = [forTwo ? limits.twoPersons : limits.onePerson, kind.mass + grams / 1000];
    return no('case-too-heavy', `${label} would weigh ${told(mass)} kg; its limit is ${told(limit)} kg.`);
  }
  if (volume > holder.volume) return no('case-too-full', `${label} has no room left for it.`);
  return ok(true);
}

function told(kg: number): string {
  return String(Math.round(kg * 10) / 10);
}

function no(code: string, sentence: string): Failed<Refused> {
  return failed({ code, sentence });
}

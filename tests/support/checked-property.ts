import fc from 'fast-check';
import { expect } from 'vitest';

/**
 * Runs a law over seeded cases and prints how many were really checked; a law whose guard lets no case through fails.
 * The law answers false when a case does not speak of it, and throws or expects otherwise.
 */
export function holdsFor<Case>({
  law,
  cases,
  check,
  runs = 400,
}: {
  readonly law: string;
  readonly cases: fc.Arbitrary<Case>;
  readonly check: (one: Case) => boolean | undefined;
  readonly runs?: number;
}): void {
  let checked = 0;
  fc.assert(
    fc.property(cases, (one) => {
      if (check(one) !== false) checked += 1;
    }),
    { seed: 20_260_401, numRuns: runs },
  );
  console.info(`${law}: ${checked} of ${runs} cases checked`);
  expect(checked, `${law}: no case was really checked`).toBeGreaterThan(0);
}

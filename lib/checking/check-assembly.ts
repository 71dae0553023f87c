/*
 * Checks a finished assembly: its chain, grip, place, settings, figures, findings and steps, each re-derived from models, duty and site.
 * Invariant: an empty answer means that nothing was found wrong; nothing of the search is asked.
 * Not here: plans (check-plan.ts).
 * Read next: chain.ts, check-figures.ts.
 */
import { type AssemblyFacts, putTogether } from './chain.ts';
import { checkChain } from './check-chain.ts';
import { checkCover } from './check-cover.ts';
import { checkFigures } from './check-figures.ts';
import { checkFindings } from './check-findings.ts';
import { checkGrip } from './check-grip.ts';
import { checkPlace } from './check-place.ts';
import { checkSettings } from './check-settings.ts';
import { checkSteps } from './check-steps.ts';
import type { Discrepancy } from './discrepancy.ts';

export function checkAssembly(facts: AssemblyFacts): readonly Discrepancy[] {
  const { chain, missing } = putTogether(facts);
  if (chain === null) return missing;
  const subject = { ...facts, chain };
  return [
    ...missing,
    ...checkChain(subject),
    ...checkGrip(subject),
    ...checkPlace(subject),
    ...checkSettings(subject),
    ...checkFigures(subject),
    ...checkCover(subject),
    ...checkFindings(subject),
    ...checkSteps(subject),
  ];
}

/*
 * Which refusals look at less than their scope offers, so that the search may ask them once for much that is alike to them.
 * Invariant: a rule that is named here answers the same whatever else its facts hold; one that is not named is asked in full.
 * Not here: what a rule says (rules); tests/property/kits/narrow-views.test.ts holds each name against the rule.
 * Read next: grips/grip-finder.ts, chain/reaction-finder.ts, grips/grip-elements.ts.
 */
import type { AdapterModel, ExtensionModel, RestraintModel } from '#lib/equipment/model.ts';
import { heldByPlate } from '#lib/rules/restraint.ts';
import { whirlLimit } from '#lib/rules/shafts.ts';
import { newtonMetres } from '#lib/units/quantity.ts';
import { reactionForceAt } from './chain/reactions.ts';
import { restraintCap } from './chain/torque-cap.ts';

/** Link rules that look at the extensions and never at the adapter. */
export const LINK_OF_EXTENSIONS: ReadonlySet<string> = new Set(['joint-where-out-of-line', 'reach-long-enough']);

/** Case rules that look at adapter and case and never at the extensions. */
export const CASE_OF_ADAPTER: ReadonlySet<string> = new Set([
  'wheel-diameter-within-adapter',
  'wheel-spokes-within-adapter',
  'wheel-dish-within-adapter',
  'nut-socket-fits',
]);

/** Core rules that look at drive, gear and head and what they give; never at limiter or counter. */
export const CORE_OF_MESH: ReadonlySet<string> = new Set([
  'drive-runs-at-torque',
  'input-speed',
  'stroke-time',
  'head-input-speed',
  'air-pressure-at-tool',
  'zone-no-pack-change',
]);

/** Core rules that look at whether a limiter is required and at the limiter with its ceilings; at nothing else of the core. */
export const CORE_OF_LIMITER: ReadonlySet<string> = new Set([
  'limiter-required',
  'limiter-low-enough',
  'limiter-both-ways',
  'house-always-limiter',
]);

/** Core rules that look at drive, gear, head and limiter; never at the counter. */
export const CORE_WITHOUT_COUNTER: ReadonlySet<string> = new Set([
  ...CORE_OF_MESH,
  ...CORE_OF_LIMITER,
  'drive-reaches-torque',
  'limiter-reaches-torque',
  'head-carries-torque',
]);

/** Core rules that look at the head only by its ratio and efficiency, which are in the figures. */
export const CORE_WITHOUT_HEAD: ReadonlySet<string> = new Set(
  [...CORE_WITHOUT_COUNTER].filter((id) => id !== 'head-input-speed' && id !== 'head-carries-torque'),
);

/** Core rules that look at limiter and counter alone. */
export const CORE_OF_OPTIONS: ReadonlySet<string> = new Set([
  'counter-required',
  'house-counter-above-turns',
  'stem-clears-options',
]);

/** Grip rules that of a core look at the head alone. */
export const GRIP_OF_HEAD: ReadonlySet<string> = new Set(['stem-clears-head', 'headroom']);

/** Reaction rules that of a core look at the head alone, or at nothing. */
export const REACTION_OF_HEAD: ReadonlySet<string> = new Set(['restraint-fits-head', 'restraint-both-ways']);

interface GripParts {
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
}

/** The slack of the rules themselves. */
const SLACK = 1e-9;
const weakest = (extensions: readonly ExtensionModel[]): number =>
  extensions.reduce((least, { facts }) => Math.min(least, facts.torqueRating + SLACK), Number.POSITIVE_INFINITY);

/** Grip rules that speak when the highest torque at the valve is above a limit of the parts. [N·m] */
export const GRIP_TORQUE_LIMITS: ReadonlyMap<string, (parts: GripParts) => number> = new Map([
  ['adapter-carries-torque', ({ adapter }: GripParts) => adapter.facts.torqueRating + SLACK],
  ['extension-carries-torque', ({ extensions }: GripParts) => weakest(extensions)],
]);

/** Grip rules that speak when the fastest speed either way is above a limit of the parts. [1/min] */
export const GRIP_SPEED_LIMITS: ReadonlyMap<string, (parts: GripParts) => number> = new Map([
  [
    'extension-speed',
    ({ extensions }: GripParts) =>
      extensions.reduce((least, { facts }) => Math.min(least, facts.maxSpeed), Number.POSITIVE_INFINITY),
  ],
  ['shaft-whirl', whirlLimit],
]);

/** Reaction rules that speak when the highest stall torque at the valve is above a limit of the restraint. [N·m] */
export const REACTION_STALL_LIMITS: ReadonlyMap<string, (restraint: RestraintModel) => number> = new Map([
  ['restraint-covers-stall', ({ facts }: RestraintModel) => facts.torqueRating + SLACK],
]);

/** Reaction rules that speak when the highest torque at the valve is above a limit of the restraint. [N·m] */
export const REACTION_TORQUE_LIMITS: ReadonlyMap<string, (restraint: RestraintModel) => number> = new Map([
  ['restraint-force-within-rating', torqueAtForceRating],
  ['ground-plate-holds', (restraint: RestraintModel) => (heldByPlate(restraint) ?? Number.POSITIVE_INFINITY) + SLACK],
]);

/** The highest torque, to the last bit, at which the pull is still within the force rating. */
function torqueAtForceRating(restraint: RestraintModel): number {
  const holds = (torque: number): boolean =>
    !(reactionForceAt({ restraint, torque: newtonMetres(torque) }) > restraint.facts.forceRating + SLACK);
  const near = restraintCap(restraint);
  let good = near * (1 - 1e-9);
  let bad = near * (1 + 1e-9) + SLACK;
  while (!holds(good)) good /= 2;
  while (holds(bad)) bad *= 2;
  for (let middle = (good + bad) / 2; middle > good && middle < bad; middle = (good + bad) / 2) {
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/*
 * How to set up each kind of restraint, in one or two sentences with its figures.
 * Invariant: what must not serve as an anchor is named wherever an anchor is needed.
 * Not here: forces (engineering) and pictures (../drawings/drive-line-restraint.ts).
 * Read next: ../papers/site-class.ts.
 */
import type { Assembly } from '#lib/equipment/assembly.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { RestraintKind } from '#lib/equipment/parts.ts';
import { formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';

const NEVER_ANCHORS = 'Never to a small pipe, handrail, cable tray or scaffold.';

const SET_UP: Readonly<Record<RestraintKind, string>> = {
  'reaction arm with chain': `Chain square to the arm, short and without slack, to structure that may take the pull; it holds one way only, so change it over (or fit a second chain) before reversing. ${NEVER_ANCHORS}`,
  'reaction arm with strap': `Strap square to the arm, flat, protected at edges and without slack; it holds one way only, so change it over before reversing. ${NEVER_ANCHORS}`,
  'reaction arm with fixed bar': `Clamp the bar to structure that may take the push and the pull; it holds both ways. ${NEVER_ANCHORS}`,
  'twin-point arm': `Both ends bear on anchors of equal stiffness, so that no side load comes on the stem. ${NEVER_ANCHORS}`,
  'yoke clamp':
    'Clamp evenly on both legs of the yoke, clear of gland and position marks; it takes the reaction inside the valve, so look for cracks in the yoke first.',
  'tow-bar brace':
    'Hitch to the vehicle: engine off, brake on, wheels chocked both ways, nobody between vehicle and valve.',
  'ground plate':
    'On firm level ground with the weight on it that is named on the plate; never on grating, slope, ice or a chamber roof.',
  'two-leg prop': 'Both feet on firm ground, legs spread fully and pinned; check again after the first pulse.',
  'street stand': 'Stand beside the surface box, never on its frame or lid; guard the street as the traffic rules ask.',
  'purpose-made restraint': 'Fit as on its own drawing from the workshop; not to be changed on site.',
};

export function restraintWords(assembly: Assembly, models: readonly Model[], system: UnitSystem): string {
  const model = models.find((candidate) => candidate.number === assembly.parts.restraint);
  if (model?.role !== 'restraint')
    return `Restraint ${assembly.parts.restraint}: set up as its own instruction says. No powered drive is held by hand alone.`;
  const force = `It takes up to ${formatQuantity({ value: assembly.figures.reactionForce, unit: 'N', system })} at the anchor and is rated ${formatQuantity({ value: model.facts.forceRating, unit: 'N', system })}.`;
  return `Restraint ${model.number}, ${model.name}. ${SET_UP[model.facts.kind]} ${force}`;
}

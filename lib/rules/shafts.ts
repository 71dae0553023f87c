/*
 * Rules about the shafts and keys of a chain whose section is stated: how fast they may turn, what they store when wound up.
 * Invariant: a chain is judged at its longest and by its thinnest piece; where no section is stated nothing is claimed.
 * Not here: a part's own torque and speed ratings (part-ratings.ts, reach.ts).
 * Read next: restraint.ts.
 */
import { storedEnergy, whirlSpeed, windUp } from '#lib/engineering/extension-shaft.ts';
import type { AdapterModel, ExtensionModel } from '#lib/equipment/model.ts';
import type { ShaftSection } from '#lib/equipment/parts.ts';
import { type Degrees, degrees, type Metres, metres, type NewtonMetres, perMinute } from '#lib/units/quantity.ts';
import type { GripFacts, WholeFacts } from './facts.ts';
import type { Rule } from './rule.ts';
import { lineFacts, reactionFacts, SAMPLE_NUT, sampleCore, sampleCoreDirection } from './sample-facts.ts';
import { sampleKey, sampleShaft } from './sample-parts.ts';
import { sayLength, sayPlain, sayTorque } from './say-number.ts';

/** Share of the whirling speed up to which a shaft is run; common practice, no source. */
export const WHIRL_SHARE = 0.5;
/** A wind-up from here on is told; common practice, no source. */
const TOLD_FROM_DEG = 3;

interface Link {
  readonly adapter: AdapterModel;
  readonly extensions: readonly ExtensionModel[];
}

export interface ShaftPiece {
  readonly number: string;
  readonly section: ShaftSection;
  readonly length: Metres;
}

/** Shafts and key of one link with a stated section, head side first, drawn out to their longest. */
export function shaftPieces({ adapter, extensions }: Link): readonly ShaftPiece[] {
  return [...extensions, adapter].flatMap(({ number, facts: { section, length } }) =>
    section === undefined || length === undefined ? [] : [{ number, section, length: length.high }],
  );
}

/** Speed that a link's shafts allow by their length: half of where the thinnest would whirl over the whole length. */
export function whirlLimit(link: Link): number {
  const pieces = shaftPieces(link);
  if (pieces.length === 0) return Number.POSITIVE_INFINITY;
  const length = metres(pieces.reduce((sum, piece) => sum + piece.length, 0));
  return WHIRL_SHARE * Math.min(...pieces.map(({ section }) => whirlSpeed({ ...section, length })));
}

export function windUpOf(link: Link, torque: NewtonMetres): Degrees {
  const pieces = shaftPieces(link);
  return degrees(
    pieces.reduce((sum, { section, length }) => sum + windUp({ torque, shaft: { ...section, length } }), 0),
  );
}

/** The link that winds up most; null where no section is stated. */
export function mostWound({ links, core }: Pick<WholeFacts, 'links' | 'core'>): Link | null {
  const torque = core.figures.highestAtValve;
  const wound = links.filter((link) => shaftPieces(link).length > 0);
  return wound.toSorted((one, other) => windUpOf(other, torque) - windUpOf(one, torque))[0] ?? null;
}

const fastest = ({ core }: GripFacts): number => Math.max(core.figures.opening.fastest, core.figures.closing.fastest);
const woundBy = (facts: WholeFacts): Degrees => {
  const link = mostWound(facts);
  return link === null ? degrees(0) : windUpOf(link, facts.core.figures.highestAtValve);
};

const SLIM: ShaftSection = { outer: metres(0.026), inner: metres(0) };
const longKey = sampleKey({ facts: { length: { low: metres(1.8), high: metres(3.4) }, section: SLIM } });
const onKey = (speed: number): GripFacts => ({
  ...lineFacts({ duty: { grip: SAMPLE_NUT } }),
  core: sampleCore({ figures: { opening: sampleCoreDirection({ fastest: perMinute(speed) }) } }),
  extensions: [],
  adapter: longKey,
});

export const SHAFT_RULES: readonly Rule[] = [
  {
    id: 'shaft-whirl',
    topic: 'reach and room',
    title: 'A shaft or key stays well below the speed at which it would whirl',
    scope: 'grip',
    severity: 'refusal',
    source:
      'First bending frequency of a shaft between two supports: handbooks; half of it is common practice, no source',
    speaksOf: ['extension', 'adapter', 'drive'],
    speaks: (facts) => fastest(facts) > whirlLimit(facts),
    sentence: (facts) =>
      `${facts.core.drive.number} would turn ${shaftPieces(facts)
        .map(({ number }) => number)
        .join(
          ' and ',
        )} at ${sayPlain(fastest(facts))} 1/min; drawn out to ${sayLength(shaftPieces(facts).reduce((sum, { length }) => sum + length, 0))} it is kept to ${sayPlain(whirlLimit(facts))}, half of where it whirls.`,
    examples: () => [
      // 26 mm solid over 3.4 m whirls at 274 1/min.
      { name: 'fast', facts: onKey(150), speaks: true },
      { name: 'slow', facts: onKey(60), speaks: false },
      { name: 'section not stated', facts: { ...onKey(150), adapter: sampleKey() }, speaks: false },
    ],
  },
  {
    id: 'wind-up-stored',
    topic: 'reach and room',
    title: 'A shaft that winds up stores energy and springs back',
    scope: 'whole',
    severity: 'warning',
    source: 'Torsion of a round bar: J. M. Gere, Mechanics of Materials; work of a spring',
    speaksOf: ['extension', 'adapter', 'drive'],
    speaks: (facts) => woundBy(facts) > TOLD_FROM_DEG,
    sentence: (facts) => {
      const torque = facts.core.figures.highestAtValve;
      const link = mostWound(facts);
      const names = link === null ? [] : shaftPieces(link).map(({ number }) => number);
      return `${facts.line.tag}: at ${sayTorque(torque)} ${names.join(' and ')} winds up by ${sayPlain(woundBy(facts))}° and stores ${sayPlain(storedEnergy({ torque, windUp: woundBy(facts) }))} J: it springs back when the drive stops. Release slowly, reverse to relieve, and stand clear of it.`;
    },
    examples: () => {
      const whole = (link: Link): WholeFacts => ({ ...reactionFacts(), core: sampleCore(), links: [link] });
      const short = sampleShaft({ facts: { section: { outer: metres(0.038), inner: metres(0) } } });
      return [
        { name: 'long slim key', facts: whole({ adapter: longKey, extensions: [] }), speaks: true },
        { name: 'short shaft', facts: whole({ adapter: sampleKey(), extensions: [short] }), speaks: false },
        { name: 'section not stated', facts: whole({ adapter: sampleKey(), extensions: [] }), speaks: false },
      ];
    },
  },
];

/*
 * Holds adapters, extensions and head against what they grip and clear: wheel, spokes, dish, nut, depth, stem.
 * Invariant: an adapter that takes no size of the line's range is a discrepancy, however well the others cover it.
 * Not here: whether a covering set takes all of a range (check-cover.ts).
 * Read next: check-cover.ts.
 */
import type { AdapterModel } from '#lib/equipment/model.ts';
import type { Subject } from './chain.ts';
import { atMost, type Discrepancy, holds } from './discrepancy.ts';

/** Slack of comparisons of lengths. [m] */
const HAIR = 1e-6;

export function checkGrip(subject: Subject): readonly Discrepancy[] {
  const { grip } = subject.lineDuty.duty;
  return [
    ...(grip.kind === 'wheel' ? checkWheel(subject) : []),
    ...(grip.kind === 'nut' ? checkNut(subject) : []),
    ...checkStem(subject),
  ];
}

function checkWheel({ chain, lineDuty }: Subject): readonly Discrepancy[] {
  const { grip } = lineDuty.duty;
  return chain.adapters.flatMap((adapter) => {
    const takes = adapter.facts.wheel;
    if (takes === undefined) return [wrongSide({ adapter, wanted: 'a wheel' })].flat();
    const { wheelDiameter: diameter, wheelSpokes: spokes, wheelDish: dish } = grip;
    return [
      ...holds(
        diameter === undefined ||
          (takes.diameter.low <= diameter.high + HAIR && takes.diameter.high >= diameter.low - HAIR),
        {
          code: 'assembly-wheel-diameter',
          sentence: `${adapter.number} takes no wheel of the diameters that this one may have.`,
          expected: `${takes.diameter.low} to ${takes.diameter.high} m`,
          found: `${diameter?.low} to ${diameter?.high} m`,
        },
      ),
      ...holds(spokes === undefined || (takes.spokes.low <= spokes.high && takes.spokes.high >= spokes.low), {
        code: 'assembly-wheel-spokes',
        sentence: `${adapter.number} takes no wheel with the spokes that this one may have.`,
        expected: `${takes.spokes.low} to ${takes.spokes.high}`,
        found: `${spokes?.low} to ${spokes?.high}`,
      }),
      ...atMost({
        code: 'assembly-wheel-dish',
        what: `The least dish of the rim at ${adapter.number} in degrees`,
        expected: takes.dishUpTo,
        found: dish?.low ?? 0,
      }),
    ];
  });
}

function checkNut({ chain, lineDuty }: Subject): readonly Discrepancy[] {
  const { nutSizes, nutShape } = lineDuty.duty.grip;
  return chain.adapters.flatMap((adapter) => {
    const { sockets } = adapter.facts;
    if (sockets === undefined) return wrongSide({ adapter, wanted: 'a nut' });
    const shaped = sockets.filter((socket) => nutShape === undefined || socket.shape === nutShape);
    const fits = (nutSizes ?? []).some((size) =>
      shaped.some(
        (socket) => size.low <= socket.acrossFlats + HAIR && size.high >= socket.acrossFlats - socket.slack - HAIR,
      ),
    );
    return holds(nutSizes === undefined ? shaped.length > 0 : fits, {
      code: 'assembly-nut-socket',
      sentence: `${adapter.number} has no socket for a nut of this line.`,
      expected: (nutSizes ?? []).map((size) => `${size.low} to ${size.high} m`).join(' or '),
      found: sockets.map((socket) => `${socket.shape} ${socket.acrossFlats} m`).join(', '),
    });
  });
}

function wrongSide({
  adapter,
  wanted,
}: {
  readonly adapter: AdapterModel;
  readonly wanted: string;
}): readonly Discrepancy[] {
  return holds(false, {
    code: 'assembly-adapter-side',
    sentence: `${adapter.number} does not grip ${wanted}.`,
    expected: `an adapter for ${wanted}`,
    found: adapter.facts.kind,
  });
}

function checkStem({ chain, lineDuty }: Subject): readonly Discrepancy[] {
  const { grip } = lineDuty.duty;
  if (grip.stemRisesThroughWheel === 'no') return [];
  const stem = grip.stemDiameter?.high ?? 0;
  const above = grip.stemProtrusion?.high ?? grip.travel?.high ?? 0;
  const { head } = chain;
  const headClears =
    head.facts.kind === 'open-centre' &&
    (head.facts.bore ?? 0) >= stem - HAIR &&
    (head.facts.boreDepth ?? Number.POSITIVE_INFINITY) >= above - HAIR;
  const tube = chain.extensions.filter((part) => (part.facts.bore ?? 0) >= stem && part.facts.bore !== undefined);
  const tubeHolds = tube.length > 0 && tube.reduce((sum, part) => sum + part.facts.length.low, 0) >= above - HAIR;
  const underHead = chain.options.filter((option) => option.facts.sits === 'after head');
  const passed = [...chain.adapters, ...chain.extensions, ...underHead];
  return [
    ...holds(headClears || tubeHolds, {
      code: 'assembly-stem-head',
      sentence: `The stem rises through the wheel and ${head.number} does not clear it.`,
      expected: `a bore of ${stem} m, ${above} m deep`,
      found: `${head.facts.kind}, bore ${head.facts.bore ?? 'none'}, depth ${head.facts.boreDepth ?? 'open'}`,
    }),
    ...passed.flatMap((part) =>
      holds(part.facts.bore !== undefined && part.facts.bore >= stem - HAIR, {
        code: 'assembly-stem-part',
        sentence: `The stem rises through the wheel and does not pass ${part.number}.`,
        expected: `a bore of ${stem} m`,
        found: part.facts.bore ?? 'none',
      }),
    ),
  ];
}

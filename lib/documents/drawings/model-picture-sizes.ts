/*
 * The known sizes of a model as bars to one scale, with a scale bar, so that sizes can be compared by eye.
 * Invariant: all bars of one drawing share the scale; a size that nobody stated is not drawn.
 * Not here: the sketch beside them (model-picture.ts).
 * Read next: model-picture.ts.
 */
import type { Model } from '#lib/equipment/model.ts';
import { formatQuantity, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { Shape } from './drawing.ts';
import { line, point, rect, text } from './shapes.ts';

interface Size {
  readonly label: string;
  readonly low: number;
  readonly high: number;
}

interface Sizes {
  readonly shapes: readonly Shape[];
  readonly bottom: number;
  readonly words: string;
  readonly scaled: boolean;
}

const WIDTH = 180;
const ROW = 22;

export function sizesDrawing(
  model: Model,
  place: { readonly left: number; readonly top: number; readonly system: UnitSystem },
): Sizes {
  const sizes = sizesOf(model);
  const longest = Math.max(0, ...sizes.map(({ high }) => high));
  if (longest <= 0) return { shapes: [], bottom: place.top, words: '', scaled: false };
  const by = WIDTH / longest;
  const length = (value: number) => formatQuantity({ value, unit: 'm', system: place.system });
  const told = sizes.map((size) => ({
    ...size,
    text: size.low === size.high ? length(size.high) : `${length(size.low)} to ${length(size.high)}`,
  }));
  const bars = told.flatMap(({ label, low, high, text: words }, index) => {
    const y = place.top + 10 + index * ROW;
    return [
      text(point(place.left, y), `${label} ${words}`, { size: 8.5 }),
      rect(
        { x: place.left, y: y + 3, width: low * by, height: 6 },
        { fill: 'part-dark', stroke: 'outline', weight: 'hair' },
      ),
      ...(high > low
        ? [
            rect(
              { x: place.left + low * by, y: y + 3, width: (high - low) * by, height: 6 },
              { stroke: 'outline', weight: 'hair', dash: 'dashed' as const },
            ),
          ]
        : []),
    ];
  });
  const bar = barOf(longest);
  const y = place.top + 18 + told.length * ROW;
  return {
    shapes: [
      ...bars,
      line(point(place.left, y), point(place.left + bar * by, y), { stroke: 'axis', weight: 'medium' }),
      ...[0, bar].map((at) =>
        line(point(place.left + at * by, y - 3), point(place.left + at * by, y + 3), {
          stroke: 'axis',
          weight: 'medium',
        }),
      ),
      text(point(place.left + bar * by + 5, y + 3), length(bar), { size: 8, role: 'muted' }),
    ],
    bottom: y + 6,
    words: `${told.map(({ label, text: words }) => `${label} ${words}`).join('; ')}.`,
    scaled: true,
  };
}

/** A round length that is at most half of the longest. */
function barOf(longest: number): number {
  const power = 10 ** Math.floor(Math.log10(longest / 2));
  return ([5, 2, 1].find((factor) => factor * power <= longest / 2) ?? 1) * power;
}

function sizesOf(model: Model): readonly Size[] {
  const box = [
    one('case length', model.case.length),
    one('case width', model.case.width),
    one('case height', model.case.height),
  ];
  switch (model.role) {
    case 'drive':
    case 'accessory':
      return box.flat();
    case 'option':
      return [...one('bore', model.facts.bore), ...box.flat()];
    case 'head':
      return [
        ...one('height', model.facts.height),
        ...one('swing radius', model.facts.swingRadius),
        ...one('bore', model.facts.bore),
        ...one('bore depth', model.facts.boreDepth),
      ];
    case 'adapter': {
      const { wheel, length, sockets, height, bore } = model.facts;
      const across = sockets?.map(({ acrossFlats }) => acrossFlats) ?? [];
      return [
        ...range('wheel diameter', wheel?.diameter),
        ...one('rim or spoke up to', wheel?.rimUpTo),
        ...range(
          'nut across flats',
          across.length === 0 ? undefined : { low: Math.min(...across), high: Math.max(...across) },
        ),
        ...range('length', length),
        ...one('height', height),
        ...one('bore', bore),
      ];
    }
    case 'extension':
      return [
        ...range('length', model.facts.length),
        ...one('shaft outside', model.facts.section?.outer),
        ...one('bore', model.facts.bore),
      ];
    case 'restraint':
      return [
        ...range('arm', model.facts.arm),
        ...one('reach', model.facts.reach),
        ...one('side of the plate', model.facts.plateSide),
      ];
  }
}

function one(label: string, value: number | undefined): readonly Size[] {
  return value === undefined ? [] : [{ label, low: value, high: value }];
}

function range(label: string, pair: { readonly low: number; readonly high: number } | undefined): readonly Size[] {
  return pair === undefined ? [] : [{ label, ...pair }];
}

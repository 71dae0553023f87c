/*
 * A drawing of lib/documents in a PDF: the same shapes as vector graphics, texts selectable.
 * Invariant: nothing is added to the geometry; roles become the paper's colours.
 * Not here: geometry (documents).
 * Read next: block-views.tsx.
 */
/** @jsxRuntime automatic */
import { Circle, G, Line, Path, Rect, Svg, Text } from '@react-pdf/renderer';
import { DASHES, type Drawing, LINE_WEIGHTS, type PathShape, type Shape } from '#lib/documents/drawing.ts';
import { PAPER_COLOURS } from '#lib/documents/paper-colours.ts';
import { FAMILY } from './fonts.ts';

export function DrawingView({ drawing, width }: { readonly drawing: Drawing; readonly width: number }) {
  const height = (drawing.height / drawing.width) * width;
  return (
    <Svg viewBox={`0 0 ${drawing.width} ${drawing.height}`} style={{ width, height }}>
      <G>{withMergedStrokes(drawing.shapes).map(shapeView)}</G>
    </Svg>
  );
}

/** Neighbouring strokes of the same ink become one path: far fewer elements, the same picture. */
function withMergedStrokes(shapes: readonly Shape[]): readonly Shape[] {
  const merged: Shape[] = [];
  for (const shape of shapes) {
    const stroke = strokeOnly(shape);
    const last = merged.at(-1);
    if (stroke !== null && last?.kind === 'path' && last.fill === undefined && sameInk(last, stroke))
      merged[merged.length - 1] = { ...last, d: `${last.d} ${stroke.d}` };
    else merged.push(stroke ?? shape);
  }
  return merged;
}

function strokeOnly(shape: Shape): PathShape | null {
  if (shape.kind === 'path') return shape.fill === undefined ? shape : null;
  if (shape.kind !== 'line') return null;
  const { kind: _kind, from, to, ...ink } = shape;
  return { kind: 'path', d: `M ${from.x} ${from.y} L ${to.x} ${to.y}`, ...ink };
}

function sameInk(a: PathShape, b: PathShape): boolean {
  return a.stroke === b.stroke && a.weight === b.weight && a.dash === b.dash;
}

function shapeView(shape: Shape, key: number) {
  switch (shape.kind) {
    case 'rect':
      return (
        <Rect
          key={key}
          x={shape.x}
          y={shape.y}
          width={shape.width}
          height={shape.height}
          rx={shape.radius ?? 0}
          ry={shape.radius ?? 0}
          {...inked(shape)}
        />
      );
    case 'line':
      return <Line key={key} x1={shape.from.x} y1={shape.from.y} x2={shape.to.x} y2={shape.to.y} {...inked(shape)} />;
    case 'path':
      return <Path key={key} d={shape.d} {...inked(shape)} />;
    case 'circle':
      return <Circle key={key} cx={shape.centre.x} cy={shape.centre.y} r={shape.radius} {...inked(shape)} />;
    case 'text':
      return (
        <Text
          key={key}
          x={shape.at.x}
          y={shape.at.y}
          textAnchor={shape.anchor}
          fill={PAPER_COLOURS[shape.role]}
          style={{ fontFamily: FAMILY, fontSize: shape.size, fontWeight: shape.bold ? 600 : 400 }}
        >
          {shape.text}
        </Text>
      );
  }
}

function inked(shape: Exclude<Shape, { kind: 'text' }>) {
  return {
    fill: shape.fill === undefined ? 'none' : PAPER_COLOURS[shape.fill],
    ...(shape.stroke === undefined
      ? {}
      : {
          stroke: PAPER_COLOURS[shape.stroke],
          strokeWidth: LINE_WEIGHTS[shape.weight ?? 'thin'],
          strokeLinecap: 'round' as const,
          strokeLineJoin: 'round' as const,
        }),
    ...(shape.dash === undefined ? {} : { strokeDasharray: DASHES[shape.dash].replace(/ /g, ',') }),
  };
}

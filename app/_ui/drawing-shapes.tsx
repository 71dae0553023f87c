import type { CSSProperties } from 'react';
import { DASHES, LINE_WEIGHTS, type Shape } from '#lib/documents/drawings/drawing.ts';

/** The shapes of a drawing in the theme's colours, for the inside of an <svg>. */
export function DrawingShapes({ shapes }: { readonly shapes: readonly Shape[] }) {
  return shapes.map((shape, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the shapes of a drawing never move
    <ShapeView key={index} shape={shape} />
  ));
}

function ShapeView({ shape }: { readonly shape: Shape }) {
  switch (shape.kind) {
    case 'rect':
      return (
        <rect
          x={shape.x}
          y={shape.y}
          width={shape.width}
          height={shape.height}
          rx={shape.radius ?? 0}
          {...inked(shape)}
        />
      );
    case 'line':
      return <line x1={shape.from.x} y1={shape.from.y} x2={shape.to.x} y2={shape.to.y} {...inked(shape)} />;
    case 'path':
      return <path d={shape.d} {...inked(shape)} />;
    case 'circle':
      return <circle cx={shape.centre.x} cy={shape.centre.y} r={shape.radius} {...inked(shape)} />;
    case 'text':
      return (
        <text
          x={shape.at.x}
          y={shape.at.y}
          fontSize={shape.size}
          textAnchor={shape.anchor}
          fontWeight={shape.bold ? 600 : 400}
          style={{ fill: `var(--kw-${shape.role})` }}
        >
          {shape.text}
        </text>
      );
  }
}

function inked(shape: Exclude<Shape, { readonly kind: 'text' }>): {
  readonly style: CSSProperties;
  readonly strokeDasharray?: string;
} {
  return {
    style: {
      fill: shape.fill === undefined ? 'none' : `var(--kw-${shape.fill})`,
      stroke: shape.stroke === undefined ? 'none' : `var(--kw-${shape.stroke})`,
      strokeWidth: LINE_WEIGHTS[shape.weight ?? 'thin'],
      strokeLinejoin: 'round',
      strokeLinecap: 'round',
    },
    ...(shape.dash === undefined ? {} : { strokeDasharray: DASHES[shape.dash] }),
  };
}

'use client';

import { type PointerEvent, useState } from 'react';
import styles from './moves.module.css';

/** As in lib/stock/signature.ts. */
const WIDTH = 600;
const HEIGHT = 200;

export type Stroke = readonly (readonly [number, number])[];

interface PadProps {
  readonly strokes: readonly Stroke[];
  /** Points come faster than the pad is drawn anew, so each is added to what there is by then. */
  readonly onChange: (change: (before: readonly Stroke[]) => readonly Stroke[]) => void;
}

/** A pad to sign on with finger, pen or mouse; whoever cannot types the name instead. */
export function SignaturePad({ strokes, onChange }: PadProps) {
  const [isDown, setDown] = useState(false);
  const at = (event: PointerEvent<SVGSVGElement>): readonly [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    const part = (value: number, size: number, full: number) =>
      Math.max(0, Math.min(full, Math.round((value / size) * full)));
    return [part(event.clientX - box.left, box.width, WIDTH), part(event.clientY - box.top, box.height, HEIGHT)];
  };
  return (
    <div className={styles.pad}>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={strokes.length === 0 ? 'Pad to sign on, empty' : 'Pad to sign on, signed'}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setDown(true);
          const point = at(event);
          onChange((before) => [...before, [point]]);
        }}
        onPointerMove={(event) => {
          if (!isDown) return;
          const point = at(event);
          onChange((before) => [...before.slice(0, -1), [...(before.at(-1) ?? []), point]]);
        }}
        onPointerUp={() => setDown(false)}
        onPointerCancel={() => setDown(false)}
      >
        <line x1="30" y1="160" x2="570" y2="160" />
        {strokes.map((stroke, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: strokes have no name but their order
          <polyline key={index} points={stroke.map(([x, y]) => `${x},${y}`).join(' ')} />
        ))}
      </svg>
      <button type="button" onClick={() => onChange(() => [])} disabled={strokes.length === 0}>
        Clear the pad
      </button>
    </div>
  );
}

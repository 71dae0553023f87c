'use client';

import { ShownRange, ShownSource } from '#app/_ui/shown-units.client.tsx';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import type { Place } from './block.ts';

const SHORT = { measured: 'M', stated: 'S', standard: 'N', computed: 'C', 'rule of thumb': 'R', assumed: 'A' } as const;

interface FigureCellProps {
  readonly known: Known<Unit>;
  readonly place: Place;
  readonly label: string;
  readonly isStop: boolean;
}

/** A figure of the duty with the mark of its basis; arrows walk to it, and the sentence shows on hover and focus. */
export function FigureCell({ known, place, label, isStop }: FigureCellProps) {
  return (
    <span
      className="basis"
      role="group"
      aria-label={label}
      tabIndex={isStop ? 0 : -1}
      data-row={place.row}
      data-column={place.column}
    >
      <ShownRange known={known} />{' '}
      <abbr className="mark" data-basis={known.basis} title={known.basis}>
        {SHORT[known.basis]}
      </abbr>
      <span role="note">
        {known.basis}: <ShownSource source={known.source} />
      </span>
    </span>
  );
}

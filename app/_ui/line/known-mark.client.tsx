'use client';
import { ShownRange, ShownSource } from '#app/_ui/shown-units.client.tsx';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';

const SHORT = { measured: 'M', stated: 'S', standard: 'N', computed: 'C', 'rule of thumb': 'R', assumed: 'A' } as const;

interface KnownMarkProps<U extends Unit> {
  readonly known: Known<U>;
  /** Where it stands in a grid that is walked with the arrows, and whether the Tab key stops there. */
  readonly cell: { readonly row: number; readonly column: number; readonly label: string; readonly isStop: boolean };
}

/** A number with its range and a small mark for its basis; the sentence shows on hover and focus. */
export function KnownMark<U extends Unit>({ known, cell }: KnownMarkProps<U>) {
  return (
    <span
      className="basis"
      role="group"
      aria-label={cell.label}
      tabIndex={cell.isStop ? 0 : -1}
      data-row={cell.row}
      data-column={cell.column}
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

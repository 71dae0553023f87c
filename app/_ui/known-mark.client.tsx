'use client';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { ShownRange, ShownSource } from './shown-units.client.tsx';

const SHORT = { measured: 'M', stated: 'S', standard: 'N', computed: 'C', 'rule of thumb': 'R', assumed: 'A' } as const;

/** A number with its range and a small mark for its basis; the sentence shows on hover and focus. */
export function KnownMark<U extends Unit>({ known }: { readonly known: Known<U> }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the sentence must be reachable by keyboard.
    <span className="basis" tabIndex={0}>
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

'use client';
import { createContext, type ReactNode, useContext } from 'react';
import { figuresIn } from '#lib/documents/words/person-forms.ts';
import { formatCeiling, formatMark, formatQuantity, formatRange, type UnitSystem } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { sentenceIn, type Told } from '#lib/units/say-figure.ts';
import { sourceIn } from '#lib/units/us-beside.ts';

import { useForms, useWords } from './shown-forms.client.tsx';

const Units = createContext<UnitSystem>('si');

/** Holds the units that this browser asked for; everything below shows its quantities in them. */
export function UnitsProvider({ system, children }: { readonly system: UnitSystem; readonly children: ReactNode }) {
  return <Units value={system}>{children}</Units>;
}

export function useUnits(): UnitSystem {
  return useContext(Units);
}

export function ShownRange({ known }: { readonly known: Known<Unit> }) {
  return figuresIn(formatRange(known, useUnits()), useForms().decimals);
}

export function ShownQuantity({ value, unit }: { readonly value: number; readonly unit: Unit }) {
  return figuresIn(formatQuantity({ value, unit, system: useUnits() }), useForms().decimals);
}

/** A mark of a limiter’s scale; it is never rounded up. */
export function ShownMark({ value }: { readonly value: number }) {
  return figuresIn(formatMark(value, useUnits()), useForms().decimals);
}

/** A torque that must not be passed; it is cut off, never rounded up. */
export function ShownCeiling({ value }: { readonly value: number }) {
  return figuresIn(formatCeiling(value, useUnits()), useForms().decimals);
}

/** Tells sentences in the units and the form of the person who looks. */
export function useSentences(): (told: Told) => string {
  const system = useUnits();
  const words = useWords();
  return (told) => words(sentenceIn(told, system));
}

/** A sentence with figures in it. */
export function ShownSentence({ told }: { readonly told: Told }) {
  return useSentences()(told);
}

/** A citation keeps its figures; what they are in US customary units stands beside. */
export function ShownSource({ source }: { readonly source: string }) {
  return useWords()(sourceIn(source, useUnits()));
}

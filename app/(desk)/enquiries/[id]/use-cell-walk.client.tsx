'use client';

import { type RefObject, useEffect, useRef } from 'react';
import type { SheetPlace } from './sheet-cell.client.tsx';

interface CellWalk {
  readonly frame: RefObject<HTMLElement | null>;
  /** How many rows and columns there are. */
  readonly size: SheetPlace;
  /** Row that was just added: the walk goes there by itself. */
  readonly newest: number | undefined;
  /** Brings a row into sight. */
  readonly onFar: (row: number) => void;
}

/** Moves the focus from cell to cell, also to rows that are not drawn yet. */
export function useCellWalk({ frame, size, newest, onFar }: CellWalk): (place: SheetPlace) => void {
  const wanted = useRef<SheetPlace>(undefined);

  function focusWanted(): void {
    if (!wanted.current) return;
    const { row, column } = wanted.current;
    const cell = frame.current?.querySelector<HTMLInputElement>(`input[data-row="${row}"][data-column="${column}"]`);
    if (!cell) return;
    wanted.current = undefined;
    cell.focus();
  }

  function go(place: SheetPlace): void {
    if (place.row < 0 || place.row >= size.row || place.column < 0 || place.column >= size.column) {
      if (document.activeElement instanceof HTMLInputElement) leaveAndStay(document.activeElement);
      return;
    }
    wanted.current = place;
    onFar(place.row);
    focusWanted();
  }

  // A row that was out of sight is there only after it has been drawn.
  useEffect(focusWanted);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a new line calls for the jump.
  useEffect(() => {
    if (newest !== undefined) go({ row: newest, column: 0 });
  }, [newest]);

  return go;
}

/** At the edge of the table the text is saved and the cell stays where it is. */
function leaveAndStay(cell: HTMLInputElement): void {
  cell.blur();
  cell.focus();
}

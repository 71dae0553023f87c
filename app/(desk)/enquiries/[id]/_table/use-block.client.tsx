'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';
import { type Block, type Place, within } from './block.ts';

export interface BlockWalk {
  readonly block: Block;
  /** Moves to a cell; nothing else is chosen then. */
  readonly go: (place: Place) => void;
  /** Lets the block reach to a cell. */
  readonly reach: (place: Place) => void;
  /** A cell got the focus by itself. */
  readonly focused: (place: Place) => void;
}

interface BlockWalkOf {
  readonly frame: RefObject<HTMLElement | null>;
  readonly size: Place;
  /** Row that was just added: the walk goes there by itself. */
  readonly newest: number | undefined;
  /** Brings a row into sight. */
  readonly onFar: (row: number) => void;
}

const START: Place = { row: 0, column: 0 };

/** The cell with the focus and the block that begins there; rows out of sight are brought in. */
export function useBlock({ frame, size, newest, onFar }: BlockWalkOf): BlockWalk {
  const [block, setBlock] = useState<Block>({ anchor: START, head: START });
  const wanted = useRef<Place>(undefined);

  function focusWanted(): void {
    if (!wanted.current) return;
    const cell = cellAt(frame.current, wanted.current);
    if (!cell) return;
    wanted.current = undefined;
    cell.focus({ preventScroll: true });
    cell.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  function go(to: Place): void {
    const place = within(to, size);
    if (cellAt(frame.current, place) === document.activeElement) leaveAndStay(document.activeElement);
    setBlock({ anchor: place, head: place });
    wanted.current = place;
    onFar(place.row);
    focusWanted();
  }

  // A row that was out of sight is there only after it has been drawn.
  useEffect(focusWanted);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only a line that has come calls for the jump.
  useEffect(() => {
    if (newest !== undefined && newest === size.row - 1) go({ row: newest, column: 0 });
  }, [newest, size.row]);

  return {
    block,
    go,
    reach: (to) => {
      const head = within(to, size);
      setBlock(({ anchor }) => ({ anchor, head }));
      onFar(head.row);
    },
    focused: (place) =>
      setBlock((before) =>
        before.anchor.row === place.row && before.anchor.column === place.column
          ? before
          : { anchor: place, head: place },
      ),
  };
}

export function cellAt(frame: HTMLElement | null, { row, column }: Place): HTMLElement | null {
  return frame?.querySelector<HTMLElement>(`[data-row="${row}"][data-column="${column}"]`) ?? null;
}

/** At the edge of the table the text is saved and the cell stays where it is. */
function leaveAndStay(cell: Element | null): void {
  if (!(cell instanceof HTMLInputElement)) return;
  cell.blur();
  cell.focus();
}

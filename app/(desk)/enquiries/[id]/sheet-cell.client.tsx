'use client';

import { type ClipboardEvent, type FocusEvent, type KeyboardEvent, type RefObject, useEffect, useRef } from 'react';
import type { ColumnChoice } from '#lib/services/list-column-choices.ts';
import styles from './schedule-table.module.css';

export interface SheetPlace {
  readonly row: number;
  readonly column: number;
}

interface SheetCellProps {
  readonly place: SheetPlace;
  readonly column: ColumnChoice;
  readonly label: string;
  readonly text: string;
  /** What an earlier visit knows where the list says nothing. */
  readonly known?: string | undefined;
  readonly onSave: (text: string) => void;
  readonly onMove: (place: SheetPlace) => void;
  /** A copied block that is more than one cell. */
  readonly onBlock: (text: string, place: SheetPlace) => void;
}

/** One cell: arrows walk, typing replaces, F2 walks inside the text, Enter goes down, Escape brings the text back. */
export function SheetCell({ place, column, label, text, known, onSave, onMove, onBlock }: SheetCellProps) {
  const box = useKeptTyping({ text, onSave });

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    const input = event.currentTarget;
    if (event.key === 'Escape') {
      bringBack(input, text);
      return;
    }
    if (event.key === 'F2') {
      event.preventDefault();
      walkInside(input);
      return;
    }
    const isInside = input.dataset.inside === 'yes' || input.dataset.dirty === 'yes';
    const by = event.altKey || event.ctrlKey || event.metaKey ? undefined : stepOf(event, isInside);
    if (!by) return;
    event.preventDefault();
    onMove({ row: place.row + by.row, column: place.column + by.column });
  }

  function onPaste(event: ClipboardEvent<HTMLInputElement>): void {
    const block = event.clipboardData.getData('text');
    if (!/[\t\n]/.test(block.trimEnd())) return;
    event.preventDefault();
    onBlock(block, place);
  }

  function onBlur(event: FocusEvent<HTMLInputElement>): void {
    settle(event.target);
    if (event.target.value.trim() !== text) onSave(event.target.value.trim());
  }

  return (
    <input
      ref={box}
      className={styles.input}
      aria-label={label}
      title={column.help}
      autoComplete="off"
      placeholder={known}
      data-row={place.row}
      data-column={place.column}
      defaultValue={text}
      onChange={(event) => {
        event.target.dataset.dirty = 'yes';
      }}
      onDoubleClick={(event) => {
        event.currentTarget.dataset.inside = 'yes';
      }}
      onFocus={(event) => event.target.select()}
      onKeyDown={onKeyDown}
      onPaste={onPaste}
      onBlur={onBlur}
    />
  );
}

/** The box of a cell; what is being typed in it survives answers and scrolling. */
function useKeptTyping({ text, onSave }: Pick<SheetCellProps, 'text' | 'onSave'>): RefObject<HTMLInputElement | null> {
  const box = useRef<HTMLInputElement>(null);
  const latest = useRef({ text, onSave });
  latest.current = { text, onSave };

  // What is being typed stays when an answer to an earlier edit arrives.
  useEffect(() => {
    if (box.current && box.current.dataset.dirty !== 'yes') box.current.value = text;
  }, [text]);

  // A row that is scrolled out of sight keeps what was typed in it.
  useEffect(() => {
    const input = box.current;
    return () => {
      if (input?.dataset.dirty === 'yes' && input.value.trim() !== latest.current.text) {
        latest.current.onSave(input.value.trim());
      }
    };
  }, []);

  return box;
}

/** Nothing is being typed any more, and arrows walk from cell to cell again. */
function settle(input: HTMLInputElement): void {
  delete input.dataset.dirty;
  delete input.dataset.inside;
}

function bringBack(input: HTMLInputElement, text: string): void {
  input.value = text;
  settle(input);
  input.select();
}

function walkInside(input: HTMLInputElement): void {
  input.dataset.inside = 'yes';
  input.setSelectionRange(input.value.length, input.value.length);
}

/** Left and right walk inside the text while it is being changed. */
function stepOf(event: KeyboardEvent, isInside: boolean): SheetPlace | undefined {
  if (event.key === 'Enter') return { row: event.shiftKey ? -1 : 1, column: 0 };
  if (event.shiftKey) return undefined;
  if (event.key === 'ArrowDown') return { row: 1, column: 0 };
  if (event.key === 'ArrowUp') return { row: -1, column: 0 };
  if (isInside) return undefined;
  if (event.key === 'ArrowLeft') return { row: 0, column: -1 };
  if (event.key === 'ArrowRight') return { row: 0, column: 1 };
  return undefined;
}

'use client';

import { type FocusEvent, type KeyboardEvent, type RefObject, useEffect, useRef } from 'react';
import type { Place } from './block.ts';
import styles from './schedule-table.module.css';

interface SheetCellProps {
  readonly place: Place;
  readonly label: string;
  readonly help: string;
  readonly text: string;
  /** What an earlier visit knows where the list says nothing. */
  readonly known?: string | undefined;
  /** Whether the Tab key stops here: one cell of the table bears the focus. */
  readonly isStop: boolean;
  readonly onSave: (text: string) => void;
}

/** One cell: typing replaces, F2 walks inside the text, Escape brings the text back; walking is the sheet’s. */
export function SheetCell({ place, label, help, text, known, isStop, onSave }: SheetCellProps) {
  const box = useKeptTyping({ text, onSave });

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    const input = event.currentTarget;
    if (event.key === 'Escape' && isTyping(input)) {
      event.stopPropagation();
      input.value = text;
      settle(input);
      input.select();
    }
    if (event.key === 'F2') {
      event.preventDefault();
      walkInside(input);
    }
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
      title={help}
      autoComplete="off"
      maxLength={2000}
      tabIndex={isStop ? 0 : -1}
      placeholder={known}
      data-row={place.row}
      data-column={place.column}
      defaultValue={text}
      onChange={(event) => {
        event.target.dataset.dirty = 'yes';
      }}
      onDoubleClick={(event) => walkInside(event.currentTarget)}
      onFocus={(event) => event.target.select()}
      onKeyDown={onKeyDown}
      onBlur={onBlur}
    />
  );
}

/** Whether keys belong to the text of the cell. */
export function isTyping(target: EventTarget | null): target is HTMLInputElement {
  return target instanceof HTMLInputElement && (target.dataset.inside === 'yes' || target.dataset.dirty === 'yes');
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

function walkInside(input: HTMLInputElement): void {
  input.dataset.inside = 'yes';
  input.setSelectionRange(input.value.length, input.value.length);
}

/** Nothing is being typed any more, and arrows walk from cell to cell again. */
export function settle(input: HTMLInputElement): void {
  delete input.dataset.dirty;
  delete input.dataset.inside;
}

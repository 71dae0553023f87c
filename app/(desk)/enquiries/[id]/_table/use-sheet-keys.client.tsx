'use client';

import {
  type ClipboardEvent,
  type FocusEvent,
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
  useRef,
} from 'react';
import { isMany, type Place, spanOf, stepTo } from './block.ts';
import type { GridColumn } from './grid-columns.ts';
import { isTyping, settle } from './sheet-cell.client.tsx';
import type { Chosen, Panel } from './tools-props.ts';
import type { BlockWalk } from './use-block.client.tsx';
import { type BlockVerbs, useBlockVerbs } from './use-block-verbs.client.tsx';
import type { Schedule } from './use-schedule.client.tsx';

interface SheetKeysOf {
  readonly schedule: Schedule;
  readonly columns: readonly GridColumn[];
  readonly walk: BlockWalk;
  readonly size: Place;
  /** Rows in the frame. */
  readonly page: number;
  readonly chosen: Chosen;
  readonly onPanel: (panel: Panel) => void;
}

/** What keys, mouse and clipboard do in the sheet. */
export function useSheetKeys(of: SheetKeysOf) {
  const { schedule, columns, walk } = of;
  const verbs = useBlockVerbs({ schedule, columns });
  const mouse = useMouse(walk);

  function onKeyDown(event: KeyboardEvent<HTMLElement>): void {
    const place = placeOf(event.target);
    if (!place || event.altKey) {
      if (place && moveLines(event, of, verbs)) event.preventDefault();
      return;
    }
    if (walkKey(event, of) || commandKey(event, of, verbs)) event.preventDefault();
  }

  function onCopy(event: ClipboardEvent<HTMLElement>): void {
    if (!placeOf(event.target) || isTyping(event.target)) return;
    event.preventDefault();
    const text = verbs.copy(walk.block);
    if (text !== undefined) event.clipboardData.setData('text/plain', text);
    if (event.type === 'cut') verbs.fill(walk.block, '');
  }

  function onPaste(event: ClipboardEvent<HTMLElement>): void {
    const text = event.clipboardData.getData('text');
    if (!placeOf(event.target) || text === '') return;
    const isBlock = isMany(walk.block) || /[\t\n]/.test(text.trimEnd());
    if (isTyping(event.target) || !isBlock) return;
    event.preventDefault();
    verbs.paste(walk.block, text);
  }

  function onFocus(event: FocusEvent<HTMLElement>): void {
    const place = placeOf(event.target);
    if (place) walk.focused(place);
  }

  return { onKeyDown, onCopy, onCut: onCopy, onPaste, onFocus, ...mouse };
}

function placeOf(target: EventTarget): Place | undefined {
  if (!(target instanceof HTMLElement) || target.dataset.row === undefined) return undefined;
  return { row: Number(target.dataset.row), column: Number(target.dataset.column) };
}

/** Arrows, pages and ends; with Shift the block reaches there. */
function walkKey(event: KeyboardEvent<HTMLElement>, { walk, size, page }: SheetKeysOf): boolean {
  const typing = isTyping(event.target);
  const { anchor, head } = walk.block;
  if (event.key === 'Enter' && !event.ctrlKey && !event.metaKey) {
    walk.go({ row: anchor.row + (event.shiftKey ? -1 : 1), column: anchor.column });
    return true;
  }
  if (event.key === 'Tab' && !event.ctrlKey) return tabOn(event, { walk, size });
  const sideways =
    event.key === 'ArrowLeft' || event.key === 'ArrowRight' || event.key === 'Home' || event.key === 'End';
  if (typing && (sideways || event.shiftKey || event.ctrlKey)) return false;
  const to = stepTo(event.shiftKey ? head : anchor, event, { size, page });
  if (!to) return false;
  if (event.shiftKey) walk.reach(to);
  else walk.go(to);
  return true;
}

/** Tab goes from cell to cell in a row, and leaves the table at its ends. */
function tabOn(event: KeyboardEvent, { walk, size }: Pick<SheetKeysOf, 'walk' | 'size'>): boolean {
  const { row, column } = walk.block.anchor;
  const to = column + (event.shiftKey ? -1 : 1);
  if (to < 0 || to >= size.column) return false;
  walk.go({ row, column: to });
  return true;
}

function commandKey(event: KeyboardEvent<HTMLElement>, of: SheetKeysOf, verbs: BlockVerbs): boolean {
  const { walk, size, chosen, onPanel } = of;
  const { block } = walk;
  const typing = isTyping(event.target);
  if (event.key === 'Escape') {
    walk.go(block.anchor);
    return true;
  }
  if (event.key === 'Delete' && !typing) {
    verbs.fill(block, '');
    return true;
  }
  if (event.key === ' ' && event.shiftKey && !typing) {
    chosen.toggle(verbs.lineIds(block));
    return true;
  }
  if (!event.ctrlKey && !event.metaKey) return false;
  const key = event.key.toLowerCase();
  if (key === 'enter' && event.target instanceof HTMLInputElement) {
    const text = event.target.value;
    settle(event.target);
    verbs.fill(block, text);
  } else if (key === 'd') verbs.fillDown(block);
  else if (key === 'f' || key === 'h') onPanel('replace');
  else if (key === 'g') onPanel('go');
  else if (key === 'a' && !typing) {
    walk.go({ row: 0, column: 0 });
    walk.reach({ row: size.row, column: size.column });
  } else return false;
  return true;
}

/** Alt with an arrow moves the lines of the block, in the list’s own order only. */
function moveLines(event: KeyboardEvent, { schedule, walk }: SheetKeysOf, verbs: BlockVerbs): boolean {
  if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return false;
  moveBlock({ schedule, walk, lineIds: verbs.lineIds(walk.block), way: event.key === 'ArrowUp' ? 'up' : 'down' });
  return true;
}

interface BlockMove {
  readonly schedule: Schedule;
  readonly walk: BlockWalk;
  readonly lineIds: readonly number[];
  readonly way: 'up' | 'down';
}

/** One place up or down; the focus goes along. */
export function moveBlock({ schedule, walk, lineIds, way }: BlockMove): void {
  const { lines, isWhole, tell, take } = schedule;
  if (!isWhole) {
    tell('Lines move in the list’s own order: drop the filter and the sorting first.');
    return;
  }
  const { top, bottom, left, right } = spanOf(walk.block);
  const target = way === 'up' ? lines.order[top - 1] : (lines.order[bottom + 2] ?? 0);
  if (target === undefined || (way === 'down' && bottom + 1 >= lines.order.length)) return;
  take({ kind: 'move', lineIds, before: target });
  const by = way === 'up' ? -1 : 1;
  walk.go({ row: top + by, column: left });
  if (bottom > top) walk.reach({ row: bottom + by, column: right });
}

/** The mouse draws a block out; with Shift it reaches to where one clicks. */
function useMouse(walk: BlockWalk) {
  const drawing = useRef(false);

  function onPointerDown(event: PointerEvent<HTMLElement>): void {
    const place = placeUnder(event);
    if (!place || event.button !== 0 || event.pointerType !== 'mouse' || isTyping(event.target)) return;
    if (event.shiftKey) {
      event.preventDefault();
      walk.reach(place);
      return;
    }
    drawing.current = true;
    window.addEventListener('pointerup', () => (drawing.current = false), { once: true });
    walk.go(place);
  }

  function onPointerOver(event: PointerEvent<HTMLElement>): void {
    if (!drawing.current || (event.buttons & 1) === 0) return;
    const place = placeUnder(event);
    const { anchor, head } = walk.block;
    if (!place || (place.row === head.row && place.column === head.column)) return;
    if (place.row === anchor.row && place.column === anchor.column && !isMany(walk.block)) return;
    walk.reach(place);
  }

  // The cell takes its whole text for typing over; the mouse sets a caret only inside a text that is being changed.
  function onMouseDown(event: MouseEvent<HTMLElement>): void {
    if (placeUnder(event) && !isTyping(event.target)) event.preventDefault();
  }

  return { onPointerDown, onPointerOver, onMouseDown };
}

function placeUnder(event: MouseEvent<HTMLElement>): Place | undefined {
  if (!(event.target instanceof Element)) return undefined;
  const cell = event.target.closest('[role="gridcell"]')?.querySelector('[data-row]') ?? null;
  return cell ? placeOf(cell) : undefined;
}

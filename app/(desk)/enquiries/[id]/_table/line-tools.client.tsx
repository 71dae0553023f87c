'use client';

import { useRef } from 'react';
import styles from './schedule-table.module.css';
import { linesMeant, type ToolsProps } from './tools-props.ts';
import { moveBlock } from './use-sheet-keys.client.tsx';

interface LineToolsProps extends ToolsProps {
  readonly onChosen: (ids: ReadonlySet<number>) => void;
}

/** Lines come, go, are doubled and change places. */
export function LineTools(props: LineToolsProps) {
  const { schedule, walk, chosen, onChosen } = props;
  const { order } = schedule.lines;

  function remove(): void {
    const lineIds = linesMeant(props);
    if (lineIds.length > 0) schedule.take({ kind: 'remove', lineIds });
    onChosen(new Set());
  }

  async function double(): Promise<void> {
    const lineIds = linesMeant(props);
    const cells = await schedule.lines.cells(lineIds);
    const lines = lineIds.flatMap((id) => {
      const line = cells.get(id);
      return line
        ? [{ cells: { ...line.cells, tag: `${line.cells.tag ?? ''} copy`.trim() }, measured: line.measured }]
        : [];
    });
    schedule.take({ kind: 'add', lines, after: lineIds.at(-1) });
  }

  function insertAbove(): void {
    const first = linesMeant(props)[0];
    const at = first === undefined ? 0 : (schedule.lines.placeOf(first) ?? 0);
    if (schedule.isWhole) schedule.addLine(order[at - 1] ?? 0);
    else schedule.tell('Lines are inserted in the list’s own order: drop the filter and the sorting first.');
  }

  const move = (way: 'up' | 'down') => moveBlock({ schedule, walk: walk.current, lineIds: linesMeant(props), way });
  return (
    <>
      <button type="button" onClick={() => schedule.addLine()}>
        Add a line
      </button>
      <button type="button" disabled={chosen.size === 0} onClick={remove}>
        {chosen.size < 2 ? 'Remove the line' : `Remove ${chosen.size} lines`}
      </button>
      <LineMenu
        entries={[
          { words: 'Insert a line above', work: insertAbove },
          { words: 'Double these lines', work: () => void double() },
          { words: 'Move up', keys: 'Alt+↑', work: () => move('up') },
          { words: 'Move down', keys: 'Alt+↓', work: () => move('down') },
          { words: 'Remove these lines', work: remove },
        ]}
      />
    </>
  );
}

interface LineMenuProps {
  readonly entries: readonly { readonly words: string; readonly keys?: string; readonly work: () => void }[];
}

/** What is done with the lines of the block less often. */
function LineMenu({ entries }: LineMenuProps) {
  const menu = useRef<HTMLDivElement>(null);

  function open(button: HTMLElement): void {
    const pane = menu.current;
    if (!pane) return;
    const place = button.getBoundingClientRect();
    pane.style.left = `${Math.max(8, Math.min(place.left, window.innerWidth - 228))}px`;
    pane.style.top = `${place.bottom + 4}px`;
    pane.togglePopover();
  }

  return (
    <>
      <button type="button" aria-haspopup="true" onClick={(event) => open(event.currentTarget)}>
        Lines…
      </button>
      <div ref={menu} popover="auto" className={styles.menu}>
        {entries.map(({ words, keys, work }) => (
          <button
            key={words}
            type="button"
            onClick={() => {
              menu.current?.hidePopover();
              work();
            }}
          >
            {words} {keys && <small>{keys}</small>}
          </button>
        ))}
      </div>
    </>
  );
}

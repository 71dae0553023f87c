'use client';
import { type FormEvent, useId, useState } from 'react';
import styles from '#app/_ui/plan/plan-sheet.module.css';
import { countText } from '#lib/documents/words/print-values.ts';
import type { ItemTools, ShownItem } from './kit-item.ts';

/** Tags that a list of suggestions may hold without growing slow. */
const MOST_SUGGESTED = 200;

/** Holds lines to this part: those that need it here, or any one by its tag. */
export function PinLines({ item, tags, pins, busy, pin }: ItemTools & { readonly item: ShownItem }) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  const [typed, setTyped] = useState('');
  const [problem, setProblem] = useState('');
  const pinned = new Set(pins.filter(({ part }) => part === item.number).map(({ tag }) => tag));
  const open = item.neededFor.filter((tag) => !pinned.has(tag));
  const asked = typed.trim();
  const suggested = tags
    .filter((tag) => !pinned.has(tag) && tag.toLowerCase().includes(asked.toLowerCase()))
    .slice(0, MOST_SUGGESTED);

  function lay(event: FormEvent): void {
    event.preventDefault();
    const isThere = tags.includes(asked);
    setProblem(isThere ? '' : asked === '' ? 'Type the tag of a line.' : `There is no line ${asked} here.`);
    if (!isThere) return;
    setTyped('');
    setOpen(false);
    pin(item.number, [asked]);
  }

  const name = `${item.name} ${item.number}`;
  return (
    <span className={styles.pin}>
      <button
        type="button"
        className={styles.small}
        disabled={busy}
        aria-expanded={isOpen}
        aria-controls={id}
        aria-label={`Pin lines to ${name}`}
        onClick={() => setOpen(!isOpen)}
      >
        Pin lines
      </button>
      <span id={id} hidden={!isOpen} className={styles.pinBody}>
        <form className={styles.row} onSubmit={lay}>
          <label className={styles.field}>
            Line
            <input
              className={styles.input}
              list={`${id}-tags`}
              value={typed}
              autoComplete="off"
              aria-describedby={problem === '' ? undefined : `${id}-problem`}
              onChange={(event) => setTyped(event.target.value)}
            />
          </label>
          <datalist id={`${id}-tags`}>
            {isOpen ? suggested.map((tag) => <option key={tag} value={tag} />) : null}
          </datalist>
          <button type="submit" className={styles.small} disabled={busy} aria-label={`Pin this line to ${name}`}>
            Pin it
          </button>
        </form>
        {problem === '' ? null : (
          <span id={`${id}-problem`} className={styles.refused} role="alert">
            {problem}
          </span>
        )}
        <PinAll {...{ item, open, busy, pin }} />
      </span>
    </span>
  );
}

interface PinAllProps extends Pick<ItemTools, 'busy' | 'pin'> {
  readonly item: ShownItem;
  /** Lines that need it here and are not pinned to it yet. */
  readonly open: readonly string[];
}

/** Offered where all lines are known here: of a long kit only the first are. */
function PinAll({ item, open, busy, pin }: PinAllProps) {
  if (open.length < 2 || item.neededForCount !== item.neededFor.length) return null;
  return (
    <button
      type="button"
      className={styles.small}
      disabled={busy}
      aria-label={`Pin all ${open.length} lines to ${item.name} ${item.number}`}
      onClick={() => pin(item.number, open)}
    >
      Pin all {countText(open.length, 'line')} that need it here
    </button>
  );
}

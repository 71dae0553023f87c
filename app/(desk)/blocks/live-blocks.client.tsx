'use client';

import { useCallback, useRef, useState } from 'react';
import { FieldHelp } from '#app/_ui/field-help.client.tsx';
import { Toast } from '#app/_ui/toast.client.tsx';

/** The blocks that answer: dialog, toast with undo, menu, help of a field. */
export function LiveBlocks() {
  const dialog = useRef<HTMLDialogElement>(null);
  const [lines, setLines] = useState(11);
  const [isToasted, setToasted] = useState(false);
  const done = useCallback(() => setToasted(false), []);
  return (
    <>
      <div className="tools">
        <button type="button" onClick={() => dialog.current?.showModal()}>
          Open a dialog
        </button>
        <button
          type="button"
          className="danger"
          onClick={() => {
            setLines(lines - 1);
            setToasted(true);
          }}
        >
          Remove a line
        </button>
        <details className="menu">
          <summary>A menu</summary>
          <ul>
            <li>
              <a href="#blocks-dialogs">Take to another crew</a>
            </li>
            <li>
              <button type="button">Lock the part</button>
            </li>
          </ul>
        </details>
        <span className="labelled">
          Wheel dish <FieldHelp column="wheel_dish" label="Wheel dish" />
        </span>
        <span className="soft">{lines} lines</span>
      </div>
      <dialog ref={dialog} aria-labelledby="blocks-dialog">
        <h2 id="blocks-dialog">Book the units?</h2>
        <p>Nine units are held from 12 December. They are free again when the booking is cancelled.</p>
        <form method="dialog" className="acts">
          <button type="submit">Not yet</button>
          <button type="submit" className="main">
            Book them
          </button>
        </form>
      </dialog>
      {isToasted && (
        <Toast words="One line was removed." onUndo={() => setLines((before) => before + 1)} onDone={done} />
      )}
    </>
  );
}

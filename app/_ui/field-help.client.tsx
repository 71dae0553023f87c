'use client';

import { useId, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { FieldHelp as Help } from '#lib/services/lines/field-guide.ts';
import { FieldHelpSheet } from './field-help-sheet.tsx';

interface FieldHelpProps {
  /** Name of a column, or of a key of the site file. */
  readonly column: string;
  readonly label: string;
}

/** Asked once a visit: help does not change while the house runs. */
const known = new Map<string, Help>();

/** A small question mark beside a field; it opens a sheet that says what the field is, how to measure it and what not knowing costs. */
export function FieldHelp({ column, label }: FieldHelpProps) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  const [help, setHelp] = useState(known.get(column));
  const [trouble, setTrouble] = useState('');

  async function fetchHelp(): Promise<void> {
    if (help !== undefined) return;
    const answer = await send<Help>({ method: 'GET', path: `/api/v1/help/${encodeURIComponent(column)}` });
    if (!answer.ok) return setTrouble(answer.sentence);
    known.set(column, answer.value);
    setTrouble('');
    setHelp(answer.value);
  }

  return (
    <>
      <button
        type="button"
        className="help-mark"
        popoverTarget={id}
        aria-expanded={isOpen}
        aria-label={`What is ${label}?`}
        onClick={() => void fetchHelp()}
      >
        <span aria-hidden="true">?</span>
      </button>
      <div
        id={id}
        popover="auto"
        className="help-sheet"
        role="dialog"
        aria-label={isOpen ? `${label}: help` : undefined}
        onToggle={(event) => setOpen(event.newState === 'open')}
      >
        {isOpen && (
          <>
            <p className="help-head">
              <strong>{label}</strong>
              <button type="button" className="quiet small" popoverTarget={id} popoverTargetAction="hide">
                Close
              </button>
            </p>
            {help === undefined ? (
              <p role="status">{trouble === '' ? 'Fetching the help.' : trouble}</p>
            ) : (
              <FieldHelpSheet help={help} id={id} />
            )}
          </>
        )}
      </div>
    </>
  );
}

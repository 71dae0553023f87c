'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import type { NoteView } from '#lib/services/enquiries/open-enquiry-life.ts';

interface NoteListProps {
  readonly enquiryId: number;
  readonly notes: readonly NoteView[];
}

export function NoteList({ enquiryId, notes }: NoteListProps) {
  const router = useRouter();
  const [text, setText] = useState('');
  const [edited, setEdited] = useState<NoteView | null>(null);
  const [trouble, setTrouble] = useState('');
  const path = `/api/v1/enquiries/${enquiryId}/notes`;

  async function call(message: Parameters<typeof send>[0]): Promise<boolean> {
    const sent = await send(message);
    setTrouble(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
    return sent.ok;
  }

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const isSaved = await call(
      edited === null
        ? { method: 'POST', path, body: { text } }
        : { method: 'PATCH', path: `${path}/${edited.id}`, body: { text } },
    );
    if (isSaved) begin(null);
  }

  /** Fills the form with a note, or empties it for a new one. */
  function begin(note: NoteView | null): void {
    setEdited(note);
    setText(note?.text ?? '');
  }

  return (
    <section className="panel" aria-labelledby="notes">
      <h2 id="notes">Notes</h2>
      {notes.length === 0 && (
        <p className="soft">What was said on the telephone, what to ask, what was promised: write it here.</p>
      )}
      {notes.map((note) => (
        <Note
          key={note.id}
          note={note}
          change={() => begin(note)}
          strike={() => call({ method: 'POST', path: `${path}/${note.id}/strike` })}
        />
      ))}
      <form onSubmit={submit}>
        <Trouble sentence={trouble} />
        <label htmlFor="note-text">{edited === null ? 'New note' : 'The note'}</label>
        <textarea
          id="note-text"
          rows={3}
          value={text}
          maxLength={10_000}
          onChange={(event) => setText(event.target.value)}
          style={{ width: '100%' }}
        />
        <p className="tools" style={{ marginTop: 'var(--space-2)' }}>
          <button className="main" type="submit">
            {edited === null ? 'Write it down' : 'Save the note'}
          </button>
          {edited !== null && (
            <button type="button" onClick={() => begin(null)}>
              Leave it
            </button>
          )}
        </p>
      </form>
    </section>
  );
}

interface NoteProps {
  readonly note: NoteView;
  readonly change: () => void;
  readonly strike: () => void;
}

function Note({ note, change, strike }: NoteProps) {
  return (
    <article style={{ marginBottom: 'var(--space-3)' }}>
      <small>
        {note.author}, <ShownMoment at={note.writtenAt} />
        {note.changedAt !== null && ', changed since'}
        {note.isStruck && `, struck through by ${note.struckBy}`}
      </small>
      <p style={{ whiteSpace: 'pre-wrap', overflowWrap: 'anywhere', margin: 0 }}>
        {note.isStruck ? <s>{note.text}</s> : note.text}
      </p>
      <span className="tools" style={{ margin: 0 }}>
        {note.mayChange && (
          <button type="button" onClick={change}>
            Change
          </button>
        )}
        <button type="button" onClick={strike}>
          {note.isStruck ? 'Take it up again' : 'Strike through'}
        </button>
      </span>
    </article>
  );
}

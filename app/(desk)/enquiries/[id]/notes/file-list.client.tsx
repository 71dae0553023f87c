'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import { Trouble } from '#app/_ui/trouble.tsx';
import type { EnquiryLifeView } from '#lib/services/enquiries/open-enquiry-life.ts';

interface FileListProps {
  readonly enquiryId: number;
  readonly files: EnquiryLifeView['files'];
  /** The customer's valve lists as they came. */
  readonly lists: readonly { readonly id: number; readonly fileName: string; readonly receivedAt: string }[];
}

const BYTES_A_KB = 1024;

export function FileList({ enquiryId, files, lists }: FileListProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  const [busy, setBusy] = useState(false);
  const base = `/api/v1/enquiries/${enquiryId}`;

  async function submit(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault();
    const form = event.currentTarget;
    setBusy(true);
    const sent = await send({ method: 'POST', path: `${base}/files`, body: new FormData(form) });
    setBusy(false);
    setTrouble(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return;
    form.reset();
    router.refresh();
  }

  async function put({ id, removed }: { readonly id: number; readonly removed: 'yes' | 'no' }): Promise<void> {
    const sent = await send({ method: 'PATCH', path: `${base}/files/${id}`, body: { removed } });
    setTrouble(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
  }

  return (
    <section className="panel" aria-labelledby="files">
      <h2 id="files">Files</h2>
      <Trouble sentence={trouble} />
      <ul className="findings">
        {lists.map((list) => (
          <li key={`list ${list.id}`}>
            <a href={`${base}/lists/${list.id}`}>{list.fileName}</a>
            <small className="beside">
              valve list, <ShownMoment at={list.receivedAt} />
            </small>
          </li>
        ))}
        {files.map((file) => (
          <KeptFile key={file.id} file={file} href={`${base}/files/${file.id}`} put={put} />
        ))}
      </ul>
      {lists.length + files.length === 0 && (
        <p className="soft">Drawings, photographs and mails are kept here as they came, byte for byte.</p>
      )}
      <form onSubmit={submit} className="tools">
        <div>
          <label htmlFor="file-new">A file, at most 10 MB</label>
          <input id="file-new" name="file" type="file" required />
        </div>
        <button type="submit" disabled={busy}>
          {busy ? 'Keeping…' : 'Keep it here'}
        </button>
      </form>
    </section>
  );
}

interface KeptFileProps {
  readonly file: EnquiryLifeView['files'][number];
  readonly href: string;
  readonly put: (change: { readonly id: number; readonly removed: 'yes' | 'no' }) => Promise<void>;
}

function KeptFile({ file, href, put }: KeptFileProps) {
  return (
    <li>
      {file.removed_at === null ? <a href={href}>{file.file_name}</a> : <s>{file.file_name}</s>}{' '}
      <button type="button" onClick={() => put({ id: file.id, removed: file.removed_at === null ? 'yes' : 'no' })}>
        {file.removed_at === null ? 'Put away' : 'Bring back'}
        <span className="unseen"> {file.file_name}</span>
      </button>
      <small className="beside">
        {Math.max(1, Math.round(file.size_bytes / BYTES_A_KB))} kB, {file.added_by}, <ShownMoment at={file.added_at} />
      </small>
    </li>
  );
}

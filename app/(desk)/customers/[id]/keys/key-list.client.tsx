'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { ShownMoment } from '#app/_ui/shown-forms.client.tsx';
import type { KeyView } from '#lib/services/self-service/open-key.ts';

interface KeyListProps {
  readonly customerId: number;
  readonly keys: readonly KeyView[];
}

/** Keys with when each was used last; a new one is shown once, and one that is revoked opens nothing from then on. */
export function KeyList({ customerId, keys }: KeyListProps) {
  const router = useRouter();
  const [name, setName] = useState('');
  const [fresh, setFresh] = useState('');
  const [said, setSaid] = useState('');
  async function make() {
    const sent = await send<{ readonly key: string }>({
      method: 'POST',
      path: `/api/v1/customers/${customerId}/keys`,
      body: { name },
    });
    setSaid(sent.ok ? '' : sent.sentence);
    if (!sent.ok) return;
    setFresh(sent.value.key);
    setName('');
    router.refresh();
  }
  async function revoke(id: number) {
    const sent = await send<true>({ method: 'DELETE', path: `/api/v1/customers/${customerId}/keys/${id}` });
    setSaid(sent.ok ? 'Revoked.' : sent.sentence);
    router.refresh();
  }
  return (
    <>
      <form
        className="actions"
        onSubmit={(event) => {
          event.preventDefault();
          void make();
        }}
      >
        <label htmlFor="key-name">Name of the program</label>
        <input id="key-name" value={name} maxLength={80} required onChange={(event) => setName(event.target.value)} />
        <button type="submit" className="button main">
          Make a key
        </button>
      </form>
      {fresh !== '' && (
        <p className="notice">
          The key, shown this once: <code>{fresh}</code>
        </p>
      )}
      <p role="status">{said}</p>
      {keys.length === 0 ? <p className="soft">No program has a key.</p> : <KeyTable keys={keys} onRevoke={revoke} />}
    </>
  );
}

interface KeyTableProps {
  readonly keys: readonly KeyView[];
  readonly onRevoke: (id: number) => Promise<void>;
}

function KeyTable({ keys, onRevoke }: KeyTableProps) {
  return (
    <table>
      <thead>
        <tr>
          <th>Program</th>
          <th>Ends with</th>
          <th>Made</th>
          <th>Used last</th>
          <th>Standing</th>
        </tr>
      </thead>
      <tbody>
        {keys.map((key) => (
          <tr key={key.id}>
            <td>{key.name}</td>
            <td className="tag">{key.shownEnd}</td>
            <td>
              <ShownMoment at={key.createdAt} /> {key.createdBy}
            </td>
            <td>{key.lastUsedAt === '' ? 'never' : <ShownMoment at={key.lastUsedAt} />}</td>
            <td>
              {key.revokedAt !== '' ? (
                <>
                  revoked <ShownMoment at={key.revokedAt} />
                </>
              ) : (
                <button type="button" className="button small danger" onClick={() => void onRevoke(key.id)}>
                  Revoke {key.name}
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

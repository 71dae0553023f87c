'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';

interface PutAwayProps {
  readonly kind: 'customer' | 'site' | 'contact';
  readonly id: number;
  readonly archived: 'yes' | 'no';
  /** Names the one among several. */
  readonly name?: string;
}

/** Puts away or brings back; nothing is deleted, so the same button undoes it. */
export function PutAway({ kind, id, archived, name }: PutAwayProps) {
  const router = useRouter();
  const [trouble, setTrouble] = useState('');
  async function turn(): Promise<void> {
    const body = { archived: archived === 'yes' ? 'no' : 'yes' };
    const sent = await send({ method: 'POST', path: `/api/v1/${kind}s/${id}/archive`, body });
    setTrouble(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
  }
  return (
    <>
      <button type="button" onClick={turn}>
        {archived === 'yes' ? 'Bring back' : 'Put away'}
        {name !== undefined && <span className="unseen"> {name}</span>}
      </button>
      {trouble !== '' && <span role="alert">{trouble}</span>}
    </>
  );
}

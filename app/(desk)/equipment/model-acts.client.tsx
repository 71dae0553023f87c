'use client';
import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { TrialBench } from '../trial-bench.client.tsx';

interface ModelActsProps {
  readonly number: string;
  readonly role: string;
  readonly version: number;
  readonly retired: boolean;
  readonly changes: number;
}

/** What an administrator may do with a model: change, copy, retire, bring back, take the last change back. */
export function ModelActs({ number, role, version, retired, changes }: ModelActsProps) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const [trying, setTrying] = useState(false);
  const act = async (name: 'retire' | 'bring back' | 'undo') => {
    const sent = await send({ method: 'POST', path: `/api/v1/equipment/${number}`, body: { act: name, version } });
    setSaid(sent.ok ? '' : sent.sentence);
    if (sent.ok) router.refresh();
  };
  return (
    <>
      <div className="tools">
        <Link className="button main" href={`/equipment/${number}/edit`}>
          Change
        </Link>
        <Link className="button" href={`/equipment/new?role=${role}&from=${number}`}>
          Copy as new
        </Link>
        <button type="button" onClick={() => act(retired ? 'bring back' : 'retire')}>
          {retired ? 'Bring back' : 'Retire'}
        </button>
        <button type="button" disabled={changes === 0} onClick={() => act('undo')}>
          Take the last change back
        </button>
        {retired ? null : (
          <button type="button" onClick={() => setTrying(true)}>
            What would retiring change?
          </button>
        )}
      </div>
      <p role="status" className={said === '' ? '' : 'notice refusal'}>
        {said}
      </p>
      {trying ? <TrialBench change={{ kind: 'retire', number }} /> : null}
    </>
  );
}

'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';

interface Opened {
  readonly enquiryId: number;
  readonly slot: number;
  readonly version: number;
  readonly choices: PriceChoices;
}

/** Keeps a change as it is made, and can take each back; what somebody else changed meanwhile is told, not overwritten. */
export function usePriceChoices({ enquiryId, slot, version, choices }: Opened) {
  const router = useRouter();
  const [past, setPast] = useState<readonly PriceChoices[]>([]);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const [said, setSaid] = useState('');

  async function write(next: PriceChoices): Promise<boolean> {
    setBusy(true);
    const answer = await send({
      path: `/api/v1/enquiries/${enquiryId}/options/${slot}`,
      method: 'PATCH',
      body: { version, choices: next },
    });
    setBusy(false);
    setProblem(answer.ok ? '' : answer.sentence);
    router.refresh();
    return answer.ok;
  }

  async function change(next: PriceChoices, what: string): Promise<boolean> {
    const done = await write(next);
    if (done) {
      setPast([...past, choices]);
      setSaid(what);
    }
    return done;
  }

  async function undo(): Promise<void> {
    const before = past.at(-1);
    if (before === undefined) return;
    const done = await write(before);
    if (!done) return;
    setPast(past.slice(0, -1));
    setSaid('Taken back.');
  }

  return { change, undo: past.length === 0 ? null : undo, busy, problem, said };
}

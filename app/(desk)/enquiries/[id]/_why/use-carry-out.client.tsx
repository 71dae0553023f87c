'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type Message, send } from '#app/_lib/send.client.tsx';
import { type Done, keepDone } from './repair-done.client.tsx';

type Undone = Omit<Done, 'action' | 'told'>;

interface Deed extends Pick<Done, 'action' | 'told'> {
  readonly key: string;
  readonly message: Message;
  /** What takes it back, from what the house answers; without it the answer says it. */
  readonly undone?: (answer: unknown) => Undone;
  /** Whether the plan is worked out again at once. */
  readonly replan: 'yes' | 'no';
}

/** Carries out what a screen offers and keeps what takes it back; `busy` is the key of what is being carried out. */
export function useCarryOut(enquiryId: number) {
  const router = useRouter();
  const [busy, setBusy] = useState('');
  const [problem, setProblem] = useState('');
  async function carryOut({ key, action, told, message, undone, replan }: Deed): Promise<void> {
    setBusy(key);
    setProblem('');
    const sent = await send(message);
    if (sent.ok) {
      keepDone(enquiryId, { ...(undone?.(sent.value) ?? (sent.value as Undone)), action, told });
      if (replan === 'yes') await send({ path: `/api/v1/enquiries/${enquiryId}/plan`, method: 'POST' });
    } else setProblem(sent.sentence);
    setBusy('');
    router.refresh();
  }
  return { carryOut, busy, problem };
}

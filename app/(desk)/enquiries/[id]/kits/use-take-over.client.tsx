'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type Message, send } from '#app/_lib/send.client.tsx';
import { type Done, keepDone } from '#app/(desk)/enquiries/[id]/_why/repair-done.client.tsx';
import type { StudyKind } from '#lib/services/plans/study-enquiry.ts';

type Undone = Omit<Done, 'action' | 'told'>;

interface Terms {
  readonly key: string;
  /** What is done, as its undoing says it. */
  readonly action: string;
  readonly sentence: string;
}

interface TermsSent extends Terms {
  readonly message: Message;
  /** What takes it back, from what the house answers. */
  readonly undone: (answer: unknown) => Undone;
}

/** Takes other terms of the enquiry over, plans anew, and keeps what undoes it; `busy` is the key of what is being taken. */
export function useTakeOver(enquiryId: number) {
  const router = useRouter();
  const [busy, setBusy] = useState('');
  const [problem, setProblem] = useState('');
  async function takeOver({ key, action, sentence, message, undone }: TermsSent): Promise<void> {
    setBusy(key);
    setProblem('');
    const sent = await send(message);
    if (sent.ok) {
      keepDone(enquiryId, { ...undone(sent.value), action, told: { sentence } });
      await send({ path: `/api/v1/enquiries/${enquiryId}/plan`, method: 'POST' });
    } else setProblem(sent.sentence);
    setBusy('');
    router.refresh();
  }
  return { takeOver, busy, problem };
}

interface Adopting {
  readonly enquiryId: number;
  readonly kind: StudyKind;
}

/** Takes terms over that a study worked out. */
export function useAdopt({ enquiryId, kind }: Adopting) {
  const { takeOver, busy, problem } = useTakeOver(enquiryId);
  const path = `/api/v1/enquiries/${enquiryId}/studies/${kind}`;
  const adopt = (terms: Terms) =>
    takeOver({
      ...terms,
      message: { path, method: 'PATCH', body: { key: terms.key } },
      undone: (answer) => answer as Undone,
    });
  return { adopt, busy, problem };
}

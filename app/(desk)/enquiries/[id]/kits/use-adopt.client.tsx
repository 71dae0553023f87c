'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { type Done, keepDone } from '#app/(desk)/enquiries/[id]/_why/repair-done.client.tsx';
import type { StudyKind } from '#lib/services/plans/study-enquiry.ts';

interface Adopting {
  readonly enquiryId: number;
  readonly kind: StudyKind;
}

/** Takes terms over that were worked out, plans anew, and keeps what undoes it. */
export function useAdopt({ enquiryId, kind }: Adopting) {
  const router = useRouter();
  const [busy, setBusy] = useState('');
  const [problem, setProblem] = useState('');
  async function adopt(one: { readonly key: string; readonly action: string; readonly sentence: string }) {
    setBusy(one.key);
    setProblem('');
    const path = `/api/v1/enquiries/${enquiryId}`;
    const sent = await send({ path: `${path}/studies/${kind}`, method: 'PATCH', body: { key: one.key } });
    if (sent.ok) {
      const undone = sent.value as Omit<Done, 'action' | 'told'>;
      keepDone(enquiryId, { ...undone, action: one.action, told: { sentence: one.sentence } });
      await send({ path: `${path}/plan`, method: 'POST' });
    } else setProblem(sent.sentence);
    setBusy('');
    router.refresh();
  }
  return { adopt, busy, problem };
}

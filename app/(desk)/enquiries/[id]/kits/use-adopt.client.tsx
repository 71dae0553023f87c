'use client';
import { useCarryOut } from '#app/(desk)/enquiries/[id]/_why/use-carry-out.client.tsx';
import type { StudyKind } from '#lib/services/plans/study-enquiry.ts';

interface Adopting {
  readonly enquiryId: number;
  readonly kind: StudyKind;
}

/** Takes terms over that a study worked out, and plans anew. */
export function useAdopt({ enquiryId, kind }: Adopting) {
  const { carryOut, busy, problem } = useCarryOut(enquiryId);
  const path = `/api/v1/enquiries/${enquiryId}/studies/${kind}`;
  const adopt = (one: { readonly key: string; readonly action: string; readonly sentence: string }) =>
    carryOut({
      key: one.key,
      action: one.action,
      told: { sentence: one.sentence },
      message: { path, method: 'PATCH', body: { key: one.key } },
      replan: 'yes',
    });
  return { adopt, busy, problem };
}

'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { CellEdit, CellsEdited } from '#lib/services/schedule/edit-cells.ts';

interface Taking {
  readonly busy: boolean;
  readonly trouble: string;
  readonly told: string;
  readonly undo: readonly CellEdit[] | null;
}

const TAKEN = 'Taken into the line; the plan has to be worked out again.';

/** Takes a value into the line, with the way back. */
export function useTaking(path: string) {
  const router = useRouter();
  const [state, setState] = useState<Taking>({ busy: false, trouble: '', told: '', undo: null });

  async function save(edits: readonly CellEdit[], then: (undo: readonly CellEdit[]) => Taking): Promise<boolean> {
    setState((before) => ({ ...before, busy: true, trouble: '', told: '' }));
    const sent = await send<CellsEdited>({ method: 'PATCH', path, body: { edits } });
    setState((before) => (sent.ok ? then(sent.value.undo) : { ...before, busy: false, trouble: sent.sentence }));
    if (sent.ok) router.refresh();
    return sent.ok;
  }

  return {
    ...state,
    take: (edit: CellEdit) => save([edit], (undo) => ({ busy: false, trouble: '', told: TAKEN, undo })),
    takeBack: () =>
      save(state.undo ?? [], () => ({ busy: false, trouble: '', told: 'The line is as it was.', undo: null })),
  };
}

'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { ReceivedList } from '#lib/services/receive-list.ts';
import type { Mapping } from './mapping-table.client.tsx';
import type { Outcome } from './taken-lists.tsx';

/** What happens with the lines that are there already. */
export type Existing = 'keep' | 'replace';
export type Preview = Parameters<typeof Outcome>[0]['outcome'];
type Table = ReceivedList['tables'][number];

/** A list that was read: the sheet looked at, and what its columns are taken for. */
export interface OpenList {
  readonly list: ReceivedList;
  readonly sheet: number;
  readonly table: Table;
  readonly mapping: Mapping;
}

export interface ListSteps {
  readonly open: OpenList | undefined;
  readonly preview: Preview | undefined;
  readonly existing: Existing;
  /** What is under way; empty when nothing is. */
  readonly busy: string;
  readonly trouble: string;
  readonly upload: (form: FormData) => Promise<void>;
  readonly chooseSheet: (sheet: number) => void;
  readonly changeMapping: (mapping: Mapping) => void;
  readonly setExisting: (existing: Existing) => void;
  readonly look: () => Promise<void>;
  readonly take: () => Promise<void>;
}

interface IntakeOf {
  readonly enquiryId: number;
  /** Lines that are there already. */
  readonly lines: number;
}

/** The way of a list into the schedule: read, corrected, looked at, taken. */
export function useListIntake({ enquiryId, lines }: IntakeOf): ListSteps {
  const router = useRouter();
  const { busy, trouble, asking } = useAsking();
  const [open, setOpen] = useState<OpenList>();
  const [preview, setPreview] = useState<Preview>();
  const [existing, setExisting] = useState<Existing>(lines > 0 ? 'replace' : 'keep');
  const path = `/api/v1/enquiries/${enquiryId}/lists`;

  function show(next: OpenList | undefined): void {
    setOpen(next);
    setPreview(undefined);
  }

  async function upload(form: FormData): Promise<void> {
    const list = await asking<ReceivedList>({ told: 'Reading the list…', path, body: form });
    if (list) show(opened(list, 0));
    else setPreview(undefined);
  }

  async function ask(step: { readonly told: string; readonly way: string }): Promise<Preview | undefined> {
    if (!open) return undefined;
    const body = { table: open.table.name, mapping: open.mapping, existing };
    return asking<Preview>({ told: step.told, path: `${path}/${open.list.fileId}${step.way}`, body });
  }

  async function look(): Promise<void> {
    const outcome = await ask({ told: 'Reading every row…', way: '/preview' });
    if (outcome) setPreview(outcome);
  }

  async function take(): Promise<void> {
    if (!(await ask({ told: 'Taking the lines…', way: '' }))) return;
    router.push(`/enquiries/${enquiryId}`);
    router.refresh();
  }

  return {
    ...{ open, preview, existing, busy, trouble, upload, setExisting, look, take },
    chooseSheet: (sheet) => open && show(opened(open.list, sheet)),
    changeMapping: (mapping) => open && show({ ...open, mapping }),
  };
}

function opened(list: ReceivedList, sheet: number): OpenList | undefined {
  const table = list.tables[sheet];
  return table && { list, sheet, table, mapping: table.mapping };
}

interface Asked {
  readonly told: string;
  readonly path: string;
  readonly body: unknown;
}

/** Asks the house, saying what is under way and, if it refuses, why; nothing comes back then. */
function useAsking() {
  const [busy, setBusy] = useState('');
  const [trouble, setTrouble] = useState('');
  async function asking<T>({ told, path, body }: Asked): Promise<T | undefined> {
    setBusy(told);
    const sent = await send<T>({ method: 'POST', path, body });
    setBusy('');
    setTrouble(sent.ok ? '' : sent.sentence);
    return sent.ok ? sent.value : undefined;
  }
  return { busy, trouble, asking };
}

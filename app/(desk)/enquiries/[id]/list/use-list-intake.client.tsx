'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { ListCompared } from '#lib/services/schedule/compare-list.ts';
import type { ReceivedList } from '#lib/services/schedule/receive-list.ts';
import { rememberChange } from '../_table/saving-store.ts';
import type { Mapping } from './mapping-table.client.tsx';
import type { Outcome } from './taken-lists.tsx';

/** What happens with the lines that are there already. */
export type Existing = 'compare' | 'keep' | 'replace';
export type Preview = Parameters<typeof Outcome>[0]['outcome'];

/** What of a changed list is taken. */
export interface ComparisonChoice {
  readonly added: readonly number[];
  readonly gone: readonly number[];
  readonly cells: readonly { readonly lineId: number; readonly column: string }[];
  readonly order: 'keep' | 'list';
}
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
  /** The list beside the schedule, once it was asked for. */
  readonly compared: ListCompared | undefined;
  readonly compare: () => Promise<void>;
  readonly takeCompared: (choice: ComparisonChoice) => Promise<void>;
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
  const [existing, setExisting] = useState<Existing>(lines > 0 ? 'compare' : 'keep');
  const [compared, setCompared] = useState<ListCompared>();
  const path = `/api/v1/enquiries/${enquiryId}/lists`;

  function show(next: OpenList | undefined): void {
    setOpen(next);
    setPreview(undefined);
    setCompared(undefined);
  }

  async function upload(form: FormData): Promise<void> {
    const list = await asking<ReceivedList>({ told: 'Reading the list…', path, body: form });
    if (list) show(opened(list, 0));
    else setPreview(undefined);
  }

  async function ask<Answer>(step: { readonly told: string; readonly way: string }): Promise<Answer | undefined> {
    if (!open) return undefined;
    const kept = existing === 'compare' ? 'keep' : existing;
    const body = { table: open.table.name, mapping: open.mapping, existing: kept };
    return asking<Answer>({ told: step.told, path: `${path}/${open.list.fileId}${step.way}`, body });
  }

  async function compare(): Promise<void> {
    if (!open) return;
    const body = { table: open.table.name, mapping: open.mapping };
    const told = 'Comparing every row with the schedule…';
    setCompared(await asking<ListCompared>({ told, path: `${path}/${open.list.fileId}/compare`, body }));
  }

  async function takeCompared(take: ComparisonChoice): Promise<void> {
    if (!open || !compared) return;
    const body = { table: open.table.name, mapping: open.mapping, change: compared.change, take };
    const told = 'Taking what was chosen…';
    const done = await asking<{ readonly change: number }>({
      ...{ told, path: `${path}/${open.list.fileId}/compare/take`, body },
    });
    if (!done) return;
    if (done.change > 0) rememberChange(enquiryId, done.change);
    router.push(`/enquiries/${enquiryId}`);
    router.refresh();
  }

  async function look(): Promise<void> {
    const outcome = await ask<Preview>({ told: 'Reading every row…', way: '/preview' });
    if (outcome) setPreview(outcome);
  }

  async function take(): Promise<void> {
    const taken = await ask<{ readonly change: number }>({ told: 'Taking the lines…', way: '' });
    if (!taken) return;
    rememberChange(enquiryId, taken.change);
    router.push(`/enquiries/${enquiryId}`);
    router.refresh();
  }

  return {
    ...{ open, preview, existing, busy, trouble, upload, setExisting, look, take, compared, compare, takeCompared },
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

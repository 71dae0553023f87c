'use client';

import { useEffect, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { VisitedValve } from '#lib/services/visits/open-visits.ts';
import type { VisitsRecorded } from '#lib/services/visits/record-visits.ts';

export type FoundText = NonNullable<VisitedValve['now']>;
export type FoundName = keyof FoundText;

interface FoundInput {
  readonly enquiryId: number;
  readonly valves: readonly VisitedValve[];
  readonly today: string;
}

const NOTHING: VisitsRecorded = { rows: [], problems: [] };

/** What is typed, until it is recorded; what is refused stays as it was typed. */
export function useFound({ enquiryId, valves, today }: FoundInput) {
  const [typed, setTyped] = useState<ReadonlyMap<number, FoundText>>(new Map());
  const [dirty, setDirty] = useState<ReadonlySet<number>>(new Set());
  const [who, setWho] = useState('');
  const [when, setWhen] = useState(today);
  const [busy, setBusy] = useState(false);
  const [answer, setAnswer] = useState({ ...NOTHING, trouble: '', told: '' });
  const cellsOf = (index: number): FoundText => typed.get(index) ?? valves[index]?.now ?? {};
  useWarning(dirty.size > 0);

  function type(index: number, column: FoundName, text: string): void {
    setTyped((before) => new Map(before).set(index, { ...cellsOf(index), [column]: text }));
    setDirty((before) => new Set(before).add(index));
  }

  async function save(): Promise<void> {
    setBusy(true);
    const rows = [...dirty].map((index) => ({
      row: index + 1,
      cells: wholeCells({ cells: cellsOf(index), valve: valves[index], who, when }),
    }));
    const path = `/api/v1/enquiries/${enquiryId}/visits`;
    const sent = await send<VisitsRecorded>({ method: 'POST', path, body: { rows } });
    setBusy(false);
    if (!sent.ok) {
      setAnswer({ ...NOTHING, trouble: sent.sentence, told: '' });
      return;
    }
    const kept = new Set(sent.value.rows.map((row) => row - 1));
    setDirty((before) => new Set([...before].filter((index) => !kept.has(index))));
    setAnswer({ ...sent.value, trouble: '', told: `${kept.size === 1 ? '1 valve' : `${kept.size} valves`} recorded.` });
  }

  return { ...answer, who, setWho, when, setWhen, busy, dirty, cellsOf, type, save };
}

export function nameOf(valve: VisitedValve | undefined): string {
  if (valve === undefined) return '';
  return valve.of > 1 ? `${valve.tag} (${valve.number} of ${valve.of})` : valve.tag;
}

/** A record that is corrected keeps its own day and name. */
function wholeCells({
  cells,
  valve,
  who,
  when,
}: {
  readonly cells: FoundText;
  readonly valve: VisitedValve | undefined;
  readonly who: string;
  readonly when: string;
}): FoundText {
  const { now } = valve ?? {};
  return {
    ...cells,
    tag: valve?.tag ?? '',
    number: String(valve?.number ?? 1),
    visited_on: now?.visited_on ?? when,
    by: now?.by ?? who,
  };
}

/** The browser asks before what was typed is left behind. */
function useWarning(isWaiting: boolean): void {
  useEffect(() => {
    if (!isWaiting) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [isWaiting]);
}

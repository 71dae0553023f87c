'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { Said } from './said.tsx';

export type YardSound = (tone: 'good' | 'bad') => void;

interface Deed<Value> {
  readonly path: string;
  readonly method?: 'POST' | 'DELETE';
  readonly body?: unknown;
  /** What is said when it was done; a sentence, or one with its tone. */
  readonly done: (value: Value) => string | Said;
}

/** A press that needs the line: sends it, says what came of it, sounds, and shows the page anew. */
export function useYardDeed(sound: YardSound) {
  const router = useRouter();
  const [said, setSaid] = useState<Said | null>(null);
  const [isSending, setSending] = useState(false);
  const [isShowing, startShowing] = useTransition();

  async function deed<Value>({ path, method = 'POST', body, done }: Deed<Value>): Promise<boolean> {
    setSending(true);
    const sent = await send<Value>({ method, path, body });
    setSending(false);
    const came = sent.ok ? done(sent.value) : { tone: 'refusal' as const, words: sent.sentence };
    const told: Said = typeof came === 'string' ? { tone: 'good', words: came } : came;
    sound(told.tone === 'good' ? 'good' : 'bad');
    setSaid(told);
    if (sent.ok) startShowing(() => router.refresh());
    return sent.ok;
  }

  return { deed, said, busy: isSending || isShowing };
}

'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { beep } from './beep.ts';
import type { Said } from './said.tsx';

interface Act<Value> {
  readonly body: unknown;
  /** What is said when it was done; null keeps quiet. */
  readonly done: (value: Value) => Said | null;
  /** Where another path than the usual is meant. */
  readonly path?: string;
}

/** Sends one act to the house, says what came of it, sounds, and shows the page anew. */
export function useAct(path: string) {
  const router = useRouter();
  const [said, setSaid] = useState<Said | null>(null);
  const [isSending, setSending] = useState(false);
  const [isShowing, startShowing] = useTransition();

  async function act<Value>({ body, done, path: other }: Act<Value>): Promise<Value | null> {
    setSending(true);
    const sent = await send<Value>({ method: 'POST', path: other ?? path, body });
    setSending(false);
    if (!sent.ok) {
      beep('bad');
      setSaid({ tone: 'refusal', words: sent.sentence });
      return null;
    }
    const answer = done(sent.value);
    if (answer !== null) {
      beep(answer.tone === 'good' ? 'good' : 'bad');
      setSaid(answer);
    }
    startShowing(() => router.refresh());
    return sent.value;
  }

  return { act, said, setSaid, busy: isSending || isShowing };
}

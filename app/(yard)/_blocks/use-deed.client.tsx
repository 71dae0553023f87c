'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type Sent, send } from '#app/_lib/send.client.tsx';
import { beep } from './beep.ts';
import type { Said } from './said.tsx';

export interface Deed<Value> {
  readonly method?: 'POST' | 'PATCH';
  readonly path: string;
  readonly body?: unknown;
  /** What is said when it went well. */
  readonly words: (value: Value) => string;
}

export interface Doing {
  readonly busy: boolean;
  readonly said: Said | null;
  readonly say: (said: Said | null) => void;
  readonly run: <Value>(deed: Deed<Value>) => Promise<Sent<Value>>;
}

/** Does one thing at a time, says how it went in words and sound, and has the page read again. */
export function useDeed(): Doing {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [said, say] = useState<Said | null>(null);
  const run = async <Value,>({ method = 'POST', path, body, words }: Deed<Value>): Promise<Sent<Value>> => {
    setBusy(true);
    const answer = await send<Value>({ method, path, body: body ?? {} });
    setBusy(false);
    say(answer.ok ? { tone: 'good', words: words(answer.value) } : { tone: 'refusal', words: answer.sentence });
    beep(answer.ok ? 'good' : 'bad');
    if (answer.ok) router.refresh();
    return answer;
  };
  return { busy, said, say, run };
}

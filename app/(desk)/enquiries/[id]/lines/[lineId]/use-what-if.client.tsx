'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import type { WhatIf } from '#lib/services/lines/what-if.ts';

export interface Tried {
  readonly column: string;
  readonly text: string;
  readonly measured: boolean;
}

interface Answer {
  /** The newest change that could be worked out; it stays while something unreadable is typed. */
  readonly change: WhatIf['change'];
  readonly problems: WhatIf['problems'];
  readonly trouble: string;
}

const NOTHING: Answer = { change: null, problems: [], trouble: '' };

/** Asks what a changed value does; of what is asked while an answer is on its way only the newest is asked next. */
export function useWhatIf(path: string) {
  const [answer, setAnswer] = useState<Answer>(NOTHING);
  const wanted = useRef<Tried | null>(null);
  const asking = useRef(false);

  const askOn = useCallback(async (): Promise<void> => {
    if (asking.current) return;
    asking.current = true;
    while (wanted.current !== null) {
      const tried: Tried = wanted.current;
      const sent = await send<WhatIf>({ method: 'POST', path: `${path}/what-if`, body: tried });
      if (wanted.current !== tried) continue;
      wanted.current = null;
      setAnswer((before) =>
        sent.ok
          ? { change: sent.value.change ?? before.change, problems: sent.value.problems, trouble: '' }
          : { ...before, problems: [], trouble: sent.sentence },
      );
    }
    asking.current = false;
  }, [path]);

  const attempt = useCallback(
    (tried: Tried): void => {
      wanted.current = tried;
      void askOn();
    },
    [askOn],
  );

  const forget = useCallback((): void => {
    wanted.current = null;
    setAnswer(NOTHING);
  }, []);

  return { ...answer, attempt, forget };
}

const STILL_MS = 500;

/** A text that is given out only once it has stood still, so that dragging does not talk without end. */
export function useStill(text: string): string {
  const [still, setStill] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setStill(text), STILL_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return still;
}

'use client';

import { createContext, type ReactNode, useContext, useEffect, useMemo, useRef, useState } from 'react';
import { screenName } from '#app/_lib/screen-name.ts';
import type { ChangesView, ChangeView } from '#lib/services/schedule/read-changes.ts';

type Listener = (changes: readonly ChangeView[]) => void;

interface Live {
  /** Names of the others who have this enquiry open. */
  readonly others: readonly string[];
  /** Hands over what other windows changed, as it happens; the answer ends that. */
  readonly follow: (listener: Listener) => () => void;
}

const LiveContext = createContext<Live>({ others: [], follow: () => () => undefined });

export function useLive(): Live {
  return useContext(LiveContext);
}

interface LiveEnquiryProps {
  readonly enquiryId: number;
  /** The newest change that the server drew this page with. */
  readonly after: number;
  readonly children: ReactNode;
}

/** Follows the enquiry while its screens are open: one connection a window, none while it is hidden. */
export function LiveEnquiry({ enquiryId, after, children }: LiveEnquiryProps) {
  const [others, setOthers] = useState<readonly string[]>([]);
  const listeners = useRef(new Set<Listener>());
  const last = useRef(after);

  useEffect(() => {
    let source: EventSource | undefined;
    function hear({ data }: MessageEvent<string>): void {
      const view = JSON.parse(data) as ChangesView;
      last.current = Math.max(last.current, view.last);
      setOthers(view.others);
      const foreign = view.changes.filter(({ screen }) => screen !== screenName());
      if (foreign.length > 0) for (const listener of listeners.current) listener(foreign);
    }
    function open(): void {
      if (document.hidden) {
        source?.close();
        source = undefined;
        return;
      }
      if (source) return;
      const query = new URLSearchParams({ after: String(last.current), screen: screenName() });
      source = new EventSource(`/api/v1/enquiries/${enquiryId}/changes/live?${query}`);
      source.addEventListener('message', hear);
    }
    open();
    document.addEventListener('visibilitychange', open);
    return () => {
      document.removeEventListener('visibilitychange', open);
      source?.close();
    };
  }, [enquiryId]);

  const live = useMemo<Live>(
    () => ({
      others,
      follow: (listener) => {
        listeners.current.add(listener);
        return () => listeners.current.delete(listener);
      },
    }),
    [others],
  );
  return <LiveContext value={live}>{children}</LiveContext>;
}

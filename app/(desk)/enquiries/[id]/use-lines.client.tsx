'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import { type Sent, send } from '#app/_lib/send.client.tsx';
import type { LineView } from '#lib/services/line-view.ts';
import type { LinesView } from '#lib/services/list-lines.ts';

export interface Filter {
  readonly text: string;
  readonly problems: boolean;
}

export const NO_FILTER: Filter = { text: '', problems: false };

const WINDOW = 100;
const MOST_AT_ONCE = 500;

export interface Lines {
  readonly total: number;
  readonly at: (index: number) => LineView | undefined;
  readonly filter: Filter;
  readonly lost: string;
  /** Loads what the eye can see. */
  readonly need: (from: number, to: number) => void;
  /** Loads from the beginning; answers with the number of lines. */
  readonly reload: (filter: Filter) => Promise<number>;
  readonly change: (lines: readonly LineView[]) => void;
  /** Lines by their place under the filter, loaded if they are not there. */
  readonly fetchFrom: (from: number, count: number) => Promise<readonly LineView[]>;
}

/** The lines that were loaded so far, window by window; an answer to an older filter is dropped. */
export function useLines({ path, first }: { readonly path: string; readonly first: LinesView }): Lines {
  const { total, lines, take, change } = useLoaded(first);
  const [filter, setFilter] = useState(NO_FILTER);
  const [lost, setLost] = useState('');
  const asked = useRef(new Set<number>([0]));
  const ticket = useRef({ latest: 0, shown: 0 });

  const load = useCallback(
    async (by: Filter, from: number): Promise<number> => {
      const mine = ticket.current.latest;
      const sent = await readLines({ path, filter: by, from, count: WINDOW });
      if (mine !== ticket.current.latest) return 0;
      setLost(sent.ok ? '' : sent.sentence);
      if (!sent.ok) {
        asked.current.delete(from);
        return 0;
      }
      const isFirst = ticket.current.shown !== mine;
      ticket.current.shown = mine;
      take({ page: sent.value, from, place: isFirst ? 'instead' : 'beside' });
      return sent.value.total;
    },
    [path, take],
  );

  const reload = useCallback(
    (next: Filter): Promise<number> => {
      setFilter(next);
      ticket.current.latest += 1;
      asked.current = new Set([0]);
      return load(next, 0);
    },
    [load],
  );

  // Back from another screen the first window may be an old one.
  useEffect(() => void reload(NO_FILTER), [reload]);

  const need = useCallback(
    (from: number, to: number): void => {
      for (let start = Math.floor(from / WINDOW) * WINDOW; start <= to; start += WINDOW) {
        if (asked.current.has(start)) continue;
        asked.current.add(start);
        void load(filter, start);
      }
    },
    [filter, load],
  );

  return {
    ...{ total, filter, lost, need, reload, change },
    at: (index) => lines.get(index),
    fetchFrom: (from, count) => readAll({ path, filter, from, count }),
  };
}

interface Page {
  readonly page: LinesView;
  readonly from: number;
  /** Whether it takes the place of what was loaded before. */
  readonly place: 'instead' | 'beside';
}

/** Lines by their place in the table. */
function useLoaded(first: LinesView) {
  const [total, setTotal] = useState(first.total);
  const [lines, setLines] = useState<ReadonlyMap<number, LineView>>(
    () => new Map(first.lines.map((line, index) => [index, line])),
  );

  const take = useCallback(({ page, from, place }: Page): void => {
    const loaded = page.lines.map((line, index) => [from + index, line] as const);
    setTotal(page.total);
    setLines((before) => new Map([...(place === 'instead' ? [] : before), ...loaded]));
  }, []);

  function change(changed: readonly LineView[]): void {
    const byId = new Map(changed.map((line) => [line.id, line]));
    setLines((before) => new Map([...before].map(([index, line]) => [index, byId.get(line.id) ?? line])));
  }

  return { total, lines, take, change };
}

interface Stretch {
  readonly path: string;
  readonly filter: Filter;
  readonly from: number;
  readonly count: number;
}

function readLines({ path, filter, from, count }: Stretch): Promise<Sent<LinesView>> {
  const only = filter.problems ? 'problems' : '';
  const query = new URLSearchParams({ from: String(from), count: String(count), text: filter.text, only });
  return send<LinesView>({ method: 'GET', path: `${path}?${query}` });
}

/** All lines of a stretch, in as many readings as it takes; fewer where the house does not answer. */
async function readAll({ path, filter, from, count }: Stretch): Promise<readonly LineView[]> {
  const found: LineView[] = [];
  while (found.length < count) {
    const left = Math.min(count - found.length, MOST_AT_ONCE);
    const sent = await readLines({ path, filter, from: from + found.length, count: left });
    if (!sent.ok || sent.value.lines.length === 0) break;
    found.push(...sent.value.lines);
  }
  return found;
}

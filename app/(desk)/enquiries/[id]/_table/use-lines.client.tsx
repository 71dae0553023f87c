'use client';

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { send } from '#app/_lib/send.client.tsx';
import { filterToQuery, type LineFilter } from '#lib/schedule/line-filter.ts';
import type { LineView } from '#lib/services/lines/line-view.ts';
import type { LineCells } from '#lib/services/schedule/list-lines.ts';
import type { LinesOrder } from '#lib/services/schedule/order-lines.ts';

export interface FirstLines {
  readonly order: LinesOrder;
  readonly lines: readonly LineView[];
  readonly filter: LineFilter;
}

export interface Lines {
  /** Ids of the lines shown, in their order. */
  readonly order: readonly number[];
  readonly state: Pick<LinesOrder, 'lines' | 'looked'>;
  readonly filter: LineFilter;
  readonly lost: string;
  readonly at: (index: number) => LineView | undefined;
  readonly line: (id: number) => LineView | undefined;
  readonly placeOf: (id: number) => number | undefined;
  /** Loads the lines at these places, those that the eye can see. */
  readonly need: (places: readonly number[]) => void;
  readonly show: (filter: LineFilter) => Promise<void>;
  /** Asks for the order anew; what is in sight is read again. */
  readonly reload: () => Promise<void>;
  readonly change: (lines: readonly LineView[]) => void;
  /** Reads lines again that were loaded. */
  readonly refresh: (ids: readonly number[]) => void;
  /** What the cells of lines say, loaded or not; fewer where the house does not answer. */
  readonly cells: (ids: readonly number[]) => Promise<ReadonlyMap<number, LineCells>>;
}

const AT_ONCE = 40;
const FIRST_PLACES: readonly number[] = Array.from({ length: 30 }, (_, at) => at);
/** A question that got no answer is asked again. */
const AGAIN_MS = 2500;

/** The order of all lines, and those lines that came into sight; an answer to an older question is dropped. */
export function useLines({ path, first }: { readonly path: string; readonly first: FirstLines }): Lines {
  const [lost, setLost] = useState('');
  const { order, state, filter, ask, places } = useOrder({ path, first, onLost: setLost });
  const { lines, read, asked, change } = useLoaded({ path, first, onLost: setLost });
  const sight = useRef<readonly number[]>(FIRST_PLACES);

  const need = useCallback(
    (inSight: readonly number[]): void => {
      sight.current = inSight.length === 0 ? FIRST_PLACES : inSight;
      const missing = sight.current.flatMap((place) => order[place] ?? []).filter((id) => !asked.current.has(id));
      if (missing.length > 0) void read(missing);
    },
    [order, asked, read],
  );

  async function reload(): Promise<void> {
    asked.current = new Set();
    await ask(filter);
  }

  // Whatever is in sight under a new order is read.
  useEffect(() => need(sight.current), [need]);

  const repeat = useRef<() => unknown>(() => undefined);
  repeat.current = () => ask(filter).then(() => need(sight.current));
  useEffect(() => {
    if (lost === '') return undefined;
    const timer = setInterval(() => repeat.current(), AGAIN_MS);
    return () => clearInterval(timer);
  }, [lost]);

  async function cells(ids: readonly number[]): Promise<ReadonlyMap<number, LineCells>> {
    const missing = ids.filter((id) => !lines.has(id) || !asked.current.has(id));
    const known = new Map<number, LineCells>(ids.flatMap((id) => pair(id, lines.get(id))));
    if (missing.length === 0) return known;
    const body = { lineIds: missing };
    const sent = await send<readonly LineCells[]>({ method: 'POST', path: `${path}/cells`, body });
    setLost(sent.ok ? '' : sent.sentence);
    if (sent.ok) for (const line of sent.value) known.set(line.id, line);
    return known;
  }

  return {
    ...{ order, state, filter, lost, need, reload, change, cells, show: ask },
    at: (index) => lines.get(order[index] ?? 0),
    line: (id) => lines.get(id),
    placeOf: (id) => places.get(id),
    refresh: (ids) => {
      const there = ids.filter((id) => asked.current.has(id));
      if (there.length > 0) void read(there);
    },
  };
}

function pair(id: number, line: LineView | undefined): readonly (readonly [number, LineCells])[] {
  return line ? [[id, line]] : [];
}

interface Source {
  readonly path: string;
  readonly first: FirstLines;
  readonly onLost: (sentence: string) => void;
}

/** Which lines are shown, in which order, as the address says. */
function useOrder({ path, first, onLost }: Source) {
  const [order, setOrder] = useState(first.order.ids);
  const [state, setState] = useState<Lines['state']>(first.order);
  const [filter, setFilter] = useState(first.filter);
  const ticket = useRef(0);

  const ask = useCallback(
    async (next: LineFilter): Promise<void> => {
      ticket.current += 1;
      const mine = ticket.current;
      setFilter(next);
      const query = filterToQuery(next);
      window.history.replaceState(null, '', query === '' ? window.location.pathname : `?${query}`);
      for (;;) {
        const sent = await send<LinesOrder>({ method: 'GET', path: `${path}/order?${query}` });
        if (mine !== ticket.current) return;
        onLost(sent.ok ? '' : sent.sentence);
        if (!sent.ok) return;
        setOrder(sent.value.ids);
        setState(sent.value);
        if (sent.value.looked >= sent.value.lines) return;
      }
    },
    [path, onLost],
  );

  // Back from another screen, what the server drew first may be an old order; a long working goes on.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, with the filter of the address.
  useEffect(() => void ask(first.filter), []);

  const places = useMemo(() => new Map(order.map((id, index) => [id, index])), [order]);
  return { order, state, filter, ask, places };
}

/** Lines by their id, those that came into sight so far. */
function useLoaded({ path, first, onLost }: Source) {
  const [lines, setLines] = useState<ReadonlyMap<number, LineView>>(
    () => new Map(first.lines.map((line) => [line.id, line])),
  );
  const asked = useRef(new Set<number>());

  const change = useCallback((changed: readonly LineView[]): void => {
    if (changed.length === 0) return;
    setLines((before) => new Map([...before, ...changed.map((line) => [line.id, line] as const)]));
  }, []);

  const read = useCallback(
    async (ids: readonly number[]): Promise<void> => {
      for (const id of ids) asked.current.add(id);
      for (let start = 0; start < ids.length; start += AT_ONCE) {
        const lineIds = ids.slice(start, start + AT_ONCE);
        const sent = await send<readonly LineView[]>({ method: 'POST', path: `${path}/read`, body: { lineIds } });
        onLost(sent.ok ? '' : sent.sentence);
        if (sent.ok) change(sent.value);
        else for (const id of lineIds) asked.current.delete(id);
      }
    },
    [path, change, onLost],
  );

  return { lines, read, asked, change };
}

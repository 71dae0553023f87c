import type { HistoryAsked } from '#lib/services/access/read-history.ts';

type SearchParams = Readonly<Record<string, string | readonly string[] | undefined>>;

/** What the address of the history asks for; what cannot be read asks for nothing. */
export function readHistoryAddress(params: SearchParams): HistoryAsked {
  const text = (name: string) => {
    const value = params[name];
    return typeof value === 'string' ? value.trim().slice(0, 100) : '';
  };
  return {
    page: pageNumber(params.page),
    kind: text('kind'),
    whoId: text('who'),
    words: text('q'),
    from: text('from'),
    until: text('until'),
  };
}

export function historyAddress(asked: HistoryAsked): string {
  const parts = { kind: asked.kind, who: asked.whoId, q: asked.words, from: asked.from, until: asked.until };
  const page = asked.page > 1 ? [['page', String(asked.page)]] : [];
  const query = new URLSearchParams([...Object.entries(parts).filter(([, value]) => value !== ''), ...page]);
  return query.size === 0 ? '/history' : `/history?${query}`;
}

export function pageNumber(text: unknown): number {
  return typeof text === 'string' && /^\d{1,6}$/.test(text) ? Math.max(1, Number(text)) : 1;
}

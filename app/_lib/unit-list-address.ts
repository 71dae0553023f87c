import { DUE_FILTERS, EVERY_UNIT, type UnitsAsked } from '#lib/services/stock/find-units.ts';
import { pageOf, type SearchParams } from './enquiry-list-address.ts';

/** Reads the filters of the stock from the address; what cannot be read is left out, so that an old link still opens. */
export function readUnitAddress(params: SearchParams): UnitsAsked {
  const text = (key: string): string => {
    const value = params[key];
    return typeof value === 'string' ? value.trim().slice(0, 120) : '';
  };
  return {
    words: text('q'),
    role: text('role'),
    model: text('model'),
    depot: text('depot'),
    bay: text('bay'),
    state: text('state'),
    due: DUE_FILTERS.find((due) => due === text('due')) ?? '',
    page: pageOf(text('page')),
  };
}

/** The address of the stock with some of its filters changed; a changed filter begins at the first page. */
export function unitAddress({
  asked,
  change,
}: {
  readonly asked: UnitsAsked;
  readonly change: Partial<UnitsAsked>;
}): string {
  const { words, page, ...rest } = { ...asked, page: 1, ...change };
  const said = { q: words, ...rest, page: page === EVERY_UNIT.page ? '' : String(page) };
  const query = new URLSearchParams(Object.entries(said).filter(([, value]) => value !== ''));
  return query.size === 0 ? '/yard/stock' : `/yard/stock?${query}`;
}

import { ENQUIRY_ORDERS, type EnquiriesAsked, EVERY_ENQUIRY } from '#lib/services/enquiries/find-enquiries.ts';

export type SearchParams = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Reads the list's filters from the address; what cannot be read is left out, so that an old link still opens. */
export function readEnquiryAddress(params: SearchParams): EnquiriesAsked {
  const text = (key: string): string => {
    const value = params[key];
    return typeof value === 'string' ? value.slice(0, 200) : '';
  };
  const due = text('due');
  const order = ENQUIRY_ORDERS.find((name) => name === text('order')) ?? 'changed';
  const way = text('way');
  return {
    state: text('state') === '' ? 'open' : text('state'),
    assigned: text('assigned'),
    customerId: numberOf(text('customer')),
    siteId: numberOf(text('site')),
    due: due === 'late' || due === 'week' || due === 'none' ? due : '',
    words: text('q'),
    order,
    way: way === 'up' || way === 'down' ? way : order === 'changed' || order === 'number' ? 'down' : 'up',
    page: pageOf(text('page')),
  };
}

/** The address of the list with some of its filters changed; a changed filter begins at the first page. */
export function enquiryAddress({
  asked,
  change,
}: {
  readonly asked: EnquiriesAsked;
  readonly change: Partial<EnquiriesAsked>;
}): string {
  const next = { ...asked, page: 1, ...change };
  const said: readonly (readonly [string, string])[] = [
    ['state', next.state === 'open' ? '' : next.state],
    ['assigned', next.assigned],
    ['customer', next.customerId === null ? '' : String(next.customerId)],
    ['site', next.siteId === null ? '' : String(next.siteId)],
    ['due', next.due],
    ['q', next.words],
    ['order', next.order === EVERY_ENQUIRY.order ? '' : next.order],
    ['way', next.order === EVERY_ENQUIRY.order && next.way === EVERY_ENQUIRY.way ? '' : next.way],
    ['page', next.page === 1 ? '' : String(next.page)],
  ];
  const query = new URLSearchParams(said.filter(([, value]) => value !== '').map(([key, value]) => [key, value]));
  return query.size === 0 ? '/enquiries' : `/enquiries?${query}`;
}

export function pageOf(text: string | null): number {
  return text !== null && /^[1-9]\d{0,5}$/.test(text) ? Number(text) : 1;
}

function numberOf(text: string): number | null {
  return /^\d{1,15}$/.test(text) ? Number(text) : null;
}

/*
 * The enquiries of the house as a list shows them: filtered, in an order, a page at a time, with counts by state.
 * Invariant: reads only; a page beyond the end answers the last page.
 * Not here: one enquiry (open-enquiry.ts).
 * Read next: search-house.ts.
 */
import {
  countEnquiries,
  type EnquiryFilter,
  type EnquiryOrder,
  type FoundEnquiry,
  findEnquiries as pageOf,
} from '#db/queries/find-enquiries.ts';
import { searchIds } from '#db/queries/search.ts';
import { ENQUIRY_STATES, type EnquiryState } from '#lib/enquiry/moves.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';

export const ENQUIRY_ORDERS = [
  'changed',
  'due',
  'number',
  'customer',
  'title',
  'state',
  'assigned',
] as const satisfies readonly EnquiryOrder[];

const ENQUIRIES_A_PAGE = 50;

/** Words that stand for several states: what still wants work, and what is over. */
const STATE_GROUPS: Readonly<Record<string, readonly EnquiryState[]>> = {
  open: ['new', 'being worked', 'quoted'],
  closed: ['accepted', 'declined', 'lapsed'],
};

/** Enquiries that strangers began by self-service and never sent. */
export const DRAFTS = 'never sent';

export interface EnquiriesAsked {
  /** One state, or open, closed, all or never sent. */
  readonly state: string;
  /** Id of a person; `me`, `nobody`, or empty for anybody. */
  readonly assigned: string;
  readonly customerId: number | null;
  readonly siteId: number | null;
  readonly due: 'late' | 'week' | 'none' | '';
  readonly words: string;
  readonly order: EnquiryOrder;
  readonly way: 'up' | 'down';
  /** From 1. */
  readonly page: number;
}

export const EVERY_ENQUIRY: EnquiriesAsked = {
  state: 'all',
  assigned: '',
  customerId: null,
  siteId: null,
  due: '',
  words: '',
  order: 'changed',
  way: 'down',
  page: 1,
};

export interface EnquiriesFound {
  readonly rows: readonly FoundEnquiry[];
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  readonly counts: Readonly<Record<string, number>>;
  readonly today: string;
}

export function findEnquiries(context: Context, asked: EnquiriesAsked): Result<EnquiriesFound> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const filter = filterOf(context, asked);
  const byState = countEnquiries(db, { ...filter, drafts: 'left out' });
  const countOf = (states: readonly string[]): number => states.reduce((sum, state) => sum + (byState[state] ?? 0), 0);
  const drafts = totalOf(countEnquiries(db, { ...filter, drafts: 'only' }));
  const listed = countOf(filter.states.length === 0 ? ENQUIRY_STATES : filter.states);
  const total = filter.drafts === 'only' ? drafts : listed;
  const pages = Math.max(1, Math.ceil(total / ENQUIRIES_A_PAGE));
  const page = Math.min(Math.max(1, asked.page), pages);
  const from = (page - 1) * ENQUIRIES_A_PAGE;
  return ok({
    rows: pageOf(db, { filter, page: { order: asked.order, way: asked.way, from, count: ENQUIRIES_A_PAGE } }),
    ...{ total, page, pages },
    counts: {
      ...byState,
      all: countOf(ENQUIRY_STATES),
      [DRAFTS]: drafts,
      ...Object.fromEntries(Object.entries(STATE_GROUPS).map(([name, states]) => [name, countOf(states)])),
    },
    today: filter.today,
  });
}

function totalOf(counts: Readonly<Record<string, number>>): number {
  return Object.values(counts).reduce((sum, count) => sum + count, 0);
}

const FOUND_MOST = 20_000;
const DAYS_OF_A_WEEK = 7;

function filterOf(context: Context, asked: EnquiriesAsked): EnquiryFilter {
  const day = today(context);
  const words = asked.words.trim();
  const db = context.database.db;
  const idsOf = (source: 'enquiry' | 'customer') => searchIds(db, { words, source, most: FOUND_MOST });
  return {
    today: day,
    drafts: asked.state === DRAFTS ? 'only' : 'left out',
    states: STATE_GROUPS[asked.state] ?? ENQUIRY_STATES.filter((state) => state === asked.state),
    assignedTo:
      asked.assigned === ''
        ? null
        : asked.assigned === 'nobody'
          ? ''
          : asked.assigned === 'me'
            ? actingPerson(context).id
            : asked.assigned,
    customerId: asked.customerId,
    siteId: asked.siteId,
    due: dueOf(asked.due, day),
    found: words === '' ? null : { enquiries: idsOf('enquiry'), customers: idsOf('customer') },
  };
}

function dueOf(...[due, day]: readonly [EnquiriesAsked['due'], string]): EnquiryFilter['due'] {
  if (due === 'late') return { before: day };
  if (due === 'week') return { before: addDays(day, DAYS_OF_A_WEEK) };
  return due === 'none' ? 'none' : null;
}

/*
 * Who did what and when: of one enquiry for the Desk, of the whole house for the administrator.
 * Invariant: newest first, a page at a time; every entry that was ever written can be reached.
 * Not here: writing entries (log-change.ts).
 * Read next: ../log-change.ts.
 */
import { type AuditAsked, type AuditRow, auditPage, peopleInAudit } from '#db/queries/audit.ts';
import { findUser } from '#db/queries/users.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';

const PAGE_ENTRIES = 50;

/** Kinds of subjects that the log knows. */
export const HISTORY_KINDS = ['enquiry', 'customer', 'quote', 'user', 'sign-in'] as const;

export interface HistoryAsked {
  readonly page: number;
  readonly kind: string;
  readonly whoId: string;
  readonly words: string;
  /** First and last day, both included; empty where not narrowed. */
  readonly from: string;
  readonly until: string;
}

export interface HistoryEntry {
  readonly id: number;
  readonly at: string;
  readonly who: string;
  readonly action: string;
  readonly subject: string;
  /** Where the subject is shown, if it has a place. */
  readonly href: string | undefined;
  readonly details: readonly { readonly label: string; readonly text: string }[];
}

export interface HistoryFound {
  readonly entries: readonly HistoryEntry[];
  readonly page: number;
  readonly pages: number;
  readonly total: number;
}

export interface HouseHistory extends HistoryFound {
  readonly people: readonly { readonly id: string; readonly name: string }[];
}

export function readHouseHistory(context: Context, asked: HistoryAsked): Result<HouseHistory> {
  const allowed = authorise(context, 'read the history of the house');
  if (!allowed.ok) return allowed;
  const narrowed: AuditAsked = {
    ...(asked.kind === '' ? {} : { kind: asked.kind }),
    ...(asked.whoId === '' ? {} : { whoId: asked.whoId }),
    ...(asked.words === '' ? {} : { words: asked.words }),
    ...(isDay(asked.from) ? { from: asked.from } : {}),
    ...(isDay(asked.until) ? { before: addDays(asked.until, 1) } : {}),
  };
  const { db } = context.database;
  return ok({ ...pageOf(context, { asked: narrowed, page: asked.page }), people: peopleInAudit(db) });
}

export function readEnquiryHistory(
  context: Context,
  { enquiryId, page }: { readonly enquiryId: number; readonly page: number },
): Result<HistoryFound> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  return ok(pageOf(context, { asked: { subject: `enquiry ${enquiryId}` }, page }));
}

function pageOf(
  context: Context,
  { asked, page: wanted }: { readonly asked: AuditAsked; readonly page: number },
): HistoryFound {
  const { db } = context.database;
  const { total } = auditPage(db, { asked, page: 1, size: 1 });
  const pages = Math.max(1, Math.ceil(total / PAGE_ENTRIES));
  const page = Math.min(Math.max(1, wanted), pages);
  const { rows } = auditPage(db, { asked, page, size: PAGE_ENTRIES });
  return { entries: rows.map((row) => entryOf(context, row)), page, pages, total };
}

function entryOf(context: Context, row: AuditRow): HistoryEntry {
  const [kind = '', id = ''] = row.subject.split(' ');
  const user = kind === 'user' ? findUser(context.database.db, id) : undefined;
  const places: Readonly<Record<string, string>> = { enquiry: '/enquiries', customer: '/customers', user: '/users' };
  const place = places[kind];
  return {
    id: row.id,
    at: row.at,
    who: row.who,
    action: row.action,
    subject: user === undefined ? row.subject : `user ${user.name}`,
    href: place === undefined || id === '' ? undefined : `${place}/${id}`,
    details: detailsOf(row.detail_json),
  };
}

const LONGEST_DETAIL = 200;

/** The plain values of an entry's detail; what is itself a list or a record is told as its JSON, cut where it is long. */
function detailsOf(json: string): HistoryEntry['details'] {
  const detail: unknown = JSON.parse(json);
  if (detail === null || typeof detail !== 'object') return [];
  return Object.entries(detail).flatMap(([key, value]) => {
    if (value === null || value === '') return [];
    const text = typeof value === 'string' ? value : JSON.stringify(value);
    const label = key
      .replaceAll('_', ' ')
      .replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`);
    return [{ label, text: text.length > LONGEST_DETAIL ? `${text.slice(0, LONGEST_DETAIL)}…` : text }];
  });
}

function isDay(text: string): boolean {
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text));
}

/*
 * Reads one line of an enquiry with what earlier visits say of its valve, and the enquiry that it belongs to.
 * Invariant: a line that is gone is told, never guessed.
 * Not here: who may read it (authorise.ts), many lines (schedule-record.ts).
 * Read next: ../lines/open-line.ts.
 */
import { findLine } from '#db/queries/schedule.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { Context } from '#lib/services/context.ts';
import { type EnquiryRecord, readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { type SiteKnowledge, siteKnowledge } from '#lib/services/visits/site-knowledge.ts';
import { type LineRecord, readRecord } from './schedule-record.ts';

export interface LineKey {
  readonly enquiryId: number;
  readonly lineId: number;
}

export interface LoadedLine {
  readonly enquiry: EnquiryRecord;
  readonly record: LineRecord;
  readonly knowledge: SiteKnowledge;
}

export function loadLine(context: Context, key: LineKey): Result<LoadedLine> {
  const enquiry = readEnquiry(context, key.enquiryId);
  if (!enquiry.ok) return enquiry;
  const row = findLine(context.database.db, key);
  if (!row)
    return failed({ code: 'no-such-line', sentence: 'That line is not there any more; go back to the schedule.' });
  const knowledge = siteKnowledge(context, enquiry.value);
  return ok({ enquiry: enquiry.value, record: readRecord(row, knowledge), knowledge });
}

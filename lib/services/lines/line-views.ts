/*
 * Lines as the table shows them; what it shows of a duty is kept as long as line, site and visits say the same.
 * Invariant: a kept figure is the one that working it out anew would give.
 * Not here: the duty with all its steps (schedule-record.ts).
 * Read next: line-view.ts, ../schedule/order-lines.ts.
 */
import { assessDuty } from '#lib/duty/assess-duty.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Context } from '#lib/services/context.ts';
import type { EnquiryRecord } from '#lib/services/enquiries/enquiry-record.ts';
import type { ReadRow } from '#lib/services/schedule/schedule-cache.ts';
import { type LineRecord, recordOf } from '#lib/services/schedule/schedule-record.ts';
import { siteKnowledge } from '#lib/services/visits/site-knowledge.ts';
import { type DutyView, dutyView, type LineView, viewOfLine } from './line-view.ts';

interface KeptView {
  readonly site: string;
  readonly visits: string;
  readonly view: DutyView;
}

declare global {
  var kitwrightDutyViews: WeakMap<ScheduleLine, KeptView> | undefined;
}

export interface LineViewer {
  readonly record: (read: ReadRow) => LineRecord;
  readonly line: (read: ReadRow) => LineView;
  /** The duty, worked out now if it is not kept. */
  readonly duty: (record: LineRecord) => DutyView;
}

/** Shows lines of one enquiry; site and visits are read once. */
export function lineViewer(context: Context, enquiry: EnquiryRecord): LineViewer {
  const knowledge = siteKnowledge(context, enquiry);
  const siteText = JSON.stringify(enquiry.site);
  const record = (read: ReadRow): LineRecord => recordOf(read, knowledge);
  function duty(of: LineRecord): DutyView {
    const before = keptViews().get(of.listed);
    if (before && before.site === siteText && before.visits === of.key) return before.view;
    const view = dutyView(assessDuty({ line: of.line, site: enquiry.site }));
    keptViews().set(of.listed, { site: siteText, visits: of.key, view });
    return view;
  }
  return {
    record,
    duty,
    line: (read) => {
      const of = record(read);
      return viewOfLine(of, duty(of));
    },
  };
}

function keptViews(): WeakMap<ScheduleLine, KeptView> {
  globalThis.kitwrightDutyViews ??= new WeakMap();
  return globalThis.kitwrightDutyViews;
}

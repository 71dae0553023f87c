/** A house with an accepted and confirmed quote, for tests that begin in the yard. */
import { openDatabase } from '#db/client.ts';
import type { Context } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { takeList } from '#lib/services/schedule/take-list.ts';
import { confirmBooking } from '#lib/services/yard/confirm-booking.ts';
import { granted } from '../granted.ts';
import { demoHouseContext } from './demo-house.ts';

export interface BookedJob {
  readonly context: Context;
  readonly number: string;
}

interface JobAsked {
  readonly site: Readonly<Record<string, unknown>>;
  readonly list: string;
}

/** First day of the hire. */
export const JOB_STARTS = '2026-03-16';

const BATTERY_JOB: JobAsked = {
  site: {
    sources_allowed: ['battery'],
    mains_voltage: 230,
    mains_plug: 'CEE 7/7',
    crews: 1,
    days: 2,
    starts_on: JOB_STARTS,
  },
  list: 'tag,type,size,driven by,depth\nV1,gate,DN 100,key cap,0.9 m\nV2,gate,DN 200,key cap,1.2 m\n',
};

/** More valves than one crew turns in a day: two crews with a kit each. */
export const TWO_CREWS_JOB: JobAsked = {
  site: { ...BATTERY_JOB.site, crews: 2, days: 1 },
  list: `tag,type,size,driven by,depth\n${Array.from({ length: 40 }, (_, at) => `V${at + 1},gate,DN 200,key cap,1.2 m\n`).join('')}`,
};

export const AIR_JOB: JobAsked = {
  site: {
    sources_allowed: ['air'],
    air_pressure: '7 bar',
    air_flow: '60 l/s',
    crews: 1,
    days: 2,
    starts_on: JOB_STARTS,
  },
  list: 'tag,type,size,driven by,wheel diameter\nA1,gate,DN 150,handwheel,400 mm\nA2,gate,DN 250,handwheel,500 mm\n',
};

const images = new Map<JobAsked, { readonly image: Buffer; readonly number: string; readonly context: Context }>();

/** A copy of its own for every test. */
export async function bookedJob(asked: JobAsked = BATTERY_JOB): Promise<BookedJob> {
  const made = images.get(asked) ?? (await book(asked));
  images.set(asked, made);
  return { number: made.number, context: { ...made.context, database: openDatabase(Buffer.from(made.image)) } };
}

async function book({ site, list }: JobAsked) {
  const context = await demoHouseContext();
  const { id } = granted(createEnquiry(context, { title: 'Ring main', customer: { name: 'Test customer' }, site }));
  const bytes = new TextEncoder().encode(list);
  const { fileId, tables } = granted(await receiveList(context, { enquiryId: id, fileName: 'list.csv', bytes }));
  const [table] = tables;
  const mapping = table?.mapping ?? { headerRow: null, columns: [] };
  granted(await takeList(context, { enquiryId: id, fileId, table: table?.name ?? '', mapping, existing: 'keep' }));
  granted(startPlan(context, id));
  granted(await awaitPlan(context, id));
  const quote = granted(await issueQuote(context, { enquiryId: id }));
  const { number } = granted(acceptQuote(context, { quoteId: quote.id, acceptedBy: 'R. Dunlin' }));
  granted(confirmBooking(context, { number }));
  return { context, number, image: context.database.raw.serialize() };
}

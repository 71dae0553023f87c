/*
 * Carries out what went on in the demo house before it was loaded, by the same verbs as a person would, each on its day.
 * Invariant: it is done once, right after the demo house was written; a step that the house refuses stops it with the sentence.
 * Not here: what went on (../../../seeds/dealings.ts).
 * Read next: prepare-house.ts.
 */
import { openDatabase } from '#db/client.ts';
import { findBooking, unitsOfBooking } from '#db/queries/bookings.ts';
import { listCustomers } from '#db/queries/customers.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Result } from '#lib/kernel/result.ts';
import { type Context, today } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { awaitPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { acceptQuote } from '#lib/services/quotes/accept-quote.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { takeList } from '#lib/services/schedule/take-list.ts';
import { beginDelivery, countLoad, scanLoad } from '#lib/services/yard/out/load-delivery.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { sendDelivery } from '#lib/services/yard/out/send-delivery.ts';
import { stepUnits } from '#lib/services/yard/step-units.ts';
import { INSTRUCTION_POINTS } from '#lib/stock/load-check.ts';
import { DEMO_DEALINGS, type DemoDealing } from '#seeds/dealings.ts';

const DEMO_DESK = { id: 'system', name: 'Demo desk', role: 'desk' } as const;

export async function carryOutDemoDealings(input: {
  readonly databasePath: string;
  readonly now?: Date;
}): Promise<void> {
  const database = openDatabase(input.databasePath);
  const loaded = input.now ?? new Date();
  const on = (days: number): Context => ({
    database,
    now: () => new Date(loaded.getTime() + days * DAY_MS),
    actor: DEMO_DESK,
  });
  try {
    for (const dealing of DEMO_DEALINGS) await carryOut({ dealing, on });
  } finally {
    database.raw.close();
  }
}

const DAY_MS = 86_400_000;

interface Carried {
  readonly dealing: DemoDealing;
  /** The house on a day, counted from the one on which it is loaded. */
  readonly on: (days: number) => Context;
}

async function carryOut({ dealing, on }: Carried): Promise<void> {
  const came = on(dealing.cameOn);
  const enquiryId = make({ dealing, on });
  const bytes = new TextEncoder().encode(dealing.list);
  const { fileId, tables } = done(await receiveList(came, { enquiryId, fileName: 'valves.csv', bytes }));
  const [table] = tables;
  invariant(table !== undefined, `The list of “${dealing.title}” holds no table.`);
  done(await takeList(came, { enquiryId, fileId, table: table.name, mapping: table.mapping, existing: 'keep' }));
  if (dealing.outcome === null) return;
  done(startPlan(came, enquiryId));
  done(await awaitPlan(came, enquiryId));
  const quote = done(await issueQuote(came, { enquiryId }));
  if (dealing.outcome === 'quoted') return;
  const order = { quoteId: quote.id, acceptedBy: 'by telephone', orderNumber: `PO-${4400 + enquiryId}` };
  const { number } = done(acceptQuote(on(dealing.startsOn - 3), order));
  letOut(on(dealing.startsOn), number);
}

function make({ dealing, on }: Carried): number {
  const came = on(dealing.cameOn);
  const dayOf = (days: number): IsoDate => today(on(days));
  const customer = listCustomers(came.database.db).find(({ code }) => code === dealing.customer);
  invariant(customer !== undefined, `The demo dealing “${dealing.title}” names a customer that is not there.`);
  const { place, sources, days, startsOn, dueOn } = dealing;
  const site = {
    ...{ name: place, sources_allowed: sources, crews: 1, days, starts_on: dayOf(startsOn) },
    ...{ vehicle_access: true, zone: 'none', enclosed: false, transport: 'road' },
  };
  const asked = { title: dealing.title, customer: { id: customer.id }, site };
  return done(createEnquiry(came, { ...asked, ...(dueOn === undefined ? {} : { due_on: dayOf(dueOn) }) })).id;
}

/** Its units are set aside and picked, and everything is driven out on the first day of hire. */
function letOut(context: Context, number: string): void {
  context.database.db.transaction((tx) => {
    for (const [to, what] of [
      ['allocated', 'set aside'],
      ['picked', 'picked'],
    ] as const) {
      const booking = findBooking(tx, number);
      invariant(booking !== undefined, `The booking ${number} was made a moment ago.`);
      done(stepUnits(tx, { context, booking, units: unitsOfBooking(tx, booking.id), to, what }));
    }
  });
  driveOut(context, number);
}

function driveOut(context: Context, number: string): void {
  const { id: deliveryId } = done(beginDelivery(context, { number, transport: 'road' }));
  const { waiting, counted } = done(openOut(context, number));
  for (const { serial } of waiting) done(scanLoad(context, { deliveryId, scan: serial }));
  for (const { model, booked } of counted) done(countLoad(context, { deliveryId, model, count: booked }));
  const { questions } = done(openOut(context, number));
  const { name } = DEMO_DESK;
  done(
    sendDelivery(context, {
      deliveryId,
      checks: questions.map(({ id }) => id),
      ...{ loadedBy: name, vehicle: 'van', instructedBy: name, instruction: INSTRUCTION_POINTS },
      ...{ handedTo: 'the crew', signature: { how: 'typed', name: 'the crew' } },
    }),
  );
}

function done<Value>(result: Result<Value>): Value {
  invariant(result.ok, result.ok ? '' : result.reason.sentence);
  return result.value;
}

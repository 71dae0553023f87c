/*
 * The despatch advice of one delivery as UBL 2.1 XML: the cases and pieces that left with it and nothing else.
 * Invariant: written once when it leaves, then kept byte for byte and proved by its hash; a booking without a quote has none.
 * Not here: the form (lib/documents/exchange/despatch-xml.ts).
 * Read next: delivery-cases.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { LoadedItem, LoadedUnit } from '#db/queries/deliveries.ts';
import { casesOfBooking, piecesOfLoad } from '#db/queries/picking.ts';
import { despatchXml } from '#lib/documents/exchange/despatch-xml.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { knownModels } from '#lib/services/house/house-facts.ts';
import { packingInput } from '#lib/services/quotes/papers-of.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { quotedTerms } from '../back/frozen-terms.ts';
import type { NotePaper } from '../back/read-return-note.ts';
import { deliveryCases } from './delivery-cases.ts';
import { type DeliveryRecord, readDelivery, transportOf } from './delivery-record.ts';

interface Delivered {
  readonly context: Context;
  readonly record: DeliveryRecord;
  readonly units: readonly LoadedUnit[];
  readonly items: readonly LoadedItem[];
}

export function deliveryDespatch(tx: DbOrTx, { context, record, units, items }: Delivered): Buffer | null {
  const { booking, row } = record;
  const terms = quotedTerms(tx, { context, booking });
  if (!terms.ok) return null;
  const { papers, quote } = terms.value;
  const depot = papers.house.depots.find(({ code }) => code === row.depot)?.name;
  const packing = packingInput({ ...papers, issuedOn: today(context), bookingNumber: booking.number });
  const transport = transportOf(row);
  const cases = deliveryCases({
    booking: booking.number,
    models: knownModels(context),
    units,
    items,
    cases: casesOfBooking(tx, booking.id),
    pieces: piecesOfLoad(tx, booking.id),
    transport,
  });
  const xml = despatchXml({
    ...packing,
    ...(depot === undefined ? {} : { depot }),
    bookingNumber: `${booking.number}/${row.sequence}`,
    transport,
    cases,
    lacking: [],
    orderNumber: booking.order_number === '' ? `${quote.number} ${quote.revision}` : booking.order_number,
  });
  return Buffer.from(xml, 'utf8');
}

export function readDespatch(context: Context, deliveryId: number): Result<NotePaper> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const record = readDelivery(context.database.db, deliveryId);
  if (!record.ok) return record;
  const { row, booking } = record.value;
  if (row.despatch_xml === null)
    return failed({ code: 'no-such-paper', sentence: 'There is a despatch advice once it has left for a quote.' });
  invariant(sha256(row.despatch_xml) === row.despatch_sha256, 'The despatch advice does not agree with its hash.');
  const fileName = `${booking.number}-${row.sequence}-despatch.xml`;
  return ok({ fileName, mime: 'application/xml', bytes: row.despatch_xml });
}

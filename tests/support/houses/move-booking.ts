/**
 * Sends a picked booking out, or takes it back with its first piece missing, in the database that KITWRIGHT_DATABASE names, as the yard's own services do:
 * `node --import tsx tests/support/houses/move-booking.ts B-00001 out` (or `back`); prints the serial numbers that left, or the one that is missing.
 */
import type { Result } from '#lib/kernel/result.ts';
import { type Context, HOUSE_ITSELF } from '#lib/services/context.ts';
import { openHouse } from '#lib/services/house/open-house.ts';
import { checkIn } from '#lib/services/yard/back/check-in.ts';
import { countBack } from '#lib/services/yard/back/count-back.ts';
import { openBack } from '#lib/services/yard/back/open-back.ts';
import { openReturn } from '#lib/services/yard/back/open-return.ts';
import { beginDelivery, countLoad, scanLoad } from '#lib/services/yard/out/load-delivery.ts';
import { openOut } from '#lib/services/yard/out/open-out.ts';
import { sendDelivery } from '#lib/services/yard/out/send-delivery.ts';
import { INSTRUCTION_POINTS } from '#lib/stock/load-check.ts';

const [, , number = '', where = ''] = process.argv;
const context = openHouse(HOUSE_ITSELF);
const moved = where === 'out' ? sentOut(context) : takenBack(context);
console.info(moved.join('\n'));
context.database.raw.close();

function sentOut(house: Context): readonly string[] {
  const { id: deliveryId } = done(beginDelivery(house, { number, transport: 'road' }));
  const { waiting, counted } = done(openOut(house, number));
  for (const { serial } of waiting) done(scanLoad(house, { deliveryId, scan: serial }));
  for (const { model, booked, sent } of counted) done(countLoad(house, { deliveryId, model, count: booked - sent }));
  const leaving = { loadedBy: 'Yard Hand', vehicle: 'van 3', instructedBy: 'Yard Hand', handedTo: 'Mara Quist' };
  const signature = { how: 'typed', name: 'Mara Quist' } as const;
  const checks = done(openOut(house, number)).questions.map(({ id }) => id);
  return done(sendDelivery(house, { ...leaving, deliveryId, checks, instruction: INSTRUCTION_POINTS, signature }))
    .serials;
}

function takenBack(house: Context): readonly string[] {
  const { depot } = done(openBack(house, number));
  const declared = { number, depot, broughtBy: 'driver', contamination: 'none', note: '' } as const;
  const { id: returnId } = done(openReturn(house, declared));
  const { awaited, counted } = done(openBack(house, number));
  const seen = { returnId, runHours: null, missingParts: '', note: '', sawOverload: false };
  const repair = { repairHours: 0, repairPartsMinor: 0 };
  const [missing, ...good] = awaited.map(({ serial }) => serial);
  if (missing === undefined) throw new Error(`Nothing of ${number} is awaited.`);
  for (const scan of good) done(checkIn(house, { ...seen, ...repair, scan, condition: 'good' }));
  for (const { model, sent } of counted) done(countBack(house, { returnId, model, back: sent, unused: 0 }));
  done(checkIn(house, { ...seen, ...repair, scan: missing, condition: 'missing' }));
  return [missing];
}

function done<Value>(result: Result<Value>): Value {
  if (result.ok) return result.value;
  throw new Error(`${result.reason.code}: ${result.reason.sentence}`);
}

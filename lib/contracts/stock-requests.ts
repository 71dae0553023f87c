/*
 * What a browser or another system may send about stock: units, counted pieces, bays, stocktakes, transfers.
 * Invariant: nothing reaches a use case that has not passed one of these.
 * Not here: bookings and what is done with them.
 * Read next: ../services/stock/add-unit.ts.
 */
import { z } from 'zod';
import { CHECK_KINDS } from '#lib/stock/next-due.ts';
import { SETTABLE_STATES } from '#lib/stock/unit-state.ts';

const code = z.string().trim().max(120);
const serial = z.string().trim().min(1).max(60);
const model = z.string().trim().min(1).max(24);
const depot = z.string().trim().min(1).max(8);
const bay = z.string().trim().max(24);
const reason = z.string().trim().max(400).default('');
const day = z.string().trim().max(20);
const count = z.int().min(0).max(100_000);

export const unitToAddSchema = z
  .strictObject({
    serial,
    model,
    depot,
    bay,
    inspectionDueOn: day.default(''),
    calibrationDueOn: day.default(''),
    note: reason,
  })
  .meta({ id: 'UnitToAdd', description: 'A unit with its serial number and where it stands.' });

export const unitActSchema = z
  .discriminatedUnion('act', [
    z.strictObject({ act: z.literal('move'), to: bay }),
    z.strictObject({ act: z.literal('state'), to: z.enum(SETTABLE_STATES), reason }),
    z.strictObject({
      act: z.literal('check'),
      kind: z.enum(CHECK_KINDS),
      doneOn: day,
      dueOn: day.optional(),
      certificate: reason,
    }),
    z.strictObject({
      act: z.literal('note'),
      runHours: z.number().min(0).max(1e6).optional(),
      note: z.string().trim().max(2000).optional(),
      reason,
    }),
  ])
  .meta({ id: 'UnitAct', description: 'What is done with a unit: moved, held back or made ready, checked, noted.' });

export const countToSetSchema = z
  .strictObject({ model, depot, count, bay: bay.optional(), reason })
  .meta({ id: 'CountToSet', description: 'How many pieces of a counted model lie in a depot, and why that changes.' });

export const bayToRenameSchema = z
  .strictObject({ to: bay })
  .meta({ id: 'BayToRename', description: 'What a bay is called from now on.' });

export const bayToSaveSchema = z
  .strictObject({ depot, bay, walkOrder: z.int().min(0).max(100_000).optional(), note: reason })
  .meta({ id: 'BayToSave', description: 'A bay and its place on the walk through the depot.' });

export const stocktakeToOpenSchema = z
  .strictObject({ depot, bay })
  .meta({ id: 'StocktakeToOpen', description: 'A depot to count, or one bay of it.' });

export const stocktakeActSchema = z
  .discriminatedUnion('act', [
    z.strictObject({ act: z.literal('scan'), code, bay }),
    z.strictObject({ act: z.literal('count'), model, count }),
    z.strictObject({ act: z.literal('unscan'), serial }),
    z.strictObject({ act: z.literal('give up') }),
    z.strictObject({ act: z.literal('close'), lost: z.array(z.strictObject({ serial, reason })).max(5000) }),
  ])
  .meta({ id: 'StocktakeAct', description: 'One step of a stocktake: a scan, a count, taking one back, or the end.' });

const items = z.array(z.strictObject({ model, count: count.min(1) })).max(200);

export const transferToSendSchema = z
  .strictObject({ from: depot, to: depot, dueOn: day, serials: z.array(serial).max(1000), items, note: reason })
  .meta({ id: 'TransferToSend', description: 'What goes from one depot to another, and when it can be used there.' });

export const transferArrivalSchema = z
  .strictObject({
    units: z.array(z.strictObject({ serial, bay })).max(1000),
    items: z.array(z.strictObject({ model, arrived: count })).max(200),
    lost: z.array(z.strictObject({ serial, reason })).max(1000),
  })
  .meta({ id: 'TransferArrival', description: 'What of a transfer arrived, in which bay, and what is written off.' });

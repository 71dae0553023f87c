/*
 * The transfers between depots, and one of them with what is on it.
 * Invariant: reads only; what is overdue says so.
 * Not here: sending and taking in.
 * Read next: send-transfer.ts, arrive-transfer.ts.
 */
import { listUnits } from '#db/queries/equipment.ts';
import { listBays, listShelves } from '#db/queries/stock.ts';
import { itemsOfTransfer, listTransfers, type TransferRow, unitsOfTransfer } from '#db/queries/transfers.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { TRANSFER_DAYS } from '#lib/stock/transfer-days.ts';

export interface TransferView extends TransferRow {
  readonly overdue: boolean;
  readonly units: readonly {
    readonly serial: string;
    readonly name: string;
    readonly active: boolean;
    readonly lost: boolean;
  }[];
  readonly items: readonly {
    readonly model: string;
    readonly name: string;
    readonly count: number;
    readonly arrived: number | null;
  }[];
}

export interface TransfersView {
  readonly transfers: readonly TransferView[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly bays: readonly { readonly depot: string; readonly code: string }[];
  readonly counted: readonly {
    readonly model: string;
    readonly name: string;
    readonly at: Readonly<Record<string, number>>;
  }[];
  readonly today: IsoDate;
  /** What a new one is due on unless somebody says otherwise. */
  readonly usualDueOn: IsoDate;
  readonly mayChange: boolean;
}

export function listHouseTransfers(context: Context): Result<TransfersView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const day = today(context);
  const models = knownModels(context);
  const names = new Map(models.map(({ number, name }) => [number, name]));
  const units = new Map(listUnits(db).map((unit) => [unit.serial, unit]));
  const shelves = listShelves(db);
  return ok({
    transfers: listTransfers(db).map((row) => ({
      ...row,
      overdue: row.state === 'on the way' && row.due_on < day,
      units: unitsOfTransfer(db, row.id).map(({ unit_serial: serial, active }) => {
        const unit = units.get(serial);
        return { serial, name: names.get(unit?.model_number ?? '') ?? '', active, lost: unit?.state === 'lost' };
      }),
      items: itemsOfTransfer(db, row.id).map(({ model_number: model, count, arrived }) => ({
        model,
        name: names.get(model) ?? '',
        count,
        arrived,
      })),
    })),
    depots: houseFacts(context).depots.map(({ code, name }) => ({ code, name })),
    bays: listBays(db).map(({ depot, code }) => ({ depot, code })),
    counted: models
      .filter(({ counted, madeToOrder }) => counted && !madeToOrder)
      .map(({ number, name }) => ({
        model: number,
        name,
        at: Object.fromEntries(shelves.flatMap((one) => (one.model_number === number ? [[one.depot, one.count]] : []))),
      })),
    today: day,
    usualDueOn: addDays(day, TRANSFER_DAYS),
    mayChange: authorise(context, 'change stock').ok,
  });
}

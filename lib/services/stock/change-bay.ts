/*
 * Renames a bay with all that stands in it, or takes an empty one away.
 * Invariant: equipment always stands in a bay that is known; every unit's own history says that its bay is called otherwise now.
 * Not here: making one and its place on the walk (bays.ts), moving units (move-unit.ts).
 * Read next: bays.ts, open-bays.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { listUnits } from '#db/queries/equipment.ts';
import { type BayAt, type BayRow, deleteBay, findBay, moveShelves, saveBay } from '#db/queries/stock.ts';
import { openStocktakeOf } from '#db/queries/stocktakes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { readBayName } from './bays.ts';
import { stockOf } from './open-bays.ts';
import { recordUnit } from './unit-record.ts';

export interface BayRename extends BayAt {
  readonly to: string;
}

export function renameBay(context: Context, rename: BayRename): Result<BayAt> {
  return changing(context, {
    at: rename,
    work: (tx, row) => {
      const name = readBayName({ depot: row.depot, bay: rename.to });
      if (!name.ok) return name;
      const to = name.value;
      if (to === row.code) return ok({ depot: row.depot, bay: to });
      if (findBay(tx, { depot: row.depot, bay: to }))
        return failed({
          code: 'bay-there-already',
          sentence: `${row.depot} has a bay ${to} already: move the units there by scan instead.`,
        });
      saveBay(tx, { ...row, code: to });
      moveAll(tx, { context, row, to });
      deleteBay(tx, { depot: row.depot, bay: row.code });
      const deed = { action: 'bay renamed', subject: `bay ${row.depot}/${row.code}`, detail: { to } };
      logChange(tx, { context, deed });
      return ok({ depot: row.depot, bay: to });
    },
  });
}

export function removeBay(context: Context, at: BayAt): Result<BayAt> {
  return changing(context, {
    at,
    work: (tx, row) => {
      const { units, shelves } = stockOf(tx, row.depot);
      const standing = units.filter(({ bay }) => bay === row.code).length;
      const boxes = shelves.filter(({ bay }) => bay === row.code).length;
      if (standing + boxes > 0)
        return failed({
          code: 'bay-not-empty',
          sentence: `${row.code} is not empty: ${standing} ${standing === 1 ? 'unit' : 'units'} and ${boxes} ${boxes === 1 ? 'box' : 'boxes'} of counted pieces belong there. Move them first.`,
        });
      deleteBay(tx, { depot: row.depot, bay: row.code });
      logChange(tx, {
        context,
        deed: { action: 'bay taken away', subject: `bay ${row.depot}/${row.code}`, detail: {} },
      });
      return ok({ depot: row.depot, bay: row.code });
    },
  });
}

interface Changing {
  readonly at: BayAt;
  readonly work: (tx: DbOrTx, row: BayRow) => Result<BayAt>;
}

/** While a depot is counted bay by bay its bays stay as they are called. */
function changing(context: Context, { at, work }: Changing): Result<BayAt> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx) => {
      const row = findBay(tx, { depot: at.depot, bay: at.bay.toUpperCase() });
      if (!row)
        return failed({
          code: 'no-such-bay',
          sentence: `${at.depot.slice(0, 20)} has no bay ${at.bay.slice(0, 20)}; load the page again.`,
        });
      const counting = openStocktakeOf(tx, row.depot);
      if (counting)
        return failed({
          code: 'stocktake-open',
          sentence: `Stocktake ${counting.number} counts ${row.depot} bay by bay: close it first.`,
        });
      return work(tx, row);
    },
    { behavior: 'immediate' },
  );
}

interface MovingAll {
  readonly context: Context;
  readonly row: BayRow;
  readonly to: string;
}

function moveAll(tx: DbOrTx, { context, row, to }: MovingAll): void {
  for (const { serial, bay, depot } of listUnits(tx)) {
    if (bay !== row.code || depot !== row.depot) continue;
    const event = {
      kind: 'moved',
      before: `${row.depot} ${row.code}`,
      after: `${row.depot} ${to}`,
      reason: 'the bay was renamed',
    } as const;
    recordUnit(tx, { context, deed: { serial, set: { bay: to }, event } });
  }
  moveShelves(tx, { depot: row.depot, from: row.code, to });
}

/*
 * The bays of a depot in walking order with what stands in each, and one of them in full.
 * Invariant: reads only; what is out or on hire still belongs to its bay; what was lost or retired stands nowhere.
 * Not here: making, renaming and taking away (bays.ts, change-bay.ts), moving units (move-unit.ts).
 * Read next: change-bay.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { listUnits, type UnitRow } from '#db/queries/equipment.ts';
import { type BayRow, listBays, listShelves, type ShelfRow } from '#db/queries/stock.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';

export interface BayLine {
  readonly code: string;
  readonly walkOrder: number;
  readonly note: string;
  readonly units: number;
  /** Boxes of counted pieces. */
  readonly boxes: number;
}

export interface BayInFull extends BayLine {
  readonly stands: readonly {
    readonly serial: string;
    readonly model: string;
    readonly name: string;
    readonly state: string;
  }[];
  readonly counted: readonly { readonly model: string; readonly name: string; readonly count: number }[];
}

export interface BaysView {
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly depot: string;
  readonly bays: readonly BayLine[];
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  /** The one that is looked at; null where none is, or there is none of that name. */
  readonly open: BayInFull | null;
  readonly mayChange: boolean;
}

export interface BaysAsked {
  readonly depot: string;
  readonly bay: string;
  /** Part of a bay's name or note. */
  readonly words: string;
  readonly page: number;
}

const A_PAGE = 40;

export function openBays(context: Context, asked: BaysAsked): Result<BaysView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const depots = houseFacts(context).depots.map(({ code, name }) => ({ code, name }));
  const depot = depots.find(({ code }) => code === asked.depot)?.code ?? depots[0]?.code ?? '';
  const stock = stockOf(db, depot);
  const all = listBays(db).filter((row) => row.depot === depot);
  const words = asked.words.trim().toLowerCase();
  const found = all.filter(({ code, note }) => `${code} ${note}`.toLowerCase().includes(words));
  const pages = Math.max(1, Math.ceil(found.length / A_PAGE));
  const page = Math.min(pages, Math.max(1, Math.trunc(asked.page) || 1));
  const open = all.find(({ code }) => code === asked.bay.toUpperCase());
  return ok({
    depots,
    depot,
    bays: found.slice((page - 1) * A_PAGE, page * A_PAGE).map((row) => bayLine(row, stock)),
    total: found.length,
    page,
    pages,
    open: open === undefined ? null : inFull(context, { row: open, stock }),
    mayChange: authorise(context, 'change stock').ok,
  });
}

export interface BayStock {
  readonly units: readonly UnitRow[];
  readonly shelves: readonly ShelfRow[];
}

/** What stands in the bays of a depot. */
export function stockOf(db: DbOrTx, depot: string): BayStock {
  return {
    units: listUnits(db).filter((unit) => unit.depot === depot && unit.state !== 'lost' && unit.state !== 'retired'),
    shelves: listShelves(db).filter((shelf) => shelf.depot === depot),
  };
}

function bayLine(row: BayRow, { units, shelves }: BayStock): BayLine {
  return {
    code: row.code,
    walkOrder: row.walk_order,
    note: row.note,
    units: units.filter(({ bay }) => bay === row.code).length,
    boxes: shelves.filter(({ bay }) => bay === row.code).length,
  };
}

function inFull(context: Context, { row, stock }: { readonly row: BayRow; readonly stock: BayStock }): BayInFull {
  const names = new Map(knownModels(context).map(({ number, name }) => [number, name]));
  return {
    ...bayLine(row, stock),
    stands: stock.units
      .filter(({ bay }) => bay === row.code)
      .map(({ serial, model_number, state }) => ({
        serial,
        model: model_number,
        name: names.get(model_number) ?? '',
        state,
      })),
    counted: stock.shelves
      .filter(({ bay }) => bay === row.code)
      .map(({ model_number, count }) => ({ model: model_number, name: names.get(model_number) ?? '', count })),
  };
}

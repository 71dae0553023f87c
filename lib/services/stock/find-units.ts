/*
 * The units of the house as a list shows them: filtered, a page at a time, with counts of what each filter would show.
 * Invariant: reads only; a page beyond the end answers the last page; serial numbers are found by any part of them.
 * Not here: counted pieces (list-counted.ts), one unit in full (open-unit.ts).
 * Read next: open-unit.ts.
 */
import { listUnits, type UnitRow } from '#db/queries/equipment.ts';
import { ROLES, type Role } from '#lib/equipment/model.ts';
import { addDays, type IsoDate } from '#lib/kernel/date-range.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, today } from '#lib/services/context.ts';
import { houseFacts, knownModels } from '#lib/services/house/house-facts.ts';
import { UNIT_STATES } from '#lib/stock/unit.ts';

export const DUE_FILTERS = ['overdue', 'month'] as const;
export type DueFilter = (typeof DUE_FILTERS)[number];

export interface UnitsAsked {
  /** Part of a serial number, model number, model name or bay. */
  readonly words: string;
  readonly role: string;
  readonly model: string;
  readonly depot: string;
  readonly bay: string;
  readonly state: string;
  readonly due: DueFilter | '';
  /** From 1. */
  readonly page: number;
}

export const EVERY_UNIT: UnitsAsked = {
  words: '',
  role: '',
  model: '',
  depot: '',
  bay: '',
  state: '',
  due: '',
  page: 1,
};

export interface FoundUnit {
  readonly serial: string;
  readonly model: string;
  readonly name: string;
  readonly depot: string;
  readonly bay: string;
  readonly state: string;
  /** The nearer of its two checks; null where it has none. */
  readonly dueOn: IsoDate | null;
  readonly overdue: boolean;
}

export interface UnitsFound {
  readonly rows: readonly FoundUnit[];
  readonly total: number;
  readonly page: number;
  readonly pages: number;
  readonly roles: readonly Role[];
  readonly depots: readonly { readonly code: string; readonly name: string }[];
  readonly states: readonly string[];
  readonly mayChange: boolean;
}

const UNITS_A_PAGE = 60;
/** A check due within a month is planned now. House practice, no source. */
const SOON_DAYS = 31;

export function findUnits(context: Context, asked: UnitsAsked): Result<UnitsFound> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const models = new Map(knownModels(context).map((model) => [model.number, model]));
  const day = today(context);
  const rows = listUnits(context.database.db)
    .map((row) => ({ ...shownUnit({ row, day }), name: models.get(row.model_number)?.name ?? '' }))
    .filter((row) => asked.role === '' || models.get(row.model)?.role === asked.role)
    .filter((row) => fits({ row, asked, day }));
  const pages = Math.max(1, Math.ceil(rows.length / UNITS_A_PAGE));
  const page = Math.min(Math.max(1, asked.page), pages);
  return ok({
    rows: rows.slice((page - 1) * UNITS_A_PAGE, page * UNITS_A_PAGE),
    total: rows.length,
    page,
    pages,
    roles: ROLES,
    depots: houseFacts(context).depots.map(({ code, name }) => ({ code, name })),
    states: UNIT_STATES,
    mayChange: authorise(context, 'change stock').ok,
  });
}

function shownUnit({ row, day }: { readonly row: UnitRow; readonly day: IsoDate }): Omit<FoundUnit, 'name'> {
  const dueOn = [row.inspection_due_on, row.calibration_due_on].flatMap((due) => due ?? []).sort()[0] ?? null;
  return {
    serial: row.serial,
    model: row.model_number,
    depot: row.depot,
    bay: row.bay,
    state: row.state,
    dueOn,
    overdue: dueOn !== null && dueOn <= day && row.state !== 'lost' && row.state !== 'retired',
  };
}

interface Fitting {
  readonly row: FoundUnit;
  readonly asked: UnitsAsked;
  readonly day: IsoDate;
}

function fits({ row, asked, day }: Fitting): boolean {
  if (asked.model !== '' && row.model !== asked.model) return false;
  if (asked.depot !== '' && row.depot !== asked.depot) return false;
  if (asked.bay !== '' && row.bay !== asked.bay.toUpperCase()) return false;
  if (asked.state !== '' && row.state !== asked.state) return false;
  if (asked.due === 'overdue' && !row.overdue) return false;
  if (asked.due === 'month' && (row.dueOn === null || row.dueOn > addDays(day, SOON_DAYS))) return false;
  const text = `${row.serial} ${row.model} ${row.name} ${row.depot} ${row.bay}`.toLowerCase();
  return asked.words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}

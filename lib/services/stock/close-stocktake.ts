/*
 * Closes a stocktake: moves what was found elsewhere, writes counted numbers, and sets what is missing lost where somebody says so.
 * Invariant: all of it happens in one transaction or none; a missing unit that nobody gave up stays as it is on record.
 * Not here: scanning (scan-stocktake.ts).
 * Read next: ../../stock/stocktake.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { changeStocktake, type StocktakeRow } from '#db/queries/stocktakes.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import type { StocktakeFindings, StocktakeUnit } from '#lib/stock/stocktake.ts';
import { writeCount } from './counted.ts';
import { type CountedExpected, openStocktakeNumbered, standingOf } from './open-stocktake.ts';
import { keepUnitEvent, recordUnit } from './unit-record.ts';

export interface StocktakeClosing {
  readonly number: string;
  /** Missing units that are given up, each with the reason; the others are left as they are. */
  readonly lost: readonly { readonly serial: string; readonly reason: string }[];
}

export interface StocktakeOutcome {
  readonly inPlace: number;
  readonly moved: number;
  /** Written off earlier and found again: they wait in quarantine for somebody to look at them. */
  readonly foundAgain: readonly string[];
  /** Found here though they are out, on their way or retired: nothing was changed. */
  readonly unclear: readonly string[];
  readonly lost: readonly string[];
  readonly left: readonly string[];
  /** Counted pieces whose number changed. */
  readonly counted: readonly { readonly model: string; readonly before: number; readonly after: number }[];
}

export function closeStocktake(context: Context, closing: StocktakeClosing): Result<StocktakeOutcome> {
  const allowed = authorise(context, 'change stock');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction((tx) => close(tx, { context, closing }), { behavior: 'immediate' });
}

interface Closing {
  readonly context: Context;
  readonly closing: StocktakeClosing;
}

function close(tx: DbOrTx, { context, closing }: Closing): Result<StocktakeOutcome> {
  const open = openStocktakeNumbered(tx, closing.number);
  if (!open.ok) return open;
  const row = open.value;
  const { findings, counted } = standingOf(tx, { context, row });
  const wrong = wrongLoss({ closing, findings });
  if (wrong !== null) return failed(wrong);
  const work = { context, row };
  const lost = new Map(closing.lost.map(({ serial, reason }) => [serial, reason.trim()]));
  for (const unit of findings.inPlace) found(tx, { ...work, unit });
  for (const unit of findings.misplaced) move(tx, { ...work, unit });
  const again = findings.unexpected.filter(({ state }) => state === 'lost');
  for (const unit of again) bringBack(tx, { ...work, unit });
  for (const unit of findings.missing) miss(tx, { ...work, unit, reason: lost.get(unit.serial) ?? null });
  const changed = writeCounts(tx, { ...work, counted });
  const outcome: StocktakeOutcome = {
    inPlace: findings.inPlace.length,
    moved: findings.misplaced.length,
    foundAgain: again.map(({ serial }) => serial),
    unclear: findings.unexpected.filter(({ state }) => state !== 'lost').map(({ serial }) => serial),
    lost: [...lost.keys()],
    left: findings.missing.filter(({ serial }) => !lost.has(serial)).map(({ serial }) => serial),
    counted: changed,
  };
  finish(tx, { ...work, outcome });
  return ok(outcome);
}

function wrongLoss({
  closing,
  findings,
}: {
  readonly closing: StocktakeClosing;
  readonly findings: StocktakeFindings;
}) {
  const missing = new Set(findings.missing.map(({ serial }) => serial));
  const other = closing.lost.find(({ serial }) => !missing.has(serial));
  if (other)
    return {
      code: 'not-missing',
      sentence: `${other.serial.slice(0, 40)} is not missing here: look at the list again, then close.`,
    };
  const silent = closing.lost.find(({ reason }) => reason.trim() === '');
  if (silent) return { code: 'reason-missing', sentence: `Say why ${silent.serial} is given up as lost, or leave it.` };
  return null;
}

interface Work {
  readonly context: Context;
  readonly row: StocktakeRow;
}

interface UnitWork extends Work {
  readonly unit: StocktakeUnit;
}

function found(tx: DbOrTx, { context, row, unit }: UnitWork): void {
  const event = {
    serial: unit.serial,
    kind: 'found',
    after: `${row.depot} ${unit.foundIn}`,
    reference: row.number,
  } as const;
  keepUnitEvent(tx, { context, event });
}

function move(tx: DbOrTx, { context, row, unit }: UnitWork): void {
  const event = {
    kind: 'moved',
    before: `${unit.depot} ${unit.bay}`,
    after: `${row.depot} ${unit.foundIn}`,
    reason: 'found in a stocktake',
    reference: row.number,
  } as const;
  recordUnit(tx, { context, deed: { serial: unit.serial, set: { depot: row.depot, bay: unit.foundIn }, event } });
}

function bringBack(tx: DbOrTx, { context, row, unit }: UnitWork): void {
  const set = { depot: row.depot, bay: unit.foundIn, state: 'quarantine' };
  const event = {
    kind: 'found',
    before: unit.state,
    after: 'quarantine',
    reason: 'found in a stocktake',
    reference: row.number,
  } as const;
  recordUnit(tx, { context, deed: { serial: unit.serial, set, event } });
}

function miss(tx: DbOrTx, { context, row, unit, reason }: UnitWork & { readonly reason: string | null }): void {
  const before = `${unit.depot} ${unit.bay}, ${unit.state}`;
  const event = {
    kind: 'missing',
    before,
    after: reason === null ? '' : 'lost',
    reason: reason ?? '',
    reference: row.number,
  } as const;
  recordUnit(tx, { context, deed: { serial: unit.serial, set: reason === null ? {} : { state: 'lost' }, event } });
}

function writeCounts(
  tx: DbOrTx,
  { context, row, counted }: Work & { readonly counted: readonly CountedExpected[] },
): StocktakeOutcome['counted'] {
  return counted.flatMap(({ model, expected, counted: count }) => {
    if (count === null || count === expected) return [];
    writeCount(tx, {
      context,
      model,
      depot: row.depot,
      count,
      reason: 'counted in a stocktake',
      reference: row.number,
    });
    return [{ model, before: expected, after: count }];
  });
}

function finish(tx: DbOrTx, { context, row, outcome }: Work & { readonly outcome: StocktakeOutcome }): void {
  changeStocktake(tx, {
    id: row.id,
    set: {
      state: 'closed',
      closed_at: timestamp(context),
      closed_by_id: context.actor.id,
      closed_by: context.actor.name,
      outcome_json: JSON.stringify(outcome),
    },
  });
  logChange(tx, { context, deed: { action: 'stocktake closed', subject: `stocktake ${row.number}`, detail: outcome } });
}

/*
 * Puts a sound unit in the place of one that failed, before it leaves or on hire.
 * Invariant: the other is free for the days that are left, and of the quoted model or judged to fit every line that uses it; both histories say what happened.
 * Not here: taking the failed one back, and its repair (the return).
 * Read next: replace-unit.ts, ../../planning/stand-in.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import type { BookingRow, BookingUnitRow } from '#db/queries/bookings.ts';
import type { UnitRow } from '#db/queries/equipment.ts';
import { findQuote } from '#db/queries/quotes.ts';
import { changeUnit, findUnit } from '#db/queries/stock.ts';
import { addUnitEvent } from '#db/queries/unit-events.ts';
import type { Assembly } from '#lib/equipment/assembly.ts';
import { addDays, type DateRange } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { type LineWithStandIn, tryStandIn } from '#lib/planning/stand-in.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { houseFacts, houseUnits, knownModels, onTheWay } from '#lib/services/house/house-facts.ts';
import { logChange } from '#lib/services/log-change.ts';
import { optionOf, type PapersInput } from '#lib/services/quotes/papers-of.ts';
import { freeUnits } from '#lib/stock/free-units.ts';
import { engagementsNow } from './engagements.ts';
import { replaceUnit } from './replace-unit.ts';
import { type Earnest, stillRuns, unitsNamed, withBooking } from './with-booking.ts';

export interface UnitSwap {
  readonly number: string;
  /** The one that failed. */
  readonly serial: string;
  readonly replacement: string;
  readonly why: string;
}

export interface UnitSwapped {
  readonly number: string;
  readonly serial: string;
  readonly replacement: string;
  /** Lines whose settings have to be read anew, because a unit of another model stands in. */
  readonly lines: readonly { readonly tag: string; readonly settings: string }[];
}

export function swapUnit(context: Context, swap: UnitSwap, earnest: Earnest = 'for real'): Result<UnitSwapped> {
  return withBooking(context, {
    number: swap.number,
    earnest,
    work: (tx, booking) => {
      const runs = stillRuns(booking);
      if (!runs.ok) return runs;
      if (swap.why.trim() === '')
        return failed({
          code: 'reason-missing',
          sentence: 'Say what is wrong with the unit: whoever repairs it reads it.',
        });
      const may = ({ state }: BookingUnitRow) => ['held', 'allocated', 'picked', 'out'].includes(state);
      const named = unitsNamed(tx, { booking, serials: [swap.serial], may, are: 'still to come or on hire' });
      if (!named.ok) return named;
      const [row] = named.value;
      const other = findUnit(tx, swap.replacement);
      if (row === undefined || other === undefined)
        return failed({
          code: 'no-such-unit',
          sentence: `There is no unit ${swap.replacement}: scan its label again.`,
        });
      return exchange(tx, { context, booking, swap, row, other });
    },
  });
}

interface Exchange {
  readonly context: Context;
  readonly booking: BookingRow;
  readonly swap: UnitSwap;
  readonly row: BookingUnitRow;
  readonly other: UnitRow;
}

function exchange(tx: DbOrTx, asked: Exchange): Result<UnitSwapped> {
  const { context, booking, swap, row, other } = asked;
  const window = daysLeft({ row, day: today(context) });
  const free = isFree(tx, { context, serial: other.serial, window });
  if (!free.ok) return free;
  const fits = judge(tx, asked);
  if (!fits.ok) return fits;
  const lines = fits.value.map(({ tag, assembly }) => ({ tag, settings: settingsOf(assembly) }));
  const detail = lines.map(({ tag, settings }) => `${tag}: ${settings}.`).join(' ');
  const { turnaroundDays } = houseFacts(context);
  const freeAgainOn = addDays(window.ends_before, turnaroundDays);
  const replaced = replaceUnit(tx, {
    context,
    booking,
    row,
    serial: other.serial,
    window,
    freeAgainOn,
    why: swap.why,
    detail,
  });
  if (!replaced.ok) return replaced;
  setAside(tx, asked);
  const { serial, replacement, why } = swap;
  logChange(tx, {
    context,
    deed: { action: 'unit swapped', subject: `booking ${booking.number}`, detail: { serial, replacement, why, lines } },
  });
  return ok({ number: booking.number, serial, replacement, lines });
}

/** From today on where it runs already; a late one is replaced for today at least. */
function daysLeft({ row, day }: { readonly row: BookingUnitRow; readonly day: string }): DateRange {
  const starts_on = row.starts_on < day ? day : row.starts_on;
  return { starts_on, ends_before: row.ends_before > starts_on ? row.ends_before : addDays(starts_on, 1) };
}

interface FreeAsked {
  readonly context: Context;
  readonly serial: string;
  readonly window: DateRange;
}

function isFree(tx: DbOrTx, { context, serial, window }: FreeAsked): Result<true> {
  const free = freeUnits({
    units: houseUnits(tx).filter((unit) => unit.serial === serial),
    bookings: [...engagementsNow(tx, context), ...onTheWay(context)],
    window,
    turnaroundDays: houseFacts(context).turnaroundDays,
  });
  if (free.length > 0) return ok(true);
  return failed({
    code: 'unit-not-free',
    sentence: `${serial} cannot be had from ${window.starts_on} to before ${window.ends_before}: it is booked, held back, or a check of it falls due. Take another.`,
  });
}

/** The lines that are set up anew; none where it is of the quoted model. */
function judge(tx: DbOrTx, { context, booking, row, other }: Exchange): Result<readonly LineWithStandIn[]> {
  const model = findUnit(tx, row.unit_serial)?.model_number ?? '';
  const quoted = row.quoted_model === '' ? model : row.quoted_model;
  if (other.model_number === quoted) return ok([]);
  const quote = booking.quote_id === null ? undefined : findQuote(tx, booking.quote_id);
  if (!quote)
    return failed({
      code: 'stand-in-unjudged',
      sentence: `${booking.number} has no quote, so whether ${other.model_number} fits cannot be judged: take another ${quoted}.`,
    });
  const papers = JSON.parse(quote.frozen_json) as PapersInput;
  const { lines, site, outcome, models } = optionOf(papers, booking.option_slot) ?? papers;
  const others = knownModels(context, site.startsOn).filter(
    ({ number }) => !models.some((one) => one.number === number),
  );
  return tryStandIn({
    lines,
    site,
    models: [...models, ...others],
    outcome,
    gone: quoted,
    standIn: other.model_number,
  });
}

/** What the crew sets on the limiter now, in words; a ceiling is never rounded up, the highest torque never down. */
function settingsOf({ opening, closing, parts, figures }: Assembly): string {
  const told = (['opening', 'closing'] as const).flatMap((way) => {
    const { unseat, run, seat } = way === 'opening' ? opening : closing;
    return Object.entries({ unseat, run, seat }).flatMap(([phase, set]) =>
      set === null
        ? []
        : [`${way}, ${phase}: start ${down(set.start)}, ceiling ${down(set.ceiling)} N·m on the limiter`],
    );
  });
  const most = `highest torque at the valve ${Math.ceil(figures.highestAtValve)} N·m in gear ${parts.gear + 1}`;
  return [...told, most].join('; ');
}

function down(torque: number): number {
  return Math.floor(torque * 10) / 10;
}

/** The failed one is not offered to anybody until it has been looked at, wherever it is. */
function setAside(tx: DbOrTx, { context, booking, swap }: Exchange): void {
  const before = findUnit(tx, swap.serial)?.state ?? '';
  changeUnit(tx, { serial: swap.serial, set: { state: 'quarantine' } });
  addUnitEvent(tx, {
    serial: swap.serial,
    at: timestamp(context),
    who: actingPerson(context),
    kind: 'state',
    before,
    after: 'quarantine',
    reason: swap.why,
    reference: booking.number,
  });
}

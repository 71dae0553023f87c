/*
 * Looks through the file that a storm of bookings left behind: nothing overlaps, nothing is half there, everything that was answered is there,
 * and a quote counts as accepted exactly when one booking stands for it.
 */
import type Database from 'better-sqlite3';
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';
import type { StormAnswer } from './storm-answer.ts';

export interface StormFound {
  readonly done: Readonly<Record<StormAnswer['asked']['deed'], number>>;
  readonly refused: number;
  readonly busy: number;
  /** In the file, whether or not the answer got out before the kill. */
  readonly bookings: number;
  readonly ofQuotes: number;
  readonly unanswered: number;
  readonly movedForOthers: number;
  readonly overlaps: number;
  readonly half: number;
  readonly lost: number;
  /** Quotes, of all that were offered, that do not agree with their bookings. */
  readonly quotesWrong: number;
}

export function judgeStorm(raw: Database.Database, answers: readonly StormAnswer[]): StormFound {
  const number = (sql: string): number => Number(raw.prepare(sql).pluck().get());
  const done = answers.filter(({ code }) => code === '');
  const count = (deed: StormAnswer['asked']['deed']): number => done.filter(({ asked }) => asked.deed === deed).length;
  const bookings = number('SELECT count(*) FROM booking');
  const answered = new Set(
    done.flatMap(({ asked, number: booking }) => (asked.deed === 'book' || asked.deed === 'accept' ? [booking] : [])),
  );
  return {
    done: {
      book: count('book'),
      accept: count('accept'),
      extend: count('extend'),
      swap: count('swap'),
      cancel: count('cancel'),
    },
    refused: answers.filter(({ code }) => code !== '' && code !== 'busy').length,
    busy: answers.filter(({ code }) => code === 'busy').length,
    bookings,
    ofQuotes: number('SELECT count(*) FROM booking WHERE quote_id IS NOT NULL'),
    unanswered: bookings - answered.size,
    movedForOthers: number("SELECT count(*) FROM audit_entry WHERE action = 'unit of a booking replaced'"),
    overlaps: number(OVERLAPS) + number(TOO_MANY),
    half: number(HALF) + number(HALF_SWAP) + Math.abs(number(NUMBERS_TAKEN) - bookings),
    lost: done.filter((answer) => !isThere(raw, answer)).length,
    quotesWrong: number(QUOTES_WRONG),
  };
}

function isThere(raw: Database.Database, { asked, number, serials = [] }: StormAnswer): boolean {
  const yes = (sql: string, ...values: readonly (string | number)[]): boolean =>
    raw.prepare(`SELECT ${sql}`).pluck().get(values) === 1;
  switch (asked.deed) {
    case 'cancel':
      return yes("EXISTS (SELECT 1 FROM booking WHERE number = ? AND state = 'cancelled')", asked.booking);
    case 'extend':
      return yes(
        `EXISTS (SELECT 1 FROM booking_extension JOIN booking ON booking.id = booking_id WHERE number = ? AND ends_before = ?)
          AND NOT EXISTS (SELECT 1 FROM booking_unit JOIN booking ON booking.id = booking_id
            WHERE number = ? AND booking_unit.state <> 'swapped' AND ends_before < ?)`,
        asked.booking,
        asked.endsBefore,
        asked.booking,
        asked.endsBefore,
      );
    case 'swap':
      return yes(
        `EXISTS (SELECT 1 FROM booking_unit new JOIN booking_unit old ON old.id = new.replaces_id AND old.booking_id = new.booking_id
          JOIN booking ON booking.id = new.booking_id
          WHERE number = ? AND old.unit_serial = ? AND old.state = 'swapped' AND new.unit_serial = ?)`,
        asked.booking,
        asked.serial,
        asked.replacement,
      );
    case 'book':
    case 'accept':
      return bookedRight(raw, { asked, number: number ?? '', serials });
  }
}

interface Booked {
  readonly asked: Extract<StormAnswer['asked'], { readonly deed: 'book' | 'accept' }>;
  readonly number: string;
  readonly serials: readonly string[];
}

/** As many units as were asked, every serial number that was answered among them, on the days asked or extended since. */
function bookedRight(raw: Database.Database, { asked, number, serials }: Booked): boolean {
  const rows = raw
    .prepare(
      `SELECT unit_serial AS serial, booking_unit.state, starts_on, ends_before, quote_id FROM booking_unit JOIN booking ON booking.id = booking_id
        WHERE booking.number = ?`,
    )
    .all(number) as readonly Row[];
  const extended = raw
    .prepare(
      'SELECT booking_extension.ends_before FROM booking_extension JOIN booking ON booking.id = booking_id WHERE number = ?',
    )
    .pluck()
    .all(number)
    .map(String);
  return (
    rows.filter(({ state }) => state !== 'swapped').length === asked.count &&
    serials.length === asked.count &&
    serials.every((serial) => rows.some((row) => row.serial === serial)) &&
    rows.every(
      (row) =>
        row.starts_on === asked.startsOn &&
        [asked.endsBefore, ...extended].includes(row.ends_before) &&
        row.quote_id === (asked.deed === 'accept' ? asked.quote : null),
    )
  );
}

interface Row {
  readonly serial: string;
  readonly state: string;
  readonly starts_on: string;
  readonly ends_before: string;
  readonly quote_id: number | null;
}

const HOLDING = HOLDING_STATES.map((state) => `'${state}'`).join(', ');

/** Days are compared here by themselves, not by the column that the triggers look at; two hires of a unit lie a turnaround apart. */
const OVERLAPS = `SELECT count(*) FROM booking_unit a JOIN booking_unit b ON a.unit_serial = b.unit_serial AND a.id < b.id
  WHERE a.state IN (${HOLDING}) AND b.state IN (${HOLDING}) AND a.starts_on < b.free_again_on AND b.starts_on < a.free_again_on`;

/** First days of hires on which more of a counted piece is held than the house has. */
const TOO_MANY = `SELECT count(*) FROM (SELECT DISTINCT model_number, starts_on FROM booking_item WHERE state IN (${HOLDING})) AS day
  WHERE (SELECT sum(count) FROM booking_item other WHERE other.model_number = day.model_number AND other.state IN (${HOLDING})
      AND other.starts_on <= day.starts_on AND day.starts_on < other.free_again_on)
    > (SELECT counted_stock FROM model WHERE number = day.model_number)`;

const LOGGED = `SELECT count(*) FROM audit_entry WHERE`;

/** A booking without units, without its line of history or of the log, or one that was cancelled and still holds; an extension without its line of the log. */
const HALF = `SELECT count(*) FROM booking WHERE
  NOT EXISTS (SELECT 1 FROM booking_unit WHERE booking_id = booking.id)
  OR NOT EXISTS (SELECT 1 FROM booking_move WHERE booking_id = booking.id AND what = 'held')
  OR (quote_id IS NULL AND (${LOGGED} subject = 'booking ' || booking.number AND action = 'equipment booked without a quote') <> 1)
  OR (quote_id IS NOT NULL AND (${LOGGED} action = 'quote accepted, units held' AND json_extract(detail_json, '$.booking') = booking.number) <> 1)
  OR (state = 'cancelled') <> NOT EXISTS (SELECT 1 FROM booking_unit WHERE booking_id = booking.id AND state IN (${HOLDING}))
  OR (state = 'cancelled') <> EXISTS (SELECT 1 FROM booking_move WHERE booking_id = booking.id AND to_state = 'cancelled')
  OR (state = 'cancelled') <> ((${LOGGED} (subject = 'booking ' || booking.number AND action = 'booking cancelled')
      OR (action = 'acceptance cancelled, units set free' AND json_extract(detail_json, '$.booking') = booking.number)) = 1)
  OR (SELECT count(*) FROM booking_extension WHERE booking_id = booking.id)
    <> (${LOGGED} subject = 'booking ' || booking.number AND action = 'booking extended')
  OR (SELECT count(*) FROM booking_unit WHERE booking_id = booking.id AND state = 'swapped')
    <> (${LOGGED} subject = 'booking ' || booking.number AND action IN ('unit swapped', 'unit of a booking replaced'))`;

/** A unit that was swapped and in whose place not exactly one other of the same booking stands. */
const HALF_SWAP = `SELECT count(*) FROM booking_unit old WHERE old.state = 'swapped'
  AND (SELECT count(*) FROM booking_unit new WHERE new.replaces_id = old.id AND new.booking_id = old.booking_id) <> 1`;

/** A number that was taken without a booking, or a booking whose number is not the series' own. */
const NUMBERS_TAKEN = "SELECT coalesce(max(next), 1) - 1 FROM number_series WHERE name = 'booking'";

const STANDING = "(SELECT count(*) FROM booking WHERE quote_id = quote.id AND state <> 'cancelled')";

/** Accepted without exactly one booking that stands, or with one and not accepted; the enquiry, too, says what its quote says. */
const QUOTES_WRONG = `SELECT count(*) FROM quote JOIN enquiry ON enquiry.id = enquiry_id WHERE
  ${STANDING} > 1 OR (quote.state = 'accepted') <> (${STANDING} = 1) OR (quote.state <> 'accepted') <> (quote.state = 'issued')
  OR enquiry.state <> CASE quote.state WHEN 'accepted' THEN 'accepted' ELSE 'quoted' END`;

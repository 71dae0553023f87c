/*
 * What the database itself refuses about bookings: one unit held twice, more counted pieces held than there are, an ended booking that still holds, unknown states, and changed history.
 * Invariant: the states that hold come from lib/stock, so a decision and the database never differ about them.
 * Not here: holds that ran out, which need a clock: whoever books releases them first (lib/services/yard/expire-holds.ts).
 * Read next: triggers.ts.
 */
import { BOOKED_UNIT_STATES, BOOKING_STATES, ENDED_STATES, HOLDING_STATES } from '#lib/stock/booking-life.ts';

const HOLDING = listed(HOLDING_STATES);
const ENDED = listed(ENDED_STATES);

const OVERLAP = `SELECT 1 FROM booking_unit AS other
  WHERE other.unit_serial = NEW.unit_serial AND other.state IN (${HOLDING}) AND other.id IS NOT NEW.id
    AND other.starts_on < NEW.free_again_on AND NEW.starts_on < other.free_again_on`;

/** The most pieces are held on the first day of some hire that overlaps. */
const TOO_MANY = `SELECT 1 FROM (
    SELECT NEW.starts_on AS day UNION SELECT starts_on FROM booking_item
    WHERE model_number = NEW.model_number AND starts_on > NEW.starts_on AND starts_on < NEW.free_again_on) AS days
  WHERE NEW.count + (SELECT coalesce(sum(other.count), 0) FROM booking_item AS other
      WHERE other.model_number = NEW.model_number AND other.state IN (${HOLDING}) AND other.id IS NOT NEW.id
        AND other.starts_on <= days.day AND days.day < other.free_again_on)
    > coalesce((SELECT counted_stock FROM model WHERE number = NEW.model_number), 0)`;

const IN_ENDED = `EXISTS (SELECT 1 FROM booking WHERE id = NEW.booking_id AND state IN (${ENDED}))`;

export function bookingTriggers(): Readonly<Record<string, string>> {
  return {
    booking_unit_overlap_insert: `BEFORE INSERT ON booking_unit WHEN NEW.state IN (${HOLDING}) AND EXISTS (${OVERLAP})
      BEGIN SELECT RAISE(ABORT, 'unit is booked on these dates already'); END`,
    booking_unit_overlap_update: `BEFORE UPDATE ON booking_unit WHEN NEW.state IN (${HOLDING}) AND EXISTS (${OVERLAP})
      BEGIN SELECT RAISE(ABORT, 'unit is booked on these dates already'); END`,
    booking_item_count_insert: `BEFORE INSERT ON booking_item WHEN NEW.state IN (${HOLDING}) AND EXISTS (${TOO_MANY})
      BEGIN SELECT RAISE(ABORT, 'not so many are there on these dates'); END`,
    // What is out already is out, whatever was counted since: only a row that holds more, or elsewhere, is judged again.
    booking_item_count_update: `BEFORE UPDATE ON booking_item WHEN NEW.state IN (${HOLDING})
        AND (OLD.state NOT IN (${HOLDING}) OR NEW.count > OLD.count OR NEW.starts_on IS NOT OLD.starts_on
          OR NEW.free_again_on IS NOT OLD.free_again_on OR NEW.model_number IS NOT OLD.model_number) AND EXISTS (${TOO_MANY})
      BEGIN SELECT RAISE(ABORT, 'not so many are there on these dates'); END`,
    ...ofEndedBookings(),
    booking_state_known: `BEFORE INSERT ON booking WHEN NEW.state NOT IN (${listed(BOOKING_STATES)})
      BEGIN SELECT RAISE(ABORT, 'a booking has no such state'); END`,
    booking_move_kept_update: keptUpdate({ table: 'booking_move', what: 'the history of a booking' }),
    booking_move_kept_delete: keptDelete({ table: 'booking_move', what: 'the history of a booking' }),
    booking_extension_kept_update: keptUpdate({ table: 'booking_extension', what: 'the list of extensions' }),
    off_hire_notice_kept_update: keptUpdate({ table: 'off_hire_notice', what: 'the series of notices' }),
    off_hire_notice_kept_delete: keptDelete({ table: 'off_hire_notice', what: 'the series of notices' }),
    off_hire_unit_kept_update: keptUpdate({ table: 'off_hire_unit', what: 'the series of notices' }),
    off_hire_unit_kept_delete: keptDelete({ table: 'off_hire_unit', what: 'the series of notices' }),
  };
}

function ofEndedBookings(): Readonly<Record<string, string>> {
  const still = ['booking_unit', 'booking_item']
    .map((table) => `EXISTS (SELECT 1 FROM ${table} WHERE booking_id = NEW.id AND state IN (${HOLDING}))`)
    .join(' OR ');
  return {
    booking_ended_holds_nothing: `BEFORE UPDATE ON booking WHEN NEW.state IN (${ENDED}) AND (${still})
      BEGIN SELECT RAISE(ABORT, 'a booking that has ended holds nothing'); END`,
    booking_state_known_update: `BEFORE UPDATE ON booking WHEN NEW.state NOT IN (${listed(BOOKING_STATES)})
      BEGIN SELECT RAISE(ABORT, 'a booking has no such state'); END`,
    ...Object.fromEntries(
      ['booking_unit', 'booking_item'].flatMap((table) =>
        (['insert', 'update'] as const).map((when) => [
          `${table}_state_${when}`,
          `BEFORE ${when.toUpperCase()} ON ${table} WHEN NEW.state NOT IN (${listed(BOOKED_UNIT_STATES)})
              OR (NEW.state IN (${HOLDING}) AND ${IN_ENDED})
            BEGIN SELECT RAISE(ABORT, 'a unit cannot stand so in this booking'); END`,
        ]),
      ),
    ),
  };
}

interface Kept {
  readonly table: string;
  readonly what: string;
}

function keptUpdate({ table, what }: Kept): string {
  return `BEFORE UPDATE ON ${table} BEGIN SELECT RAISE(ABORT, '${what} is only added to'); END`;
}

function keptDelete({ table, what }: Kept): string {
  return `BEFORE DELETE ON ${table} BEGIN SELECT RAISE(ABORT, '${what} is only added to'); END`;
}

function listed(states: readonly string[]): string {
  return states.map((state) => `'${state}'`).join(', ');
}

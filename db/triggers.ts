/*
 * What the database itself refuses: overlapping bookings of one unit and too many of a counted piece, an ended booking that still holds, changes to
 * issued quotes and papers and to what is only added to, and approvals decided twice or by who asked; and what keeps the index of the search up.
 * Invariant: every trigger is dropped and made anew after each migration, so a rebuilt table never loses one.
 * Not here: decisions about stock (lib/stock), which ask before they write.
 * Read next: booking-triggers.ts, migrate.ts.
 */
import type Database from 'better-sqlite3';
import { bookingTriggers } from './booking-triggers.ts';
import { returnTriggers } from './return-triggers.ts';
import { searchTriggers } from './search-index.ts';
import { stockTriggers } from './stock-triggers.ts';

const TRIGGERS: Readonly<Record<string, string>> = {
  ...bookingTriggers(),
  ...stockTriggers(),
  ...returnTriggers(),
  quote_frozen_update: `BEFORE UPDATE ON quote WHEN NEW.frozen_json IS NOT OLD.frozen_json OR NEW.number IS NOT OLD.number
      OR NEW.revision IS NOT OLD.revision OR NEW.total_minor IS NOT OLD.total_minor OR NEW.currency IS NOT OLD.currency
      OR NEW.issued_on IS NOT OLD.issued_on OR NEW.valid_until IS NOT OLD.valid_until OR NEW.enquiry_id IS NOT OLD.enquiry_id
    BEGIN SELECT RAISE(ABORT, 'an issued quote is frozen'); END`,
  quote_frozen_delete: `BEFORE DELETE ON quote BEGIN SELECT RAISE(ABORT, 'an issued quote is frozen'); END`,
  paper_frozen_update: `BEFORE UPDATE ON paper BEGIN SELECT RAISE(ABORT, 'an issued paper is frozen'); END`,
  paper_frozen_delete: `BEFORE DELETE ON paper BEGIN SELECT RAISE(ABORT, 'an issued paper is frozen'); END`,
  discount_approval_decided_once: `BEFORE UPDATE ON discount_approval
      WHEN NOT (OLD.state = 'asked' OR (OLD.state = 'approved' AND NEW.state = 'withdrawn'))
        OR NEW.asked_json IS NOT OLD.asked_json OR NEW.reason IS NOT OLD.reason OR NEW.asked_by IS NOT OLD.asked_by
        OR NEW.enquiry_id IS NOT OLD.enquiry_id OR NEW.option_slot IS NOT OLD.option_slot
        OR (NEW.state = 'approved' AND NEW.decided_by = OLD.asked_by)
    BEGIN SELECT RAISE(ABORT, 'an approval is decided once, by another person'); END`,
  discount_approval_kept: `BEFORE DELETE ON discount_approval BEGIN SELECT RAISE(ABORT, 'an approval is kept'); END`,
  attachment_kept_update: `BEFORE UPDATE ON attachment WHEN NEW.bytes IS NOT OLD.bytes OR NEW.sha256 IS NOT OLD.sha256
    BEGIN SELECT RAISE(ABORT, 'a file is kept as it came'); END`,
  enquiry_move_kept_update: `BEFORE UPDATE ON enquiry_move BEGIN SELECT RAISE(ABORT, 'the steps of an enquiry are only added to'); END`,
  audit_entry_kept_update: `BEFORE UPDATE ON audit_entry BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END`,
  record_change_kept_update: `BEFORE UPDATE ON record_change BEGIN SELECT RAISE(ABORT, 'the history is only added to'); END`,
  record_change_kept_delete: `BEFORE DELETE ON record_change BEGIN SELECT RAISE(ABORT, 'the history is only added to'); END`,
  model_kept_delete: `BEFORE DELETE ON model BEGIN SELECT RAISE(ABORT, 'a model is retired, never deleted'); END`,
  audit_entry_kept_delete: `BEFORE DELETE ON audit_entry BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END`,
  ...searchTriggers(),
};

export const TRIGGER_NAMES: readonly string[] = Object.keys(TRIGGERS);

export function createTriggers(raw: Database.Database): void {
  for (const [name, body] of Object.entries(TRIGGERS)) {
    raw.exec(`DROP TRIGGER IF EXISTS ${name}; CREATE TRIGGER ${name} ${body};`);
  }
}

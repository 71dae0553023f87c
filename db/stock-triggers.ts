/*
 * What the database itself refuses about stock: changed history, a unit on two transfers or sent while a booking holds it, a booking over days on the way;
 * and the sum of counted pieces over the depots.
 * Invariant: model.counted_stock is the sum of its shelves after every change of a shelf.
 * Not here: decisions about stock (lib/stock), which ask before they write.
 * Read next: triggers.ts.
 */
import { HOLDING_STATES } from '#lib/stock/booking-life.ts';

const HOLDING = HOLDING_STATES.map((state) => `'${state}'`).join(', ');

const ON_THE_WAY = `SELECT 1 FROM transfer_unit AS other
  WHERE other.unit_serial = NEW.unit_serial AND other.active = 1`;

const BOOKED_MEANWHILE = `SELECT 1 FROM booking_unit AS other
  WHERE other.unit_serial = NEW.unit_serial AND other.state IN (${HOLDING})
    AND other.starts_on < NEW.due_on AND NEW.sent_on < other.free_again_on`;

export function stockTriggers(): Readonly<Record<string, string>> {
  return {
    ...historyTriggers(),
    transfer_unit_once: `BEFORE INSERT ON transfer_unit WHEN NEW.active = 1 AND EXISTS (${ON_THE_WAY})
      BEGIN SELECT RAISE(ABORT, 'unit is on its way already'); END`,
    transfer_unit_booked: `BEFORE INSERT ON transfer_unit WHEN NEW.active = 1 AND EXISTS (${BOOKED_MEANWHILE})
      BEGIN SELECT RAISE(ABORT, 'unit is booked on these dates already'); END`,
    ...Object.fromEntries(
      (['insert', 'update'] as const).map((when) => [
        `booking_unit_on_the_way_${when}`,
        `BEFORE ${when.toUpperCase()} ON booking_unit WHEN NEW.state IN (${HOLDING})${when === 'insert' ? '' : ' AND (NEW.starts_on < OLD.starts_on OR NEW.free_again_on > OLD.free_again_on OR NEW.unit_serial IS NOT OLD.unit_serial)'} AND EXISTS (${ON_THE_WAY}
            AND other.sent_on < NEW.free_again_on AND NEW.starts_on < other.due_on)
          BEGIN SELECT RAISE(ABORT, 'unit is on its way to another depot on these dates'); END`,
      ]),
    ),
    ...shelfSums(),
  };
}

function historyTriggers(): Readonly<Record<string, string>> {
  return Object.fromEntries(
    [
      { table: 'unit_event', what: 'the history of a unit' },
      { table: 'counted_event', what: 'the history of a shelf' },
    ].flatMap(({ table, what }) =>
      (['update', 'delete'] as const).map((when) => [
        `${table}_kept_${when}`,
        `BEFORE ${when.toUpperCase()} ON ${table} BEGIN SELECT RAISE(ABORT, '${what} is only added to'); END`,
      ]),
    ),
  );
}

function shelfSums(): Readonly<Record<string, string>> {
  return Object.fromEntries(
    (['insert', 'update', 'delete'] as const).map((when) => {
      const row = when === 'delete' ? 'OLD' : 'NEW';
      return [
        `counted_shelf_sum_${when}`,
        `AFTER ${when.toUpperCase()} ON counted_shelf BEGIN
          UPDATE model SET counted_stock = (SELECT coalesce(sum(count), 0) FROM counted_shelf WHERE model_number = ${row}.model_number)
          WHERE number = ${row}.model_number; END`,
      ];
    }),
  );
}

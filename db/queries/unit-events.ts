/*
 * Adds to and reads the history of units and of shelves of counted pieces.
 * Invariant: an entry is written in the transaction of the change it tells of.
 * Not here: the change itself (stock.ts).
 * Read next: ../schema/unit-event.ts.
 */
import { desc, eq } from 'drizzle-orm';
import type { UnitEventKind } from '#lib/stock/unit-event.ts';
import type { DbOrTx } from '../client.ts';
import { countedEvent } from '../schema/counted-event.ts';
import { unitEvent } from '../schema/unit-event.ts';

/** Nobody reads further back on one page; the log of the house holds the rest. */
const MOST = 400;

export type UnitEventRow = typeof unitEvent.$inferSelect;
export type CountedEventRow = typeof countedEvent.$inferSelect;

interface Person {
  readonly id: string;
  readonly name: string;
}

export interface UnitEventToAdd {
  readonly serial: string;
  readonly at: string;
  readonly who: Person;
  readonly kind: UnitEventKind;
  readonly before?: string;
  readonly after?: string;
  readonly reason?: string;
  /** Number of the booking, transfer or stocktake that it belongs to. */
  readonly reference?: string;
}

export function addUnitEvent(db: DbOrTx, { serial, who, ...event }: UnitEventToAdd): void {
  db.insert(unitEvent)
    .values({ ...event, unit_serial: serial, who_id: who.id, who: who.name })
    .run();
}

/** The newest first. */
export function unitEvents(db: DbOrTx, serial: string): readonly UnitEventRow[] {
  return db
    .select()
    .from(unitEvent)
    .where(eq(unitEvent.unit_serial, serial))
    .orderBy(desc(unitEvent.id))
    .limit(MOST)
    .all();
}

interface CountedEventToAdd extends Omit<CountedEventRow, 'id' | 'who' | 'who_id' | 'reference'> {
  readonly who: Person;
  readonly reference?: string | undefined;
}

export function addCountedEvent(db: DbOrTx, { who, ...event }: CountedEventToAdd): void {
  db.insert(countedEvent)
    .values({ ...event, who_id: who.id, who: who.name })
    .run();
}

export function countedEvents(db: DbOrTx, model: string): readonly CountedEventRow[] {
  return db
    .select()
    .from(countedEvent)
    .where(eq(countedEvent.model_number, model))
    .orderBy(desc(countedEvent.id))
    .limit(MOST)
    .all();
}

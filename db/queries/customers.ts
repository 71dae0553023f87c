/*
 * Reads and writes customers.
 * Invariant: lists come in order of name.
 * Not here: terms and prices.
 * Read next: ../schema/customer.ts.
 */
import { asc, eq } from 'drizzle-orm';
import type { DbOrTx } from '../client.ts';
import { customer } from '../schema/customer.ts';

export type CustomerRow = typeof customer.$inferSelect;

export function listCustomers(db: DbOrTx): readonly CustomerRow[] {
  return db.select().from(customer).orderBy(asc(customer.name)).all();
}

export function findCustomer(db: DbOrTx, id: number): CustomerRow | undefined {
  return db.select().from(customer).where(eq(customer.id, id)).get();
}

type NewCustomerRow = Pick<CustomerRow, 'code' | 'name' | 'facts_json' | 'created_at' | 'updated_at'>;

export function insertCustomer(db: DbOrTx, row: NewCustomerRow): number {
  return Number(db.insert(customer).values(row).returning({ id: customer.id }).get().id);
}

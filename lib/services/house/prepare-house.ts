/*
 * Makes the house ready for use: migrates the database and loads the demo house once.
 * Invariant: a second call changes nothing; the demo house is written whole or not at all.
 * Not here: finding the database file (lib/launch/prepare-database.ts).
 * Read next: ../../../db/migrate.ts, ../../../seeds/load.ts.
 */
import { type DbOrTx, openDatabase } from '#db/client.ts';
import { migrateDatabase } from '#db/migrate.ts';
import { insertEnquiry } from '#db/queries/enquiries.ts';
import { insertModels } from '#db/queries/equipment.ts';
import { readHouse, takeNumber, writeHouse } from '#db/queries/house.ts';
import { insertLines, insertListFile, settleListFile } from '#db/queries/schedule.ts';
import { constraintsToJson, NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { modelToJson } from '#lib/contracts/equipment.ts';
import { proposeMapping } from '#lib/intake/propose-mapping.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { takeRows } from '#lib/intake/take-rows.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import { HOUSE_ITSELF } from '#lib/services/context.ts';
import { writeDemoCustomers, writeDemoSite } from '#lib/services/customers/write-demo-customers.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { writeDemoStock } from '#lib/services/stock/write-demo-stock.ts';
import { writeDemoVisits } from '#lib/services/visits/write-demo-visits.ts';
import { expireHolds } from '#lib/services/yard/expire-holds.ts';
import { type DemoEnquiry, demoEnquiries, demoHouseJson, demoModels } from '#seeds/load.ts';

/** Answers whether the demo house was loaded by this call or was there before. */
export async function prepareHouse(input: {
  readonly databasePath: string;
  readonly now?: Date;
}): Promise<'loaded' | 'there'> {
  const open = openDatabase(input.databasePath);
  try {
    migrateDatabase(open);
    const now = input.now ?? new Date();
    if (readHouse(open.db) !== undefined) {
      expireHolds({ database: open, now: () => now, actor: HOUSE_ITSELF });
      return 'there';
    }
    const at = now.toISOString();
    const lists = await Promise.all(demoEnquiries().map(readDemoList));
    open.db.transaction((tx) => writeDemoHouse(tx, { at, lists }), { behavior: 'immediate' });
    return 'loaded';
  } finally {
    open.raw.close();
  }
}

type DemoList = Awaited<ReturnType<typeof readDemoList>>;

async function readDemoList(enquiry: DemoEnquiry) {
  const bytes = new TextEncoder().encode(enquiry.listText);
  const tables = await readTables({ bytes, fileName: enquiry.listName });
  invariant(tables.ok, tables.ok ? '' : tables.reason.sentence);
  const [table] = tables.value;
  invariant(table, `The demo list ${enquiry.listName} holds no table.`);
  const mapping = proposeMapping(table);
  return { enquiry, bytes, table: table.name, mapping, taken: takeRows({ table, mapping }) };
}

interface DemoHouse {
  readonly at: string;
  readonly lists: readonly DemoList[];
}

/** Demo hires start two weeks from the day the house is loaded and last a working week, unless the site says otherwise. */
const DEMO_LEAD_DAYS = 14;

function writeDemoHouse(tx: DbOrTx, { at, lists }: DemoHouse): void {
  writeHouse(tx, { factsJson: JSON.stringify(demoHouseJson()), at });
  insertModels(
    tx,
    demoModels().map((model) => ({
      number: model.number,
      role: model.role,
      name: model.name,
      facts_json: JSON.stringify(modelToJson(model)),
      counted_stock: model.counted ? 0 : null,
    })),
  );
  writeDemoStock(tx, at);
  const customers = writeDemoCustomers(tx, at);
  for (const list of lists) writeDemoEnquiry(tx, { at, list, customerId: customers.get(list.enquiry.customer) });
}

interface DemoWriting {
  readonly at: string;
  readonly list: DemoList;
  readonly customerId: number | undefined;
}

function writeDemoEnquiry(tx: DbOrTx, { at, list, customerId }: DemoWriting): void {
  invariant(customerId !== undefined, `The demo enquiry ${list.enquiry.id} names a customer that is not there.`);
  const site = { starts_on: addDays(at.slice(0, 10), DEMO_LEAD_DAYS), days: 5, ...list.enquiry.site };
  const enquiryId = insertEnquiry(tx, {
    number: `E-${String(takeNumber(tx, 'enquiry')).padStart(5, '0')}`,
    customer_id: customerId,
    title: list.enquiry.title,
    state: 'new',
    site_json: JSON.stringify(site),
    ...writeDemoSite(tx, { at, customerId, facts: site }),
    constraints_json: JSON.stringify(constraintsToJson(NO_CONSTRAINTS)),
    preference: 'cost',
    created_at: at,
    updated_at: at,
  });
  writeDemoVisits(tx, { at, demo: list.enquiry, enquiryId, customerId });
  const fileId = insertListFile(tx, {
    enquiry_id: enquiryId,
    file_name: list.enquiry.listName,
    bytes: Buffer.from(list.bytes),
    sha256: sha256(list.bytes),
    received_at: at,
    mapping_json: null,
    outcome_json: null,
  });
  insertLines(
    tx,
    list.taken.lines.map((line, index) => ({
      enquiry_id: enquiryId,
      position: index + 1,
      row: line.row,
      cells_json: JSON.stringify(line.cells),
      measured_json: '[]',
    })),
  );
  settleListFile(tx, {
    fileId,
    mappingJson: JSON.stringify({ table: list.table, mapping: list.mapping }),
    outcomeJson: JSON.stringify({
      counts: list.taken.counts,
      setAside: list.taken.setAside,
      problems: list.taken.problems,
    }),
  });
}

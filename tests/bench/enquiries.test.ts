import { describe, expect, it } from 'vitest';
import { seededRandom } from '#lib/kernel/random.ts';
import type { Context } from '#lib/services/context.ts';
import { alikeRecords } from '#lib/services/customers/alike-customers.ts';
import { findCustomers } from '#lib/services/customers/find-customers.ts';
import { type EnquiriesAsked, EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { searchHouse } from '#lib/services/enquiries/search-house.ts';
import { demoHouseContext } from '#tests/support/demo-house.ts';
import { granted } from '#tests/support/granted.ts';

const CUSTOMERS = 2_000;
const ENQUIRIES = 5_000;
const LINES_EACH = 20;
const ROUNDS = 25;

const PLACES = 'Sallow Brennock Corrin Halcyon Lathe Quillmarsh Hallowmere Vennick Ostermere Harrow Thorn Mickle'.split(
  ' ',
);
const THINGS = 'mains terminal tunnel pump house sluice basin dock shaft reservoir works ring'.split(' ');

/** A house of years: customers, enquiries and lines of words that are drawn by a seed. */
async function filledHouse(): Promise<Context> {
  const context = await demoHouseContext();
  const { raw } = context.database;
  const random = seededRandom(5);
  const pick = (words: readonly string[]): string => words[Math.floor(random() * words.length)] ?? '';
  const at = '2026-01-02T08:00:00Z';
  const customer = raw.prepare(
    "INSERT INTO customer (code, name, facts_json, created_at, updated_at) VALUES (?, ?, '{}', ?, ?)",
  );
  const enquiry = raw.prepare(
    `INSERT INTO enquiry (number, customer_id, title, state, site_json, constraints_json, preference, created_at, updated_at, due_on)
     VALUES (?, ?, ?, ?, '{}', '{}', 'cost', ?, ?, ?)`,
  );
  const line = raw.prepare(
    "INSERT INTO schedule_line (enquiry_id, position, row, cells_json, measured_json) VALUES (?, ?, ?, ?, '[]')",
  );
  const began = performance.now();
  raw.transaction(() => {
    for (let n = 0; n < CUSTOMERS; n += 1) customer.run(`X-${n}`, `${pick(PLACES)} ${pick(THINGS)} ${n}`, at, at);
    for (let n = 0; n < ENQUIRIES; n += 1) {
      const state = pick(['new', 'being worked', 'quoted', 'accepted', 'declined']);
      const due = `2026-03-${String(1 + Math.floor(random() * 28)).padStart(2, '0')}`;
      const owner = 8 + Math.floor(random() * CUSTOMERS);
      const { lastInsertRowid } = enquiry.run(
        `Y-${n}`,
        owner,
        `${pick(THINGS)} ${pick(PLACES)} ${n}`,
        state,
        at,
        at,
        due,
      );
      for (let row = 1; row <= LINES_EACH; row += 1) {
        const cells = {
          tag: `${pick(PLACES).slice(0, 2)}-${n}-${row}`,
          location: pick(THINGS),
          notes: `${pick(PLACES)} ${pick(THINGS)}`,
        };
        line.run(lastInsertRowid, row, row, JSON.stringify(cells));
      }
    }
  })();
  const bytes = raw.serialize().length;
  console.info(
    `${CUSTOMERS} customers, ${ENQUIRIES} enquiries, ${ENQUIRIES * LINES_EACH} lines with their index written in ${((performance.now() - began) / 1000).toFixed(1)} s, ${(bytes / 1e6).toFixed(0)} MB`,
  );
  return context;
}

function timed(what: string, ask: () => unknown): void {
  ask();
  const times = Array.from({ length: ROUNDS }, () => {
    const began = performance.now();
    ask();
    return performance.now() - began;
  }).sort((a, b) => a - b);
  console.info(`${what}: median ${times[ROUNDS >> 1]?.toFixed(1)}, most ${times.at(-1)?.toFixed(1)} ms of ${ROUNDS}`);
}

describe('a house of 5 000 enquiries', () => {
  it('is listed, filtered and searched', async () => {
    const context = await filledHouse();
    const list = (asked: Partial<EnquiriesAsked>) => granted(findEnquiries(context, { ...EVERY_ENQUIRY, ...asked }));
    expect(list({}).total).toBe(ENQUIRIES + 7);
    timed('list, newest change first', () => list({}));
    timed('list, the last page by customer', () => list({ order: 'customer', page: 100 }));
    timed('list, quoted and late, by due day', () => list({ state: 'quoted', due: 'late', order: 'due', way: 'up' }));
    timed('list, one common word', () => list({ words: 'sallow' }));
    timed('customers, one common word', () =>
      granted(findCustomers(context, { words: 'sallow', archived: 'no', page: 1 })),
    );
    const hits = granted(searchHouse(context, 'sallow')).groups.map(({ kind }) => kind);
    expect(hits).toEqual(expect.arrayContaining(['enquiry', 'customer', 'line']));
    timed('search, one common word', () => searchHouse(context, 'sallow'));
    timed('search, two letters', () => searchHouse(context, 'sa'));
    timed('search, one tag', () => searchHouse(context, 'Sa-4711-7'));
    timed('search, three words', () => searchHouse(context, 'sallow tunnel basin'));
    timed('search, nothing has it', () => searchHouse(context, 'zzyzx'));
    timed('who is here already', () => alikeRecords(context, { kind: 'customer', name: 'Salow tunnel 17' }));
    console.info(`memory: ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB resident, the house in it`);
  });
});

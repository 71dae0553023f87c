import type { Database } from 'better-sqlite3';
import { seededRandom } from '#lib/kernel/random.ts';

export const CUSTOMERS = 2_000;
export const ENQUIRIES = 5_000;
const LINES_EACH = 20;

const PLACES = 'Sallow Brennock Corrin Halcyon Lathe Quillmarsh Hallowmere Vennick Ostermere Harrow Thorn Mickle'.split(
  ' ',
);
const THINGS = 'mains terminal tunnel pump house sluice basin dock shaft reservoir works ring'.split(' ');

/** Makes it a house of years: customers, enquiries and lines of words that are drawn by a seed. */
export function fillHouse(raw: Database): void {
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
}

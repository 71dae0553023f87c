import { describe, expect, it } from 'vitest';
import { alikeRecords } from '#lib/services/customers/alike-customers.ts';
import { findCustomers } from '#lib/services/customers/find-customers.ts';
import { type EnquiriesAsked, EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { searchHouse } from '#lib/services/enquiries/search-house.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { ENQUIRIES, fillHouse } from '#tests/support/houses/filled-house.ts';

const ROUNDS = 25;

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
    const context = await demoHouseContext();
    fillHouse(context.database.raw);
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

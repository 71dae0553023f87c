import { beforeEach, describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { NOBODY } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { DRAFTS, EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { searchHouse } from '#lib/services/enquiries/search-house.ts';
import { readHouseRecord, saveHouseStanding } from '#lib/services/house/house-record.ts';
import { acceptOrder, cancelOrder } from '#lib/services/self-service/accept-order.ts';
import { addList } from '#lib/services/self-service/add-list.ts';
import { forgetDrafts } from '#lib/services/self-service/forget-drafts.ts';
import { handOverOrder } from '#lib/services/self-service/hand-over-order.ts';
import { openOrder } from '#lib/services/self-service/open-link.ts';
import { orderAnswer } from '#lib/services/self-service/order-answer.ts';
import { addValve } from '#lib/services/self-service/order-lines.ts';
import { quoteOrder } from '#lib/services/self-service/quote-order.ts';
import { setPlace } from '#lib/services/self-service/set-place.ts';
import { startOrder } from '#lib/services/self-service/start-order.ts';
import { workOrder } from '#lib/services/self-service/work-order.ts';
import { codeOf, granted } from '#tests/support/granted.ts';
import { onDay } from '#tests/support/houses/booked-house.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { answersOf, CONTACT, KNOWN } from '#tests/support/houses/known-valve.ts';

const ADDRESS = '192.0.2.30';
const SITE = { starts_on: '2026-03-09', days: 1, zone: 'none' };

let desk: Context;
let stranger: Context;

beforeEach(async () => {
  desk = await demoHouseContext();
  stranger = { ...desk, actor: NOBODY };
});

function start() {
  const made = granted(startOrder(stranger, { language: 'en', address: ADDRESS, site: SITE, title: 'Self-service' }));
  return { ...made, asked: { token: made.token, address: ADDRESS } };
}

/** The administrator writes other limits, as on the house's page. */
function decide(facts: Readonly<Record<string, number>>) {
  const context: Context = { ...desk, actor: { id: 'a', name: 'Ada', role: 'administrator' } };
  const { version, standing } = granted(readHouseRecord(context));
  const self_service = { ...standing.self_service, ...facts };
  return saveHouseStanding(context, { version, standing: { ...standing, self_service } });
}

async function answered(asked: { readonly token: string; readonly address: string }) {
  for (let turn = 0; turn < 5; turn += 1) {
    const state = granted(await workOrder(stranger, granted(openOrder(stranger, asked))));
    if (state.kind === 'ready' && state.current) break;
  }
  const answer = granted(orderAnswer(stranger, granted(openOrder(stranger, asked))));
  if (answer === null) throw new Error('There is no answer.');
  return answer;
}

describe('limits of self-service that the house decides', () => {
  it('send an order to the Desk above another value and another torque at once, and stand in the history', async () => {
    const one = start();
    granted(addValve(stranger, { ...one.asked, answers: answersOf(KNOWN) }));
    const before = await answered(one.asked);
    expect(before.firm).toBe(true);
    granted(decide({ value_limit: 10 }));
    const dear = granted(orderAnswer(stranger, granted(openOrder(stranger, one.asked))));
    expect(dear?.handOver).toEqual([{ code: 'value', facts: { limit: 10 } }]);
    granted(decide({ value_limit: 10_000, guessed_ceiling_nm: 1 }));
    const guessed = granted(orderAnswer(stranger, granted(openOrder(stranger, one.asked))));
    expect(guessed?.valves[0]?.handOver.map(({ code }) => code)).toContain('never-exceed-guessed');
    const { changes } = granted(readHouseRecord(desk));
    expect(JSON.stringify(changes[0])).toContain('Guessed never-exceed torque goes to the Desk above, N·m');
  });

  it('hold an order for other hours, and let it be cancelled until another hour', async () => {
    const one = start();
    granted(addValve(stranger, { ...one.asked, answers: answersOf(KNOWN) }));
    await answered(one.asked);
    granted(decide({ hold_hours: 3, cancel_until_hour: 6 }));
    const { quote } = granted(await quoteOrder(stranger, { ...one.asked, contact: CONTACT }));
    const acceptance = { quote, name: 'M', order_number: '1', terms: 'accepted' as const };
    const accepted = granted(acceptOrder(stranger, { ...one.asked, acceptance }));
    expect(accepted.held_until).toBe(new Date(stranger.now().getTime() + 3 * 3_600_000).toISOString());
    const late = onDay(stranger, '2026-03-08T06:00:00Z');
    expect(codeOf(cancelOrder(late, { ...one.asked, reason: '' }))).toBe('too-late-to-cancel');
  });

  it('let links open an enquiry for other days', () => {
    granted(decide({ link_days: 2 }));
    const one = start();
    const until = (days: number) => ({ ...stranger, now: () => new Date(desk.now().getTime() + days * 86_400_000) });
    expect(openOrder(until(1.9), one.asked).ok).toBe(true);
    expect(codeOf(openOrder(until(2), one.asked))).toBe('link-expired');
  });

  it.each([
    [{ cancel_until_hour: 24 }, 'self_service.cancel_until_hour'],
    [{ hold_hours: 0 }, 'self_service.hold_hours'],
    [{ value_limit: -1 }, 'self_service.value_limit'],
    [{ widest_ratio: 0.5 }, 'self_service.widest_ratio'],
  ])('refuse %j and name the field', (facts, path) => {
    const refused = decide(facts);
    expect(refused).toMatchObject({ ok: false, reason: { code: 'house-invalid', problems: [{ path }] } });
  });
});

describe('drafts of strangers', () => {
  const RARE = 'Quickthornlane';

  it('stand in a filter of their own, and no search of the Desk finds them until they are sent', async () => {
    const one = start();
    granted(setPlace(stranger, { ...one.asked, place: { ...SITE, zone: 'none', name: RARE } }));
    const csv = `tag,size,driven by\n${RARE}-1,DN 100,handwheel\n`;
    const bytes = new TextEncoder().encode(csv);
    granted(await addList(stranger, { ...one.asked, fileName: `${RARE}.csv`, bytes }));
    const { number } = granted(readEnquiry(desk, one.enquiryId)).row;
    const search = () => JSON.stringify(granted(searchHouse(desk, RARE)).groups);
    expect(search()).toBe('[]');
    const drafts = granted(findEnquiries(desk, { ...EVERY_ENQUIRY, state: DRAFTS }));
    expect(drafts.rows.map((row) => row.number)).toEqual([number]);
    expect(drafts.counts[DRAFTS]).toBe(1);
    expect(JSON.stringify(granted(findEnquiries(desk, EVERY_ENQUIRY)).rows)).not.toContain(number);
    granted(handOverOrder(stranger, { ...one.asked, contact: CONTACT, which: 'all', message: '' }));
    expect(search()).toContain(number);
    expect(granted(findEnquiries(desk, { ...EVERY_ENQUIRY, state: DRAFTS })).rows).toEqual([]);
    expect(JSON.stringify(granted(findEnquiries(desk, EVERY_ENQUIRY)).rows)).toContain(number);
  });

  it('are thrown away a stated time after their link ended, with all that hangs on them; what was sent stays', () => {
    const gone = start();
    const sent = start();
    for (const { asked } of [gone, sent]) granted(addValve(stranger, { ...asked, answers: answersOf(KNOWN) }));
    granted(handOverOrder(stranger, { ...sent.asked, contact: CONTACT, which: 'all', message: '' }));
    const inDays = (days: number) => ({ ...desk, now: () => new Date(desk.now().getTime() + days * 86_400_000) });
    expect(forgetDrafts(inDays(43))).toBe(0);
    expect(forgetDrafts(inDays(45))).toBe(1);
    expect(forgetDrafts(inDays(45))).toBe(0);
    const left = (table: string) =>
      (
        desk.database.raw.prepare(`SELECT count(*) AS n FROM ${table} WHERE enquiry_id = ?`).get(gone.enquiryId) as {
          readonly n: number;
        }
      ).n;
    expect(['schedule_line', 'order_link', 'self_order', 'schedule_change'].map(left)).toEqual([0, 0, 0, 0]);
    expect(readEnquiry(desk, sent.enquiryId).ok).toBe(true);
    const log = desk.database.raw
      .prepare("SELECT detail_json AS d FROM audit_entry WHERE action LIKE '%thrown away'")
      .all();
    expect(JSON.stringify(log)).toContain(String(gone.enquiryId));
    expect(desk.database.raw.prepare('PRAGMA foreign_key_check').all()).toEqual([]);
  });
});

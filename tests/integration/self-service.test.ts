import { beforeEach, describe, expect, it } from 'vitest';
import { linksOfOrder } from '#db/queries/self-orders.ts';
import type { Context } from '#lib/services/context.ts';
import { NOBODY } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { acceptOrder, cancelOrder } from '#lib/services/self-service/accept-order.ts';
import { addList } from '#lib/services/self-service/add-list.ts';
import { addPhoto } from '#lib/services/self-service/add-photo.ts';
import { askValve } from '#lib/services/self-service/ask-valve.ts';
import { handOverOrder } from '#lib/services/self-service/hand-over-order.ts';
import { openOrder } from '#lib/services/self-service/open-link.ts';
import { orderAnswer } from '#lib/services/self-service/order-answer.ts';
import { addValve, answerValve, removeValve } from '#lib/services/self-service/order-lines.ts';
import { quoteOrder } from '#lib/services/self-service/quote-order.ts';
import { TURNS } from '#lib/services/self-service/self-throttle.ts';
import { setPlace } from '#lib/services/self-service/set-place.ts';
import { startOrder } from '#lib/services/self-service/start-order.ts';
import {
  listWaitingOrders,
  openSelfOrder,
  sendBackOrder,
  takeOverOrder,
  withdrawOrderLinks,
} from '#lib/services/self-service/take-over.ts';
import { workOrder } from '#lib/services/self-service/work-order.ts';
import { codeOf, granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { answersOf, CONTACT, KNOWN } from '#tests/support/houses/known-valve.ts';

const ADDRESS = '192.0.2.10';
const SITE = { starts_on: '2026-03-09', days: 1, zone: 'none' };

let desk: Context;
let stranger: Context;

function start(language: 'en' | 'de' = 'en') {
  const made = granted(startOrder(stranger, { language, address: ADDRESS, site: SITE, title: 'Self-service' }));
  return { ...made, asked: { token: made.token, address: ADDRESS } };
}

async function firmOrder() {
  const order = start();
  const { lineId } = granted(addValve(stranger, { ...order.asked, answers: answersOf(KNOWN) }));
  await work(order.asked);
  return { ...order, lineId };
}

async function work(asked: { readonly token: string; readonly address: string }) {
  for (let turn = 0; turn < 5; turn += 1) {
    const state = granted(await workOrder(stranger, granted(openOrder(stranger, asked))));
    if (state.kind === 'ready' && state.current) break;
    expect(state.kind).toBe('running');
  }
  const answer = granted(orderAnswer(stranger, granted(openOrder(stranger, asked))));
  if (answer === null) throw new Error('There is no answer.');
  return answer;
}

beforeEach(async () => {
  desk = await demoHouseContext();
  stranger = { ...desk, actor: NOBODY };
});

describe('a link', () => {
  it('is kept as a hash, opens its own order only, and a stranger without it learns nothing', () => {
    const one = start();
    const other = start();
    const rows = linksOfOrder(desk.database.db, one.enquiryId);
    expect(JSON.stringify(rows)).not.toContain(one.token);
    expect(granted(openOrder(stranger, one.asked)).enquiry.row.id).toBe(one.enquiryId);
    const { lineId } = granted(addValve(stranger, { ...one.asked, answers: answersOf(KNOWN) }));
    expect(codeOf(removeValve(stranger, { ...other.asked, lineId }))).toBe('no-such-line');
    for (const token of ['', 'x', 'A'.repeat(43), '../../etc'])
      expect(codeOf(openOrder(stranger, { token, address: ADDRESS }))).toBe('no-such-link');
  });

  it('stops opening when it expires or is withdrawn, for looking as for changing', () => {
    const one = start();
    const later = { ...stranger, now: () => new Date('2026-04-02T08:00:01Z') };
    expect(codeOf(openOrder(later, one.asked))).toBe('link-expired');
    expect(codeOf(addValve(later, { ...one.asked, answers: [] }))).toBe('link-expired');
    granted(withdrawOrderLinks(desk, one.enquiryId));
    expect(codeOf(openOrder(stranger, one.asked))).toBe('link-withdrawn');
    expect(codeOf(setPlace(stranger, { ...one.asked, place: { starts_on: '2026-03-10', days: 2 } }))).toBe(
      'link-withdrawn',
    );
  });

  it('that is guessed at too often is not looked up any more, from that address', () => {
    const one = start();
    for (let turn = 0; turn < TURNS['open a wrong link'].most; turn += 1)
      expect(codeOf(openOrder(stranger, { token: 'B'.repeat(43), address: '192.0.2.66' }))).toBe('no-such-link');
    expect(codeOf(openOrder(stranger, { token: one.token, address: '192.0.2.66' }))).toBe('too-many-tries');
    expect(openOrder(stranger, one.asked).ok).toBe(true);
  });

  it('cannot be made without end from one address', () => {
    for (let turn = 0; turn < TURNS['start an order'].most; turn += 1) start();
    const refused = startOrder(stranger, { language: 'en', address: ADDRESS, site: SITE, title: 'x' });
    expect(codeOf(refused)).toBe('too-many-tries');
    expect(startOrder(stranger, { language: 'en', address: '192.0.2.11', site: SITE, title: 'x' }).ok).toBe(true);
  });
});

describe('an order without the Desk', () => {
  it('is nobody’s work while it is a draft: no list of the Desk shows it', () => {
    const one = start();
    const listed = granted(findEnquiries(desk, EVERY_ENQUIRY));
    expect(JSON.stringify(listed)).not.toContain(granted(readEnquiry(desk, one.enquiryId)).row.number);
    expect(granted(listWaitingOrders(desk))).toEqual([]);
  });

  it('takes an answer that can be read, and says why it takes no other', () => {
    const one = start();
    const { lineId } = granted(addValve(stranger, { ...one.asked, answers: answersOf({ driven_by: 'handwheel' }) }));
    const say = (column: string, text: string) =>
      codeOf(answerValve(stranger, { ...one.asked, lineId, answers: answersOf({ [column]: text }) }));
    expect(say('wheel_diameter', '350 mm')).toBe('');
    expect(say('wheel_diameter', 'as wide as my arm')).toBe('answer-unreadable');
    expect(say('wheel_diameter', '40 km')).toBe('answer-unreadable');
    expect(say('no_such_column', 'x')).toBe('no-such-column');
  });

  it('remembers what is not known, and does not ask it again', async () => {
    const one = start();
    const { lineId } = granted(addValve(stranger, { ...one.asked, answers: answersOf({ driven_by: 'handwheel' }) }));
    const first = granted(await askValve(stranger, { ...one.asked, lineId })).questions[0]?.column ?? '';
    granted(answerValve(stranger, { ...one.asked, lineId, answers: [{ column: first, text: '', unknown: 'yes' }] }));
    const then = granted(await askValve(stranger, { ...one.asked, lineId }));
    expect(then.unknown).toEqual([first]);
    expect(then.questions.map(({ column }) => column)).not.toContain(first);
  });

  it('answers at once with kit, price and whether it is free, and tells no count, serial number or cost', async () => {
    const { asked } = await firmOrder();
    const answer = await work(asked);
    expect(answer.firm).toBe(true);
    expect(answer.availability).toEqual({ kind: 'free' });
    expect(answer.price.gross_minor).toBeGreaterThan(answer.price.net_minor);
    expect(answer.valves[0]?.kit?.pieces.map(({ role }) => role)).toContain('restraint');
    const told = JSON.stringify(answer);
    expect(told).not.toMatch(/serial|replacement|purchase|counted|\bfree_|depot/i);
    const serials = desk.database.raw.prepare('SELECT serial FROM unit').all() as readonly {
      readonly serial: string;
    }[];
    expect(serials.filter(({ serial }) => told.includes(serial))).toEqual([]);
  });

  it('says from when all is free, without saying how many there are', async () => {
    const one = start();
    for (let count = 0; count < 3; count += 1)
      granted(addValve(stranger, { ...one.asked, answers: answersOf({ ...KNOWN, tag: `V${count}` }) }));
    desk.database.raw.prepare("UPDATE unit SET state = 'in repair' WHERE model_number LIKE 'R-%'").run();
    const answer = await work(one.asked);
    expect(answer.firm).toBe(false);
    expect(['not free', 'later', 'more days']).toContain(answer.availability.kind);
  });

  it('takes a list, keeps a photo with the valve, and refuses what is no photo or too much', async () => {
    const one = start();
    const csv = 'tag,valve type,size,driven by\nA1,gate,DN 100,handwheel\nA2,gate,DN 150,key\n';
    const added = await addList(stranger, { ...one.asked, fileName: 'list.csv', bytes: new TextEncoder().encode(csv) });
    expect(granted(added)).toMatchObject({ kind: 'added', lines: 2 });
    const { lineId } = granted(addValve(stranger, { ...one.asked, answers: answersOf(KNOWN) }));
    const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);
    expect(addPhoto(stranger, { ...one.asked, lineId, bytes: jpeg }).ok).toBe(true);
    const script = new TextEncoder().encode('<script>alert(1)</script>');
    expect(codeOf(addPhoto(stranger, { ...one.asked, lineId, bytes: script }))).toBe('photo-unreadable');
    const long = Array.from({ length: 201 }, (_, row) => `B${row},gate,DN 100,handwheel`).join('\n');
    const tooMany = new TextEncoder().encode(`tag,valve type,size,driven by\n${long}\n`);
    expect(codeOf(await addList(stranger, { ...one.asked, fileName: 'long.csv', bytes: tooMany }))).toBe(
      'too-many-lines',
    );
  });
});

describe('a quote without the Desk', () => {
  it('is numbered and frozen once, pressed five times at once, and its acceptance makes one booking', async () => {
    const { asked, enquiryId } = await firmOrder();
    const quoted = await Promise.all(
      Array.from({ length: 5 }, () => quoteOrder(stranger, { ...asked, contact: CONTACT })),
    );
    const names = new Set(quoted.map((one) => granted(one).quote));
    expect([...names]).toHaveLength(1);
    const [quote = ''] = names;
    const acceptance = { quote, name: CONTACT.name, order_number: 'PO-7', terms: 'accepted' as const };
    const pressed = await Promise.all(
      Array.from({ length: 5 }, () => Promise.resolve().then(() => acceptOrder(stranger, { ...asked, acceptance }))),
    );
    expect(new Set(pressed.map((one) => granted(one).booking)).size).toBe(1);
    const count = desk.database.raw
      .prepare('SELECT count(*) AS n FROM booking b JOIN quote q ON q.id = b.quote_id WHERE q.enquiry_id = ?')
      .get(enquiryId) as { readonly n: number };
    expect(count.n).toBe(1);
    expect(granted(listWaitingOrders(desk)).map(({ stage }) => stage)).toEqual(['accepted']);
  });

  it('makes a customer of its own and never joins one that is here, whatever name is typed', async () => {
    const { asked, enquiryId } = await firmOrder();
    const known = desk.database.raw.prepare('SELECT id, name FROM customer LIMIT 1').get() as {
      id: number;
      name: string;
    };
    granted(await quoteOrder(stranger, { ...asked, contact: { ...CONTACT, firm: known.name } }));
    expect(granted(readEnquiry(desk, enquiryId)).row.customer_id).not.toBe(known.id);
  });

  it('is not made while a valve needs a look', async () => {
    const one = start();
    granted(addValve(stranger, { ...one.asked, answers: answersOf({ ...KNOWN, condition: 'seized' }) }));
    await work(one.asked);
    expect(codeOf(await quoteOrder(stranger, { ...one.asked, contact: CONTACT }))).toBe('not-firm');
  });

  it('can be cancelled until noon of the day before, and not after', async () => {
    const { asked } = await firmOrder();
    const { quote } = granted(await quoteOrder(stranger, { ...asked, contact: CONTACT }));
    const acceptance = { quote, name: 'M', order_number: '1', terms: 'accepted' as const };
    granted(acceptOrder(stranger, { ...asked, acceptance }));
    const late = { ...stranger, now: () => new Date('2026-03-08T12:00:00Z') };
    expect(codeOf(cancelOrder(late, { ...asked, reason: '' }))).toBe('too-late-to-cancel');
    expect(cancelOrder(stranger, { ...asked, reason: '' }).ok).toBe(true);
    expect(codeOf(cancelOrder(stranger, { ...asked, reason: '' }))).toBe('no-such-booking');
  });

  it('tells of equipment that was taken meanwhile without a count', async () => {
    const { asked } = await firmOrder();
    const { quote } = granted(await quoteOrder(stranger, { ...asked, contact: CONTACT }));
    desk.database.raw.prepare("UPDATE unit SET state = 'in repair'").run();
    const acceptance = { quote, name: 'M', order_number: '1', terms: 'accepted' as const };
    const refused = acceptOrder(stranger, { ...asked, acceptance });
    expect(codeOf(refused)).toBe('equipment-taken');
    expect(refused.ok ? '' : refused.reason.sentence).not.toMatch(/\d/);
  });
});

describe('a hand-over', () => {
  it('gives the Desk the valves that need a look with all that was said, and leaves the others to be ordered', async () => {
    const one = start();
    granted(addValve(stranger, { ...one.asked, answers: answersOf(KNOWN) }));
    granted(addValve(stranger, { ...one.asked, answers: answersOf({ ...KNOWN, condition: 'seized' }) }));
    const marked = await work(one.asked);
    expect(marked.valves.map(({ handOver }) => handOver.map(({ code }) => code))).toEqual([[], ['seized']]);
    const handed = granted(
      handOverOrder(stranger, { ...one.asked, contact: CONTACT, which: 'marked', message: 'Gate B' }),
    );
    const [waiting] = granted(listWaitingOrders(desk));
    expect(waiting).toMatchObject({ stage: 'handed over', lines: 1, customer: CONTACT.firm, number: handed.number });
    const look = { token: handed.lookToken ?? '', address: ADDRESS };
    expect(codeOf(addValve(stranger, { ...look, answers: [] }))).toBe('link-only-looks');
    expect((await work(one.asked)).firm).toBe(true);
    const notes = desk.database.raw
      .prepare('SELECT text FROM enquiry_note WHERE enquiry_id = ?')
      .all(waiting?.enquiryId ?? 0);
    expect(JSON.stringify(notes)).toMatch(/does not move at all[\s\S]*Gate B/);
  });

  it('of everything stops its owner from changing it, until the Desk sends it back', async () => {
    const { asked, enquiryId } = await firmOrder();
    granted(handOverOrder(stranger, { ...asked, contact: CONTACT, which: 'all', message: '' }));
    expect(codeOf(addValve(stranger, { ...asked, answers: [] }))).toBe('order-with-desk');
    granted(takeOverOrder(desk, enquiryId));
    expect(granted(openSelfOrder(desk, enquiryId))?.takenBy).toBe('Test desk');
    const { token } = granted(sendBackOrder(desk, enquiryId));
    expect(addValve(stranger, { token, address: ADDRESS, answers: answersOf(KNOWN) }).ok).toBe(true);
  });

  it('is the Desk’s to take over, and of nobody else', () => {
    const one = start();
    const yard = { ...desk, actor: { id: 'y', name: 'Y', role: 'yard' as const } };
    for (const verb of [takeOverOrder, sendBackOrder, withdrawOrderLinks]) {
      expect(codeOf(verb(stranger, one.enquiryId))).toBe('not-signed-in');
      expect(codeOf(verb(yard, one.enquiryId))).toBe('not-allowed');
    }
    expect(codeOf(takeOverOrder(desk, 1))).toBe('no-such-order');
  });
});

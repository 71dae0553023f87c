import { describe, expect, it } from 'vitest';
import { deskPeople, listDeskPeople } from '#lib/services/access/list-desk-people.ts';
import type { Context } from '#lib/services/context.ts';
import { attachFile, putFileAway, readAttachment } from '#lib/services/enquiries/attachments.ts';
import { changeEnquiryLife } from '#lib/services/enquiries/change-enquiry-life.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { addNote, changeNote, strikeNote } from '#lib/services/enquiries/enquiry-notes.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { type EnquiriesAsked, EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { moveEnquiry } from '#lib/services/enquiries/move-enquiry.ts';
import { openEnquiryLife } from '#lib/services/enquiries/open-enquiry-life.ts';
import { searchHouse } from '#lib/services/enquiries/search-house.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext, HOUSE_DAY } from '#tests/support/houses/demo-house.ts';

const refused = (code: string) => ({ ok: false, reason: { code } });
const life = (context: Context) => granted(openEnquiryLife(context, 1));
const by = (context: Context, id: string, name: string): Context => ({
  ...context,
  actor: { ...context.actor, id, name },
});
const later = (context: Context, minutes: number): Context => ({
  ...context,
  now: () => new Date(Date.parse(`${HOUSE_DAY}T08:00:00Z`) + minutes * 60_000),
});

function quoted(context: Context, validUntil: string): void {
  context.database.raw
    .prepare(
      `INSERT INTO quote (enquiry_id, number, revision, state, issued_on, valid_until, total_minor, currency, frozen_json)
       VALUES (1, 'Q-00077', 'A', 'issued', '2026-02-01', ?, 100, 'EUR', '{}')`,
    )
    .run(validUntil);
  context.database.raw.exec("UPDATE enquiry SET state = 'quoted' WHERE id = 1");
}

describe('the steps of an enquiry', () => {
  it('are written with who, when and why', async () => {
    const context = await demoHouseContext();
    granted(moveEnquiry(context, { enquiryId: 1, from: 'new', to: 'declined', why: 'dates too early' }));
    expect(life(context)).toMatchObject({
      state: 'declined',
      steps: ['being worked'],
      moves: [{ from_state: 'new', to_state: 'declined', who: 'Test desk', why: 'dates too early' }],
    });
  });

  it('are refused where a quote or booking has to take them, and where somebody was first', async () => {
    const context = await demoHouseContext();
    const move = { enquiryId: 1, why: '' } as const;
    expect(moveEnquiry(context, { ...move, from: 'new', to: 'accepted' })).toMatchObject(refused('move-not-allowed'));
    expect(moveEnquiry(context, { ...move, from: 'new', to: 'new' })).toMatchObject(refused('state-already'));
    granted(moveEnquiry(context, { ...move, from: 'new', to: 'being worked' }));
    expect(moveEnquiry(context, { ...move, from: 'new', to: 'declined' })).toMatchObject(refused('changed-meanwhile'));
    expect(life(context).state).toBe('being worked');
    expect(moveEnquiry(context, { ...move, enquiryId: 999, from: 'new', to: 'declined' })).toMatchObject(
      refused('no-such-enquiry'),
    );
  });

  it('follow from work, but not out of accepted', async () => {
    const context = await demoHouseContext();
    const lineId = Number(context.database.raw.prepare('SELECT min(id) FROM schedule_line').pluck().get());
    const edit = (text: string) =>
      granted(editCells(context, { enquiryId: 1, edits: [{ lineId, column: 'notes', text }] }));
    edit('first');
    expect(life(context).state).toBe('being worked');
    context.database.raw.exec("UPDATE enquiry SET state = 'accepted' WHERE id = 1");
    edit('second');
    expect(life(context).state).toBe('accepted');
  });

  it('lapse by the date of the newest quote, in the list as on the page, and go on from there', async () => {
    const context = await demoHouseContext();
    quoted(context, '2026-03-01');
    expect(life(context)).toMatchObject({ state: 'lapsed', steps: ['being worked', 'declined'] });
    const inState = (state: string) =>
      granted(findEnquiries(context, { ...EVERY_ENQUIRY, state })).rows.map(({ id }) => id);
    expect([inState('lapsed'), inState('quoted')]).toEqual([[1], []]);
    granted(moveEnquiry(context, { enquiryId: 1, from: 'lapsed', to: 'being worked', why: '' }));
    expect(life(context).moves[0]).toMatchObject({ from_state: 'lapsed', to_state: 'being worked' });
  });
});

describe('whose work it is', () => {
  it('is changed from what was seen: the second of two people is told and nothing of hers is half saved', async () => {
    const context = await demoHouseContext();
    const me = deskPeople(context)[0]?.id ?? '';
    granted(changeEnquiryLife(context, { enquiryId: 1, set: { assigned_to: me }, was: { assigned_to: '' } }));
    expect(life(context)).toMatchObject({ assigned_to: me, state: 'being worked' });
    const second = changeEnquiryLife(context, {
      enquiryId: 1,
      set: { assigned_to: '', due_on: '2026-03-09' },
      was: { assigned_to: '', due_on: null },
    });
    expect(second).toMatchObject(refused('changed-meanwhile'));
    expect(life(context)).toMatchObject({ assigned_to: me, due_on: null });
    granted(changeEnquiryLife(context, { enquiryId: 1, set: { due_on: '2026-03-09' }, was: { due_on: null } }));
    expect(life(context).due_on).toBe('2026-03-09');
  });

  it('names the contact and the reference on the papers', async () => {
    const context = await demoHouseContext();
    const contact_id = Number(
      context.database.raw.prepare("SELECT id FROM contact WHERE name = 'Maud Ferrier'").pluck().get(),
    );
    const set = { contact_id, reference: 'PO 81' };
    granted(changeEnquiryLife(context, { enquiryId: 1, set, was: { contact_id: null, reference: '' } }));
    expect(granted(readEnquiry(context, 1)).customer.onPapers).toMatchObject({
      contact: 'Maud Ferrier',
      reference: 'PO 81',
    });
  });

  it('is nobody’s who is not there, and the contact is the customer’s', async () => {
    const context = await demoHouseContext();
    const change = (set: Parameters<typeof changeEnquiryLife>[1]['set']) =>
      changeEnquiryLife(context, { enquiryId: 1, set, was: { assigned_to: '', contact_id: null } });
    expect(change({ assigned_to: 'ghost' })).toMatchObject(refused('no-such-person'));
    const stranger = Number(
      context.database.raw.prepare("SELECT id FROM contact WHERE name = 'Oskar Thane'").pluck().get(),
    );
    expect(change({ contact_id: stranger })).toMatchObject(refused('no-such-contact'));
    expect(changeEnquiryLife(context, { enquiryId: 999, set: {}, was: {} })).toMatchObject(refused('no-such-enquiry'));
  });
});

describe('notes', () => {
  it('are changed by their author for some minutes, then struck through and taken up again', async () => {
    const context = await demoHouseContext();
    const { id: noteId } = granted(addNote(context, { enquiryId: 1, text: ' Gate key at the lodge. ' }));
    const key = { enquiryId: 1, noteId };
    expect(changeNote(by(context, 'other', 'Other'), { ...key, text: 'x' })).toMatchObject(refused('note-of-another'));
    granted(changeNote(later(context, 10), { ...key, text: 'Gate key at the mill.' }));
    expect(changeNote(later(context, 16), { ...key, text: 'x' })).toMatchObject(refused('note-too-old'));
    granted(strikeNote(later(context, 60), key));
    expect(changeNote(context, { ...key, text: 'x' })).toMatchObject(refused('note-struck'));
    expect(life(context).notes).toMatchObject([
      { text: 'Gate key at the mill.', isStruck: true, struckBy: 'Test desk' },
    ]);
    expect(granted(strikeNote(context, key))).toEqual({ struck: 'no' });
    expect(addNote(context, { enquiryId: 1, text: ' ' })).toMatchObject(refused('note-empty'));
    expect(addNote(context, { enquiryId: 999, text: 'x' })).toMatchObject(refused('no-such-enquiry'));
    expect(strikeNote(context, { enquiryId: 2, noteId })).toMatchObject(refused('no-such-note'));
  });
});

describe('files', () => {
  it('come back byte for byte, are put away and brought back, and are never changed', async () => {
    const context = await demoHouseContext();
    const bytes = Uint8Array.from({ length: 1000 }, (_unused, index) => index % 256);
    const { id: fileId } = granted(attachFile(context, { enquiryId: 1, fileName: 'C:\\mail\\plan \u202e.pdf', bytes }));
    const read = granted(readAttachment(context, { enquiryId: 1, fileId }));
    expect([read.fileName, Buffer.compare(Buffer.from(read.bytes), Buffer.from(bytes))]).toEqual(['plan .pdf', 0]);
    granted(putFileAway(context, { enquiryId: 1, fileId, removed: 'yes' }));
    expect(life(context).files[0]?.removed_at).not.toBe(null);
    granted(putFileAway(context, { enquiryId: 1, fileId, removed: 'no' }));
    expect(life(context).files[0]?.removed_at).toBe(null);
    expect(() => context.database.raw.exec("UPDATE attachment SET bytes = x'00'")).toThrow('kept as it came');
  });

  it('are refused with a reason', async () => {
    const context = await demoHouseContext();
    const file = { enquiryId: 1, fileName: 'a.txt', bytes: new Uint8Array(1) };
    expect(attachFile(context, { ...file, bytes: new Uint8Array(0) })).toMatchObject(refused('file-empty'));
    expect(attachFile(context, { ...file, bytes: new Uint8Array(10 * 1024 * 1024 + 1) })).toMatchObject(
      refused('file-too-large'),
    );
    expect(attachFile(context, { ...file, enquiryId: 999 })).toMatchObject(refused('no-such-enquiry'));
    expect(readAttachment(context, { enquiryId: 1, fileId: 999 })).toMatchObject(refused('no-such-file'));
  });
});

describe('finding', () => {
  it('narrows the list by state, person, customer, day and words, in the order asked', async () => {
    const context = await demoHouseContext();
    const { id } = granted(
      createEnquiry(context, {
        ...{ title: 'Zander pumps', customer: { id: 1 }, site: {}, reference: 'PO-4711-X' },
        ...{ due_on: '2026-03-01', mine: 'yes' },
      }),
    );
    const found = (asked: Partial<EnquiriesAsked>) => granted(findEnquiries(context, { ...EVERY_ENQUIRY, ...asked }));
    const ids = (asked: Partial<EnquiriesAsked>) => found(asked).rows.map((row) => row.id);
    expect(ids({ assigned: 'me' })).toEqual([id]);
    expect(ids({ assigned: 'nobody' })).not.toContain(id);
    expect(ids({ due: 'late' })).toEqual([id]);
    expect(ids({ due: 'none', state: 'open' })).not.toContain(id);
    expect(ids({ words: '4711' })).toEqual([id]);
    expect(ids({ words: 'sallow' }).sort()).toEqual([1, id]);
    expect(ids({ order: 'title', way: 'down' })[0]).toBe(id);
    expect(ids({ order: 'due', way: 'up' })[0]).toBe(id);
    expect(ids({ customerId: 1 }).sort()).toEqual([1, id]);
    expect(found({}).counts).toMatchObject({ all: 8, open: 8, closed: 0, new: 7, 'being worked': 1 });
    expect(found({ state: 'declined', page: 7 })).toMatchObject({ rows: [], page: 1, total: 0 });
  });

  it('looks through everything, whatever accents, capitals and quotation marks are typed', async () => {
    const context = await demoHouseContext();
    granted(addNote(context, { enquiryId: 1, text: 'Ask for the Übergabe at the sluice "north"' }));
    granted(attachFile(context, { enquiryId: 1, fileName: 'sluice-plan.pdf', bytes: new Uint8Array(1) }));
    quoted(context, '2026-04-01');
    const kinds = (words: string) => granted(searchHouse(context, words)).groups.map(({ kind }) => kind);
    expect(kinds('ubergabe')).toEqual(['note']);
    expect(kinds('sluice-pl')).toEqual(['attachment']);
    expect(kinds('Q-00077')).toEqual(['quote']);
    expect(kinds('Ferrier')).toEqual(['contact']);
    expect(kinds('SV-101')).toEqual(['line']);
    expect(kinds('buried-mains.csv')).toEqual(['list']);
    expect(kinds('sallow vale east')).toEqual(expect.arrayContaining(['enquiry', 'site']));
    expect(kinds('water board')).toContain('customer');
    const serial = String(context.database.raw.prepare('SELECT min(serial) FROM unit').pluck().get());
    expect(kinds(serial)).toContain('unit');
    for (const odd of ['"', '* AND (', 'NEAR(a b)', "';--", '%', '_'])
      expect(searchHouse(context, odd).ok, odd).toBe(true);
    expect(kinds('')).toEqual([]);
  });

  it('puts what is in use first, then what fits best, and says why the rest is over', async () => {
    const context = await demoHouseContext();
    const site = { starts_on: '2026-03-16' };
    const make = (title: string, customer: string) =>
      granted(createEnquiry(context, { title, customer: { name: customer }, site })).id;
    const inTitle = make('Quagmire weir', 'Old mill works');
    const over = make('Quagmire quagmire', 'Old mill works');
    const inText = make('Weir two', 'Old mill works');
    context.database.raw.exec(`UPDATE enquiry SET reference = 'by the quagmire' WHERE id = ${inText}`);
    granted(moveEnquiry(context, { enquiryId: over, from: 'new', to: 'declined', why: 'no answer' }));
    const found = (kind: string) =>
      granted(searchHouse(context, 'quagmire')).groups.find((group) => group.kind === kind)?.entries ?? [];
    expect(found('enquiry').map(({ id, over: why }) => [id, why])).toEqual([
      [inTitle, ''],
      [inText, ''],
      [over, 'declined'],
    ]);
    context.database.raw.exec("UPDATE customer SET archived_at = '2026-03-01' WHERE name = 'Old mill works'");
    const [mill] =
      granted(searchHouse(context, 'old mill')).groups.find(({ kind }) => kind === 'customer')?.entries ?? [];
    expect(mill?.over).toBe('put away');
  });

  it('forgets what is gone and knows what is new, without being filled again', async () => {
    const context = await demoHouseContext();
    const { raw } = context.database;
    const lines = () =>
      granted(searchHouse(context, 'SV-101')).groups.find(({ kind }) => kind === 'line')?.entries.length ?? 0;
    expect(lines()).toBe(1);
    raw.exec(`UPDATE schedule_line SET cells_json = json_set(cells_json, '$.tag', 'TX-900')
      WHERE json_extract(cells_json, '$.tag') = 'SV-101'`);
    expect(lines()).toBe(0);
    expect(granted(searchHouse(context, 'TX-900')).groups[0]?.kind).toBe('line');
    raw.exec("DELETE FROM schedule_line WHERE json_extract(cells_json, '$.tag') = 'TX-900'");
    expect(granted(searchHouse(context, 'TX-900')).groups).toEqual([]);
  });

  it.each(['yard', 'contractor'] as const)('is not for a %s, nor is the life of an enquiry', async (role) => {
    const context = await demoHouseContext(role);
    const no = refused('not-allowed');
    expect(searchHouse(context, 'x')).toMatchObject(no);
    expect(openEnquiryLife(context, 1)).toMatchObject(no);
    expect(listDeskPeople(context)).toMatchObject(no);
    expect(moveEnquiry(context, { enquiryId: 1, from: 'new', to: 'declined', why: '' })).toMatchObject(no);
    expect(changeEnquiryLife(context, { enquiryId: 1, set: {}, was: {} })).toMatchObject(no);
    expect(addNote(context, { enquiryId: 1, text: 'x' })).toMatchObject(no);
    expect(changeNote(context, { enquiryId: 1, noteId: 1, text: 'x' })).toMatchObject(no);
    expect(strikeNote(context, { enquiryId: 1, noteId: 1 })).toMatchObject(no);
    expect(attachFile(context, { enquiryId: 1, fileName: 'x', bytes: new Uint8Array(1) })).toMatchObject(no);
    expect(readAttachment(context, { enquiryId: 1, fileId: 1 })).toMatchObject(no);
    expect(putFileAway(context, { enquiryId: 1, fileId: 1, removed: 'yes' })).toMatchObject(no);
  });
});

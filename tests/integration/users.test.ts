import { describe, expect, it } from 'vitest';
import { findUserByEmail, sessionsOf } from '#db/queries/users.ts';
import { addUser } from '#lib/services/access/add-user.ts';
import { endOwnSessions, renameSelf } from '#lib/services/access/change-account.ts';
import {
  changeRole,
  disableUser,
  enableUser,
  resetPassword,
  signOutEverywhere,
} from '#lib/services/access/change-user.ts';
import { listHouseUsers, listOwnSessions, openUser } from '#lib/services/access/list-users.ts';
import { type HistoryAsked, readEnquiryHistory, readHouseHistory } from '#lib/services/access/read-history.ts';
import { setPreferences } from '#lib/services/access/set-preferences.ts';
import { signIn } from '#lib/services/access/sign-in.ts';
import { type Context, HOUSE_ITSELF, NOBODY, USER_ROLES, type UserRole } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { addPerson } from '#tests/support/houses/house-people.ts';
import { PEOPLE } from '#tests/support/houses/people.ts';

const PASSWORD = 'seven brass keys turn';
const EVERYTHING: HistoryAsked = { page: 1, kind: '', whoId: '', words: '', from: '', until: '' };

/** A house with one administrator, who acts, and one person of the Desk. */
async function house(): Promise<{ readonly admin: Context; readonly adminId: string; readonly deskId: string }> {
  const context = await demoHouseContext();
  const adminId = await addPerson(context, { role: 'administrator', password: PASSWORD });
  const deskId = await addPerson(context, { role: 'desk', password: PASSWORD });
  return { admin: as(context, { id: adminId, role: 'administrator' }), adminId, deskId };
}

function as(context: Context, { id, role }: { readonly id: string; readonly role: UserRole }): Context {
  return { ...context, actor: { id, name: PEOPLE[role].name, role } };
}

const signInAs = (context: Context, role: UserRole, password = PASSWORD) =>
  signIn({ ...context, actor: NOBODY }, { email: PEOPLE[role].email, password, address: '192.0.2.1', browser: 'test' });

describe('users', () => {
  it.each(USER_ROLES.filter((role) => role !== 'administrator'))('are no business of a %s', async (role) => {
    const context = await demoHouseContext(role);
    const no = { ok: false, reason: { code: 'not-allowed' } };
    expect(listHouseUsers(context)).toMatchObject(no);
    expect(openUser(context, 'x')).toMatchObject(no);
    expect(await addUser(context, { name: 'X', email: 'x@house.example', role: 'desk' })).toMatchObject(no);
    expect(changeRole(context, { userId: 'x', role: 'administrator' })).toMatchObject(no);
    expect(disableUser(context, 'x')).toMatchObject(no);
    expect(enableUser(context, 'x')).toMatchObject(no);
    expect(await resetPassword(context, 'x')).toMatchObject(no);
    expect(signOutEverywhere(context, 'x')).toMatchObject(no);
    expect(readHouseHistory(context, EVERYTHING)).toMatchObject(no);
  });

  it('are told apart by their email, which must look like one, and have a name', async () => {
    const { admin } = await house();
    const add = (user: { readonly name?: string; readonly email?: string }) =>
      addUser(admin, { name: 'New', email: 'new@house.example', role: 'yard', ...user });
    expect(await add({ email: PEOPLE.desk.email.toUpperCase() })).toMatchObject({ reason: { code: 'email-taken' } });
    expect(await add({ email: 'no email' })).toMatchObject({ reason: { code: 'email-unreadable' } });
    expect(await add({ name: '  ' })).toMatchObject({ reason: { code: 'name-missing' } });
    granted(await add({}));
    expect(granted(listHouseUsers(admin)).find(({ email }) => email === 'new@house.example')).toMatchObject({
      role: 'yard',
      standing: 'one-time password',
    });
  });

  it('that are not there cannot be changed', async () => {
    const { admin } = await house();
    const none = { ok: false, reason: { code: 'no-such-user' } };
    expect(openUser(admin, 'nobody-here')).toMatchObject(none);
    expect(changeRole(admin, { userId: 'nobody-here', role: 'desk' })).toMatchObject(none);
    expect(await resetPassword(admin, 'nobody-here')).toMatchObject(none);
  });

  it('who are disabled are out until they are enabled again', async () => {
    const { admin, deskId } = await house();
    granted(await signInAs(admin, 'desk'));
    granted(disableUser(admin, deskId));
    expect(granted(openUser(admin, deskId))).toMatchObject({ user: { standing: 'disabled' }, sessions: [] });
    expect((await signInAs(admin, 'desk')).ok).toBe(false);
    granted(enableUser(admin, deskId));
    expect((await signInAs(admin, 'desk')).ok).toBe(true);
  });

  it('get a new one-time password for a lost one, and the old one and every session end', async () => {
    const { admin, deskId } = await house();
    granted(await signInAs(admin, 'desk'));
    const password = granted(await resetPassword(admin, deskId));
    expect(sessionsOf(admin.database.db, { userId: deskId, now: new Date() })).toEqual([]);
    expect((await signInAs(admin, 'desk')).ok).toBe(false);
    granted(await signInAs(admin, 'desk', password));
    expect(findUserByEmail(admin.database.db, PEOPLE.desk.email)?.is_one_time).toBe(true);
  });

  it('can be signed out everywhere and keep their password', async () => {
    const { admin, deskId } = await house();
    granted(await signInAs(admin, 'desk'));
    granted(await signInAs(admin, 'desk'));
    granted(signOutEverywhere(admin, deskId));
    expect(sessionsOf(admin.database.db, { userId: deskId, now: new Date() })).toEqual([]);
    granted(await signInAs(admin, 'desk'));
  });
});

describe('the last administrator', () => {
  it('is neither demoted nor disabled, and either once there is another', async () => {
    const { admin, adminId, deskId } = await house();
    const last = { ok: false, reason: { code: 'last-administrator' } };
    expect(changeRole(admin, { userId: adminId, role: 'desk' })).toMatchObject(last);
    expect(disableUser(admin, adminId)).toMatchObject(last);
    granted(changeRole(admin, { userId: deskId, role: 'administrator' }));
    granted(disableUser(admin, adminId));
    expect(changeRole(admin, { userId: deskId, role: 'yard' })).toMatchObject(last);
    granted(enableUser(admin, adminId));
    granted(changeRole(admin, { userId: deskId, role: 'yard' }));
  });
});

describe("one's own account", () => {
  it('is renamed by its owner; the log keeps both names', async () => {
    const { admin, deskId } = await house();
    const desk = as(admin, { id: deskId, role: 'desk' });
    expect(renameSelf(desk, { name: '\n' })).toMatchObject({ reason: { code: 'name-missing' } });
    granted(renameSelf(desk, { name: 'Dora Deskwright' }));
    expect(granted(openUser(admin, deskId)).user.name).toBe('Dora Deskwright');
  });

  it('ends its own sessions and nobody else’s', async () => {
    const { admin, adminId, deskId } = await house();
    for (const role of ['desk', 'desk', 'administrator'] as const) granted(await signInAs(admin, role));
    const desk = as(admin, { id: deskId, role: 'desk' });
    const [mine] = granted(listOwnSessions(desk));
    const [theirs] = granted(listOwnSessions(as(admin, { id: adminId, role: 'administrator' })));
    expect(granted(endOwnSessions(desk, { only: theirs?.id ?? '' }))).toBe(0);
    expect(granted(endOwnSessions(desk, { except: mine?.id ?? '' }))).toBe(1);
    expect(granted(listOwnSessions(desk))).toHaveLength(1);
    expect(granted(endOwnSessions(desk, { only: mine?.id ?? '' }))).toBe(1);
  });

  it('keeps how figures are shown', async () => {
    const { admin, deskId } = await house();
    granted(setPreferences(as(admin, { id: deskId, role: 'desk' }), { units: 'us', date_form: 'iso' }));
    granted(setPreferences(as(admin, { id: deskId, role: 'desk' }), { decimal_mark: 'comma' }));
    expect(findUserByEmail(admin.database.db, PEOPLE.desk.email)).toMatchObject({
      units: 'us',
      date_form: 'iso',
      decimal_mark: 'comma',
    });
  });
});

describe('the history', () => {
  it('tells the administrator of sign-ins, refusals and changed roles, newest first, and is narrowed by each filter', async () => {
    const { admin, adminId, deskId } = await house();
    await signInAs(admin, 'desk', 'not the password');
    granted(await signInAs(admin, 'desk'));
    granted(changeRole(admin, { userId: deskId, role: 'yard' }));
    const all = granted(readHouseHistory(admin, EVERYTHING));
    expect(all.entries.slice(0, 3)).toMatchObject([
      { action: 'changed role', who: PEOPLE.administrator.name, href: `/users/${deskId}` },
      { action: 'signed in', who: PEOPLE.desk.name },
      { action: 'sign-in refused', who: NOBODY.name },
    ]);
    expect(all.entries[0]?.details).toContainEqual({ label: 'to', text: 'yard' });
    const count = (narrowed: Partial<HistoryAsked>) =>
      granted(readHouseHistory(admin, { ...EVERYTHING, ...narrowed })).total;
    expect(count({ whoId: adminId, words: 'role' })).toBe(1);
    expect(count({ kind: 'user' })).toBe(all.total);
    expect(count({ kind: 'enquiry' })).toBe(0);
    expect(count({ words: 'refused' })).toBe(1);
    expect(count({ from: '2026-03-02', until: '2026-03-02' })).toBe(all.total);
    expect(count({ from: '2026-03-03' })).toBe(0);
    expect(count({ until: '2026-03-01' })).toBe(0);
    expect(all.people).toContainEqual({ id: HOUSE_ITSELF.id, name: HOUSE_ITSELF.name });
  });

  it('of an enquiry tells the Desk who did what, page by page to the first entry', async () => {
    const context = await demoHouseContext();
    const enquiry = granted(createEnquiry(context, { title: 'x', customer: { name: 'y' }, site: {} }));
    const add = context.database.raw.prepare(
      "INSERT INTO audit_entry (at, who, who_id, action, subject, detail_json) VALUES ('2026-03-02T09:00:00Z', 'A', 'a', ?, ?, '{}')",
    );
    for (let count = 0; count < 120; count += 1) add.run(`step ${count}`, `enquiry ${enquiry.id}`);
    const first = granted(readEnquiryHistory(context, { enquiryId: enquiry.id, page: 1 }));
    expect(first).toMatchObject({ page: 1, pages: 3 });
    expect(first.entries[0]?.action).toBe('step 119');
    const last = granted(readEnquiryHistory(context, { enquiryId: enquiry.id, page: 99 }));
    expect(last.page).toBe(3);
    expect(last.entries.at(-1)).toMatchObject({ who: 'Test desk', action: 'enquiry opened' });
    expect(readEnquiryHistory(await demoHouseContext('yard'), { enquiryId: 1, page: 1 })).toMatchObject({
      reason: { code: 'not-allowed' },
    });
  });
});

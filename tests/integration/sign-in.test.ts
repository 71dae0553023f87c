import { describe, expect, it } from 'vitest';
import { changeUserRow, findUserByEmail } from '#db/queries/users.ts';
import { addUser } from '#lib/services/access/add-user.ts';
import { choosePassword } from '#lib/services/access/choose-password.ts';
import { type SessionCookie, signIn } from '#lib/services/access/sign-in.ts';
import { SESSION_DAYS } from '#lib/services/access/sign-in-library.ts';
import { signOut } from '#lib/services/access/sign-out.ts';
import { TRIES } from '#lib/services/access/throttle.ts';
import { whoAsks } from '#lib/services/access/who-asks.ts';
import { type Context, HOUSE_ITSELF, NOBODY, USER_ROLES } from '#lib/services/context.ts';
import { EVERY_ENQUIRY, findEnquiries } from '#lib/services/enquiries/find-enquiries.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { addPerson } from '#tests/support/houses/house-people.ts';
import { PEOPLE } from '#tests/support/houses/people.ts';

const PASSWORD = 'seven brass keys turn';
const DESK = { email: PEOPLE.desk.email, password: PASSWORD, address: '192.0.2.7', browser: 'a test' };

async function house(): Promise<Context> {
  const context = await demoHouseContext();
  await addPerson(context, { role: 'desk', password: PASSWORD });
  return { ...context, actor: NOBODY };
}

const later = (context: Context, minutes: number): Context => {
  const now = context.now().getTime() + minutes * 60_000;
  return { ...context, now: () => new Date(now) };
};

const cookieText = ({ name, value }: SessionCookie) => `${name}=${encodeURIComponent(value)}`;

describe('signing in', () => {
  it('gives a session that names the person and their role', async () => {
    const context = await house();
    const cookie = granted(await signIn(context, DESK));
    expect(cookie.maxAge_s).toBe(SESSION_DAYS * 86_400);
    const { actor, email } = await whoAsks(context.database, cookieText(cookie));
    expect(actor).toMatchObject({ name: PEOPLE.desk.name, role: 'desk' });
    expect(email).toBe(PEOPLE.desk.email);
    expect(granted(findEnquiries({ ...context, actor }, EVERY_ENQUIRY)).rows.length).toBeGreaterThan(0);
  });

  it('takes the email in any case and with blanks around it', async () => {
    const context = await house();
    expect((await signIn(context, { ...DESK, email: ` ${DESK.email.toUpperCase()} ` })).ok).toBe(true);
  });

  it('refuses a wrong password, an unknown email and a disabled user with the same sentence', async () => {
    const context = await house();
    const wrong = await signIn(context, { ...DESK, password: 'seven brass keys' });
    const unknown = await signIn(context, { ...DESK, email: 'nobody@house.example' });
    const user = findUserByEmail(context.database.db, DESK.email);
    changeUserRow(context.database.db, user?.id ?? '', { disabled_at: new Date(), updated_at: new Date() });
    const disabled = await signIn(context, DESK);
    expect(wrong).toMatchObject({ ok: false, reason: { code: 'sign-in-refused' } });
    expect(unknown).toEqual(wrong);
    expect(disabled).toEqual(wrong);
    expect(context.database.raw.prepare('SELECT count(*) FROM session').pluck().get()).toBe(0);
  });

  it('knows a stranger by no cookie, a made-up one and one of another house', async () => {
    const context = await house();
    const cookie = granted(await signIn(context, DESK));
    const other = await house();
    for (const text of ['', 'kitwright.session_token=made.up', cookieText({ ...cookie, value: `${cookie.value}x` })])
      expect((await whoAsks(context.database, text)).actor).toEqual(NOBODY);
    expect((await whoAsks(other.database, cookieText(cookie))).actor).toEqual(NOBODY);
  });
});

describe('a session', () => {
  it('ends when the person signs out, and its cookie is worth nothing afterwards', async () => {
    const context = await house();
    const cookie = granted(await signIn(context, DESK));
    const { actor, sessionId } = await whoAsks(context.database, cookieText(cookie));
    granted(signOut({ ...context, actor }, { sessionId }));
    expect((await whoAsks(context.database, cookieText(cookie))).actor).toEqual(NOBODY);
  });

  it(`ends ${SESSION_DAYS} days after signing in`, async () => {
    const context = await house();
    const cookie = granted(await signIn(context, DESK));
    const past = new Date(Date.now() - 1000).toISOString();
    const ends = context.database.raw.prepare('SELECT expires_at FROM session').pluck().get();
    expect(Date.parse(String(ends)) - Date.now()).toBeGreaterThan((SESSION_DAYS - 0.01) * 86_400_000);
    context.database.raw.prepare('UPDATE session SET expires_at = ?').run(past);
    expect((await whoAsks(context.database, cookieText(cookie))).actor).toEqual(NOBODY);
  });

  it('is out at once when its user is disabled', async () => {
    const context = await house();
    const cookie = granted(await signIn(context, DESK));
    const user = findUserByEmail(context.database.db, DESK.email);
    changeUserRow(context.database.db, user?.id ?? '', { disabled_at: new Date(), updated_at: new Date() });
    expect((await whoAsks(context.database, cookieText(cookie))).actor).toEqual(NOBODY);
  });
});

describe('the throttle', () => {
  it('holds an account back after some wrong passwords, also against the right one, says how long, and lets go', async () => {
    const context = await house();
    for (let count = 0; count < TRIES.account; count += 1)
      expect(
        await signIn(later(context, count), { ...DESK, password: `wrong ${count}`, address: `192.0.2.${count}` }),
      ).toMatchObject({
        reason: { code: 'sign-in-refused' },
      });
    const held = await signIn(later(context, 5), DESK);
    expect(held).toMatchObject({ ok: false, reason: { code: 'too-many-tries' } });
    expect(held.ok ? '' : held.reason.sentence).toContain('Wait 10 minutes');
    expect((await signIn(later(context, TRIES.window_minutes + 0.1), DESK)).ok).toBe(true);
  });

  it('counts tries that come at once one by one', async () => {
    const context = await house();
    const tries = Array.from({ length: TRIES.account * 2 }, () => signIn(context, { ...DESK, password: 'wrong' }));
    const codes = (await Promise.all(tries)).map((answer) => (answer.ok ? '' : answer.reason.code));
    expect(codes.filter((code) => code === 'sign-in-refused')).toHaveLength(TRIES.account);
    expect(codes.filter((code) => code === 'too-many-tries')).toHaveLength(TRIES.account);
  });

  it('holds an address back that tries many accounts, and no other address', async () => {
    const context = await house();
    for (let count = 0; count < TRIES.address; count += 1)
      await signIn(context, { ...DESK, email: `guess${count}@house.example` });
    expect(await signIn(context, DESK)).toMatchObject({ reason: { code: 'too-many-tries' } });
    expect((await signIn(context, { ...DESK, address: '192.0.2.8' })).ok).toBe(true);
  });

  it('counts nothing against those who know their password', async () => {
    const context = await house();
    for (let count = 0; count < TRIES.account + 2; count += 1) granted(await signIn(later(context, count / 100), DESK));
    expect(context.database.raw.prepare('SELECT count(*) FROM sign_in_try').pluck().get()).toBe(0);
  });
});

describe('a one-time password', () => {
  it.each(USER_ROLES)('lets a new %s do nothing but choose a password', async (role) => {
    const context = await demoHouseContext();
    const added = granted(await addUser({ ...context, actor: HOUSE_ITSELF }, { ...PEOPLE[role] }));
    expect(added.password).toMatch(/^([a-z2-9A]{4}-){3}[a-z2-9A]{4}$/);
    const cookie = granted(await signIn({ ...context, actor: NOBODY }, { ...DESK, ...added }));
    const { actor, sessionId } = await whoAsks(context.database, cookieText(cookie));
    expect(actor.role).toBe('one-time');
    expect(findEnquiries({ ...context, actor }, EVERY_ENQUIRY)).toMatchObject({
      reason: { code: 'password-to-choose' },
    });
    granted(await choosePassword({ ...context, actor }, { present: added.password, next: PASSWORD, sessionId }));
    expect((await whoAsks(context.database, cookieText(cookie))).actor.role).toBe(role);
    expect((await signIn({ ...context, actor: NOBODY }, { ...DESK, ...added })).ok).toBe(false);
  });
});

describe('a password', () => {
  it.each([
    ['short', 'eleven char', 'password-too-short'],
    ['endless', 'ab'.repeat(65), 'password-too-long'],
    ['the email', PEOPLE.desk.email, 'password-too-easy'],
    ['one letter many times', 'aaaaaaaaaaaaaaaa', 'password-too-easy'],
    ['the present one', PASSWORD, 'password-the-same'],
  ])('is not taken when it is %s', async (_name, next, code) => {
    const context = await house();
    const cookie = granted(await signIn(context, DESK));
    const { actor, sessionId } = await whoAsks(context.database, cookieText(cookie));
    const own = { ...context, actor };
    expect(await choosePassword(own, { present: PASSWORD, next, sessionId })).toMatchObject({ reason: { code } });
  });

  it('is changed by who knows the present one, and the other sessions end', async () => {
    const context = await house();
    const here = granted(await signIn(context, DESK));
    const elsewhere = granted(await signIn(context, DESK));
    const { actor, sessionId } = await whoAsks(context.database, cookieText(here));
    const own = { ...context, actor };
    const next = 'eight iron doors shut';
    expect(await choosePassword(own, { present: 'not this one', next, sessionId })).toMatchObject({
      reason: { code: 'password-wrong' },
    });
    granted(await choosePassword(own, { present: PASSWORD, next, sessionId }));
    expect((await whoAsks(context.database, cookieText(here))).actor).toEqual(actor);
    expect((await whoAsks(context.database, cookieText(elsewhere))).actor).toEqual(NOBODY);
    expect((await signIn(context, DESK)).ok).toBe(false);
    expect((await signIn(context, { ...DESK, password: next })).ok).toBe(true);
  });

  it('stands nowhere in the database, nor does the log hold one', async () => {
    const context = await house();
    await signIn(context, DESK);
    await signIn(context, { ...DESK, password: 'another wrong thing' });
    const bytes = context.database.raw.serialize().toString('latin1');
    expect(bytes.includes(PASSWORD)).toBe(false);
    expect(bytes.includes('another wrong thing')).toBe(false);
    expect(bytes.includes(PEOPLE.desk.email)).toBe(true);
  });
});

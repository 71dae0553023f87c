import { describe, expect, it } from 'vitest';
import { insertBooking, insertBookingUnit } from '#db/queries/bookings.ts';
import type { Context } from '#lib/services/context.ts';
import { cancelBooking } from '#lib/services/yard/cancel-booking.ts';
import { finishPicking } from '#lib/services/yard/picking/finish-picking.ts';
import { openPicking } from '#lib/services/yard/picking/open-picking.ts';
import { recordChainTried, recordTorqueTest } from '#lib/services/yard/picking/record-check.ts';
import { releaseUnits } from '#lib/services/yard/release-units.ts';
import { takeScan } from '#lib/services/yard/take-scan.ts';
import { granted } from '#tests/support/granted.ts';
import { AIR_JOB, type BookedJob, bookedJob, JOB_STARTS } from '#tests/support/houses/booked-job.ts';
import { checkAll, pickAll, picking, scanned } from '#tests/support/houses/yard-scans.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });

function serialOf(job: BookedJob, model: string): string {
  return picking(job).lines.find((line) => line.model === model)?.code ?? '';
}

/** Another unit of the model that this booking does not hold. */
function otherOf({ context }: BookedJob, model: string): string {
  const sql = `SELECT serial FROM unit WHERE model_number = ? AND state = 'ready'
    AND serial NOT IN (SELECT unit_serial FROM booking_unit) ORDER BY serial DESC`;
  return String(context.database.raw.prepare(sql).pluck().get(model));
}

function set({ context }: BookedJob, serial: string, column: string, value: unknown): void {
  context.database.raw.prepare(`UPDATE unit SET ${column} = ? WHERE serial = ?`).run(value, serial);
}

interface Elsewhere {
  readonly serial: string;
  readonly starts: string;
  readonly ends: string;
}

function bookElsewhere({ context }: BookedJob, { serial, starts, ends }: Elsewhere): void {
  const db = context.database.db;
  const booking_id = insertBooking(db, { number: 'B-00900', state: 'confirmed' });
  const days = { starts_on: starts, ends_before: ends, free_again_on: ends };
  insertBookingUnit(db, { booking_id, unit_serial: serial, ...days });
}

function as(job: BookedJob, role: Context['actor']['role']): BookedJob {
  return { ...job, context: { ...job.context, actor: { id: role, name: role, role } } };
}

describe('a booking is picked', () => {
  it('bay by bay in walking order, and every scan takes one piece', async () => {
    const job = await bookedJob();
    const before = picking(job);
    const order = job.context.database.raw.prepare('SELECT depot, code, walk_order FROM bay').all();
    const walk = new Map(
      order.map((row) => Object.values(row as object)).map(([depot, code, at]) => [`${depot} ${code}`, Number(at)]),
    );
    const places = before.lines.map(({ depot, bay }) => walk.get(`${depot} ${bay}`) ?? 0);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(scanned(job, { kind: 'pick', code: `]C0${serialOf(job, 'D-112').toLowerCase()} ` })).toMatchObject({
      ok: true,
    });
    expect(
      picking(job)
        .lines.filter(({ picked }) => picked)
        .map(({ model }) => model),
    ).toEqual(['D-112']);
    pickAllOthers(job);
    expect(picking(job).state).toBe('allocated');
    checkAll(job);
    expect(picking(job).open).toEqual([]);
    expect(finishPicking(job.context, job)).toMatchObject({ ok: true, value: { state: 'picked' } });
    expect(finishPicking(job.context, job)).toMatchObject(REFUSED('picked-already'));
    const log = job.context.database.raw
      .prepare("SELECT count(*) FROM audit_entry WHERE action = 'piece picked'")
      .pluck()
      .get();
    expect(log).toBe(before.lines.filter(({ kind }) => kind === 'unit').length);
  });

  it('only by those who may, and only when it is confirmed and here', async () => {
    const job = await bookedJob();
    const code = serialOf(job, 'D-112');
    expect(scanned(as(job, 'yard'), { kind: 'pick', code })).toMatchObject({ ok: true });
    for (const role of ['contractor', 'signed-out', 'one-time'] as const) {
      expect(scanned(as(job, role), { kind: 'undo', code }).ok).toBe(false);
      expect(openPicking(as(job, role).context, job.number).ok).toBe(false);
      expect(finishPicking(as(job, role).context, job).ok).toBe(false);
    }
    expect(openPicking(job.context, 'B-99999')).toMatchObject(REFUSED('no-such-booking'));
    const held = await bookedJob();
    held.context.database.raw.prepare("UPDATE booking SET state = 'held' WHERE number = ?").run(held.number);
    expect(scanned(held, { kind: 'pick', code })).toMatchObject(REFUSED('booking-not-confirmed'));
    granted(cancelBooking(held.context, { number: held.number, reason: 'not needed' }));
    expect(scanned(held, { kind: 'pick', code })).toMatchObject(REFUSED('booking-not-in-the-yard'));
  });

  it('another free unit of the same model takes the place of the one that was held, once', async () => {
    const job = await bookedJob();
    const [held, other] = [serialOf(job, 'D-112'), otherOf(job, 'D-112')];
    expect(scanned(job, { kind: 'pick', code: other })).toMatchObject({
      ok: true,
      value: { sentence: `${other} picked in place of ${held}.` },
    });
    expect(serialOf(job, 'D-112')).toBe(other);
    expect(scanned(job, { kind: 'pick', code: held })).toMatchObject(REFUSED('model-complete'));
    expect(scanned(job, { kind: 'pick', code: other })).toMatchObject(REFUSED('unit-picked-already'));
    expect(scanned(job, { kind: 'undo', code: other })).toMatchObject({ ok: true });
    expect(scanned(job, { kind: 'pick', code: held })).toMatchObject({ ok: true });
    expect(serialOf(job, 'D-112')).toBe(held);
  });

  it('a wrong, held back, booked, due or uncertified unit is refused with its reason and nothing changes', async () => {
    const job = await bookedJob();
    const [held, other] = [serialOf(job, 'D-112'), otherOf(job, 'D-112')];
    expect(scanned(job, { kind: 'pick', code: 'D999-01' })).toMatchObject(REFUSED('no-such-unit'));
    for (const model of ['S-222', 'S-104'])
      expect(scanned(job, { kind: 'pick', code: otherOf(job, model) })).toMatchObject(REFUSED('not-in-this-job'));
    expect(scanned(job, { kind: 'pick', code: otherOf(job, 'K-104') })).toMatchObject(REFUSED('stand-in-refused'));
    expect(scanned(job, { kind: 'pick', code: 'BAY:VEN/A01' })).toMatchObject(REFUSED('scan-wrong-label'));
    expect(scanned(job, { kind: 'pick', code: '5012345678900' })).toMatchObject(REFUSED('scan-unreadable'));
    for (const state of ['quarantine', 'workshop', 'out']) {
      set(job, held, 'state', state);
      expect(scanned(job, { kind: 'pick', code: held })).toMatchObject(REFUSED('unit-not-ready'));
    }
    set(job, held, 'state', 'ready');
    set(job, held, 'inspection_due_on', '2026-03-17');
    set(job, held, 'inspection_done_on', '2025-03-17');
    expect(scanned(job, { kind: 'pick', code: held })).toMatchObject({
      ok: false,
      reason: { code: 'unit-due-inside-hire', sentence: `${held}: inspection due 2026-03-17, before the hire ends.` },
    });
    set(job, held, 'inspection_due_on', '2027-03-17');
    set(job, held, 'inspection_done_on', null);
    expect(scanned(job, { kind: 'pick', code: held })).toMatchObject(REFUSED('certificate-missing'));
    bookElsewhere(job, { serial: other, starts: JOB_STARTS, ends: '2026-03-20' });
    expect(scanned(job, { kind: 'pick', code: other })).toMatchObject({
      ok: false,
      reason: { code: 'unit-of-another-booking', sentence: `${other} is booked for B-00900.` },
    });
    expect(picking(job).lines.every(({ picked }) => !picked)).toBe(true);
  });

  it('a unit that is needed elsewhere before its turnaround is over is not free', async () => {
    const job = await bookedJob();
    const other = otherOf(job, 'D-112');
    bookElsewhere(job, { serial: other, starts: '2026-03-18', ends: '2026-03-20' });
    expect(scanned(job, { kind: 'pick', code: other })).toMatchObject(REFUSED('unit-not-free'));
  });

  it('another model stands in only by the rules, and only with the settings that the site sheet says', async () => {
    const came: Record<string, string> = {};
    for (const model of ['D-153', 'D-117', 'H-101', 'R-138', 'R-103', 'R-203']) {
      const job = await bookedJob();
      const answer = scanned(job, { kind: 'pick', code: otherOf(job, model) });
      came[model] = answer.ok ? 'taken' : answer.reason.code;
      expect(picking(job).lines.filter(({ picked }) => picked).length).toBe(answer.ok ? 1 : 0);
    }
    // Too strong for the restraint; fits; its square does not join; longer, fits; holds one way only; set up in another way.
    expect(came).toEqual({
      'D-153': 'stand-in-refused',
      'D-117': 'taken',
      'H-101': 'stand-in-refused',
      'R-138': 'taken',
      'R-103': 'stand-in-refused',
      'R-203': 'stand-in-changes-settings',
    });
  });

  it('counted pieces go by number, and the number must be right', async () => {
    const job = await bookedJob();
    expect(scanned(job, { kind: 'count', code: 'MODEL:S-309', count: 0 })).toMatchObject(REFUSED('count-differs'));
    expect(scanned(job, { kind: 'count', code: 'MODEL:S-231', count: 1 })).toMatchObject(REFUSED('not-in-this-job'));
    expect(scanned(job, { kind: 'count', code: 'BAY:VEN/A01', count: 1 })).toMatchObject(REFUSED('scan-wrong-label'));
    expect(scanned(job, { kind: 'count', code: 'MODEL:S-309', count: 1 })).toMatchObject({ ok: true });
    expect(scanned(job, { kind: 'count', code: 'MODEL:S-309', count: 1 })).toMatchObject(
      REFUSED('pieces-picked-already'),
    );
    expect(scanned(job, { kind: 'undo', code: 'MODEL:S-309' })).toMatchObject({ ok: true });
    expect(scanned(job, { kind: 'undo', code: 'MODEL:S-309' })).toMatchObject(REFUSED('not-picked'));
    expect(scanned(job, { kind: 'undo', code: serialOf(job, 'D-112') })).toMatchObject(REFUSED('not-picked'));
    expect(scanned(job, { kind: 'undo', code: 'BAY:VEN/A01' })).toMatchObject(REFUSED('scan-wrong-label'));
  });

  it('a scan that is sent twice is answered twice and done once', async () => {
    const { context, number } = await bookedJob();
    const code = serialOf({ context, number }, 'D-112');
    const scan = { kind: 'pick', key: 'same-key-1', code } as const;
    const first = takeScan(context, { number, scan });
    expect(first.ok).toBe(true);
    expect(takeScan(context, { number, scan })).toEqual(first);
    expect(takeScan(context, { number, scan: { ...scan, code: 'D999-01' } })).toMatchObject(REFUSED('scan-key-used'));
    const wrong = { kind: 'pick', key: 'same-key-2', code: 'D999-01' } as const;
    expect(takeScan(context, { number, scan: wrong })).toEqual(takeScan(context, { number, scan: wrong }));
    const moves = context.database.raw
      .prepare("SELECT count(*) FROM booking_move WHERE what = 'picked by scan'")
      .pluck()
      .get();
    expect(moves).toBe(1);
  });
});

describe('before a booking counts as picked', () => {
  it('what the rules make obligatory cannot be left behind, and the sentence says why', async () => {
    const job = await bookedJob();
    const charger = serialOf(job, 'S-103');
    pickAll(job);
    checkAll(job);
    granted(releaseUnits(job.context, { number: job.number, serials: [charger], why: 'forgotten' }));
    expect(finishPicking(job.context, job)).toMatchObject({
      ok: false,
      reason: {
        code: 'obligatory-missing',
        sentence:
          'Cannot be left behind: 1 × S-103 Charger for 18 and 36 V packs, 230 V, CEE 7/7: The packs are charged at the place (230 V, CEE 7/7).',
      },
    });
    const air = await bookedJob(AIR_JOB);
    const told = picking(air).open.join(' ');
    for (const words of ['S-214 Hose restraint', 'R-153 Twin-point arm', 'S-309 Tool lanyard', 'C-207 Torque limiter'])
      expect(told).toContain(words);
  });

  it('every chain of the job is tried with the very units that go', async () => {
    const { context, number } = await bookedJob();
    const job = { context, number };
    const [chain] = picking(job).chains;
    const id = chain?.id ?? '';
    expect(id).toMatch(/^D-112 – C-203 – H-104 – /);
    expect(recordChainTried(context, { number, id: 'D-1 – H-1' })).toMatchObject(REFUSED('no-such-chain'));
    expect(recordChainTried(context, { number, id })).toMatchObject(REFUSED('chain-incomplete'));
    pickAll(job);
    granted(recordChainTried(context, { number, id }));
    expect(picking(job).chains[0]?.done).toMatchObject({ who: 'Test desk', passed: true });
    expect(finishPicking(context, job)).toMatchObject(REFUSED('picking-open'));
    const drive = serialOf(job, 'D-112');
    granted(scanned(job, { kind: 'undo', code: drive }));
    granted(scanned(job, { kind: 'pick', code: otherOf(job, 'D-112') }));
    expect(picking(job).chains[0]?.done).toBeNull();
  });

  it('the function test at torque is kept with value, unit and instrument, and holds within the limiter’s error only', async () => {
    const { context, number } = await bookedJob();
    const job = { context, number };
    pickAll(job);
    const limiter = picking(job).tests.find((test) => test.limiter !== null);
    const drive = picking(job).tests.find((test) => test.limiter === null);
    const { serial = '', limiter: facts } = limiter ?? {};
    const [set_nm, error] = [facts?.highest ?? 0, facts?.error ?? 0];
    const tested = (change: object) =>
      recordTorqueTest(context, { number, serial, set_nm, measured_nm: set_nm, instrument: 'Bench 7', ...change });
    expect(tested({ serial: serialOf(job, 'H-104') })).toMatchObject(REFUSED('no-such-test'));
    expect(tested({ instrument: ' ' })).toMatchObject(REFUSED('instrument-missing'));
    expect(tested({ measured_nm: 0 })).toMatchObject(REFUSED('torque-missing'));
    expect(tested({ set_nm: null })).toMatchObject(REFUSED('setting-missing'));
    expect(tested({ set_nm: set_nm * 2 })).toMatchObject(REFUSED('setting-outside-range'));
    expect(tested({ measured_nm: set_nm * (1 + error) * 1.01 })).toMatchObject({ ok: true, value: { passed: false } });
    expect(picking(job).open.join(' ')).toContain(`${serial} failed its function test`);
    expect(tested({ measured_nm: set_nm * (1 + error) })).toMatchObject({ ok: true, value: { passed: true } });
    expect(picking(job).tests.find((test) => test.serial === serial)?.done).toMatchObject({
      set_nm,
      instrument: 'Bench 7',
      who: 'Test desk',
      passed: true,
    });
    expect(tested({ serial: drive?.serial, set_nm: null, measured_nm: 55 })).toMatchObject({ ok: true });
  });
});

function pickAllOthers(job: BookedJob): void {
  for (const line of picking(job).lines.filter(({ picked }) => !picked))
    granted(
      line.kind === 'unit'
        ? scanned(job, { kind: 'pick', code: line.code })
        : scanned(job, { kind: 'count', code: `MODEL:${line.code}`, count: line.count }),
    );
}

import { describe, expect, it } from 'vitest';
import { insertBooking, insertBookingUnit } from '#db/queries/bookings.ts';
import { addCase, packAnew } from '#lib/services/yard/packing/change-load.ts';
import { loadPaper } from '#lib/services/yard/packing/load-papers.ts';
import { openPacking, type PackingView } from '#lib/services/yard/packing/open-packing.ts';
import { granted } from '#tests/support/granted.ts';
import { type BookedJob, bookedJob, JOB_STARTS, TWO_CREWS_JOB } from '#tests/support/houses/booked-job.ts';
import { checkAll, pickAll, pickedJob, picking, scanned } from '#tests/support/houses/yard-scans.ts';
import { readPrintedBarcodes } from '#tests/support/papers/read-barcodes.ts';
import { readPdf } from '#tests/support/papers/read-pdf.ts';
import { textsAt } from '#tests/support/papers/xml-schema.ts';

const REFUSED = (code: string) => ({ ok: false, reason: { code } });

function packing({ context, number }: BookedJob): PackingView {
  return granted(openPacking(context, number));
}

function codeOf(job: BookedJob, model: string): string {
  return (
    packing(job)
      .cases.flatMap(({ contents }) => contents)
      .find((piece) => piece.model === model)?.code ?? ''
  );
}

describe('a load is packed', () => {
  it('as proposed, piece by piece, with mass and lift mark as they stand', async () => {
    const job = await bookedJob();
    const proposed = packing(job);
    expect(proposed.isStored).toBe(false);
    expect(proposed.proofs).toEqual(['1 case: fewer would not hold these pieces under the lift limit (proven).']);
    pickAll(job);
    for (const { contents } of proposed.cases)
      for (const { serial, code } of contents)
        granted(scanned(job, { kind: 'pack', code: serial ?? `MODEL:${code}`, case: null }));
    const packed = packing(job);
    expect([packed.packed, packed.pieces, packed.isStored]).toEqual([10, 10, true]);
    for (const [index, box] of packed.cases.entries()) {
      const empty = box.name === 'loose' ? 0 : 7.9;
      expect(box.now_kg).toBeCloseTo(box.mass_kg, 9);
      expect(box.mass_kg).toBeCloseTo(empty + box.contents.reduce((sum, { mass_kg }) => sum + mass_kg, 0), 9);
      expect(box.contents.map(({ code }) => code)).toEqual(proposed.cases[index]?.contents.map(({ code }) => code));
    }
    expect(packed.routes.map(({ transport, standing }) => [transport, standing])).toEqual([
      ['road', 'with marks'],
      ['sea', 'with marks'],
      ['air', 'ask the carrier first'],
    ]);
  });

  it('refuses what was not picked, does not belong, is in already, or does not go in', async () => {
    const job = await bookedJob();
    const drive = codeOf(job, 'D-112');
    expect(scanned(job, { kind: 'pack', code: drive, case: null })).toMatchObject(REFUSED('not-picked'));
    pickAll(job);
    expect(scanned(job, { kind: 'pack', code: 'D153-01', case: null })).toMatchObject(REFUSED('not-in-this-job'));
    expect(scanned(job, { kind: 'pack', code: 'BAY:VEN/A01', case: null })).toMatchObject(REFUSED('scan-wrong-label'));
    expect(scanned(job, { kind: 'unpack', code: drive })).toMatchObject(REFUSED('not-packed'));
    expect(scanned(job, { kind: 'unpack', code: 'BAY:VEN/A01' })).toMatchObject(REFUSED('scan-wrong-label'));
    expect(scanned(job, { kind: 'pack', code: drive, case: 9 })).toMatchObject(REFUSED('no-such-case'));
    const loose = packing(job).cases.find(({ name }) => name === 'loose')?.number ?? 0;
    expect(scanned(job, { kind: 'pack', code: drive, case: loose })).toMatchObject(REFUSED('case-loose'));
    granted(scanned(job, { kind: 'pack', code: drive, case: null }));
    expect(scanned(job, { kind: 'pack', code: drive, case: 1 })).toMatchObject(REFUSED('piece-packed-already'));
    const small = granted(addCase(job.context, { number: job.number, name: 'Case, small', crew: 1 })).case;
    expect(scanned(job, { kind: 'pack', code: codeOf(job, 'R-134'), case: small })).toMatchObject(
      REFUSED('piece-too-large'),
    );
    expect(addCase(job.context, { number: job.number, name: 'Box', crew: 1 })).toMatchObject(REFUSED('no-such-case'));
    granted(scanned(job, { kind: 'unpack', code: drive }));
    expect(packing(job).packed).toBe(0);
    granted(packAnew(job.context, { number: job.number }));
    expect(packing(job).isStored).toBe(false);
  });

  it('a unit that came in later has no case until somebody chooses one, and full cases stay closed', async () => {
    const job = await bookedJob();
    pickAll(job);
    granted(scanned(job, { kind: 'pack', code: codeOf(job, 'D-112'), case: null }));
    const head = codeOf(job, 'H-104');
    const other = job.context.database.raw
      .prepare("SELECT serial FROM unit WHERE model_number = 'H-104' AND serial <> ? AND state = 'ready'")
      .pluck()
      .get(head);
    granted(scanned(job, { kind: 'undo', code: head }));
    granted(scanned(job, { kind: 'pick', code: String(other) }));
    expect(packing(job).unassigned.map(({ code }) => code)).toEqual([other]);
    expect(scanned(job, { kind: 'pack', code: String(other), case: null })).toMatchObject(REFUSED('case-missing'));
    granted(scanned(job, { kind: 'pack', code: String(other), case: 1 }));
    expect(packing(job).unassigned).toEqual([]);
    job.context.database.raw.prepare("UPDATE house SET facts_json = json_set(facts_json, '$.lift_limit_kg', 16)").run();
    expect(scanned(job, { kind: 'pack', code: codeOf(job, 'R-134'), case: 1 })).toMatchObject(
      REFUSED('case-too-heavy'),
    );
  });
});

describe('counted pieces of two crews', () => {
  const lying = (job: BookedJob) =>
    packing(job).cases.flatMap(({ number, crew, contents }) =>
      contents.flatMap(({ model, count, packed }) => (model === 'S-309' ? [{ number, crew, count, packed }] : [])),
    );

  it('go into the case of their own crew, and only when that has its own, out of the other one', async () => {
    const job = await bookedJob(TWO_CREWS_JOB);
    const [first, second] = lying(job);
    expect([first?.crew, second?.crew]).toEqual([1, 2]);
    pickAll(job);
    const into = (number: number) => scanned(job, { kind: 'pack', code: 'MODEL:S-309', case: number });
    granted(into(second?.number ?? 0));
    expect(lying(job)).toEqual([first, { ...second, packed: true }]);
    granted(into(second?.number ?? 0));
    expect(lying(job).map(({ number, packed }) => [number, packed])).toEqual([
      [second?.number, true],
      [second?.number, true],
    ]);
    expect(into(second?.number ?? 0)).toMatchObject(REFUSED('piece-packed-already'));
  });
});

describe('the papers of a load', () => {
  it('labels name case, mass, lift mark and marks, and their bars are read back from the printed page', async () => {
    const job = pickedJob(await bookedJob());
    const { cases, number } = packing(job);
    const labels = granted(await loadPaper(job.context, { number, kind: 'case-labels' }));
    const text = (await readPdf(labels.bytes)).text;
    for (const box of cases) {
      expect(text).toContain(`${box.name === 'loose' ? 'Loose piece' : 'Case'} ${box.number} of ${cases.length}`);
      expect(text).toContain(`${(Math.round(box.mass_kg * 10) / 10).toFixed(1)} kg`);
      expect(text).toContain(`Lift: ${box.lift}`);
    }
    expect(text).toContain('UN 3481 LITHIUM ION BATTERIES PACKED WITH EQUIPMENT');
    const codes = (await readPrintedBarcodes(labels.bytes)).map(({ format, text: code }) => `${format} ${code}`);
    expect(codes.toSorted()).toEqual(cases.map((box) => `Code128 CASE:${number}/${box.number}`));
    expect(granted(await loadPaper(job.context, { number, kind: 'case-labels' })).bytes).toEqual(labels.bytes);
  });

  it('the packing list holds every serial number, the certificates that travel, and the bars of the booking', async () => {
    const job = pickedJob(await bookedJob());
    const { number } = job;
    const list = granted(await loadPaper(job.context, { number, kind: 'packing-list' }));
    const text = (await readPdf(list.bytes)).text;
    for (const { kind, code } of picking(job).lines) if (kind === 'unit') expect(text).toContain(code);
    expect(text).toContain('Certificates that travel with it');
    const kept = job.context.database.raw
      .prepare(`SELECT count(inspection_done_on) + count(calibration_done_on) FROM unit JOIN booking_unit ON unit_serial = serial
        WHERE inspection_due_on IS NOT NULL OR calibration_due_on IS NOT NULL`)
      .pluck()
      .get();
    expect(text.match(/\b(inspection|calibration) +\d/g)?.length).toBe(kept);
    expect((await readPrintedBarcodes(list.bytes)).map(({ text: code }) => code)).toEqual([number]);
    expect(granted(await loadPaper(job.context, { number, kind: 'site-sheet' })).bytes.length).toBeGreaterThan(5_000);
  });

  it('the certificates of a load stand on a paper of their own, a line for each that is kept', async () => {
    const job = pickedJob(await bookedJob());
    const paper = granted(await loadPaper(job.context, { number: job.number, kind: 'certificates' }));
    const list = granted(await loadPaper(job.context, { number: job.number, kind: 'packing-list' }));
    const lines = (bytes: Uint8Array) => readPdf(bytes).text.match(/^.*\b(inspection|calibration) +\d.*$/gm) ?? [];
    expect(lines(paper.bytes).length).toBeGreaterThan(3);
    expect(lines(paper.bytes).length).toBe(lines(list.bytes).length);
    expect(readPdf(paper.bytes).text).toContain(job.number);
    await expect(readPrintedBarcodes(paper.bytes)).resolves.toMatchObject([{ text: job.number }]);
  });

  it('the despatch advice names the cases and serial numbers as they are packed', async () => {
    const job = pickedJob(await bookedJob());
    const xml = granted(await loadPaper(job.context, { number: job.number, kind: 'despatch-xml' }));
    const text = new TextDecoder().decode(xml.bytes);
    const serials = picking(job)
      .lines.filter(({ kind }) => kind === 'unit')
      .map(({ code }) => code);
    for (const serial of serials) expect(text).toContain(`<cbc:SerialID>${serial}</cbc:SerialID>`);
    expect(textsAt(text, '//cac:TransportHandlingUnit/cbc:ID').length).toBe(packing(job).cases.length);
  });

  it('what is withdrawn without a quote gets labels only, and an empty booking nothing', async () => {
    const { context } = await bookedJob();
    const db = context.database.db;
    const booking_id = insertBooking(db, { number: 'B-00777', state: 'confirmed' });
    const empty = await loadPaper(context, { number: 'B-00777', kind: 'case-labels' });
    expect(empty).toMatchObject(REFUSED('nothing-to-pack'));
    const days = { starts_on: JOB_STARTS, ends_before: '2026-03-20', free_again_on: '2026-03-21' };
    insertBookingUnit(db, { booking_id, unit_serial: 'D153-01', ...days });
    expect(await loadPaper(context, { number: 'B-00777', kind: 'packing-list' })).toMatchObject(
      REFUSED('booking-without-quote'),
    );
    const labels = granted(await loadPaper(context, { number: 'B-00777', kind: 'case-labels' }));
    expect((await readPdf(labels.bytes)).text).toContain('Case 1 of 1');
    const stranger = { ...context, actor: { id: 'x', name: 'x', role: 'contractor' as const } };
    expect((await loadPaper(stranger, { number: 'B-00777', kind: 'case-labels' })).ok).toBe(false);
    expect(openPacking(stranger, 'B-00777').ok).toBe(false);
  });
});

describe('checks after a swap', () => {
  it('a booking is not picked again until what changed was tried anew', async () => {
    const job = await bookedJob();
    pickAll(job);
    checkAll(job);
    expect(picking(job).open).toEqual([]);
    const code = picking(job).lines.find(({ model }) => model === 'C-203')?.code ?? '';
    granted(scanned(job, { kind: 'undo', code }));
    granted(scanned(job, { kind: 'pick', code }));
    expect(picking(job).open).toEqual([]);
  });
});

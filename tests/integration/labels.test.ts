import { describe, expect, it } from 'vitest';
import { labelChoices } from '#lib/services/stock/label-choices.ts';
import { newUnitForm } from '#lib/services/stock/new-unit-form.ts';
import { type LabelsAsked, labelSheet, printLabels } from '#lib/services/stock/print-labels.ts';
import { readScan } from '#lib/stock/scan-code.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { readPrintedBarcodes } from '#tests/support/papers/read-barcodes.ts';

const ALL: LabelsAsked = { kind: 'unit', depot: '', serials: [], model: '', bay: '', skip: 0 };

describe('labels of the house', () => {
  it('of a model are read back from the printed page as the serial numbers of its units', async () => {
    const context = await demoHouseContext('yard');
    const serials = context.database.raw
      .prepare("SELECT serial FROM unit WHERE model_number = 'D-112' ORDER BY serial")
      .pluck()
      .all();
    const printed = granted(await printLabels(context, { ...ALL, model: 'D-112', skip: 2 }));
    expect(printed).toMatchObject({ fileName: 'labels-unit.pdf', mime: 'application/pdf' });
    const codes = await readPrintedBarcodes(printed.bytes, 300);
    for (const format of ['Code128', 'QRCode'])
      expect(
        codes
          .filter((one) => one.format === format)
          .map(({ text }) => text)
          .sort(),
      ).toEqual(serials);
  });

  it('of bays and boxes say what a scan field understands', async () => {
    const context = await demoHouseContext('yard');
    const bays = granted(labelSheet(context, { ...ALL, kind: 'bay', depot: 'HAL', bay: 'A01' })).labels;
    expect(bays.map(({ code }) => readScan(code))).toEqual([{ kind: 'bay', depot: 'HAL', bay: 'A01' }]);
    const boxes = granted(labelSheet(context, { ...ALL, kind: 'model', depot: 'VEN' })).labels;
    expect(boxes.map(({ code }) => readScan(code)).every(({ kind }) => kind === 'model')).toBe(true);
    expect(boxes.length).toBeGreaterThan(4);
  });

  it('are not printed for nothing, nor for the whole house at once', async () => {
    const context = await demoHouseContext('desk');
    expect(labelSheet(context, { ...ALL, serials: ['NO-1'] })).toMatchObject({ reason: { code: 'no-labels' } });
    expect(labelSheet(context, ALL)).toMatchObject({ reason: { code: 'too-many-labels' } });
    expect(labelSheet(context, { ...ALL, depot: 'HAL' })).toMatchObject({ ok: true });
  });

  it('are not for a contractor; a Desk prints them and adds no unit', async () => {
    const contractor = await demoHouseContext('contractor');
    expect(await printLabels(contractor, ALL)).toMatchObject({ reason: { code: 'not-allowed' } });
    expect(labelChoices(contractor)).toMatchObject({ reason: { code: 'not-allowed' } });
    const desk = await demoHouseContext('desk');
    expect(granted(labelChoices(desk)).places).toBe(24);
    expect(newUnitForm(desk)).toMatchObject({ reason: { code: 'not-allowed' } });
    const form = granted(newUnitForm(await demoHouseContext('yard')));
    expect(form.models.map(({ number }) => number)).not.toContain('S-303');
  });
});

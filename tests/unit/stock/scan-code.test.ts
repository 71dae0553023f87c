import { describe, expect, it } from 'vitest';
import { bayCode, caseCode, modelCode, readScan } from '#lib/stock/scan-code.ts';

describe('a scan field', () => {
  it.each([
    ['D112-01', 'D112-01'],
    ['  d112-01 \r\n', 'D112-01'],
    ['D112 - 01', 'D112-01'],
    ['D112–01', 'D112-01'],
    ['Ｄ１１２-０１', 'D112-01'],
    ['*D112-01*', 'D112-01'],
    [']C0D112-01', 'D112-01'],
    [']Q1D112-01', 'D112-01'],
    ['\u0002]C0D112-01\u0003', 'D112-01'],
    ['\u200bD112-01', 'D112-01'],
    ['OLD-7-19B', 'OLD-7-19B'],
  ])('%j is the unit %s', (typed, serial) => {
    expect(readScan(typed)).toEqual({ kind: 'unit', serial });
  });

  it.each([
    ['BAY:VEN/A01', 'VEN', 'A01'],
    [' bay:ven/a01', 'VEN', 'A01'],
    [']Q1BAY:HAL/G-12', 'HAL', 'G-12'],
    ['BAY;VEN/A01', 'VEN', 'A01'],
  ])('%j is a bay', (typed, depot, bay) => {
    expect(readScan(typed)).toEqual({ kind: 'bay', depot, bay });
  });

  it.each([
    ['CASE:B-00012/3', 'B-00012', 3],
    ['case: b-00012 / 3', 'B-00012', 3],
  ])('%j is a case', (typed, booking, number) => {
    expect(readScan(typed)).toEqual({ kind: 'case', booking, number });
  });

  it.each([
    ['B-00012', 'B-00012'],
    ['b12', 'B-00012'],
    ['B-0', 'B-00000'],
    ['B-1234567', 'B-1234567'],
  ])('%j is the booking %s', (typed, number) => {
    expect(readScan(typed)).toEqual({ kind: 'booking', number });
  });

  it('MODEL: names counted pieces, which have no serial number', () => {
    expect(readScan('model:s-303')).toEqual({ kind: 'model', model: 'S-303' });
  });

  it('what a label is printed with is what is read from it', () => {
    expect(readScan(bayCode({ depot: 'VEN', bay: 'A01' }))).toEqual({ kind: 'bay', depot: 'VEN', bay: 'A01' });
    expect(readScan(caseCode({ booking: 'B-00012', number: 3 }))).toEqual({
      kind: 'case',
      booking: 'B-00012',
      number: 3,
    });
    expect(readScan(modelCode('S-303'))).toEqual({ kind: 'model', model: 'S-303' });
  });

  it.each([
    ['', 'Nothing was read: hold the reader on the label, or type the number and press Enter.'],
    [' \t\r', 'Nothing was read: hold the reader on the label, or type the number and press Enter.'],
    ['BAY:VEN', 'BAY:VEN is not a whole bay label: it reads BAY:depot/bay, such as BAY:VEN/A01.'],
    ['CASE:B-00012', 'CASE:B-00012 is not a whole case label: it reads CASE:booking/number, such as CASE:B-00012/1.'],
    [
      '4006381333931',
      '4006381333931 is an article code from a package, not a label of the house: scan the label with the serial number.',
    ],
    [
      'hello',
      'HELLO is no serial number, bay, case or booking of the house: scan the label again, or type the serial number as it is engraved, such as D112-01.',
    ],
    ['D112-01D112-02D112-03'.repeat(4), 'That is too long for a label: scan one label at a time.'],
  ])('%j is answered with a sentence', (typed, sentence) => {
    expect(readScan(typed)).toMatchObject({ kind: 'unknown', sentence });
  });
});

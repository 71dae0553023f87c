import { describe, expect, it } from 'vitest';
import { ratingOf } from '#lib/intake/read-rating.ts';
import { readSizeText } from '#lib/intake/read-size.ts';
import { parseThread } from '#lib/intake/read-thread.ts';
import { recogniseKind } from '#lib/intake/recognise-kind.ts';
import { remarkSizes } from '#lib/intake/remark-sizes.ts';

describe('sizes', () => {
  it.each([
    ['DN150', 150],
    ['DN 150', 150],
    ['dn.150', 150],
    ['150', 150],
    ['150.0', 150],
    ['150mm', 150],
    ['150 mm', 150],
    ['0.15 m', 150],
    ['15 cm', 150],
    ['6"', 150],
    ['6”', 150],
    ['6 in', 150],
    ['6 inch', 150],
    ['6 inches', 150],
    ['NPS 6', 150],
    ['6', 150],
    ['152.4', 150],
    ['Ø150', 150],
    ['150 NB', 150],
    ['NB 150', 150],
    ['1 1/2"', 40],
    ['1-1/2 in', 40],
    ['1½"', 40],
    ['1.5 in', 40],
    ['1&1/2"', 40],
    ['2and half "', 65],
    ['2.5"', 65],
    ['2.5', 65],
    ['3/4"', 20],
    ['½ in', 15],
    ['24"', 600],
    ['24', 600],
    ['48 in', 1200],
    ['DN 65', 65],
    ['80', 80],
    ['75', 75],
    ['20', 20],
    ['63', 50],
    ['110', 100],
    ['114.3', 100],
    ['168.3 mm', 150],
    ['158', 150],
    ['0,5 m', 500],
    ['valve 200', 200],
    ['200 mm dia', 200],
    ['zoll 6', null],
    ['6 Zoll', 150],
    ['6 pouces', 150],
    ['6 pulg', 150],
    ['ДУ 150', 150],
    ['1000', 1000],
    ['1,200', 1200],
    ['0.3', 300],
  ])('%s is DN %s', (text, dn) => {
    const read = readSizeText(text);
    expect(read.kind === 'size' ? read.nominal : null).toBe(dn);
  });

  it('a reducing tee keeps both sizes and says so', () => {
    for (const text of ['200X150', '200 x 150', '200x150 mm', '200 by 150', 'DN 200/150', '8"x6"', '8x6"']) {
      expect(readSizeText(text), text).toEqual({
        kind: 'size',
        low: 150,
        nominal: 150,
        high: 200,
        doubts: ['two values'],
      });
    }
    expect(readSizeText('100x100x100')).toMatchObject({ low: 100, high: 100, doubts: [] });
  });

  it('a range of sizes stays a range', () => {
    expect(readSizeText('150-200')).toMatchObject({ low: 150, high: 200 });
    expect(readSizeText('DN 150-200')).toMatchObject({ low: 150, high: 200 });
    expect(readSizeText('4-6 in')).toMatchObject({ low: 100, high: 150 });
  });

  it.each(['-100', '0', '0.0', '5 mm', '90000', '3500 mm', '-6"', '200"'])('%s is no size of a valve', (text) => {
    expect(readSizeText(text).kind).toBe('implausible');
  });

  it.each(['gate', 'x', '10 bar', 'DN', '150 kg', '', '12-34-56', '150; 200'])(
    '%s cannot be read as a size',
    (text) => {
      expect(readSizeText(text).kind).toBe('unreadable');
    },
  );
});

describe('ratings', () => {
  it.each([
    ['PN16', 'PN 16'],
    ['PN 16', 'PN 16'],
    ['pn-16', null],
    ['16', 'PN 16'],
    ['16.0', 'PN 16'],
    ['16 bar', 'PN 16'],
    ['10', 'PN 10'],
    ['Class 150', 'Class 150'],
    ['150#', 'Class 150'],
    ['150 lb', 'Class 150'],
    ['ANSI 150', 'Class 150'],
    ['ASME B16.5 300', 'Class 300'],
    ['CL600', 'Class 600'],
    ['300', 'Class 300'],
    ['10K', '10K'],
    ['JIS 10K', '10K'],
    ['K16', '16K'],
    ['5 K', '5K'],
    ['PN2.5', 'PN 2.5'],
    ['63', 'PN 63'],
  ])('%s is %s', (text, rating) => {
    expect(ratingOf(text)?.text ?? null).toBe(rating);
    expect(ratingOf(text)?.doubt).toBeUndefined();
  });

  it.each([
    ['1016', 'PN 10'],
    ['10.16', 'PN 10'],
    ['10/16', 'PN 10'],
    ['PN10/16', 'PN 10'],
    ['PN 10/PN 16', 'PN 10'],
    ['1625', 'PN 16'],
    ['Class 150/300', 'Class 150'],
    ['400', 'Class 400'],
  ])('%s can mean two; the lower is taken: %s', (text, rating) => {
    expect(ratingOf(text)).toEqual({ text: rating, doubt: 'two values' });
  });

  it.each([
    ['30', 'PN 30'],
    ['PN 17', 'PN 17'],
    ['145 psi', 'PN 10'],
    ['7K', '7K'],
    ['Class 333', 'Class 333'],
  ])('%s is no standard class and says so', (text, rating) => {
    expect(ratingOf(text)).toEqual({ text: rating, doubt: 'not standard' });
  });

  it.each(['high', 'PN', '', '-16', 'sixteen'])('%s cannot be read', (text) => {
    expect(ratingOf(text)).toBeNull();
  });
});

describe('stem threads', () => {
  it.each([
    ['Tr36x6', 'trapezoidal', 36, 6, undefined],
    ['TR 36 X 6', 'trapezoidal', 36, 6, undefined],
    ['Tr36×6 7e', 'trapezoidal', 36, 6, undefined],
    ['Tr36x12(P6)', 'trapezoidal', 36, 6, 2],
    ['Tr 36x12 P6', 'trapezoidal', 36, 6, 2],
    ['Tr40x21(P7)LH', 'trapezoidal', 40, 7, 3],
    ['Tr36x6(P6)', 'trapezoidal', 36, 6, 1],
    ['Tr36x6 2-start', 'trapezoidal', 36, 6, 2],
    ['Acme 1-1/2-4', 'acme', 38.1, 6.35, undefined],
    ['1 1/2-4 Acme', 'acme', 38.1, 6.35, undefined],
    ['Acme 1.5-4', 'acme', 38.1, 6.35, undefined],
    ['Acme 1" - 5 TPI', 'acme', 25.4, 5.08, undefined],
    ['1-1/4-5 ACME-2G', 'acme', 31.75, 5.08, undefined],
    ['sq 50x6', 'square', 50, 6, undefined],
    ['Square 50 mm x 8', 'square', 50, 8, undefined],
    ['sq 2" x 4 tpi', 'square', 50.8, 6.35, undefined],
  ])('%s', (text, form, major, pitch, starts) => {
    const read = parseThread(text)?.thread;
    expect(read?.form).toBe(form);
    expect((read?.majorDiameter_m ?? 0) * 1000).toBeCloseTo(major, 9);
    expect((read?.pitch_m ?? 0) * 1000).toBeCloseTo(pitch, 9);
    expect(read?.starts).toBe(starts);
  });

  it('the pitch is the number after the x only where no P is given: lead is not pitch', () => {
    // ISO 2904 writes a multiple-start thread as diameter × lead (P pitch).
    expect(parseThread('Tr36x12(P6)')?.thread.pitch_m).toBe(0.006);
    expect(parseThread('Tr36x12')?.thread.pitch_m).toBe(0.012);
    expect(parseThread('Tr36x10(P6)')?.thread).toEqual({
      form: 'trapezoidal',
      majorDiameter_m: 0.036,
      pitch_m: 0.006,
      designation: 'Tr36x10(P6)',
    });
  });

  it.each(['M36x4', '36x6', 'Acme', 'Tr', 'sq', '', 'Tr-36x-6'])('%s is no stem thread that is known', (text) => {
    expect(parseThread(text)).toBeNull();
  });
});

describe('kinds', () => {
  it.each([
    ['Gate', 'gate'],
    ['gate valve', 'gate'],
    ['Sluice valve', 'gate'],
    ['Schieber', 'gate'],
    ['Keilschieber', 'wedge gate'],
    ['Robinet-vanne', 'gate'],
    ['Válvula de compuerta', 'gate'],
    ['Saracinesca', 'gate'],
    ['задвижка', 'gate'],
    ['Butterfly', 'butterfly'],
    ['Burtefly', 'butterfly'],
    ['Buterfly vlv', 'butterfly'],
    ['Absperrklappe', 'butterfly'],
    ['Vanne papillon', 'butterfly'],
    ['válvula mariposa', 'butterfly'],
    ['Globe', 'globe'],
    ['Kugelhahn', 'ball'],
    ['ball valve', 'ball'],
    ['plug valve', 'plug'],
    ['Knife gate', 'knife gate'],
    ['penstock', 'penstock'],
    ['sluice gate', 'penstock'],
    ['Membranventil', 'diaphragm'],
    ['pinch valve', 'pinch'],
    ['Fire hydrant', 'hydrant'],
    ['stop tap', 'stop tap'],
    ['Parallel slide', 'parallel slide gate'],
    ['flexible wedge gate', 'flexible wedge gate'],
    ['double disc gate', 'double disc gate'],
    ['Center butterfly vavle on pipeline 450mm', 'butterfly'],
    ['4"gatevalve,pipeisstillpvc', 'gate'],
  ])('%s is a %s', (text, type) => {
    expect(recogniseKind(text)).toMatchObject({ kind: 'valve', type });
  });

  it.each([
    'Control Valve',
    'Isolating valve',
    'Washout',
    'Boundary Valve',
    'Valve',
    'Vavle on 150mm',
    'Vanne',
    'Wash outvalve and end node covered',
  ])('%s is a valve of no said kind', (text) => {
    expect(recogniseKind(text)).toMatchObject({ kind: 'line valve' });
  });

  it.each([
    ['Air', 'air valve'],
    ['Air Valve', 'air valve'],
    ['DN 25 air valve', 'air valve'],
    ['bends to airvalve  (Right from the tank)', 'air valve'],
    ['Ventouse', 'air valve'],
    ['Non return Valve', 'non-return valve'],
    ['NRV', 'non-return valve'],
    ['Swing check', 'non-return valve'],
    ['Rückschlagklappe', 'non-return valve'],
    ['Pressure reducing valve', 'self-acting valve'],
    ['Safety valve', 'self-acting valve'],
    ['Float valve', 'self-acting valve'],
    ['Flow meter', 'meter or instrument'],
    ['Pump', 'pump'],
    ['Strainer', 'strainer'],
    ['90° bend', 'pipe fitting'],
    ['1&1/2"bendtoreceiveunderdrain', 'pipe fitting'],
    ['Pipe', 'pipe'],
    ['PVC pipe 110', 'pipe'],
    ['Reservoir', 'structure'],
  ])('%s is set aside as %s', (text, what) => {
    expect(recogniseKind(text)).toMatchObject({ kind: 'not operated', what });
  });

  it('a valve that is described by the pipe it sits in stays a valve', () => {
    for (const text of [
      'Gate valve on 100 mm pipe',
      'Valve to pump house',
      'Tee with valve to cross road AC PIPE',
      'valve before the tank',
    ]) {
      expect(recogniseKind(text)?.kind, text).not.toBe('not operated');
    }
  });

  it.each(['', 'Heritage Estate', 'At loop', 'Seeing', '100'])('“%s” names nothing', (text) => {
    expect(recogniseKind(text)).toBeNull();
  });
});

describe('sizes in remarks', () => {
  it.each([
    ['Valve is on 150mm and is not visible', [[150, 'line']]],
    ['150mm valve on pipe', [[150, 'valve']]],
    ['DN 25 air valve', [[25, 'valve']]],
    ['100', [[100, 'line']]],
    ['T off from 600', [[600, 'other pipe']]],
    ['From 4 million 600', [[600, 'other pipe']]],
    [
      'On 100 from 150',
      [
        [150, 'other pipe'],
        [100, 'line'],
      ],
    ],
    ['From 200 1million', [[200, 'other pipe']]],
    [
      'Valve on 600mm feeding linked to 200mm',
      [
        [200, 'other pipe'],
        [600, 'line'],
      ],
    ],
    ['Valve feeding 4milion network', []],
    ['On old line 20000', []],
    ['Valve on 0mm center valve', []],
    ['Isolating  valve on the pipe line 1 pics', []],
    ['Valve on distribution  of 150mm 2pics', [[150, 'line']]],
    ['Center valve on the 200mm DI position  on the roda6 crossing', [[200, 'line']]],
    ['Control valve on transmission line at bore hole 4', []],
    ['Valveon 100', [[100, 'line']]],
    ['Valve on100', [[100, 'line']]],
    ['Butterfly  valve on 2and half "pvcpipe', [[65, 'line']]],
    ['Gate valve 4"pvcpipe', [[100, 'valve']]],
    ['Pipe Diame: 100', [[100, 'pipe']]],
    ['House No 100', []],
    ['100 on 1million', [[100, 'line']]],
    ['Good, was installed by staff for 4yrs now', []],
    ['PN16, DN50  GG25', [[50, 'valve']]],
  ])('%s', (text, want) => {
    expect(remarkSizes(text).map((size) => [size.low, size.of])).toEqual(want);
  });

  it.each([
    ['200X150', 150, 200],
    ['On 150by100', 100, 150],
    ['Valve on300 by 100', 100, 300],
    ['( 6"x6" x4")', 100, 150],
    ['On100by159', null, null],
  ])('%s names two sizes', (text, low, high) => {
    const tee = remarkSizes(text).find((size) => size.of === 'two sizes');
    if (low === null) expect(tee?.low ?? 100).toBe(100);
    else expect(tee).toMatchObject({ low, high });
  });
});

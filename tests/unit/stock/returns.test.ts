import { describe, expect, it } from 'vitest';
import { CONDITIONS, CONTAMINATIONS, consequenceOf, type SeenPiece } from '#lib/stock/check-in.ts';
import { INSTRUCTION_POINTS, loadQuestions } from '#lib/stock/load-check.ts';
import { PAD, signatureSvg } from '#lib/stock/signature.ts';
import { asksDueDate, decideWorkStep, unitAfterWork, WORK_KINDS } from '#lib/stock/work-order.ts';

const whole: SeenPiece = { condition: 'good', contamination: 'none', missingParts: '', note: '', sawOverload: false };
const seen = (change: Partial<SeenPiece>) => consequenceOf({ ...whole, ...change });

describe('a piece that comes back', () => {
  it('is ready when it is good, whole and clean', () => expect(seen({})).toEqual({ unitState: 'ready', work: [] }));

  it('is cleaned when it is dirty, and may be booked for later days meanwhile', () => {
    expect(seen({ condition: 'dirty' })).toEqual({
      unitState: 'back',
      work: [{ kind: 'cleaning', reason: 'came back dirty' }],
    });
  });

  it('is lost when it is missing, whatever else was said', () => {
    expect(seen({ condition: 'missing', contamination: 'sewage' })).toEqual({ unitState: 'lost', work: [] });
  });

  it('is held back and washed first when anything was declared on it, even if it looks good', () => {
    expect(seen({ contamination: 'unknown' })).toEqual({
      unitState: 'quarantine',
      work: [{ kind: 'wash', reason: 'may be contaminated, nobody knows with what' }],
    });
    const bad = seen({
      condition: 'damaged',
      contamination: 'sewage',
      missingParts: 'handle',
      note: 'cracked',
      sawOverload: true,
    });
    expect(bad.work).toEqual([
      { kind: 'wash', reason: 'was in sewage' },
      { kind: 'repair', reason: 'cracked; missing from it: handle' },
      { kind: 'calibration', reason: 'the limiter saw an overload' },
    ]);
  });

  it('is never ready when it is damaged, incomplete, overloaded or contaminated, in any combination', () => {
    let checked = 0;
    for (const condition of CONDITIONS)
      for (const contamination of CONTAMINATIONS)
        for (const missingParts of ['', 'a pin'])
          for (const sawOverload of [false, true]) {
            const piece = { condition, contamination, missingParts, note: '', sawOverload };
            const { unitState, work } = consequenceOf(piece);
            const isBad = condition === 'damaged' || contamination !== 'none' || missingParts !== '' || sawOverload;
            if (condition !== 'missing') expect(unitState === 'quarantine').toBe(isBad);
            if (contamination !== 'none' && condition !== 'missing') expect(work[0]?.kind).toBe('wash');
            checked += 1;
          }
    expect(checked).toBe(80);
  });
});

describe('a work order', () => {
  const order = { number: 'W-2', kind: 'repair', state: 'open' } as const;
  const wash = { number: 'W-1', kind: 'wash', state: 'open' } as const;

  it('begins and ends, in one step or two', () => {
    expect(decideWorkStep({ order, to: 'doing', others: [] })).toEqual({ ok: true, value: 'doing' });
    expect(decideWorkStep({ order, to: 'done', others: [{ ...wash, state: 'done' }] })).toEqual({
      ok: true,
      value: 'done',
    });
    expect(decideWorkStep({ order: wash, to: 'done', others: [order] }).ok).toBe(true);
  });

  it.each([
    ['work-ended', { order: { ...order, state: 'done' }, to: 'doing', others: [] }],
    ['work-ended', { order: { ...order, state: 'withdrawn' }, to: 'done', others: [] }],
    ['work-wash-first', { order, to: 'doing', others: [wash] }],
    ['work-wash-first', { order, to: 'done', others: [{ ...wash, state: 'doing' }] }],
    ['work-begun', { order: { ...order, state: 'doing' }, to: 'doing', others: [] }],
  ] as const)('is refused with %s', (code, step) => {
    expect(decideWorkStep(step)).toMatchObject({ ok: false, reason: { code } });
  });

  it('makes the unit ready only when nothing else is open on it', () => {
    expect(unitAfterWork({ result: 'fit', stillOpen: [] })).toBe('ready');
    expect(unitAfterWork({ result: 'fit', stillOpen: ['cleaning'] })).toBe('back');
    expect(unitAfterWork({ result: 'fit', stillOpen: ['calibration'] })).toBe('quarantine');
    expect(unitAfterWork({ result: 'repair', stillOpen: [] })).toBe('quarantine');
    expect(unitAfterWork({ result: 'retired', stillOpen: ['repair'] })).toBe('retired');
  });

  it('asks for a new date where a certificate is what it was for', () => {
    expect(WORK_KINDS.map(asksDueDate)).toEqual([null, null, 'inspection', null, 'calibration']);
  });
});

describe('the look at a load before it leaves', () => {
  const load = { transport: 'road', cases: 2, hasPetrol: true, hasPacks: true, hasHoses: true } as const;

  it('asks about what is loaded', () => {
    expect(loadQuestions(load).map(({ id }) => id)).toEqual([
      'cases',
      'secured',
      'papers',
      'drained',
      'packs',
      'vented',
    ]);
    const bare = { ...load, cases: 0, hasPetrol: false, hasPacks: false, hasHoses: false };
    expect(loadQuestions(bare).map(({ id }) => id)).toEqual(['secured', 'papers']);
    expect(loadQuestions({ ...load, cases: 1 })[0]?.words).toBe('1 case is closed, marked and on the vehicle');
  });

  // IATA packing instruction 965 as collected in the shared reference data (DG-965): state of charge no more than 30 %.
  it('asks for packs at 30 % of charge by air, and by air only', () => {
    const packs = (transport: 'road' | 'air' | 'sea') =>
      loadQuestions({ ...load, transport }).find(({ id }) => id === 'packs')?.words ?? '';
    expect(packs('air')).toContain('30 %');
    expect(packs('road')).not.toContain('%');
    expect(packs('sea')).not.toContain('%');
  });

  it('has a source for every question, and points of instruction that name the ceiling and the restraint', () => {
    for (const { source } of loadQuestions(load)) expect(source).not.toBe('');
    expect(INSTRUCTION_POINTS.join(' ')).toMatch(/never past it/);
    expect(INSTRUCTION_POINTS.join(' ')).toMatch(/no drive is held by hand alone/);
  });
});

describe('a signature', () => {
  it('is kept as a picture of its strokes', () => {
    const svg = signatureSvg([
      [
        [10, 100],
        [90, 40],
        [150, 120],
      ],
      [],
    ]);
    expect(svg).toMatchObject({ ok: true, value: expect.stringContaining('<path d="M10 100L90 40L150 120"') });
  });

  const flood = Array.from({ length: 6001 }, (_, index): readonly [number, number] => [index % PAD.width, 5]);
  it.each([
    ['signature-empty', []],
    ['signature-empty', [[[5, 5]]]],
    [
      'signature-unreadable',
      [
        [
          [5, 5],
          [PAD.width + 1, 5],
        ],
      ],
    ],
    [
      'signature-unreadable',
      [
        [
          [5.5, 5],
          [90, 5],
        ],
      ],
    ],
    [
      'signature-unreadable',
      [
        [
          [-1, 5],
          [90, 5],
        ],
      ],
    ],
    ['signature-unreadable', [flood]],
    [
      'signature-unreadable',
      Array.from({ length: 201 }, () => [
        [1, 1],
        [90, 1],
      ]),
    ],
  ] as const)('is refused with %s', (code, strokes) => {
    expect(signatureSvg(strokes as never)).toMatchObject({ ok: false, reason: { code } });
  });
});

import { describe, expect, it } from 'vitest';
import type { Model } from '#lib/equipment/model.ts';
import { classKey } from '#lib/kits/class-key.ts';
import type { LineDuty } from '#lib/kits/find-choices.ts';
import { explainPart } from '#lib/kits/why/explain-part.ts';
import {
  ranged,
  SAMPLE_NUT,
  said,
  sampleDirection,
  sampleDuty,
  sampleGrip,
  sampleLine,
  sampleSite,
  stated,
} from '#lib/rules/sample-facts.ts';
import {
  sampleCounter,
  sampleDrive,
  sampleHead,
  sampleKey,
  sampleLimiter,
  sampleRestraint,
  sampleShaft,
  sampleWheelAdapter,
} from '#lib/rules/sample-parts.ts';
import { degrees, metres, newtonMetres } from '#lib/units/quantity.ts';
import { checkedChoices, checkedList } from '#tests/support/checked.ts';

const NONE = { lockedParts: [], excludedParts: [], pins: [] } as const;
const SITE = sampleSite();
const HOUSE: readonly Model[] = [
  sampleDrive(),
  sampleHead(),
  sampleWheelAdapter(),
  sampleKey(),
  sampleLimiter(),
  sampleRestraint(),
];

function lineDuty(
  change: { readonly line?: Partial<LineDuty['line']>; readonly duty?: Partial<LineDuty['duty']> } = {},
): LineDuty {
  return { line: sampleLine(change.line), duty: sampleDuty(change.duty) };
}

function choose(
  one: LineDuty,
  models: readonly Model[] = HOUSE,
  constraints: Parameters<typeof checkedChoices>[0]['constraints'] = NONE,
) {
  return checkedChoices({ lines: [one], site: SITE, models, constraints });
}

const coresOf = (choices: ReturnType<typeof checkedChoices>): readonly string[] =>
  choices.classes.flatMap(({ families }) => families.flatMap(({ cores }) => cores.map(({ id }) => id)));
const slotsOf = (choices: ReturnType<typeof checkedChoices>, slot: number): readonly string[] =>
  choices.classes.flatMap(({ families }) => families.flatMap(({ slots }) => slots[slot]?.map(({ id }) => id) ?? []));

const GUESSED = sampleDirection({
  neverExceed: {
    kind: 'wheel',
    directions: ['opening', 'closing'],
    torque: { ...stated('N·m', 400), basis: 'rule of thumb' },
  },
});

describe('choices', () => {
  it('serve a plain wheel with one core, one adapter and one restraint', () => {
    const choices = choose(lineDuty());
    expect(coresOf(choices)).toEqual(['SD-1:0|SH-1||']);
    expect(slotsOf(choices, 0)).toEqual(['SA-1|']);
    expect(slotsOf(choices, 1)).toEqual(['SR-1']);
    expect(choices.classes[0]?.moveTime).toBe(600);
  });

  it('put a limiter in where never-exceed is only a guess, and say so where there is none', () => {
    const guessed = lineDuty({ duty: { opening: GUESSED, closing: GUESSED } });
    expect(coresOf(choose(guessed))).toEqual(['SD-1:0|SH-1|SL-1|']);
    const without = choose(
      guessed,
      HOUSE.filter((model) => model.role !== 'option'),
    );
    expect(without.unserved[0]?.because.map(({ id }) => id)).toEqual(['limiter-required']);
    expect(without.unserved[0]?.because[0]?.sentence).toBe(
      'V-1 must never see more than 400 N·m, and SD-1 with SH-1 stalls at up to 360 N·m: a torque limiter is required.',
    );
  });

  it('make the counter a slot of its own where turns are counted, and only there', () => {
    const counted = lineDuty({ duty: { countTurns: true } });
    expect(slotsOf(choose(counted, [...HOUSE, sampleCounter()]), 2)).toEqual(['SC-1']);
    expect(slotsOf(choose(lineDuty(), [...HOUSE, sampleCounter()]), 2)).toEqual([]);
    expect(choose(counted).unserved[0]?.because.map(({ id }) => id)).toEqual(['counter-required']);
  });

  it('add a second chain to a chain arm that has to hold both ways', () => {
    const arm = sampleRestraint({
      number: 'SR-2',
      facts: { kind: 'reaction arm with chain', directions: 'one way', sideLoad: 'single anchor' },
    });
    const { number: _number, role: _role, facts: _facts, ...base } = sampleCounter();
    const chain: Model = {
      ...base,
      number: 'SS-1',
      role: 'accessory',
      facts: { kind: 'second chain', fits: ['SR-2'], saleItem: false },
    };
    const house = [...HOUSE.filter((model) => model.role !== 'restraint'), arm];
    expect(slotsOf(choose(lineDuty(), [...house, chain]), 1)).toEqual(['SR-2+SS-1']);
    expect(choose(lineDuty(), house).unserved[0]?.because.map(({ id }) => id)).toEqual(['restraint-both-ways']);
    expect(slotsOf(choose(lineDuty({ duty: { strokes: 1 } }), house), 1)).toEqual(['SR-2']);
  });

  it('take a purpose-made restraint only where no stock restraint fits, and call it a workshop enquiry', () => {
    const made = sampleRestraint({
      number: 'SR-9',
      madeToOrder: true,
      facts: { kind: 'purpose-made restraint', needs: ['workshop'] },
    });
    expect(slotsOf(choose(lineDuty(), [...HOUSE, made]), 1)).toEqual(['SR-1']);
    const nowhere = lineDuty({ line: { place: { ...sampleLine().place, anchor: said('none') } } });
    expect(slotsOf(choose(nowhere, [...HOUSE, made]), 1)).toEqual(['SR-9']);
    const listed = checkedList({
      lineDuty: nowhere,
      site: SITE,
      models: [...HOUSE, made],
      constraints: NONE,
      limit: 5,
    });
    expect(listed.assemblies[0]?.findings.map(({ id }) => id)).toContain('workshop-enquiry');
    expect(choose(nowhere).unserved[0]?.repairs.map(({ sentence }) => sentence)).toContain(
      'It can be served if a structure to take the reaction stands near and may be used.',
    );
  });

  it('cover a range of wheels with the small set of adapters that takes all of it, the likeliest first', () => {
    const small = sampleWheelAdapter({ number: 'SA-2' });
    const large = sampleWheelAdapter({
      number: 'SA-3',
      facts: {
        wheel: {
          diameter: { low: metres(0.45), high: metres(0.8) },
          spokes: { low: 3, high: 6 },
          dishUpTo: degrees(10),
          rimUpTo: metres(0.05),
        },
      },
    });
    const grip = sampleGrip({ wheelDiameter: ranged('m', 0.4, 0.7) });
    const house = [...HOUSE.filter((model) => model.role !== 'adapter'), small, large];
    expect(slotsOf(choose(lineDuty({ duty: { grip } }), house), 0)).toEqual(['SA-3,SA-2|']);
    const only = choose(
      lineDuty({ duty: { grip } }),
      house.filter((model) => model.number !== 'SA-3'),
    );
    expect(only.unserved[0]?.because.map(({ id }) => id)).toEqual(['wheel-diameter-within-adapter']);
  });

  it('ask for a measurement where the range is what cannot be covered', () => {
    const grip = sampleGrip({ wheelDiameter: ranged('m', 0.2, 0.5) });
    const [unserved] = choose(lineDuty({ duty: { grip } })).unserved;
    expect(unserved?.repairs[0]).toEqual({
      sentence: 'Measure the wheel: 200 mm to 500 mm is too wide a range; at about 350 mm it can be served.',
      inUs: 'Measure the wheel: 7.87 in to 19.7 in is too wide a range; at about 13.8 in it can be served.',
      cost: 'a measurement',
      id: 'measure-wheel',
      steps: [{ kind: 'cell', column: 'wheel_diameter', text: '350 mm' }],
    });
  });

  it('take a key that reaches every depth of the range', () => {
    const grip = { ...SAMPLE_NUT, depthToNut: ranged('m', 0.8, 1.6) };
    expect(slotsOf(choose(lineDuty({ duty: { grip, movement: 'keyed' } })), 0)).toEqual(['SK-1|']);
    const deeper = { ...SAMPLE_NUT, depthToNut: ranged('m', 0.1, 2.6) };
    const deep = lineDuty({ duty: { grip: deeper, movement: 'keyed' } });
    expect(slotsOf(choose(deep, [...HOUSE, sampleShaft()]), 0)).toEqual(['SK-1,SX-1>SK-1|']);
    const { assemblies } = checkedList({
      lineDuty: deep,
      site: SITE,
      models: [...HOUSE, sampleShaft()],
      constraints: NONE,
      limit: 1,
    });
    expect(assemblies[0]?.parts).toMatchObject({
      adapters: ['SK-1', 'SK-1'],
      extensions: [],
      adapterExtensions: [[], ['SX-1']],
    });
    expect(choose(deep).unserved[0]?.because.map(({ id }) => id)).toEqual(['key-long-enough']);
  });

  it('solve equal lines once and keep unequal ones apart', () => {
    const lines = ['A', 'B', 'C'].map((tag) => ({
      line: sampleLine({ tag, ...(tag === 'C' ? { notes: 'stem bent' } : {}) }),
      duty: sampleDuty({ tag, qty: 2 }),
    }));
    const choices = checkedChoices({
      lines: lines.map(({ line, duty }) => ({ line: { ...line, qty: 2 }, duty })),
      site: SITE,
      models: HOUSE,
      constraints: NONE,
    });
    expect(choices.classes.map(({ tags, qty }) => ({ tags, qty }))).toEqual([{ tags: ['A', 'B'], qty: 4 }]);
    expect(choices.unserved.map(({ tag }) => tag)).toEqual(['C']);
  });

  it('give seized and locked valves to the Desk', () => {
    expect(choose(lineDuty({ duty: { seized: true } })).unserved[0]?.because.map(({ id }) => id)).toEqual([
      'seized-to-desk',
    ]);
    expect(
      choose(lineDuty({ line: { state: { locked: said(true) } } })).unserved[0]?.because.map(({ id }) => id),
    ).toEqual(['locked-never-moved']);
  });
});

describe('wishes', () => {
  const second = sampleDrive({ number: 'SD-2' });
  const house = [...HOUSE, second];

  it('leave excluded parts out', () => {
    expect(coresOf(choose(lineDuty(), house, { ...NONE, excludedParts: ['SD-1'] }))).toEqual(['SD-2:0|SH-1||']);
  });

  it('hold a pinned line to its part, even where nothing is left', () => {
    expect(coresOf(choose(lineDuty(), house, { ...NONE, pins: [{ tag: 'V-1', part: 'SD-2' }] }))).toEqual([
      'SD-2:0|SH-1||',
    ]);
    const impossible = choose(lineDuty(), house, { ...NONE, pins: [{ tag: 'V-1', part: 'SK-1' }] });
    expect(impossible.unserved[0]?.because[0]?.id).toBe('wished-part');
    expect(impossible.unserved[0]?.repairs[0]?.sentence).toBe('It can be served when it is not held to that part.');
  });

  it('use a locked part wherever it can be used, and nowhere by force', () => {
    expect(coresOf(choose(lineDuty(), house, { ...NONE, lockedParts: ['SD-2'] }))).toEqual(['SD-2:0|SH-1||']);
    expect(coresOf(choose(lineDuty(), house, { ...NONE, lockedParts: ['SK-1'] }))).toEqual([
      'SD-1:0|SH-1||',
      'SD-2:0|SH-1||',
    ]);
  });
});

describe('why this part', () => {
  it('names the rule and the number that keep a part out', () => {
    const weak = sampleRestraint({ number: 'SR-3', facts: { torqueRating: newtonMetres(200) } });
    const answer = explainPart({ lineDuty: lineDuty(), site: SITE, models: [...HOUSE, weak], part: 'SR-3' });
    expect(answer.fits).toBe(false);
    expect(answer.because.map(({ sentence }) => sentence)).toEqual([
      'SD-1 with SH-1 stalls at up to 360 N·m; sample twin-point arm SR-3 holds 200 N·m.',
    ]);
  });

  it('says that a part serves, and knows what is no part', () => {
    expect(explainPart({ lineDuty: lineDuty(), site: SITE, models: HOUSE, part: 'SR-1' }).fits).toBe(true);
    expect(explainPart({ lineDuty: lineDuty(), site: SITE, models: HOUSE, part: 'X-1' }).because[0]?.id).toBe(
      'part-unknown',
    );
  });

  it('says that couplings are what is missing', () => {
    const lost = sampleHead({ number: 'SH-9', facts: { input: { form: 'square', size: '40', gender: 'female' } } });
    const answer = explainPart({ lineDuty: lineDuty(), site: SITE, models: [...HOUSE, lost], part: 'SH-9' });
    expect(answer.because.map(({ id }) => id)).toEqual(['couplings-join']);
  });
});

describe('class key', () => {
  it('ignores names, places in the order and sources, and hears what rules hear', () => {
    const plain = lineDuty();
    const named = lineDuty({
      line: { tag: 'Z', photo: 'z.jpg', place: { ...sampleLine().place, location: 'north', placeOrder: 7 } },
      duty: { tag: 'Z' },
    });
    const spun = lineDuty({ line: { notes: 'wheel with spinner' } });
    expect(classKey(named.line, named.duty)).toBe(classKey(plain.line, plain.duty));
    expect(classKey(spun.line, spun.duty)).not.toBe(classKey(plain.line, plain.duty));
  });
});

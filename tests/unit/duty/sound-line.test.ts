import { describe, expect, it } from 'vitest';
import { assessDuty } from '#lib/duty/assess-duty.ts';
import { PLAUSIBLE, PLAUSIBLE_COUNTS } from '#lib/duty/plausible-values.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import { type Column, columnSpec, isColumn } from '#lib/intake/columns.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { formatQuantity } from '#lib/units/format-quantity.ts';
import type { Known } from '#lib/units/known-value.ts';
import type { Unit } from '#lib/units/quantity.ts';
import { dutyOf, lineOf, PLAIN_SITE, SAID, say, sayFact, tr } from '#tests/support/lists/duty-lines.ts';
import { NUMBER_COLUMNS, withNumber } from '#tests/support/lists/number-columns.ts';

const raw = (unit: Unit, low: number, nominal: number, high: number): Known<Unit> =>
  ({ low, nominal, high, unit, ...SAID }) as unknown as Known<Unit>;

const findingsOn = (line: Partial<ScheduleLine>, column: string, id: string) =>
  assessDuty({ line: lineOf(line), site: PLAIN_SITE }).findings.filter(
    (finding) => finding.id === id && finding.about.includes(column),
  );

const rangeOf = (column: keyof typeof PLAUSIBLE): string => {
  const { unit, usual } = PLAUSIBLE[column];
  return usual.map((value) => formatQuantity({ value, unit, system: 'si' })).join(' to ');
};

describe('a number that cannot be meant', () => {
  it('every quantity of a line is in the table, and every column of the list goes by the same word', () => {
    expect([...NUMBER_COLUMNS].sort()).toEqual(Object.keys(PLAUSIBLE).sort());
    for (const [column, { label }] of Object.entries({ ...PLAUSIBLE, ...PLAUSIBLE_COUNTS })) {
      if (column === 'pipe_length' || column === 'flow_velocity') continue;
      expect(isColumn(column), column).toBe(true);
      if (isColumn(column)) expect(label, column).toBe(columnSpec(column).label);
    }
  });

  const slips = NUMBER_COLUMNS.flatMap((column) => {
    const { unit, possible } = PLAUSIBLE[column];
    const [low, high] = possible;
    const below = low - Math.max(1e-3, Math.abs(low) * 0.1);
    const above = high + Math.max(1e-3, Math.abs(high) * 0.1);
    return [
      [column, 'below', raw(unit, below, below, below)],
      [column, 'above', raw(unit, above, above, above)],
      [column, 'not a number', raw(unit, Number.NaN, Number.NaN, Number.NaN)],
      [column, 'infinite', raw(unit, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY)],
      [column, 'minus infinite', raw(unit, Number.NEGATIVE_INFINITY, 1, 1)],
      [column, 'upside down', raw(unit, high, low, low)],
    ] as const;
  });
  it.each(slips)('%s %s: the finding names column, value and range, and the line stays', (column, _slip, value) => {
    const line = withNumber(column, value);
    const found = findingsOn(line, column, 'value-set-aside');
    expect(found).toHaveLength(1);
    expect(found[0]?.sentence).toContain(`${PLAUSIBLE[column].label} `);
    expect(found[0]?.sentence).toContain(`plausible is ${rangeOf(column)}`);
    expect(found[0]?.sentence).toContain('check the number and its unit');
    const duty = assessDuty({ line: lineOf(line), site: PLAIN_SITE });
    expect(duty.tag).toBe('V1');
    expect(Number.isFinite(duty.opening.starting.high + duty.turns.high + duty.closing.neverExceed.torque.low)).toBe(
      true,
    );
  });

  it('the sentence for each kind of slip', () => {
    const said = (line: Partial<ScheduleLine>, column: string) =>
      findingsOn(line, column, 'value-set-aside')[0]?.sentence;
    const tail = 'It is set aside and the usual values stand in; check the number and its unit.';
    expect(said({ size: say('m', -0.1) }, 'size')).toBe(
      `Size -100 mm cannot be meant: plausible is 8 mm to 3000 mm. ${tail}`,
    );
    expect(said({ torque: { turns: say('turn', 0) } }, 'turns')).toBe(
      `Turns 0 turns cannot be meant: plausible is 0.2 turns to 5000 turns. ${tail}`,
    );
    expect(said({ process: { linePressure: say('Pa', 1e9) } }, 'line_pressure')).toBe(
      `Line pressure 10000 bar cannot be meant: plausible is 0 bar to 770 bar. ${tail}`,
    );
    expect(said(withNumber('travel', raw('m', Number.NaN, Number.NaN, Number.NaN)), 'travel')).toBe(
      `Travel “not a number” cannot be meant: plausible is 2 mm to 10 m. ${tail}`,
    );
    expect(said(withNumber('travel', raw('m', 0.3, 0.2, 0.1)), 'travel')).toBe(
      `Travel 300 mm, 200 mm, 100 mm (low, likely, high) cannot be meant: plausible is 2 mm to 10 m. ${tail}`,
    );
  });

  it.each([
    [{ qty: Number.NaN }, 'qty', '1 to 1000'],
    [{ qty: 0 }, 'qty', '1 to 1000'],
    [{ strokes: -2 }, 'strokes', '1 to 1000'],
    [{ stem: { threadStarts: sayFact(0) } }, 'thread_starts', '1 to 8'],
    [{ stem: { threadStarts: sayFact(2.5) } }, 'thread_starts', '1 to 8'],
    [{ interface: { wheelSpokes: sayFact(-3) } }, 'wheel_spokes', '0 to 16'],
    [{ interface: { wheelSpokes: sayFact(Number.POSITIVE_INFINITY) } }, 'wheel_spokes', '0 to 16'],
    [{ place: { placeOrder: Number.NaN } }, 'place_order', '0 to 1000000'],
    [{ state: { age: sayFact(-4) } }, 'age', '0 to 300 years'],
    [{ state: { age: sayFact(900) } }, 'age', '0 to 300 years'],
    [{ state: { lastOperated: sayFact(Number.NaN) } }, 'last_operated', '0 to 300 years'],
    [{ stem: { thread: tr(10, 30) } }, 'stem_thread', 'a pitch of 1 mm to half the diameter'],
    [{ stem: { thread: tr(40, 7, 9) } }, 'stem_thread', '1 to 8 starts'],
    [{ stem: { thread: tr(900, 7) } }, 'stem_thread', 'a diameter of 6 to 400 mm'],
  ] as const)('%j: the whole number or thread is set aside with its column and range', (line, column, range) => {
    const found = findingsOn(line as Partial<ScheduleLine>, column, 'value-set-aside');
    expect(found).toHaveLength(1);
    expect(found[0]?.sentence).toContain(range);
  });
});

describe('a number that can be, but is unlikely', () => {
  it.each(
    NUMBER_COLUMNS.filter((column) => PLAUSIBLE[column].possible[1] > PLAUSIBLE[column].usual[1] * 1.05).map(
      (column) => [column] as const,
    ),
  )('%s between usual and possible is kept and asked about', (column) => {
    const { unit, possible, usual } = PLAUSIBLE[column];
    const value = (possible[1] + usual[1]) / 2;
    const line = withNumber(column, raw(unit, value, value, value));
    expect(findingsOn(line, column, 'value-set-aside')).toEqual([]);
    const asked = findingsOn(line, column, 'value-unlikely');
    expect(asked).toHaveLength(1);
    expect(asked[0]?.sentence).toMatch(/(?:is it|Is it) meant so\?/);
  });

  const dn50: Partial<ScheduleLine> = {
    size: say('m', 0.05),
    valveType: sayFact('wedge gate'),
    rating: sayFact('PN 16'),
  };
  it.each([
    [
      'a wheel of 3 m on DN 15',
      { size: say('m', 0.015), interface: { wheelDiameter: say('m', 3) } },
      'wheel_diameter',
      'Wheel diameter 3000 mm is unlikely for a DN 15 valve: usual is 28 mm to 240 mm.',
    ],
    [
      'a stem of 200 mm on DN 50',
      { ...dn50, stem: { diameter: say('m', 0.2) } },
      'stem_diameter',
      'Stem diameter 200 mm is unlikely for a DN 50 valve: usual is 9.53 mm to 48 mm.',
    ],
    [
      '3000 turns on DN 80',
      { size: say('m', 0.08), torque: { turns: say('turn', 3000) } },
      'turns',
      'Turns 3000 turns is unlikely for a DN 80 valve: usual is 1.9 turns to 45.8 turns.',
    ],
    [
      'a travel of 2 m on DN 50',
      { ...dn50, stem: { travel: say('m', 2) } },
      'travel',
      'Travel 2000 mm is unlikely for a DN 50 valve: usual is 25 mm to 100 mm.',
    ],
    [
      'a seat of 300 mm on DN 50',
      { ...dn50, stem: { seatDiameter: say('m', 0.3) } },
      'seat_diameter',
      'Seat bore 300 mm is unlikely for a DN 50 valve: usual is 15 mm to 75 mm.',
    ],
    [
      '40 bar in PN 16',
      { ...dn50, process: { linePressure: say('Pa', 40e5) } },
      'line_pressure',
      'Line pressure 40 bar is unlikely for the rating PN 16: usual is 0 bar to 17.6 bar.',
    ],
    [
      '19 bar in Class 150 at 300 °C (ASME B16.34 allows 10.2 bar)',
      {
        ...dn50,
        rating: sayFact('Class 150'),
        process: { linePressure: say('Pa', 19e5), temperature: say('°C', 300) },
      },
      'line_pressure',
      'usual is 0 bar to 11.2 bar.',
    ],
    [
      'potable water of 150 °C',
      { ...dn50, process: { temperature: say('°C', 150), service: sayFact('potable') } },
      'temperature',
      'Temperature 150 °C is unlikely for potable water: usual is -5 °C to 70 °C.',
    ],
    [
      '900 °C',
      { ...dn50, process: { temperature: say('°C', 900) } },
      'temperature',
      'Temperature 900 °C is unlikely for the rating PN 16: usual is -196 °C to 450 °C.',
    ],
    [
      'a running torque above the starting torque',
      { torque: { starting: say('N·m', 50), running: say('N·m', 80) } },
      'running_torque',
      'usual is 0 N·m to 50 N·m.',
    ],
    [
      'a stem that is not its thread',
      { stem: { diameter: say('m', 0.08), thread: tr(32, 6) } },
      'stem_diameter',
      'unlikely for the thread Tr32x6: usual is 29 mm to 48 mm',
    ],
    [
      'a lead near the diameter',
      { stem: { thread: tr(20, 4), threadStarts: sayFact(8) } },
      'thread_starts',
      'leads 32 mm a turn, which is unlikely on 20 mm; usual is up to 16 mm.',
    ],
    [
      'a pitch too coarse',
      { stem: { thread: tr(20, 9) } },
      'stem_thread',
      'a pitch of 9 mm is unlikely on 20 mm; usual is 0.6 to 8 mm.',
    ],
    [
      'moved before it was put in',
      { state: { age: sayFact(2019), lastOperated: sayFact(2001) } },
      'last_operated',
      'plausible is 2019 or later',
    ],
    [
      'a worm gear of 2:1',
      { torque: { gearbox: sayFact('worm'), gearRatio: say('1', 2) } },
      'gear_ratio',
      'Gear ratio 2 is unlikely for a worm gearbox: usual is 8 to 8000.',
    ],
  ] as const)('%s is kept and asked about', (_what, line, column, sentence) => {
    const asked = findingsOn(line as Partial<ScheduleLine>, column, 'value-unlikely');
    expect(asked).toHaveLength(1);
    expect(asked[0]?.sentence).toContain(sentence);
  });

  it('a sound line is asked nothing about its numbers', () => {
    const duty = dutyOf({
      ...dn50,
      stem: { diameter: say('m', 0.02), thread: tr(20, 4), travel: say('m', 0.052) },
      torque: { turns: say('turn', 13) },
      interface: { wheelDiameter: say('m', 0.2) },
      process: { linePressure: say('Pa', 10e5), temperature: say('°C', 15) },
      state: { age: sayFact(2001), lastOperated: sayFact(2019) },
    });
    expect(duty.findings.filter(({ id }) => id.startsWith('value-'))).toEqual([]);
  });

  it('a wheel or stem that is too large for its valve never lets it see more than the largest usual one would', () => {
    for (const [part, usual] of [
      [{ interface: { wheelDiameter: say('m', 3) } }, { interface: { wheelDiameter: say('m', 0.57) } }],
      [{ stem: { diameter: say('m', 0.2) } }, { stem: { diameter: say('m', 0.0476) } }],
    ] as const) {
      const doubted = dutyOf({ ...dn50, ...part });
      const fair = dutyOf({ ...dn50, ...usual });
      for (const direction of ['opening', 'closing'] as const)
        expect(doubted[direction].neverExceed.torque.low).toBeLessThanOrEqual(
          fair[direction].neverExceed.torque.low * 1.001,
        );
    }
  });
});

describe('from the cells of a list to the finding', () => {
  const dutyOfCells = (cells: Readonly<Partial<Record<Column, string>>>) => {
    const { line } = readLine({ row: 7, cells });
    return assessDuty({ line, site: PLAIN_SITE });
  };
  it.each([
    ['size', '-100', 'Size “-100” is outside what is plausible (DN 8 to DN 3000)'],
    ['turns', '0', 'Turns “0” is outside what is plausible (0.2 turns to 5000 turns)'],
    ['line_pressure', '10 000 bar', 'Line pressure “10 000 bar” is outside what is plausible (0 bar to 770 bar)'],
    ['qty', '0', 'Quantity “0” is outside what is plausible (a whole number from 1 to 1000)'],
    ['wheel_spokes', '99', 'Wheel spokes “99” is outside what is plausible (a whole number from 0 to 16)'],
    ['age', '999', 'Age “999” is outside what is plausible (0 to 200 years, or a year from 1850 on)'],
    ['nut_size', '900 mm', 'Nut size “900 mm” is outside what is plausible (6 to 150 mm across flats)'],
    ['stem_thread', 'Tr900x7', 'Stem thread “Tr900x7” is outside what is plausible'],
    ['gear_ratio', '0:1', 'Gear ratio “0:1” is outside what is plausible (1:1 to 100 000:1)'],
    ['travel', 'plenty', 'Travel “plenty” cannot be read'],
    ['wheel_diameter', 'Infinity', 'Write it like “400 mm” (usual: 50 mm to 1600 mm)'],
    ['temperature', '900 °C', 'Temperature 900 °C is outside what is usual (-200 °C to 650 °C)'],
    ['wheel_diameter', '3 m', 'Wheel diameter 3000 mm is unlikely for any valve: usual is 50 mm to 1600 mm'],
  ] as const)('%s %s', (column, text, sentence) => {
    const found = dutyOfCells({ tag: 'V7', [column]: text }).findings.filter(
      ({ id, about }) => id.startsWith('value-') && about.includes(column),
    );
    expect(found).toHaveLength(1);
    expect(found[0]?.sentence).toContain(sentence);
  });
});

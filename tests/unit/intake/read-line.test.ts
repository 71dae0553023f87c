import { describe, expect, it } from 'vitest';
import type { Cells } from '#lib/intake/columns.ts';
import type { IntakeCode } from '#lib/intake/intake-problem.ts';
import { readLine } from '#lib/intake/read-line.ts';

const line = (cells: Cells) => readLine({ row: 7, cells }).line;

describe('one row', () => {
  it('everything that a full row says is read, with its basis and where it was said', () => {
    const read = readLine({
      row: 7,
      cells: {
        tag: 'V-101',
        qty: '2',
        strokes: '3',
        valve_type: 'wedge gate',
        size: '8 in',
        rating: 'Class 150',
        line_pressure: '6 bar',
        medium: 'gas oil',
        temperature: '104 °F',
        stem: 'OS&Y',
        stem_thread: 'Tr36x12(P6)',
        turns: '36',
        starting_torque: '100 ft-lb',
        max_torque: '300 Nm',
        driven_by: 'Handrad',
        wheel_diameter: '16-20 in',
        wheel_spokes: '5',
        closes: 'CW',
        faces: 'horizontal',
        last_operated: '2021',
        age: '12 years',
        gear_ratio: '40:1',
        gear_efficiency: '35',
        access_minutes: '10 min',
        depth_to_nut: '1,2 m',
        nut_size: '50x45',
        locked: 'no',
        zone: '2',
        notes: 'Gland weeps',
      },
      measured: ['turns'],
    });
    expect(read.problems).toEqual([]);
    expect(read.line).toMatchObject({
      tag: 'V-101',
      qty: 2,
      strokes: 3,
      valveType: { value: 'wedge gate', basis: 'stated' },
      size: { nominal: 0.2, basis: 'stated', source: 'Stated in the list: Size “8 in”.' },
      rating: { value: 'Class 150' },
      process: { linePressure: { nominal: 6e5 }, medium: { value: 'gas oil' }, temperature: { nominal: 40 } },
      stem: { kind: { value: 'rising through the wheel' }, thread: { value: { pitch_m: 0.006, starts: 2 } } },
      torque: {
        turns: { nominal: 36, basis: 'measured', source: 'Measured on this valve: Turns “36”.' },
        max: { nominal: 300 },
        closes: { value: 'clockwise' },
        gearRatio: { nominal: 40 },
        gearEfficiency: { nominal: 0.35 },
      },
      interface: {
        drivenBy: { value: 'handwheel' },
        wheelDiameter: { low: 0.4064, high: 0.508 },
        wheelSpokes: { value: 5 },
        nut: { acrossFlats: { nominal: 0.045 }, acrossFlatsAtBase: { nominal: 0.05 } },
      },
      place: {
        faces: { value: 'side' },
        accessTime: { nominal: 600 },
        depthToNut: { nominal: 1.2 },
        zone: { value: '2' },
      },
      state: { lastOperated: { value: 2021 }, age: { value: 12 }, locked: { value: false } },
      notes: 'Gland weeps',
    });
  });

  it('an empty row is still a line, with nothing made up', () => {
    expect(readLine({ row: 7, cells: {} })).toEqual({
      line: {
        tag: 'row 7',
        qty: 1,
        strokes: 2,
        process: {},
        state: {},
        stem: {},
        torque: {},
        interface: {},
        place: {},
      },
      problems: [],
    });
  });

  it.each(['NULL', 'null', 'N/A', 'n/a', '-', '?', 'unknown', 'Unbekannt', 'tbc', '  ', '#N/A'])(
    '%s means not known, in every column',
    (text) => {
      const read = readLine({
        row: 7,
        cells: {
          tag: text,
          size: text,
          rating: text,
          turns: text,
          valve_type: text,
          condition: text,
          stem_thread: text,
          nut_size: text,
          gear_ratio: text,
          age: text,
        },
      });
      expect(read.problems).toEqual([]);
      expect(read.line).toEqual({
        tag: 'row 7',
        qty: 1,
        strokes: 2,
        process: {},
        state: {},
        stem: {},
        torque: {},
        interface: {},
        place: {},
      });
    },
  );

  it('a cell edited to nonsense gives a problem, and the cell keeps its text', () => {
    const cells = { tag: 'V-1', turns: 'many' };
    const read = readLine({ row: 7, cells });
    expect(read.problems.map((problem) => [problem.code, problem.column])).toEqual([['value-unreadable', 'turns']]);
    expect(read.line.torque).toEqual({});
    expect(cells.turns).toBe('many');
  });

  it('a bare number takes the unit of its column, and says so', () => {
    expect(line({ wheel_diameter: '400' }).interface.wheelDiameter).toMatchObject({
      nominal: 0.4,
      source: 'Stated in the list: Wheel diameter “400”, no unit given, read as mm.',
    });
    expect(line({ depth_to_nut: '1.2' }).place.depthToNut).toMatchObject({ nominal: 1.2 });
    expect(line({ depth_to_nut: '1200' }).place.depthToNut).toMatchObject({ nominal: 1.2 });
    expect(line({ wheel_diameter: '0.4' }).interface.wheelDiameter).toMatchObject({ nominal: 0.4 });
    expect(line({ gear_efficiency: '0.35' }).torque.gearEfficiency).toMatchObject({ nominal: 0.35 });
  });
});

describe('what a remark says', () => {
  it('a size in the remark stands in where the column is empty', () => {
    const read = line({ notes: 'Valve is on 150mm and is not visible' });
    expect(read.size).toMatchObject({
      nominal: 0.15,
      basis: 'stated',
      source: 'Read from the remark “Valve is on 150mm and is not visible”.',
    });
    expect(read.place.surfaceBox?.value).toBe('not visible');
  });

  it('the pipe that a branch comes from is not the size of the valve', () => {
    expect(line({ notes: 'T off from 600' }).size).toBeUndefined();
    expect(line({ notes: 'From 4 million 600' }).size).toBeUndefined();
    expect(readLine({ row: 7, cells: { size: '150', notes: 'T off from 600' } }).problems).toEqual([]);
  });

  it.each([
    ['Buried on tarred road', 'buried', 'tarred road'],
    ['Covered by sand', 'covered by sand', 'sand'],
    ['Covered by pavement', 'covered by pavement', 'pavement'],
    ['Co ered with concrete on 100 from 200', 'covered by concrete', 'concrete'],
    ['buried in debries and sand', 'buried', 'sand'],
    ['Valve in broken chamber', 'broken chamber', undefined],
    ['Vavle on 100mm can not be seen', 'not visible', undefined],
    ['Valve is enchroqcged', 'built over', undefined],
    ['Control valve without chamber', 'no chamber', undefined],
    ['Vavle is visible but no accessible', 'not accessible', undefined],
    ['flooded with Water in chamber', 'flooded chamber', undefined],
    ['Valve on 100mm very visible', undefined, undefined],
  ])('%s', (notes, box, surface) => {
    const { place } = line({ notes });
    expect(place.surfaceBox?.value).toBe(box);
    expect(place.surface?.value).toBe(surface);
  });

  it('a missing wheel leaves the square of the stem, as an assumption', () => {
    expect(line({ notes: 'Gate valve ( without steer)' }).interface.drivenBy).toMatchObject({
      value: 'square',
      basis: 'assumed',
    });
    expect(line({ notes: 'Gate valve ( without steer)', driven_by: 'handwheel' }).interface.drivenBy).toMatchObject({
      value: 'handwheel',
      basis: 'stated',
    });
  });

  it('a seized or stiff valve is told from the remark unless the column says otherwise', () => {
    expect(line({ notes: 'stuck, could not turn' }).state.condition?.value).toBe('seized');
    expect(line({ notes: 'very hard to turn' }).state.condition?.value).toBe('stiff');
    expect(line({ notes: 'stuck', condition: 'free' }).state.condition?.value).toBe('free');
  });

  it('a purpose is not a kind: a gate valve is assumed, and the remark knows better where it names one', () => {
    expect(line({ valve_type: 'Control Valve' }).valveType).toEqual({
      value: 'gate',
      basis: 'assumed',
      source:
        '“Control Valve” names a purpose, not a kind; an ordinary line valve, and so a gate valve, is assumed (common practice, no source).',
    });
    expect(line({ valve_type: 'Control Valve', notes: 'Burtefly' }).valveType).toMatchObject({
      value: 'butterfly',
      basis: 'stated',
    });
    expect(line({ notes: 'Gate valve on 100' }).valveType).toMatchObject({ value: 'gate', basis: 'stated' });
  });
});

/** One input for every problem that a single row can have, with its sentence. */
const CASES: readonly (readonly [code: IntakeCode, cells: Cells, sentence: string])[] = [
  ['value-unreadable', { turns: 'many' }, 'Turns “many” cannot be read; it is taken as not known.'],
  [
    'value-implausible',
    { size: '-100' },
    'Size “-100” is outside what is plausible (DN 8 to DN 3000); it is taken as not known.',
  ],
  [
    'value-unlikely',
    { temperature: '900 °C' },
    'Temperature “900 °C” is outside what is usual (-200 °C to 650 °C); it is kept as it stands.',
  ],
  [
    'value-implausible',
    { line_pressure: '10 000 bar' },
    'Line pressure “10 000 bar” is outside what is plausible (0 bar to 770 bar); it is taken as not known.',
  ],
  [
    'value-implausible',
    { turns: '0' },
    'Turns “0” is outside what is plausible (0.2 turns to 5000 turns); it is taken as not known.',
  ],
  [
    'value-unlikely',
    { size: 'DN 15', wheel_diameter: '3 m' },
    'Wheel diameter “3 m” is outside what is usual (50 mm to 1600 mm); it is kept as it stands.',
  ],
  [
    'place-unreadable',
    { zone: 'red' },
    'Zone “red” cannot be read; until then nothing electrical or moving is passed for it.',
  ],
  [
    'place-unreadable',
    { gas_group: 'Group D' },
    'Gas group “Group D” is North American (class, division or group by NEC Articles 500 to 506) and is not turned into a zone or group here, as Division 1 takes in zone 0 and the letters mean other gases; IIC or IIIC, the hardest, is taken.',
  ],
  [
    'number-ambiguous',
    { stem_thrust: '1,234' },
    'The comma in “1,234” may part thousands or decimals; it is read as 1.23 kN.',
  ],
  ['unit-guessed', { size: '6' }, 'Size “6” has no unit; it makes sense in inches only and is read as DN 150.'],
  [
    'unit-guessed',
    { stem_diameter: '0.036' },
    'Stem diameter “0.036” has no unit; it makes sense in m and is read so.',
  ],
  ['unit-guessed', { nut_size: '2' }, 'Nut size “2” has no unit; it makes sense in inches and is read so.'],
  [
    'choice-unknown',
    { condition: 'purple' },
    'Condition “purple” is none of: free, stiff, seized. It is taken as not known.',
  ],
  [
    'choice-unknown',
    { valve_type: 'Gizmo' },
    'Valve type “Gizmo” is no kind of valve that is known here; it is taken as not known.',
  ],
  [
    'choice-unknown',
    { valve_type: 'Air valve' },
    'Valve type “Air valve” is not turned through a stroke. An air valve works by itself; nothing on it is turned through a stroke.',
  ],
  [
    'size-two-values',
    { size: '200X150' },
    'Size “200X150” names two sizes, as for a reducing tee; DN 150 to DN 200 is planned for, DN 150 as the likelier.',
  ],
  [
    'size-two-values',
    { size: '150', notes: '200X150' },
    'The remark “200X150” names a tee or reducer DN 200 × DN 150; the size column says DN 150, which is its smaller side.',
  ],
  [
    'size-two-values',
    { notes: '150X100' },
    'No size is given and the remark “150X100” names two, as for a reducing tee; DN 100 to DN 150 is planned for, the smaller as the likelier.',
  ],
  ['size-not-nominal', { size: '158' }, 'No valve is made in size “158”; DN 150 is taken.'],
  [
    'size-outside-diameter',
    { size: '63' },
    'Size “63” is an outside diameter of pipe; the valve in it is usually DN 50, at most DN 65.',
  ],
  [
    'size-remark-disagrees',
    { size: '200', notes: 'Valve on 100mm' },
    'The size column says DN 200, the remark “Valve on 100mm” says DN 100; the column is taken.',
  ],
  [
    'size-from-pipe',
    { notes: 'Valve; Pipe Diame: 100' },
    'No size is given; the pipe’s, DN 100, is taken from “Pipe Diame: 100”.',
  ],
  ['rating-two-values', { rating: '1016' }, 'Rating “1016” can mean two ratings; the lower is taken: PN 10.'],
  ['rating-not-standard', { rating: 'PN 30' }, 'Rating “PN 30” is no standard class; it is kept as PN 30.'],
  [
    'thread-lead-odd',
    { stem_thread: 'Tr36x10(P6)' },
    'Stem thread “Tr36x10(P6)” gives a lead that is no multiple of its pitch; the pitch is kept and the lead left out.',
  ],
  [
    'thread-starts-conflict',
    { stem_thread: 'Tr36x12(P6)', thread_starts: '1' },
    'Stem thread “Tr36x12(P6)” has 2 starts, the column says 1; both are shown and the turns are not sure.',
  ],
  [
    'thread-hand-conflict',
    { stem_thread: 'Tr36x6 LH', thread_hand: 'right' },
    'Stem thread “Tr36x6 LH” is left-handed, the column says right; the column is taken and the direction is to be tried slowly.',
  ],
  [
    'type-remark-disagrees',
    { valve_type: 'Butterfly', notes: '4" gate valve' },
    'The type column says butterfly, the remark “4" gate valve” says gate; the column is taken.',
  ],
  [
    'kind-remark-disagrees',
    { valve_type: 'Control Valve', size: '250', notes: 'Air valve' },
    'The type column says “Control Valve”, the remark “Air valve” says air valve; it is kept as a line valve.',
  ],
  ['out-of-use', { notes: 'Abandoned' }, 'The remark says “abandoned”; the valve is kept as a line.'],
  [
    'several-valves',
    { notes: '100x100x100 Tee, with a gate valve on each side' },
    'The remark says “valve on each side”, which may be several valves; one is taken.',
  ],
];

describe('problems of a row', () => {
  it.each(CASES)('%s: %o', (code, cells, sentence) => {
    const { problems } = readLine({ row: 7, cells });
    const found = problems.find((problem) => problem.code === code);
    expect(found?.sentence).toBe(sentence);
    expect(found?.row).toBe(7);
    expect(found?.remedy).toMatch(/^[A-Z].*\.$/);
  });
});

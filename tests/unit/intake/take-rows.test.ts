import { describe, expect, it } from 'vitest';
import { INTAKE_CODES } from '#lib/intake/intake-problem.ts';
import { takeRows } from '#lib/intake/take-rows.ts';
import { tableOf, takeList } from '#tests/support/lists/take-list.ts';

describe('rows', () => {
  it('each row ends up a line, a thing set aside, refused or blank, and the counts add up', async () => {
    const taken = await takeList(
      'Valve list\n\nTag,Type,Size,Remark\nV-1,Gate,100,\n,,,\nV-2,Air valve,50,\nTotal,,2,\nTag,Type,Size,Remark\nV-3,,,buried\n,,,just a sentence\n',
    );
    expect(taken.counts).toEqual({ rows: 7, lines: 2, setAside: 1, refused: 3, blank: 1 });
    expect(taken.lines.map((line) => [line.row, line.line.tag])).toEqual([
      [4, 'V-1'],
      [9, 'V-3'],
    ]);
    expect(taken.setAside[0]).toMatchObject({
      row: 6,
      tag: 'V-2',
      reason: '“Air valve”: air valve. An air valve works by itself; nothing on it is turned through a stroke.',
    });
    expect(taken.problems.map((problem) => [problem.row, problem.code, problem.severity])).toEqual([
      [1, 'title-row', 'note'],
      [7, 'total-row', 'refused'],
      [8, 'header-repeated', 'refused'],
      [10, 'no-valve-facts', 'refused'],
    ]);
  });

  it('a tag used twice keeps both lines apart and names both rows', async () => {
    const taken = await takeList('Tag,Size\nV-1,100\nV-2,100\nv-1,150\n');
    expect(taken.lines.map((line) => line.line.tag)).toEqual(['V-1', 'V-2', 'v-1 (row 4)']);
    expect(taken.lines[2]?.cells.tag).toBe('v-1');
    expect(taken.problems).toEqual([
      {
        code: 'tag-repeated',
        row: 4,
        column: 'tag',
        severity: 'doubt',
        sentence: 'The tag “v-1” is used in row 2 and in row 4; both stay lines, this one as “v-1 (row 4)”.',
        remedy: 'Give each valve its own tag, or take one of the rows out.',
      },
    ]);
  });

  it('rows that say the same stay separate lines, with a note where the place is the same too', async () => {
    const taken = await takeList('Tag,Location,Size\n1,Mill Lane,100\n2,Mill Lane,100\n3,High Street,100\n');
    expect(taken.lines).toHaveLength(3);
    expect(taken.problems.map((problem) => [problem.row, problem.code, problem.sentence])).toEqual([
      [3, 'same-as-row', 'Row 3 says the same as row 2, place included; both stay lines.'],
    ]);
  });

  it('without a tag column each line goes by its row, and tags stay unique', async () => {
    const taken = await takeList('Size,Type\n100,Gate\n150,Gate\n');
    expect(taken.lines.map((line) => line.line.tag)).toEqual(['row 2', 'row 3']);
    expect(taken.problems.map((problem) => problem.code)).toEqual(['tag-missing']);
    const gap = await takeList('Tag,Size\nrow 3,100\n,150\n');
    expect(gap.lines.map((line) => line.line.tag)).toEqual(['row 3', "row 3'"]);
  });

  it('parallel columns: the first that is filled wins, a word such as “Valve” gives way, and a conflict stays visible', async () => {
    const taken = await takeList(
      'Tag,Facility type,Valve Type,Valve Size,ValveType,ValveSize\n1,Valve,Gate,100,,\n2,,,,Gate,150\n3,Valve,Gate,100,Butterfly,125\n',
    );
    expect(taken.lines.map((line) => [line.cells.valve_type, line.cells.size])).toEqual([
      ['Gate', '100'],
      ['Gate', '150'],
      ['Gate', '100'],
    ]);
    expect(taken.problems.map((problem) => [problem.row, problem.code, problem.column])).toEqual([
      [4, 'columns-conflict', 'valve_type'],
      [4, 'columns-conflict', 'size'],
    ]);
    expect(taken.problems[1]?.sentence).toBe('Two columns give size: “100” and “125”; the first is taken.');
  });

  it('a pipe, a meter and a fitting are set aside; a valve without size is a line', async () => {
    const taken = await takeList(
      'Tag,Type,Size\n1,Pipe,100\n2,Flow meter,80\n3,Tee,100\n4,Gate,\n5,Sluice valve,N/A\n',
    );
    expect(taken.setAside.map((aside) => aside.tag)).toEqual(['1', '2', '3']);
    expect(taken.lines.map((line) => line.line.tag)).toEqual(['4', '5']);
  });

  it('where type column and remark disagree on what it is, the column decides and the doubt is told', async () => {
    const taken = await takeList(
      'Tag,Type,Size,Remark\n1,Air Valve,400,Center valve 400mm\n2,Air Valve,300,Air valve converted to distribution  valve\n3,Control Valve,250,Air valve\n4,Air Valve,300,Vavle is visible\n',
    );
    expect(taken.setAside.map((aside) => aside.tag)).toEqual(['1', '4']);
    expect(taken.lines.map((line) => line.line.tag)).toEqual(['2', '3']);
    expect(taken.problems.map((problem) => [problem.row, problem.code])).toEqual([
      [2, 'kind-remark-disagrees'],
      [4, 'kind-remark-disagrees'],
    ]);
  });

  it('units come from the header, from the row below it, or from the cell, mixed in one column', async () => {
    const header = await takeList(
      'Tag,Size (mm),Pressure [bar],FINTORQUE,Depth_m\n1,100,6,50,1.2\n2,6",90 psi,20 Nm,900 mm\n',
    );
    expect(header.lines.map((line) => line.line.size?.nominal)).toEqual([0.1, 0.15]);
    expect(header.lines[0]?.line.torque.running?.nominal).toBeCloseTo(67.79, 2);
    expect(header.lines[1]?.line).toMatchObject({
      torque: { running: { nominal: 20 } },
      place: { depthToNut: { nominal: 0.9 } },
    });
    expect(header.lines[0]?.cells).toEqual({
      tag: '1',
      size: '100 mm',
      line_pressure: '6 bar',
      running_torque: '50 ft lb',
      depth_to_nut: '1.2 m',
    });
    const below = await takeList('Tag,Size,Torque\n,in,kgf·m\n1,6,5\n2,8,6\n');
    expect(below.counts).toMatchObject({ rows: 3, lines: 2, refused: 1 });
    expect(below.lines[0]?.line).toMatchObject({ size: { nominal: 0.15 }, torque: { running: { nominal: 49.03325 } } });
  });

  it('a whole column of bare inches is read in inches, with one problem for the list', async () => {
    const taken = await takeList('Tag,Size\n1,4\n2,6\n3,20\n4,8\n');
    expect(taken.lines.map((line) => line.line.size?.nominal)).toEqual([0.1, 0.15, 0.5, 0.2]);
    expect(taken.problems.map((problem) => [problem.row, problem.code])).toEqual([[1, 'unit-guessed']]);
    const mixed = await takeList('Tag,Size\n1,4\n2,150\n3,20\n4,200\n');
    expect(mixed.lines.map((line) => line.line.size?.nominal)).toEqual([0.1, 0.15, 0.02, 0.2]);
  });

  it('headers that ask a question turn yes and no into what they mean', async () => {
    const taken = await takeList(
      'FACILITYID,CLOCKWISETOCLOSE,NORMALLYOPEN,CURRENTLYOPEN\nA,Yes,Yes,No\nB,No,No,Yes\nC,NULL,,\n',
    );
    expect(
      taken.lines.map((line) => [
        line.line.torque.closes?.value,
        line.line.state.normalPosition?.value,
        line.line.state.position?.value,
      ]),
    ).toEqual([
      ['clockwise', 'open', 'closed'],
      ['anticlockwise', 'closed', 'open'],
      [undefined, undefined, undefined],
    ]);
    const opens = await takeList('FACILITYID,OpenDirection,Size\nA,Left,100\nB,Right,100\nC,CCW,100\n');
    expect(opens.lines.map((line) => line.line.torque.closes?.value)).toEqual([
      'clockwise',
      'anticlockwise',
      'clockwise',
    ]);
  });

  it('a mapping that a person corrected is followed', async () => {
    const table = await tableOf('A,B\nV-1,250\n');
    const column = (index: number, field: 'tag' | 'size') =>
      ({ index, header: 'AB'[index] ?? '', field, confidence: 'sure', why: 'Said so.' }) as const;
    const taken = takeRows({ table, mapping: { headerRow: 1, columns: [column(0, 'tag'), column(1, 'size')] } });
    expect(taken.lines[0]?.line).toMatchObject({ tag: 'V-1', size: { nominal: 0.25 } });
    const whole = takeRows({ table, mapping: { headerRow: null, columns: [column(0, 'tag')] } });
    expect(whole.counts).toMatchObject({ rows: 2, lines: 2 });
  });

  it('a cell longer than the limit is cut and says so', async () => {
    const taken = await takeList(`Tag,Size,Remarks\nV-1,100,${'x'.repeat(2500)}\n`);
    expect(taken.lines[0]?.cells.notes).toHaveLength(2000);
    expect(taken.problems).toMatchObject([
      {
        code: 'cell-too-long',
        column: 'Remarks',
        sentence: 'The cell holds 2500 characters; the first 2000 are kept.',
      },
    ]);
  });

  it('a heading between the rows is refused, a lone tag is a valve', async () => {
    const taken = await takeList('Tag,Type,Size\nV-1,Gate,100\nAREA NORTH,,\nV-2,,\n');
    expect(taken.counts).toMatchObject({ lines: 2, refused: 1 });
    expect(taken.problems[0]?.sentence).toBe('The row holds “AREA NORTH” alone and looks like a heading, not a valve.');
  });
});

it('every code of a problem is caused by a test of this folder', async () => {
  const { readFile } = await import('node:fs/promises');
  const texts = await Promise.all(
    ['take-rows', 'read-line'].map((name) => readFile(new URL(`./${name}.test.ts`, import.meta.url), 'utf8')),
  );
  expect(INTAKE_CODES.filter((code) => !texts.some((text) => text.includes(`'${code}'`)))).toEqual([]);
});

import { describe, expect, it } from 'vitest';
import { COLUMN_NAMES } from '#lib/intake/column-names.ts';
import { COLUMNS } from '#lib/intake/columns.ts';
import { matchHeader } from '#lib/intake/match-header.ts';
import { proposeMapping } from '#lib/intake/propose-mapping.ts';
import { readLine } from '#lib/intake/read-line.ts';
import { templateCsv } from '#lib/intake/template.ts';
import { tableOf, takeList } from '#tests/support/lists/take-list.ts';

describe('columns', () => {
  it('every column has label, help, cost of not knowing, group and an example that reads without a problem', () => {
    expect(COLUMNS.map((spec) => spec.name)).toEqual(COLUMN_NAMES);
    for (const spec of COLUMNS) {
      expect(spec.help, spec.name).toMatch(/\.$/);
      expect(spec.unknown, spec.name).toMatch(/\.$/);
      if (spec.howToMeasure !== undefined) expect(spec.howToMeasure, spec.name).toMatch(/[.?]$/);
      expect(readLine({ row: 1, cells: { [spec.name]: spec.example } }).problems, spec.name).toEqual([]);
    }
  });

  it('no name leads to two columns', () => {
    const seen = new Map<string, string>();
    for (const spec of COLUMNS) {
      for (const alias of [...spec.aliases, spec.label, spec.name])
        expect(matchHeader(alias)?.field, alias).toBe(spec.name);
      for (const alias of spec.aliases) {
        expect(seen.get(alias) ?? spec.name, alias).toBe(spec.name);
        seen.set(alias, spec.name);
      }
    }
  });
});

describe('headers', () => {
  it.each([
    ['FACILITYID', 'tag', 'sure'],
    ['ASSET_ID', 'tag', 'sure'],
    ['valve_id', 'tag', 'sure'],
    ['id_code', 'tag', 'sure'],
    ['VALVETYPE', 'valve_type', 'sure'],
    ['valve_type', 'valve_type', 'sure'],
    ['type', 'valve_type', 'sure'],
    ['tipo', 'valve_type', 'sure'],
    ['DIAMETER', 'size', 'sure'],
    ['VALVE_SIZE', 'size', 'sure'],
    ['diameter_n', 'size', 'sure'],
    ['dn_mm', 'size', 'sure'],
    ['PRESSURERATING', 'rating', 'sure'],
    ['pn_bar', 'rating', 'sure'],
    ['pressure', 'line_pressure', 'sure'],
    ['TURNSTOCLOSE', 'turns', 'sure'],
    ['NUMBEROFTURNS', 'turns', 'sure'],
    ['No_Turns', 'turns', 'sure'],
    ['turns_to_close', 'turns', 'sure'],
    ['CLOCKWISETOCLOSE', 'closes', 'sure'],
    ['OpenDirection', 'closes', 'sure'],
    ['ClosedD', 'closes', 'sure'],
    ['DEPTHTONUT', 'depth_to_nut', 'sure'],
    ['DEPTH', 'depth_to_nut', 'sure'],
    ['profundidad', 'depth_to_nut', 'sure'],
    ['COVER', 'depth_to_nut', 'sure'],
    ['acionamento', 'driven_by', 'sure'],
    ['ValveOperation', 'driven_by', 'sure'],
    ['FINTORQUE', 'running_torque', 'sure'],
    ['Final Torque (Ft Pounds)', 'running_torque', 'sure'],
    ['NORMALLYOPEN', 'normal_position', 'sure'],
    ['CURRENTLYOPEN', 'position', 'sure'],
    ['GSURFACE', 'surface', 'sure'],
    ['remark', 'notes', 'sure'],
    ['Nennweite', 'size', 'sure'],
    ['Größe', 'size', 'sure'],
    ['Diamètre', 'size', 'sure'],
    ['Nº de vueltas', 'turns', 'likely'],
    ['Диаметр', 'size', 'sure'],
    ['口径', 'size', 'sure'],
    ['Pressure r', 'rating', 'likely'],
    ['Pipe Diame', 'remark', 'likely'],
    ['Valve Typ', 'valve_type', 'likely'],
    ['Handwheel diameter outside', 'wheel_diameter', 'likely'],
    ['Misalignmnt', 'misalignment', 'guess'],
    ['Serial No.', 'ignore', 'sure'],
    ['Status', 'remark', 'sure'],
    ['GLOBALID', 'ignore', 'sure'],
  ])('%s is %s', (header, field, confidence) => {
    expect(matchHeader(header)).toMatchObject({ field, confidence });
  });

  it.each([
    ['Size (mm)', 'size', 'mm'],
    ['Pressure [bar]', 'line_pressure', 'bar'],
    ['Torque in Nm', 'running_torque', 'Nm'],
    ['Depth, ft', 'depth_to_nut', 'ft'],
    ['dn_mm', 'size', undefined],
    ['Max torque (lbf·ft)', 'max_torque', 'lbf·ft'],
    ['Temp (°F)', 'temperature', '°F'],
    ['DN', 'size', 'mm'],
    ['NPS', 'size', 'in'],
    ['FINTORQUE', 'running_torque', 'ft lb'],
    ['Stem dia / mm', 'stem_diameter', 'mm'],
    ['Line pressure (kgf/cm²)', 'line_pressure', 'kgf/cm²'],
  ])('%s gives the unit', (header, field, unit) => {
    expect(matchHeader(header)?.field).toBe(field);
    if (unit !== undefined) expect(matchHeader(header)?.unit).toBe(unit);
  });

  it.each(['', 'xyz', 'Zz9', '—'])('“%s” is not known', (header) => {
    expect(matchHeader(header)).toBeNull();
  });
});

describe('proposals', () => {
  it('the header is found below title rows', async () => {
    const mapping = proposeMapping(
      await tableOf('Harbour terminal,,\nValves for the spring,,\n,,\nTag,Size,Type\nV-1,100,Gate\n'),
    );
    expect(mapping.headerRow).toBe(4);
    expect(mapping.columns.map((column) => column.field)).toEqual(['tag', 'size', 'valve_type']);
  });

  it('a list without headers is mapped by what its cells look like', async () => {
    const taken = await takeList(
      'V-101,Gate valve,DN 150,PN 16,near the pump house door\nV-102,Butterfly,DN 200,PN 10,behind the tank\nV-103,Globe,DN 50,PN 16,in the pit by the road\n',
    );
    expect(taken.mapping.headerRow).toBeNull();
    expect(taken.mapping.columns.map((column) => [column.field, column.confidence])).toEqual([
      ['tag', 'guess'],
      ['valve_type', 'guess'],
      ['size', 'guess'],
      ['rating', 'guess'],
      ['remark', 'guess'],
    ]);
    expect(taken.lines.map((line) => line.line.tag)).toEqual(['V-101', 'V-102', 'V-103']);
  });

  it('headers in no known language are mapped by content', async () => {
    const mapping = proposeMapping(
      await tableOf('Aaa,Bbb,Ccc\nV-1,Gate valve,DN 100\nV-2,Globe valve,DN 80\nV-3,Plug valve,6"\n'),
    );
    expect(mapping).toMatchObject({
      headerRow: 1,
      columns: [{ field: 'tag' }, { field: 'valve_type' }, { field: 'size' }],
    });
    expect(mapping.columns[2]?.why).toBe('The header “Ccc” is not known. The cells are valve sizes with their unit.');
  });

  it('a header whose cells contradict it is not believed', async () => {
    const mapping = proposeMapping(await tableOf('Tag,Condition,Size\n1,4,100\n2,3,150\n3,1,100\n'));
    expect(mapping.columns[1]).toMatchObject({ field: 'remark', confidence: 'guess' });
    expect(mapping.columns[1]?.why).toContain('only 0 % of its cells can be read so');
  });

  it('of several columns that could be the tag, one is taken', async () => {
    const mapping = proposeMapping(await tableOf('OBJECTID,Valve No,Size\n1,SV-9,100\n2,SV-10,150\n'));
    expect(mapping.columns.map((column) => column.field)).toEqual(['ignore', 'tag', 'size']);
  });

  it('every column of the table is in the proposal, with a reason', async () => {
    const table = await tableOf('Tag,,Size,Foo\n1,x,100,\n2,,150,,,9\n');
    const mapping = proposeMapping(table);
    expect(mapping.columns.map((column) => column.index)).toEqual([0, 1, 2, 3, 4, 5]);
    for (const column of mapping.columns) expect(column.why).toMatch(/\.$/);
  });
});

describe('the template', () => {
  it('has every column and imports as it is without a problem', async () => {
    const taken = await takeList(templateCsv());
    expect(taken.mapping.columns.map((column) => column.field)).toEqual(COLUMN_NAMES);
    expect(taken.mapping.columns.every((column) => column.confidence === 'sure')).toBe(true);
    expect(taken.problems).toEqual([]);
    expect(taken.counts).toEqual({ rows: 2, lines: 2, setAside: 0, refused: 0, blank: 0 });
    expect(taken.lines[0]?.line).toMatchObject({
      tag: 'V-101',
      size: { nominal: 0.2 },
      process: { linePressure: { nominal: 6e5 } },
      interface: { wheelDiameter: { nominal: 0.4 } },
    });
    expect(taken.lines[1]?.line).toMatchObject({
      tag: 'SV-12',
      place: { depthToNut: { nominal: 1.2 } },
      interface: { nut: { acrossFlats: { nominal: 0.032 } } },
    });
  });
});

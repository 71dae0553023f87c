import { beforeEach, describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { NOBODY } from '#lib/services/context.ts';
import { addList } from '#lib/services/self-service/add-list.ts';
import { openListColumns, takeListColumns } from '#lib/services/self-service/list-columns.ts';
import { openOrderView } from '#lib/services/self-service/order-view.ts';
import { startOrder } from '#lib/services/self-service/start-order.ts';
import { codeOf, granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const ADDRESS = '192.0.2.40';
const SITE = { starts_on: '2026-03-09', days: 1, zone: 'none' };
/** The third column has a name that nobody knows, the fourth one that is known. */
const STRANGE =
  'tag,size,zxqv,driven by\nA1,DN 100,350 mm,handwheel\nA2,DN 150,400 mm,handwheel\nA3,purple,300 mm,handwheel\n';
const NONE: ReadonlyMap<number, string> = new Map();

let stranger: Context;

beforeEach(async () => {
  stranger = { ...(await demoHouseContext()), actor: NOBODY };
});

function start() {
  const made = granted(startOrder(stranger, { language: 'en', address: ADDRESS, site: SITE, title: 'Self-service' }));
  return { token: made.token, address: ADDRESS };
}

async function sendList(asked: { readonly token: string; readonly address: string }, text: string) {
  const bytes = new TextEncoder().encode(text);
  return granted(await addList(stranger, { ...asked, fileName: 'list.csv', bytes }));
}

/** Of a list that waits for a word about its columns. */
async function waiting() {
  const asked = start();
  const sent = await sendList(asked, STRANGE);
  if (sent.kind !== 'to confirm') throw new Error('The list was taken at once.');
  return { ...asked, fileId: sent.fileId, table: '', fields: NONE };
}

describe('a list whose columns were not all understood', () => {
  it('makes no valve before its sender has seen each column with its first values and what it was taken for', async () => {
    const list = await waiting();
    expect(granted(await openOrderView(stranger, list)).valves).toEqual([]);
    const { columns, lines } = granted(await openListColumns(stranger, list));
    expect(columns.map(({ header, field, isUnderstood }) => [header, field, isUnderstood])).toEqual([
      ['tag', 'tag', true],
      ['size', 'size', true],
      ['zxqv', expect.any(String), false],
      ['driven by', 'driven_by', true],
    ]);
    expect(columns[2]?.values).toEqual(['350 mm', '400 mm', '300 mm']);
    expect(lines).toBe(3);
  });

  it('is taken as its sender says, with a column changed and another left out', async () => {
    const list = await waiting();
    const fields = new Map([
      [2, 'wheel_diameter'],
      [3, 'ignore'],
    ]);
    expect(granted(await takeListColumns(stranger, { ...list, fields })).lines).toBe(3);
    const [first] = granted(await openOrderView(stranger, list)).valves;
    expect(first?.cells).toMatchObject({ tag: 'A1', size: 'DN 100', wheel_diameter: '350 mm' });
    expect(first?.cells.driven_by).toBeUndefined();
  });

  it('names row, column and remedy of what cannot be read', async () => {
    const { problems } = granted(await openListColumns(stranger, await waiting()));
    const size = problems.find(({ row, column }) => row === 4 && column === 'size');
    expect(size?.sentence).toMatch(/purple/);
    expect(size?.sentence.split('. ').length).toBeGreaterThan(1);
  });

  it('is taken once, pressed five times at once', async () => {
    const list = await waiting();
    const pressed = await Promise.all(Array.from({ length: 5 }, () => takeListColumns(stranger, list)));
    expect(pressed.every(({ ok }) => ok)).toBe(true);
    granted(await takeListColumns(stranger, list));
    expect(granted(await openOrderView(stranger, list)).valves.length).toBe(3);
  });

  it('is not taken where no valve comes of it, above the limit, or by another order’s link', async () => {
    const list = await waiting();
    const nothing = new Map([0, 1, 2, 3].map((index) => [index, 'ignore']));
    expect(codeOf(await takeListColumns(stranger, { ...list, fields: nothing }))).toBe('list-empty');
    const other = { ...list, ...start() };
    expect(codeOf(await openListColumns(stranger, other))).toBe('no-such-list');
    expect(codeOf(await takeListColumns(stranger, other))).toBe('no-such-list');
    const rows = Array.from({ length: 201 }, (_, row) => `B${row},DN 100,${300 + row} mm,handwheel`).join('\n');
    const long = await sendList(list, `tag,size,zxqv,driven by\n${rows}\n`);
    const fileId = long.kind === 'to confirm' ? long.fileId : 0;
    expect(codeOf(await takeListColumns(stranger, { ...list, fileId }))).toBe('too-many-lines');
    expect(granted(await openListColumns(stranger, { ...list, fileId })).lines).toBe(201);
  });

  it('keeps a field that there is not as it was proposed', async () => {
    const list = await waiting();
    const strange = { ...list, fields: new Map([[1, 'no_such_field']]) };
    expect(granted(await openListColumns(stranger, strange)).columns[1]?.field).toBe('size');
  });
});

describe('a list that was understood', () => {
  it('is taken at once', async () => {
    const asked = start();
    const sent = await sendList(asked, 'tag,size,driven by\nA1,DN 100,handwheel\n');
    expect(sent).toMatchObject({ kind: 'added', lines: 1 });
  });
});

import { describe, expect, it } from 'vitest';
import { filterFromQuery } from '#lib/schedule/line-filter.ts';
import type { Context } from '#lib/services/context.ts';
import { bulkEdit, previewReplace } from '#lib/services/schedule/bulk-edit.ts';
import { addLines, moveLines, removeLines } from '#lib/services/schedule/change-lines.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { listLines, readCells, readLines } from '#lib/services/schedule/list-lines.ts';
import { othersPresent, watchEnquiry } from '#lib/services/schedule/live-changes.ts';
import { orderLines } from '#lib/services/schedule/order-lines.ts';
import { listChanges, newestChange, readChanges } from '#lib/services/schedule/read-changes.ts';
import { undoChange } from '#lib/services/schedule/undo-change.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';
import { longSchedule } from '#tests/support/lists/long-schedule.ts';

const ENQUIRY = 1;

async function twoScreens(): Promise<{
  readonly ada: Context;
  readonly ben: Context;
  readonly ids: readonly number[];
}> {
  const context = await demoHouseContext();
  const ids = await orderOf(context, '');
  return {
    ada: { ...context, screen: 'a', actor: { ...context.actor, name: 'Ada' } },
    ben: { ...context, screen: 'b', actor: { ...context.actor, name: 'Ben' } },
    ids,
  };
}

async function orderOf(context: Context, query: string): Promise<readonly number[]> {
  const filter = filterFromQuery(new URLSearchParams(query));
  return granted(await orderLines(context, { enquiryId: ENQUIRY, filter })).ids;
}

function snapshot(context: Context): string {
  return JSON.stringify(
    granted(listLines(context, { enquiryId: ENQUIRY, from: 0, count: 500 })).lines.map(
      ({ id, row, cells, measured }) => [id, row, Object.entries(cells).toSorted(), measured],
    ),
  );
}

describe('the order of a schedule', () => {
  it('by size is that of the sizes, however each was written', async () => {
    const { ada, ids } = await twoScreens();
    const sizes = ['DN 200', 'NPS 6', '4"', 'DN 80', 'NPS 10', 'DN 1000'];
    const edits = sizes.map((text, index) => ({ lineId: ids[index] ?? 0, column: 'size', text }));
    granted(editCells(ada, { enquiryId: ENQUIRY, edits }));
    const written = new Map(edits.map(({ lineId, text }) => [lineId, text]));
    const order = (await orderOf(ada, 'sort=size')).flatMap((id) => written.get(id) ?? []);
    expect(order).toEqual(['DN 80', '4"', 'NPS 6', 'DN 200', 'NPS 10', 'DN 1000'].slice(0, order.length));
    expect(order.length).toBe(Math.min(sizes.length, ids.length));
    const kept = ada.database.raw.prepare('SELECT who, who_id FROM schedule_change ORDER BY id DESC').get();
    expect(kept).toEqual({ who: 'Ada', who_id: ada.actor.id });
  });
});

describe('two people on one schedule', () => {
  it('the later writer of a cell is told both texts and who was first; nothing is written over', async () => {
    const { ada, ben, ids } = await twoScreens();
    const [lineId = 0] = ids;
    const was = granted(readCells(ada, { enquiryId: ENQUIRY, lineIds: [lineId] }))[0]?.cells.size ?? '';
    granted(editCells(ada, { enquiryId: ENQUIRY, edits: [{ lineId, column: 'size', text: 'DN 300', was }] }));
    const late = granted(
      editCells(ben, {
        enquiryId: ENQUIRY,
        edits: [
          { lineId, column: 'size', text: 'DN 250', was },
          { lineId, column: 'rating', text: 'PN 25' },
        ],
      }),
    );
    expect(late.clashes).toMatchObject([
      { kind: 'changed', lineId, column: 'size', mine: 'DN 250', theirs: 'DN 300', who: 'Ada' },
    ]);
    const [line] = granted(await readLines(ben, { enquiryId: ENQUIRY, lineIds: [lineId] }));
    expect(line?.cells).toMatchObject({ size: 'DN 300', rating: 'PN 25' });
  });

  it('two who write the same text, or different cells of a line, do not clash', async () => {
    const { ada, ben, ids } = await twoScreens();
    const [lineId = 0] = ids;
    granted(editCells(ada, { enquiryId: ENQUIRY, edits: [{ lineId, column: 'size', text: 'DN 300', was: 'x' }] }));
    granted(editCells(ada, { enquiryId: ENQUIRY, edits: [{ lineId, column: 'size', text: 'DN 300' }] }));
    const same = editCells(ben, {
      enquiryId: ENQUIRY,
      edits: [{ lineId, column: 'size', text: 'DN 300', was: 'old' }],
    });
    expect(granted(same).clashes).toEqual([]);
    const other = editCells(ben, { enquiryId: ENQUIRY, edits: [{ lineId, column: 'notes', text: 'ask', was: '' }] });
    expect(granted(other).clashes.filter(({ column }) => column !== 'notes')).toEqual([]);
  });

  it('a text for a line that somebody removed comes back with who did it, and alone it is refused', async () => {
    const { ada, ben, ids } = await twoScreens();
    const [gone = 0, there = 0] = ids;
    granted(removeLines(ada, { enquiryId: ENQUIRY, lineIds: [gone] }));
    const edits = [
      { lineId: gone, column: 'size', text: 'DN 65' },
      { lineId: there, column: 'size', text: 'DN 65' },
    ];
    expect(granted(editCells(ben, { enquiryId: ENQUIRY, edits })).clashes).toMatchObject([
      { kind: 'gone', lineId: gone, mine: 'DN 65', who: 'Ada' },
    ]);
    expect(editCells(ben, { enquiryId: ENQUIRY, edits: edits.slice(0, 1) })).toMatchObject({
      ok: false,
      reason: { code: 'no-such-line' },
    });
  });

  it('a screen is told every change since the one it knows, whose it was, and who else is there', async () => {
    const { ada, ben, ids } = await twoScreens();
    const before = granted(newestChange(ben, ENQUIRY));
    let woken = 0;
    const leave = watchEnquiry({ enquiryId: ENQUIRY, screen: 'b', who: 'Ben', wake: () => (woken += 1) });
    const [lineId = 0] = ids;
    granted(editCells(ada, { enquiryId: ENQUIRY, edits: [{ lineId, column: 'size', text: 'DN 90' }] }));
    granted(removeLines(ada, { enquiryId: ENQUIRY, lineIds: [ids[1] ?? 0] }));
    expect(woken).toBeGreaterThanOrEqual(3);
    const { changes } = granted(readChanges(ben, { enquiryId: ENQUIRY, after: before }));
    expect(changes).toMatchObject([
      { who: 'Ada', screen: 'a', told: '1 cell written', cells: [{ lineId, column: 'size' }], reload: false },
      { who: 'Ada', told: '1 line removed', reload: true },
    ]);
    expect(othersPresent({ enquiryId: ENQUIRY, screen: 'a' })).toEqual(['Ben']);
    expect(othersPresent({ enquiryId: ENQUIRY, screen: 'b' })).toEqual([]);
    leave();
    expect(othersPresent({ enquiryId: ENQUIRY, screen: 'a' })).toEqual([]);
    expect(granted(listChanges(ben, ENQUIRY)).map(({ told }) => told)).toEqual(['1 line removed', '1 cell written']);
  });
});

describe('undo and redo', () => {
  it('takes back and makes again cells, additions, removals, moves and bulk edits, under the same ids', async () => {
    const { ada, ids } = await twoScreens();
    const [first = 0, second = 0, third = 0] = ids;
    const steps: readonly (() => number)[] = [
      () =>
        granted(
          editCells(ada, {
            enquiryId: ENQUIRY,
            edits: [{ lineId: first, column: 'size', text: 'DN 50', measured: true }],
          }),
        ).change,
      () => granted(addLines(ada, { enquiryId: ENQUIRY, lines: [{ cells: { tag: 'NEW' } }], after: first })).change,
      () => granted(moveLines(ada, { enquiryId: ENQUIRY, lineIds: [third], before: first })).change,
      () => granted(removeLines(ada, { enquiryId: ENQUIRY, lineIds: [first, third] })).change,
      () => granted(bulkEdit(ada, { enquiryId: ENQUIRY, edit: { kind: 'set', column: 'notes', text: 'all' } })).change,
      () =>
        granted(bulkEdit(ada, { enquiryId: ENQUIRY, lineIds: [second], edit: { kind: 'measured', column: 'notes' } }))
          .change,
    ];
    const seen = [snapshot(ada)];
    const changes: number[] = [];
    for (const step of steps) {
      changes.push(step());
      seen.push(snapshot(ada));
    }
    expect(new Set(seen).size).toBe(seen.length);
    const redo: number[] = [];
    for (const [back, changeId] of changes.toReversed().entries()) {
      redo.push(granted(undoChange(ada, { enquiryId: ENQUIRY, changeId })).change);
      expect(snapshot(ada)).toBe(seen[steps.length - 1 - back]);
    }
    for (const [forth, changeId] of redo.toReversed().entries()) {
      granted(undoChange(ada, { enquiryId: ENQUIRY, changeId }));
      expect(snapshot(ada)).toBe(seen[forth + 1]);
    }
  });

  it('leaves what somebody else wrote since, and says so', async () => {
    const { ada, ben, ids } = await twoScreens();
    const [lineId = 0] = ids;
    const { change } = granted(
      editCells(ada, { enquiryId: ENQUIRY, edits: [{ lineId, column: 'size', text: 'DN 90' }] }),
    );
    granted(editCells(ben, { enquiryId: ENQUIRY, edits: [{ lineId, column: 'size', text: 'DN 95' }] }));
    const back = granted(undoChange(ada, { enquiryId: ENQUIRY, changeId: change }));
    expect(back).toMatchObject({ change: 0, clashes: [{ theirs: 'DN 95', who: 'Ben' }] });
    expect(undoChange(ada, { enquiryId: ENQUIRY, changeId: 99_999 })).toMatchObject({
      ok: false,
      reason: { code: 'no-such-change' },
    });
  });
});

describe('filters, order and replacing', () => {
  it('a filter asks cells, marks, findings and the basis of a duty', async () => {
    const { ada, ids } = await twoScreens();
    const [lineId = 0] = ids;
    granted(
      editCells(ada, {
        enquiryId: ENQUIRY,
        edits: [{ lineId, column: 'starting_torque', text: '123 Nm', measured: true }],
      }),
    );
    expect(await orderOf(ada, 'where=starting_torque:measured')).toEqual([lineId]);
    expect(await orderOf(ada, 'where=starting:basis:measured')).toEqual([lineId]);
    expect(await orderOf(ada, 'where=starting_torque:has:123')).toEqual([lineId]);
    const clear = await orderOf(ada, 'only=clear');
    const warned = await orderOf(ada, 'only=warnings');
    expect(clear.filter((id) => warned.includes(id))).toEqual([]);
    expect(warned.length).toBeGreaterThan(0);
  });

  it('sorting leaves the list’s own order; figures of the duty sort as numbers', async () => {
    const { ada, ids } = await twoScreens();
    const lines = granted(await readLines(ada, { enquiryId: ENQUIRY, lineIds: ids }));
    const nominal = new Map(lines.map(({ id, duty }) => [id, duty.starting.nominal]));
    const up = (await orderOf(ada, 'sort=starting')).map((id) => nominal.get(id) ?? 0);
    expect(up).toEqual(up.toSorted((a, b) => a - b));
    expect(await orderOf(ada, '')).toEqual(ids);
  });

  it('replacing is counted before it is done, keeps to its columns and to whole cells', async () => {
    const { ada, ids } = await twoScreens();
    const edits = ids
      .slice(0, 3)
      .map((lineId, at) => ({ lineId, column: 'location', text: at < 2 ? 'Mill Lane' : 'mill' }));
    granted(editCells(ada, { enquiryId: ENQUIRY, edits }));
    const base = {
      kind: 'replace' as const,
      find: 'mill',
      put: 'Weir',
      columns: ['location'],
      letters: 'any' as const,
    };
    const part = { enquiryId: ENQUIRY, edit: { ...base, match: 'part' as const } };
    const whole = { enquiryId: ENQUIRY, edit: { ...base, match: 'whole' as const } };
    expect(granted(previewReplace(ada, part))).toMatchObject({ cells: 3, lines: 3 });
    expect(granted(previewReplace(ada, whole))).toMatchObject({ cells: 1 });
    expect(granted(bulkEdit(ada, part)).cells).toBe(3);
    const cells = granted(readCells(ada, { enquiryId: ENQUIRY, lineIds: ids.slice(0, 3) }));
    expect(cells.map((line) => line.cells.location)).toEqual(['Weir Lane', 'Weir Lane', 'Weir']);
    expect(bulkEdit(ada, { ...part, edit: { ...base, match: 'part', columns: ['colour'] } })).toMatchObject({
      reason: { code: 'no-such-column' },
    });
  });

  it('a schedule that is full takes no more lines', async () => {
    const { ada } = await twoScreens();
    const lines = Array.from({ length: 20_000 }, () => ({ cells: {} }));
    expect(addLines(ada, { enquiryId: ENQUIRY, lines })).toMatchObject({ reason: { code: 'too-many-lines' } });
  });
});

describe('a schedule of which very many lines changed', () => {
  it('is read part by part: others get their turn in between, and what they change meanwhile is there at the end', async () => {
    const { ada, ben } = await twoScreens();
    granted(addLines(ada, { enquiryId: ENQUIRY, lines: longSchedule(2500) }));
    const long = (await orderOf(ada, 'text=LV-')).length;
    expect(long).toBe(2500);
    const size = (text: string) => ({ kind: 'set', column: 'size', text }) as const;
    granted(bulkEdit(ada, { enquiryId: ENQUIRY, edit: size('DN 250') }));
    let turns = 0;
    let isOver = false;
    const counting = (async () => {
      while (!isOver) {
        turns += 1;
        await new Promise((resolve) => setImmediate(resolve));
        if (turns === 3)
          granted(editCells(ben, { enquiryId: ENQUIRY, edits: [{ lineId: 1, column: 'size', text: 'DN 400' }] }));
      }
    })();
    const ids = await orderOf(ada, 'where=size:is:DN%20250');
    isOver = true;
    await counting;
    console.info(`${turns} turns of others while ${long} lines were read again`);
    expect(turns).toBeGreaterThan(8);
    expect(ids.length).toBeGreaterThanOrEqual(long);
    expect(await orderOf(ada, 'where=size:is:DN%20400')).toEqual([1]);
  });
});

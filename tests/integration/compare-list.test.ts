import { describe, expect, it } from 'vitest';
import type { Context } from '#lib/services/context.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { compareList, takeCompared } from '#lib/services/schedule/compare-list.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { listLines } from '#lib/services/schedule/list-lines.ts';
import { receiveList } from '#lib/services/schedule/receive-list.ts';
import { type ListChoice, takeList } from '#lib/services/schedule/take-list.ts';
import { undoChange } from '#lib/services/schedule/undo-change.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const FIRST = 'Tag,Type,Size,Location\nA-1,gate,DN 80,Mill\nA-2,gate,DN 100,Weir\nA-3,globe,DN 50,Weir\n';
const SECOND = 'Tag,Type,Size\nA-1,gate,DN 90\nA-4,gate,DN 300\nA-2,gate,DN 150\n';

async function received(
  context: Context,
  { id, text }: { readonly id: number; readonly text: string },
): Promise<ListChoice> {
  const bytes = new TextEncoder().encode(text);
  const list = granted(await receiveList(context, { enquiryId: id, fileName: 'list.csv', bytes }));
  const [table] = list.tables;
  if (!table) throw new Error('The list has no table.');
  return { enquiryId: id, fileId: list.fileId, table: table.name, mapping: table.mapping };
}

function cellsOf(context: Context, enquiryId: number) {
  return granted(listLines(context, { enquiryId, from: 0, count: 50 })).lines.map(({ id, cells }) => ({
    id,
    ...cells,
  }));
}

async function twoLists() {
  const context = await demoHouseContext();
  const { id } = granted(createEnquiry(context, { title: 'Twice', customer: { name: 'Mill Works' }, site: {} }));
  granted(await takeList(context, { ...(await received(context, { id, text: FIRST })), existing: 'keep' }));
  const [, second] = cellsOf(context, id);
  const edits = [{ lineId: second?.id ?? 0, column: 'size', text: 'DN 125' }];
  granted(editCells(context, { enquiryId: id, edits }));
  return { context, id, choice: await received(context, { id, text: SECOND }) };
}

describe('a corrected list', () => {
  it('is compared, taken without what the Desk wrote, and taken back as one change; both files are kept', async () => {
    const { context, id, choice } = await twoLists();
    const before = cellsOf(context, id);
    const [first, second, third] = before;
    const found = granted(await compareList(context, choice));
    expect(found).toMatchObject({
      added: [{ cells: { tag: 'A-4' } }],
      gone: [{ lineId: third?.id, kind: 'listed' }],
      changed: [
        { lineId: first?.id, cells: [{ column: 'size', now: 'DN 80', next: 'DN 90', kind: 'changed' }] },
        { lineId: second?.id, cells: [{ now: 'DN 125', before: 'DN 100', next: 'DN 150', kind: 'conflict' }] },
      ],
      silent: ['location'],
    });
    const take = {
      added: found.added.map(({ row }) => row),
      gone: found.gone.map(({ lineId }) => lineId),
      cells: [{ lineId: first?.id ?? 0, column: 'size' }],
      order: 'keep' as const,
    };
    const { change } = granted(await takeCompared(context, { ...choice, take, change: found.change }));
    expect(cellsOf(context, id).map(({ tag, size, location }) => [tag, size, location])).toEqual([
      ['A-1', 'DN 90', 'Mill'],
      ['A-4', 'DN 300', undefined],
      ['A-2', 'DN 125', 'Weir'],
    ]);
    const again = granted(await compareList(context, choice));
    expect(again).toMatchObject({ added: [], gone: [], changed: [] });
    granted(undoChange(context, { enquiryId: id, changeId: change }));
    expect(cellsOf(context, id)).toEqual(before);
    expect(granted(openEnquiry(context, id)).files).toHaveLength(2);
  });

  it('is not taken over a schedule that somebody changed since, and only by those who may', async () => {
    const { context, id, choice } = await twoLists();
    const found = granted(await compareList(context, choice));
    const take = { added: [], gone: [], cells: [], order: 'list' as const };
    const edits = [{ lineId: cellsOf(context, id)[0]?.id ?? 0, column: 'notes', text: 'ask' }];
    granted(editCells(context, { enquiryId: id, edits }));
    expect(await takeCompared(context, { ...choice, take, change: found.change })).toMatchObject({
      reason: { code: 'changed-meanwhile' },
    });
    const yard: Context = { ...context, actor: { ...context.actor, role: 'yard' } };
    expect(await takeCompared(yard, { ...choice, take, change: found.change })).toMatchObject({
      reason: { code: 'not-allowed' },
    });
    expect(await compareList(yard, choice)).toMatchObject({ reason: { code: 'not-allowed' } });
  });

  it('puts the lines in its own order when that is chosen', async () => {
    const { context, id, choice } = await twoLists();
    const turned = await received(context, {
      id,
      text: 'Tag,Type,Size\nA-3,globe,DN 50\nA-2,gate,DN 100\nA-1,gate,DN 80\n',
    });
    const found = granted(await compareList(context, turned));
    expect(found).toMatchObject({ added: [], gone: [], changed: [], order: 'other' });
    const take = { added: [], gone: [], cells: [], order: 'list' as const };
    granted(await takeCompared(context, { ...turned, take, change: found.change }));
    expect(cellsOf(context, id).map(({ tag }) => tag)).toEqual(['A-3', 'A-2', 'A-1']);
    expect(choice.enquiryId).toBe(id);
  });
});

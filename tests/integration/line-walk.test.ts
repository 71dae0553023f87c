import { describe, expect, it } from 'vitest';
import { listLines } from '#db/queries/schedule.ts';
import { openLine } from '#lib/services/lines/open-line.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

describe('walking from line to line', () => {
  it('follows the order of the schedule, and ends at its ends', async () => {
    const context = await demoHouseContext();
    const ids = listLines(context.database.db, 2).map(({ id }) => id);
    const [first = 0, second = 0, third = 0] = ids;
    const beside = (lineId: number) => granted(openLine(context, { enquiryId: 2, lineId })).beside;
    expect(beside(first)).toEqual({ before: null, after: second });
    expect(beside(second)).toEqual({ before: first, after: third });
    expect(beside(ids.at(-1) ?? 0)).toEqual({ before: ids.at(-2), after: null });
  });
});

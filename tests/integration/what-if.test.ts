import { describe, expect, it } from 'vitest';
import { USER_ROLES } from '#lib/services/context.ts';
import { openLine } from '#lib/services/lines/open-line.ts';
import { listLineInputs, type WhatIf, whatIf } from '#lib/services/lines/what-if.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { listLines } from '#lib/services/schedule/list-lines.ts';
import { formatQuantity } from '#lib/units/format-quantity.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const LINE = { enquiryId: 1, lineId: 1 };

function figure(answer: WhatIf, name: string) {
  const found = answer.change?.figures.find((one) => one.name === name);
  if (found === undefined) throw new Error(`${name} is not told.`);
  return found;
}

describe('what if', () => {
  it('works a changed pressure out beside what holds, and saves nothing', async () => {
    const context = await demoHouseContext();
    const before = granted(openLine(context, LINE));
    const tried = granted(
      whatIf(context, { ...LINE, column: 'differential_pressure', text: '16 bar', measured: false }),
    );
    const start = figure(tried, 'Torque to start opening');
    expect(start.before).toEqual(before.duty.opening.starting);
    expect(start.after.nominal).toBeGreaterThan(start.before.nominal);
    expect(start.changed).toBe(true);
    expect(figure(tried, 'Turns for a stroke').changed).toBe(false);
    expect(tried.change?.ladder.shapes.some((shape) => 'dash' in shape && shape.dash === 'dashed')).toBe(true);
    expect(granted(openLine(context, LINE)).duty).toEqual(before.duty);
    expect(granted(openLine(context, LINE)).line.version).toBe(before.line.version);
  });

  it('answers with what the line shows once the value is taken, and undo brings the old figures back', async () => {
    const context = await demoHouseContext();
    const changes = [
      ['turns', '61 turns'],
      ['stem_thread', 'Tr36x6'],
      ['condition', 'stiff'],
      ['wheel_diameter', '400 mm'],
    ] as const;
    for (const [column, text] of changes) {
      const before = granted(openLine(context, LINE)).duty;
      const tried = granted(whatIf(context, { ...LINE, column, text, measured: true }));
      const { undo } = granted(
        editCells(context, { enquiryId: 1, edits: [{ lineId: 1, column, text, measured: true }] }),
      );
      const { duty } = granted(openLine(context, LINE));
      expect(figure(tried, 'Torque to start opening').after, column).toEqual(duty.opening.starting);
      expect(figure(tried, 'Never above when closing').after, column).toEqual(duty.closing.neverExceed.torque);
      expect(figure(tried, 'Turns for a stroke').after, column).toEqual(duty.turns);
      granted(editCells(context, { enquiryId: 1, edits: undo }));
      expect(granted(openLine(context, LINE)).duty, column).toEqual(before);
    }
  });

  it.each([
    ['differential_pressure', 'a lot', /cannot be read/, /Write it like/],
    [
      'differential_pressure',
      '10000 bar',
      /^Differential pressure “10000 bar” is outside what is plausible/,
      /Check the number/,
    ],
    ['turns', '0', /outside what is plausible/, /Check the number/],
    ['condition', 'blue', /is none of: free, stiff, seized/, /Write one of/],
  ])('%s “%s” changes nothing and says why', async (column, text, sentence, remedy) => {
    const context = await demoHouseContext();
    const tried = granted(whatIf(context, { ...LINE, column, text, measured: false }));
    expect(tried.change).toBeNull();
    const problem = tried.problems.find((one) => one.column === column);
    expect(problem?.sentence).toMatch(sentence);
    expect(problem?.remedy).toMatch(remedy);
  });

  it('knows no column but those of the schedule', async () => {
    const context = await demoHouseContext();
    expect(whatIf(context, { ...LINE, column: '__proto__', text: '1', measured: false })).toMatchObject({
      ok: false,
      reason: { code: 'no-such-column' },
    });
  });

  it('every slider of every demo line gives texts that are read back within the digits shown', async () => {
    const context = await demoHouseContext();
    let read = 0;
    for (const enquiryId of [1, 2, 3, 4, 5]) {
      for (const { id } of granted(listLines(context, { enquiryId, from: 0, count: 3 })).lines) {
        for (const { column, now, slider } of granted(listLineInputs(context, { enquiryId, lineId: id }))) {
          if (now === null || slider === null) continue;
          for (const value of [slider.low, now.nominal, slider.high]) {
            const text =
              now.unit === 's' ? `${Math.round(value)} s` : formatQuantity({ value, unit: now.unit, system: 'si' });
            const tried = granted(whatIf(context, { enquiryId, lineId: id, column, text, measured: false }));
            const unread = tried.problems.filter((one) => one.column === column && one.code === 'value-unreadable');
            expect(unread, `${column} ${text}`).toEqual([]);
            read += 1;
          }
        }
      }
    }
    console.info(`${read} slider texts read back`);
    expect(read).toBeGreaterThan(500);
  });

  it.each(USER_ROLES.filter((role) => role === 'yard' || role === 'contractor'))(
    'is not open to a %s',
    async (role) => {
      const no = { ok: false, reason: { code: 'not-allowed' } };
      const context = await demoHouseContext(role);
      expect(whatIf(context, { ...LINE, column: 'turns', text: '40', measured: false })).toMatchObject(no);
      expect(listLineInputs(context, LINE)).toMatchObject(no);
    },
  );
});

import { describe, expect, it } from 'vitest';
import { lineSpreadSchema, spreadQuerySchema } from '#lib/contracts/spread.ts';
import { openLine } from '#lib/services/lines/open-line.ts';
import { spreadDuty } from '#lib/services/lines/spread-duty.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const LINE = { enquiryId: 1, lineId: 1 };
const FEW = { ...LINE, runs: 400 };

describe('the spread of a line by chance', () => {
  it('lies inside the line’s own ranges, is the same every time, and keeps to its contract', async () => {
    const context = await demoHouseContext();
    const { duty } = granted(openLine(context, LINE));
    const spread = granted(spreadDuty(context, FEW));
    expect(lineSpreadSchema.parse(spread)).toEqual(spread);
    expect(granted(spreadDuty(context, FEW))).toEqual(spread);
    for (const direction of ['opening', 'closing'] as const) {
      const start = spread.torque_start_nm[direction];
      const { starting, neverExceed } = duty[direction];
      expect([start.low, start.high]).toEqual([starting.low, starting.high]);
      expect(start.low <= start.p5 && start.p5 <= start.p50 && start.p50 <= start.p95 && start.p95 <= start.high).toBe(
        true,
      );
      expect(spread.never_exceed_nm[direction].low).toBe(neverExceed.torque.low);
    }
    expect([spread.turns.low, spread.turns.high]).toEqual([duty.turns.low, duty.turns.high]);
  });
  it('refuses whoever may not read enquiries, and a line that is not there', async () => {
    const context = await demoHouseContext();
    for (const role of ['yard', 'contractor'] as const)
      expect(spreadDuty(await demoHouseContext(role), FEW)).toMatchObject({ reason: { code: 'not-allowed' } });
    expect(spreadDuty(context, { ...FEW, lineId: 999_999 })).toMatchObject({
      ok: false,
      reason: { code: 'no-such-line' },
    });
  });
  it('draws 2000 times unless another number is asked for, within its limits', () => {
    expect(spreadQuerySchema.parse({})).toEqual({ runs: 2000 });
    expect(spreadQuerySchema.parse({ runs: '500' })).toEqual({ runs: 500 });
    for (const runs of ['0', '99', '1000000', 'many', '200.5']) {
      expect(spreadQuerySchema.safeParse({ runs }).success, runs).toBe(false);
    }
  });
});

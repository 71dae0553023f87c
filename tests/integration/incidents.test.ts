import { describe, expect, it, vi } from 'vitest';
import { auditOf } from '#db/queries/audit.ts';
import { awaitPlan, readPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const FOUND = 'Crew 1 works 9.4 h in 8 h.';

/** A planner gone wrong: its plan comes back with what the independent check found. */
vi.mock('#lib/workers/solve.ts', () => ({
  solveInWorker: () => ({
    done: Promise.resolve({
      duties: [],
      classes: [],
      plans: [{ preference: 'cost', fleet: { proof: 'proven' }, discrepancies: [FOUND] }],
      unserved: [],
      shortage: null,
      effort: {},
      timings: {},
    }),
    halt: () => undefined,
    drop: () => undefined,
  }),
}));

describe('a plan that the independent check does not agree with', () => {
  it('is an incident with a reference in the log, and neither a plan nor a quote', async () => {
    const context = await demoHouseContext();
    granted(startPlan(context, 7));
    const state = granted(await awaitPlan(context, 7));
    const sentence = state.kind === 'failed' ? state.sentence : '';
    const reference = /^Incident (K-[0-9A-F]{8}):/.exec(sentence)?.[1] ?? '';
    expect(reference).not.toBe('');
    expect(sentence).toContain(FOUND);
    const [entry] = auditOf(context.database.db, 'enquiry 7').filter(({ action }) => action.startsWith('incident'));
    expect(JSON.parse(entry?.detail_json ?? '{}')).toMatchObject({ reference, found: [FOUND] });
    expect(readPlan(context, 7)).toBeUndefined();
    const quote = await issueQuote(context, { enquiryId: 7 });
    expect(quote.ok ? 'issued' : quote.reason.code).toBe('plan-not-current');
  });
});

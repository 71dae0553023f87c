import { describe, expect, it } from 'vitest';
import { addDays } from '#lib/kernel/date-range.ts';
import type { Result } from '#lib/kernel/result.ts';
import { type Context, today } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { openEnquiry } from '#lib/services/enquiries/open-enquiry.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { adoptCase } from '#lib/services/lines/adopt-case.ts';
import { freeAtHome } from '#lib/services/plans/depots-view.ts';
import { awaitPlan, haltPlan, planState, prepareInput, readPlan, startPlan } from '#lib/services/plans/plan-enquiry.ts';
import { readPlanView } from '#lib/services/plans/plan-view.ts';
import { HOME_DEPOT_ALONE } from '#lib/services/plans/study-cases.ts';
import { awaitStudy, haltStudy, readStudy, type StudyKind, startStudy } from '#lib/services/plans/study-enquiry.ts';
import { addLines } from '#lib/services/schedule/change-lines.ts';
import { checkedWorkOut } from '#tests/support/checked.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

/** Four valves on a pipeline diversion: quick to plan. */
const ID = 7;
async function studied(context: Context, key: { readonly enquiryId: number; readonly kind: StudyKind }) {
  granted(startStudy(context, key));
  return granted(await awaitStudy(context, key));
}

async function planned(context: Context, enquiryId: number) {
  granted(startPlan(context, enquiryId));
  return granted(await awaitPlan(context, enquiryId));
}

describe('the frontier of cost and days', () => {
  it('holds a checked plan for every day and crew, the one of the asked days equal to the plan, and stays current when a point is taken', async () => {
    const context = await demoHouseContext();
    const key = { enquiryId: ID, kind: 'frontier' as const };
    const { state, cases } = await studied(context, key);
    expect(state).toMatchObject({ kind: 'ready', current: true, whole: true });
    const { input } = granted(prepareInput(context, ID));
    const asked = cases.find(({ change }) => change.days === input.site.days && change.crews === input.site.crews);
    const worked = await checkedWorkOut({ ...input, preferences: ['cost'] });
    expect(asked?.cost_minor).toBe(worked.plans[0]?.fleet.cost_minor);
    expect(cases.every(({ discrepancies }) => discrepancies.length === 0)).toBe(true);
    const crews = new Set(cases.map(({ change }) => change.crews));
    expect(crews).toEqual(new Set([1, 2, 3]));
    for (const one of cases) {
      const fewer = cases.find(
        ({ change }) => change.crews === one.change.crews && change.days === (one.change.days ?? 0) - 1,
      );
      if (fewer !== undefined) expect(fewer.served).toBeLessThanOrEqual(one.served);
    }
    console.info(`frontier: ${cases.length} plans of one enquiry, each checked`);

    const other = cases.find(
      ({ change, served, asked: all }) => change.crews === 2 && change.days === 2 && served === all,
    );
    const before = granted(openEnquiry(context, ID)).site;
    const taken = granted(adoptCase(context, { ...key, key: other?.key ?? '' }));
    expect(granted(openEnquiry(context, ID)).site).toMatchObject({ days: 2, crews: 2 });
    expect(granted(readStudy(context, key)).state).toMatchObject({ kind: 'ready', current: true });
    await planned(context, ID);
    expect(readPlan(context, ID)?.plans[0]?.fleet.cost_minor).toBe(other?.cost_minor);
    granted(changeEnquiry(context, { enquiryId: ID, ...taken.undo.enquiry }));
    expect(granted(openEnquiry(context, ID)).site).toEqual(before);
  });

  it('keeps what is there when it is halted, and says that it is not whole', async () => {
    const context = await demoHouseContext();
    const key = { enquiryId: ID, kind: 'frontier' as const };
    granted(startStudy(context, key));
    while (granted(readStudy(context, key)).cases.length < 2) await new Promise((wake) => setTimeout(wake, 20));
    granted(haltStudy(context, key));
    const { state, cases } = granted(await awaitStudy(context, key));
    expect(state).toMatchObject({ kind: 'ready', current: true, whole: false });
    expect(cases.length).toBeGreaterThanOrEqual(2);
  });
});

describe('each part left out', () => {
  it('is really planned: no part makes the plan cheaper by going, where all valves stay served', async () => {
    const context = await demoHouseContext();
    await planned(context, ID);
    const { cases } = await studied(context, { enquiryId: ID, kind: 'without' });
    const [base, ...others] = cases;
    expect(base?.key).toBe('as planned');
    expect(others.length).toBeGreaterThan(3);
    for (const one of others) {
      expect(one.served).toBeLessThanOrEqual(base?.served ?? 0);
      if (one.served === base?.served) expect(one.cost_minor).toBeGreaterThanOrEqual(base.cost_minor);
    }
    const [first] = others;
    const { input } = granted(prepareInput(context, ID));
    const constraints = { ...input.constraints, excludedParts: [first?.key ?? ''] };
    const again = await checkedWorkOut({ ...input, constraints, preferences: ['cost'] });
    expect(first?.cost_minor).toBe(again.plans[0]?.fleet.cost_minor);
    console.info(`without: ${others.length} parts left out, each planned anew`);
  });
});

describe('what another depot gives', () => {
  it('is told with the day to send it, and what the plan would lose without it is really planned', async () => {
    const context = await demoHouseContext();
    await planned(context, ID);
    const before = granted(readPlanView(context, { enquiryId: ID }));
    const drive = before?.kits[0]?.items.find(({ role }) => role === 'drive')?.number ?? '';
    const [home = '', other = ''] = houseFacts(context).depots.map(({ code }) => code);
    context.database.raw.prepare('update unit set depot = ? where model_number = ?').run(other, drive);
    const view = granted(readPlanView(context, { enquiryId: ID }));
    const brought = view?.depots.brought.find(({ model }) => model === drive);
    const { site } = granted(openEnquiry(context, ID));
    expect(brought).toMatchObject({ count: 1, depot: other, sendOn: addDays(site.startsOn, -1), isInTime: true });
    expect(view?.depots.brought.every(({ depot }) => depot !== home)).toBe(true);
    const { cases } = await studied(context, { enquiryId: ID, kind: 'without' });
    const alone = cases.find(({ key }) => key === HOME_DEPOT_ALONE);
    const free = freeAtHome(context, { enquiryId: ID, site });
    expect(free[drive]).toBe(0);
    const { input } = granted(prepareInput(context, ID));
    const again = await checkedWorkOut({ ...input, free, preferences: ['cost'] });
    expect(alone?.cost_minor).toBe(again.plans[0]?.fleet.cost_minor);
    expect(alone?.served).toBe(again.plans[0]?.fleet.served);
    expect(alone?.cost_minor).toBeGreaterThanOrEqual(cases[0]?.cost_minor ?? Number.NaN);
  });
});

describe('another depot whose day of sending has passed', () => {
  it('is answered by the first later start on which all is free and can be sent, which is then planned in time', async () => {
    const context = await demoHouseContext();
    const { siteJson } = granted(openEnquiry(context, ID));
    const start = today(context);
    granted(changeEnquiry(context, { enquiryId: ID, site: { ...siteJson, starts_on: start } }));
    await planned(context, ID);
    const kit = granted(readPlanView(context, { enquiryId: ID }))?.kits[0]?.items ?? [];
    const drive = kit.find(({ role }) => role === 'drive')?.number ?? '';
    const [, other = ''] = houseFacts(context).depots.map(({ code }) => code);
    context.database.raw.prepare('update unit set depot = ? where model_number = ?').run(other, drive);
    const late = granted(readPlanView(context, { enquiryId: ID }))?.depots;
    expect(late?.brought.find(({ model }) => model === drive)).toMatchObject({ isInTime: false });
    const later = late?.later;
    expect(later?.daysLater).toBeGreaterThan(0);
    expect(later?.startsOn).toBe(addDays(start, later?.daysLater ?? 0));
    expect(later?.brought.every(({ isInTime }) => isInTime)).toBe(true);
    expect(later?.brought.some(({ model }) => model === drive)).toBe(true);
    // Taken over as the screen does, the plan is in time and proposes nothing further; taken back it is as before.
    const before = granted(openEnquiry(context, ID)).siteJson;
    granted(changeEnquiry(context, { enquiryId: ID, site: { ...before, starts_on: later?.startsOn } }));
    await planned(context, ID);
    const then = granted(readPlanView(context, { enquiryId: ID }))?.depots;
    expect(then?.brought.find(({ model }) => model === drive)).toMatchObject({ isInTime: true });
    expect(then?.brought.every(({ isInTime }) => isInTime)).toBe(true);
    expect(then?.later).toBeNull();
    granted(changeEnquiry(context, { enquiryId: ID, site: before }));
    expect(granted(openEnquiry(context, ID)).siteJson).toEqual(before);
  });
});

describe('ways around a shortage', () => {
  it('name more days, another crew, a later start and more pieces, with what each serves and costs', async () => {
    const context = await demoHouseContext();
    // Two equal valves, and hours for one a day.
    const site = { days: 1, shift_hours: 1, move_minutes: 30 };
    const { id } = granted(createEnquiry(context, { title: 'Short', customer: { name: 'Short of time' }, site }));
    const cells = {
      valve_type: 'gate',
      driven_by: 'key cap',
      size: 'DN 150',
      turns: '30',
      depth_to_nut: '1 m',
      qty: '2',
    };
    granted(addLines(context, { enquiryId: id, lines: [{ cells: { tag: 'S-1', ...cells } }] }));
    await planned(context, id);
    const { cases } = await studied(context, { enquiryId: id, kind: 'ways' });
    const base = cases[0];
    expect(base?.key).toBe('as planned');
    expect(base?.served).toBeLessThan(base?.asked ?? 0);
    const better = cases.filter(({ served }) => served > (base?.served ?? 0));
    expect(better.some(({ key }) => key.startsWith('days '))).toBe(true);
    expect(better.some(({ key }) => key.startsWith('crews '))).toBe(true);
    const [way] = better;
    granted(adoptCase(context, { enquiryId: id, kind: 'ways', key: way?.key ?? '' }));
    await planned(context, id);
    expect(readPlan(context, id)?.plans[0]?.fleet.served).toBe(way?.served);
  });
});

describe('other terms are refused', () => {
  it('for an empty enquiry, before there is a plan, for terms that were not tried, and for a role that may not', async () => {
    const context = await demoHouseContext();
    const { id } = granted(createEnquiry(context, { title: 'Empty', customer: { name: 'Nobody yet' }, site: {} }));
    const code = (answer: Result<unknown>) => (answer.ok ? 'done' : answer.reason.code);
    expect(code(startStudy(context, { enquiryId: id, kind: 'frontier' }))).toBe('no-lines');
    expect(code(startStudy(context, { enquiryId: ID, kind: 'without' }))).toBe('nothing-to-try');
    expect(code(adoptCase(context, { enquiryId: ID, kind: 'frontier', key: '900d9c' }))).toBe('no-such-case');
    const yard = { ...context, actor: { ...context.actor, role: 'yard' as const } };
    expect(code(startStudy(yard, { enquiryId: ID, kind: 'frontier' }))).toBe('not-allowed');
    expect(code(haltStudy(yard, { enquiryId: ID, kind: 'frontier' }))).toBe('not-allowed');
    expect(code(readStudy(yard, { enquiryId: ID, kind: 'frontier' }))).toBe('not-allowed');
    expect(code(adoptCase(yard, { enquiryId: ID, kind: 'frontier', key: '1d1c' }))).toBe('not-allowed');
  });
});

describe('a plan that is halted', () => {
  it('keeps the best that was found, checked and marked, and may be planned on', async () => {
    const context = await demoHouseContext();
    granted(startPlan(context, 1));
    granted(haltPlan(context, 1));
    expect(granted(planState(context, 1))).toMatchObject({ kind: 'running', halting: true });
    const state = granted(await awaitPlan(context, 1));
    expect(state).toMatchObject({ kind: 'ready', current: true, halted: true });
    const halted = readPlan(context, 1);
    expect(halted?.plans.length).toBeGreaterThan(0);
    expect(halted?.plans.flatMap(({ discrepancies }) => discrepancies)).toEqual([]);
    const whole = await planned(context, 1);
    expect(whole).toMatchObject({ kind: 'ready', current: true });
    expect(whole).not.toHaveProperty('halted');
    expect(readPlan(context, 1)?.plans).toHaveLength(4);
  });

  it('is the same twice when nobody halts it, to the last figure', async () => {
    const plans: string[] = [];
    for (let run = 0; run < 2; run += 1) {
      const context = await demoHouseContext();
      await planned(context, ID);
      const worked = readPlan(context, ID);
      plans.push(JSON.stringify({ ...worked, timings: null }));
    }
    expect(plans[0]).toBe(plans[1]);
  });
});

import { describe, expect, it } from 'vitest';
import { auditOf } from '#db/queries/audit.ts';
import type { Context } from '#lib/services/context.ts';
import { changeEnquiry } from '#lib/services/enquiries/change-enquiry.ts';
import { createEnquiry } from '#lib/services/enquiries/create-enquiry.ts';
import { applyRepair } from '#lib/services/lines/apply-repair.ts';
import { openLine } from '#lib/services/lines/open-line.ts';
import { whyPart } from '#lib/services/lines/why-part.ts';
import { prepareInput } from '#lib/services/plans/plan-enquiry.ts';
import { addLines } from '#lib/services/schedule/change-lines.ts';
import { editCells } from '#lib/services/schedule/edit-cells.ts';
import { checkedWorkOut } from '#tests/support/checked.ts';
import { granted } from '#tests/support/granted.ts';
import { demoHouseContext } from '#tests/support/houses/demo-house.ts';

const WHEEL = { valve_type: 'gate', driven_by: 'handwheel', size: 'DN 200', turns: '40' };
const NUT = { valve_type: 'gate', driven_by: 'key cap', size: 'DN 150', turns: '30', depth_to_nut: '1 m' };
const HELD = { ...WHEEL, wheel_diameter: '400 mm', starting_torque: '80 Nm', anchor: 'structure' };

interface Impossible {
  readonly name: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly site?: Readonly<Record<string, unknown>>;
  /** The repair that must be offered with a button. */
  readonly repair: string;
}

/** Lines that nothing serves, each for another reason. */
const IMPOSSIBLE: readonly Impossible[] = [
  {
    name: 'a wheel of unknown size',
    cells: { ...WHEEL, wheel_diameter: '200 to 1200 mm', starting_torque: '60 Nm' },
    repair: 'measure-wheel + count-spokes',
  },
  {
    name: 'petrol in a closed room',
    cells: { ...NUT, enclosed: 'yes' },
    site: { sources_allowed: ['petrol'] },
    repair: 'allow-battery',
  },
  { name: 'air that nobody speaks of', cells: HELD, site: { sources_allowed: ['air'] }, repair: 'air-pressure' },
  {
    name: 'air too weak',
    cells: HELD,
    site: { sources_allowed: ['air'], air_pressure: '2 bar' },
    repair: 'allow-petrol',
  },
  { name: 'a torque no drive has', cells: { ...NUT, starting_torque: '9000 Nm' }, repair: 'torque-at-most' },
  { name: 'a wall close by', cells: { ...HELD, clear_radius: '0.1 m' }, repair: 'clear_radius' },
  { name: 'a roof close by', cells: { ...HELD, headroom: '0.05 m' }, repair: 'headroom' },
  { name: 'a depth that is anything', cells: { ...NUT, depth_to_nut: '0.2 to 9 m' }, repair: 'measure-depth' },
  {
    name: 'spokes not counted',
    cells: { ...WHEEL, wheel_diameter: '600 mm', starting_torque: '400 Nm', anchor: 'structure' },
    repair: 'count-spokes',
  },
];

async function enquiryWith(context: Context, one: Omit<Impossible, 'name' | 'repair'>) {
  const { cells, site = {} } = one;
  const { id: enquiryId } = granted(
    createEnquiry(context, { title: 'Repairs', customer: { name: 'Repair customer' }, site }),
  );
  const { lineIds } = granted(addLines(context, { enquiryId, lines: [{ cells: { tag: 'R-1', ...cells } }] }));
  return { enquiryId, lineId: lineIds[0] ?? 0 };
}

async function servedBy(context: Context, enquiryId: number): Promise<number> {
  const { input } = granted(prepareInput(context, enquiryId));
  const worked = await checkedWorkOut({ ...input, preferences: ['cost'] });
  return worked.plans[0]?.fleet.served ?? 0;
}

describe('repairs', () => {
  it('each that has a button makes its line possible through the whole chain, and undo brings everything back', async () => {
    let applied = 0;
    const context = await demoHouseContext();
    for (const one of IMPOSSIBLE) {
      const key = await enquiryWith(context, one);
      const { enquiryId, lineId } = key;
      const before = granted(openLine(context, key));
      const offers = before.unserved?.repairs ?? [];
      expect(
        offers.filter(({ action }) => action !== null).map(({ id }) => id),
        one.name,
      ).toContain(one.repair);
      expect(await servedBy(context, enquiryId), one.name).toBe(0);
      for (const { sentence, action } of offers) {
        if (action === null) continue;
        const done = granted(applyRepair(context, { enquiryId, lineIds: [lineId], repair: sentence }));
        expect(granted(openLine(context, key)).unserved, `${one.name}: ${sentence}`).toBeNull();
        expect(await servedBy(context, enquiryId), `${one.name}: ${sentence}`).toBe(1);
        if (done.undo.enquiry !== null)
          granted(changeEnquiry(context, { enquiryId, version: done.version, ...done.undo.enquiry }));
        if (done.undo.edits.length > 0) granted(editCells(context, { enquiryId, edits: done.undo.edits }));
        const after = granted(openLine(context, key));
        expect(after.unserved?.because).toEqual(before.unserved?.because);
        expect(after.line.cells).toEqual(before.line.cells);
        applied += 1;
      }
    }
    console.info(`repairs: ${applied} carried out on ${IMPOSSIBLE.length} lines, each served and taken back`);
    expect(applied).toBeGreaterThanOrEqual(IMPOSSIBLE.length);
  });

  it('never raise a limit of the valve by a button', async () => {
    const context = await demoHouseContext();
    const key = await enquiryWith(context, { cells: { ...NUT, max_input_speed: '1 rpm' } });
    const faster = granted(openLine(context, key)).unserved?.repairs.find(({ id }) => id === 'may-turn-faster');
    expect(faster?.cost).toBe('the maker’s figure');
    expect(faster?.action).toBeNull();
  });

  it('use one part again where one alone is enough, and let a pin go', async () => {
    const context = await demoHouseContext();
    const key = await enquiryWith(context, { cells: NUT });
    const { enquiryId, lineId } = key;
    const served = granted(openLine(context, key)).assemblies;
    const drives = new Set(
      granted(prepareInput(context, enquiryId)).input.models.flatMap((m) => (m.role === 'drive' ? m.number : [])),
    );
    expect(served.length).toBeGreaterThan(0);
    const leftOut = { lockedParts: [], excludedParts: [...drives], pins: [] };
    granted(changeEnquiry(context, { enquiryId, constraints: leftOut }));
    const back = granted(openLine(context, key)).unserved?.repairs.find(({ id }) => id === 'use-again');
    expect(back?.action).toMatch(/^Use \S+ again$/);
    granted(applyRepair(context, { enquiryId, lineIds: [lineId], repair: back?.sentence ?? '' }));
    expect(granted(openLine(context, key)).unserved).toBeNull();
    const pins = [{ tag: 'R-1', part: 'W-204' }];
    granted(changeEnquiry(context, { enquiryId, constraints: { lockedParts: [], excludedParts: [], pins } }));
    const free = granted(openLine(context, key)).unserved?.repairs.find(({ id }) => id === 'release');
    granted(applyRepair(context, { enquiryId, tags: ['R-1'], repair: free?.sentence ?? '' }));
    expect(granted(openLine(context, key)).unserved).toBeNull();
    const actions = auditOf(context.database.db, `enquiry ${enquiryId}`).map(({ action }) => action);
    expect(actions.filter((action) => action === 'repair applied')).toHaveLength(2);
  });

  it('are refused when they are no longer offered, help nothing, name no line, or come from somebody who may not', async () => {
    const context = await demoHouseContext();
    const key = await enquiryWith(context, { cells: { ...HELD, clear_radius: '0.1 m' } });
    const { enquiryId, lineId } = key;
    const sentence = granted(openLine(context, key)).unserved?.repairs[0]?.sentence ?? '';
    const code = (answer: ReturnType<typeof applyRepair>) => (answer.ok ? 'done' : answer.reason.code);
    expect(code(applyRepair(context, { enquiryId, lineIds: [lineId], repair: 'Buy a bigger one.' }))).toBe(
      'repair-gone',
    );
    expect(code(applyRepair(context, { enquiryId, lineIds: [987_654], repair: sentence }))).toBe('no-such-line');
    expect(code(applyRepair(context, { enquiryId: 987_654, lineIds: [lineId], repair: sentence }))).toBe(
      'no-such-enquiry',
    );
    const yard = { ...context, actor: { ...context.actor, role: 'yard' as const } };
    expect(code(applyRepair(yard, { enquiryId, lineIds: [lineId], repair: sentence }))).toBe('not-allowed');
    expect(code(applyRepair(context, { enquiryId, lineIds: [lineId], repair: sentence }))).toBe('done');
    expect(code(applyRepair(context, { enquiryId, lineIds: [lineId], repair: sentence }))).toBe('repair-gone');
  });

  it('stand beside a tree that names every rule of the proof with facts and parts below it', async () => {
    const context = await demoHouseContext();
    let nodes = 0;
    for (const one of IMPOSSIBLE) {
      const key = await enquiryWith(context, one);
      const { unserved } = granted(openLine(context, key));
      const rules = unserved?.reasons?.children ?? [];
      expect(rules).toHaveLength(unserved?.because.length ?? -1);
      for (const rule of rules) {
        expect(rule.kind).toBe('rule');
        expect(
          rule.children.some(({ kind }) => kind === 'part'),
          `${one.name}: ${rule.sentence}`,
        ).toBe(true);
        nodes += 1 + rule.children.length;
      }
      const part = granted(whyPart(context, { ...key, part: 'W-204' }));
      expect(part.reasons.sentence).toContain('W-204');
    }
    console.info(`explanations: ${nodes} nodes on ${IMPOSSIBLE.length} lines`);
    expect(nodes).toBeGreaterThan(40);
  });
});

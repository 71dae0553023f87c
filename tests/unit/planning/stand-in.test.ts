import { beforeAll, describe, expect, it } from 'vitest';
import { NO_CONSTRAINTS } from '#lib/contracts/constraints.ts';
import { parseSite } from '#lib/contracts/site.ts';
import { assessDuties } from '#lib/duty/assess-duties.ts';
import type { Model } from '#lib/equipment/model.ts';
import { pairDuties } from '#lib/planning/pose-problem.ts';
import { type StandIn, tryStandIn } from '#lib/planning/stand-in.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { demoEnquiries, demoHouse, demoModels } from '#seeds/load.ts';
import { checkedWorkOut, sound } from '#tests/support/checked.ts';
import { granted } from '#tests/support/granted.ts';
import { takeList } from '#tests/support/lists/take-list.ts';

let plan: Omit<StandIn, 'gone' | 'standIn'>;
/** Models that lines of the plan name. */
let used: readonly Model[] = [];

beforeAll(async () => {
  const [demo] = demoEnquiries();
  const site = granted(parseSite(demo?.site ?? {}, { startsOn: '2030-06-03' }));
  const lines = uniqueTags((await takeList(demo?.listText ?? '')).lines);
  const models = demoModels();
  const { plans } = await checkedWorkOut({
    lines,
    site,
    models,
    free: Object.fromEntries(models.map(({ number }) => [number, 50])),
    labour_minor_per_hour: demoHouse().labourMinorPerHour,
    preferences: ['cost'],
    constraints: NO_CONSTRAINTS,
    budget: { seconds: 30, nodes: 100_000 },
  });
  const [outcome] = plans;
  if (!outcome) throw new Error('The demo list has no plan.');
  plan = { lines, site, models, outcome };
  const named = new Set(Object.values(outcome.assemblies).flatMap(({ id }) => id.split(/[+:*]/)));
  used = models.filter(({ number }) => named.has(number));
}, 120_000);

/** Some of the same role, spread evenly over the catalogue. */
function othersOf(gone: Model): readonly Model[] {
  const all = plan.models.filter(({ role, number }) => role === gone.role && number !== gone.number);
  const step = Math.max(1, Math.floor(all.length / 6));
  return all.filter((_, index) => index % step === 0);
}

const REFUSED = (code: string) => ({ ok: false, reason: { code } });

describe('a piece that stands in for one of a plan', () => {
  it('may be any that has the same facts under another number, on every line that uses it', () => {
    expect(used.length).toBeGreaterThan(4);
    for (const model of used) {
      const twin = { ...model, number: `${model.number}-TWIN` };
      const answer = tryStandIn({ ...plan, models: [...plan.models, twin], gone: model.number, standIn: twin.number });
      expect(answer.ok, answer.ok ? '' : answer.reason.sentence).toBe(true);
    }
  });

  it('is accepted only with assemblies that the independent check finds sound and that name it, and refused with what stands against it', () => {
    const duties = pairDuties(plan.lines, assessDuties({ lines: plan.lines, site: plan.site }));
    let accepted = 0;
    let refused = 0;
    for (const gone of used)
      for (const other of othersOf(gone)) {
        const answer = tryStandIn({ ...plan, gone: gone.number, standIn: other.number });
        if (!answer.ok) {
          refused += 1;
          expect(answer.reason.code).toBe('stand-in-refused');
          expect(answer.reason.sentence).toMatch(/^\S+ cannot stand in on \S+\. \S/);
          continue;
        }
        for (const { tag, assembly } of answer.value) {
          const lineDuty = duties.find(({ line }) => line.tag === tag);
          if (!lineDuty) throw new Error(`No line ${tag}.`);
          sound(assembly, { lineDuty, site: plan.site, models: plan.models });
          expect(assembly.id).toContain(other.number);
        }
        accepted += 1;
      }
    console.info(`stand-ins: ${accepted} accepted, ${refused} refused`);
    expect(accepted).toBeGreaterThan(0);
    expect(refused).toBeGreaterThan(0);
  }, 120_000);

  it('is refused where it is of another kind, unknown, or stands in for what no line names', () => {
    const drive = used.find(({ role }) => role === 'drive')?.number ?? '';
    const head = used.find(({ role }) => role === 'head')?.number ?? '';
    const spare = plan.models.find(
      ({ role, number }) => role === 'drive' && !used.some((one) => one.number === number),
    );
    expect(tryStandIn({ ...plan, gone: drive, standIn: head })).toMatchObject(REFUSED('stand-in-of-another-kind'));
    expect(tryStandIn({ ...plan, gone: drive, standIn: 'NONE' })).toMatchObject(REFUSED('no-such-model'));
    expect(tryStandIn({ ...plan, gone: spare?.number ?? '', standIn: drive })).toMatchObject(
      REFUSED('stand-in-unjudged'),
    );
    expect(tryStandIn({ ...plan, lines: [], gone: drive, standIn: drive })).toMatchObject(REFUSED('stand-in-unjudged'));
  });
});

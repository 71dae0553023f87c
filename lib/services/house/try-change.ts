/*
 * The test bench: which lines of which open enquiries would a change of house rules or of one model change, and why.
 * Invariant: nothing is saved by a trial; it runs in a worker, tells how far it is, and can be halted; one trial a person at a time.
 * Not here: comparing (../../planning/compare-change.ts) and saving the change (house-record.ts, save-model.ts).
 * Read next: ../../workers/compare.ts.
 */
import { listEnquiries } from '#db/queries/enquiries.ts';
import { modelSchema } from '#lib/contracts/equipment.ts';
import { type FlatModel, readFlat } from '#lib/contracts/equipment-flat.ts';
import { houseRulesSchema } from '#lib/contracts/house.ts';
import type { HouseRule, Site } from '#lib/duty/site.ts';
import type { Model, Role } from '#lib/equipment/model.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { ChangeCase, ChangedEnquiry } from '#lib/planning/compare-change.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { readSchedule } from '#lib/services/schedule/schedule-record.ts';
import { type CompareRun, compareInWorker } from '#lib/workers/compare.ts';
import { houseFacts, houseModels } from './house-facts.ts';

export type ChangeToTry =
  | { readonly kind: 'rules'; readonly rules: unknown }
  | { readonly kind: 'retire'; readonly number: string }
  | { readonly kind: 'model'; readonly role: Role; readonly fields: FlatModel };

export interface TriedEnquiry extends ChangedEnquiry {
  readonly number: string;
  readonly title: string;
}

export interface TrialState {
  readonly kind: 'none' | 'running' | 'done' | 'failed';
  readonly asked: number;
  readonly enquiries: readonly TriedEnquiry[];
  readonly sentence: string;
}

interface Trial {
  readonly asked: number;
  readonly run: CompareRun;
  readonly enquiries: TriedEnquiry[];
  kind: TrialState['kind'];
  sentence: string;
}

declare global {
  var kitwrightTrials: Map<string, Trial> | undefined;
}

const CLOSED: readonly string[] = ['accepted', 'declined', 'lapsed'];
const NO_TRIAL: TrialState = { kind: 'none', asked: 0, enquiries: [], sentence: 'Nothing is being tried.' };

/** Starts a trial; one that the same person still has running is halted. */
export function startTrial(context: Context, change: ChangeToTry): Result<TrialState> {
  const allowed = authorise(context, 'change the house');
  if (!allowed.ok) return allowed;
  const world = changedWorld(context, change);
  if (!world.ok) return world;
  const open = listEnquiries(context.database.db).filter(({ state, lines }) => !CLOSED.includes(state) && lines > 0);
  const names = new Map(open.map(({ id, number, title }) => [id, { number, title }]));
  const cases = open.flatMap(({ id }) => caseOf(context, { enquiryId: id, world: world.value }) ?? []);
  trials().get(context.actor.id)?.run.halt();
  const run = compareInWorker(cases, (result) => {
    trial.enquiries.push({ ...result, number: '', title: '', ...names.get(result.enquiryId) });
  });
  const trial: Trial = { asked: cases.length, run, enquiries: [], kind: 'running', sentence: '' };
  trials().set(context.actor.id, trial);
  run.done.then(
    () => {
      trial.kind = 'done';
    },
    (error: unknown) => {
      trial.kind = 'failed';
      trial.sentence = `The trial has no answer: ${error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error)}`;
    },
  );
  return readTrial(context);
}

export function readTrial(context: Context): Result<TrialState> {
  const allowed = authorise(context, 'change the house');
  if (!allowed.ok) return allowed;
  const trial = trials().get(context.actor.id);
  if (trial === undefined) return ok(NO_TRIAL);
  const { kind, asked, enquiries, sentence } = trial;
  return ok({ kind, asked, enquiries: [...enquiries], sentence });
}

export function haltTrial(context: Context): Result<TrialState> {
  const allowed = authorise(context, 'change the house');
  if (!allowed.ok) return allowed;
  trials().get(context.actor.id)?.run.halt();
  trials().delete(context.actor.id);
  return ok(NO_TRIAL);
}

/** Waits for the trial under way; for tests. */
export async function awaitTrial(context: Context): Promise<Result<TrialState>> {
  await trials()
    .get(context.actor.id)
    ?.run.done.catch(() => undefined);
  return readTrial(context);
}

function trials(): Map<string, Trial> {
  globalThis.kitwrightTrials ??= new Map();
  return globalThis.kitwrightTrials;
}

interface ChangedWorld {
  readonly site: (site: Site) => Site;
  readonly models: (models: readonly Model[]) => readonly Model[];
}

const SAME: ChangedWorld = { site: (site) => site, models: (models) => models };

function changedWorld(context: Context, change: ChangeToTry): Result<ChangedWorld> {
  switch (change.kind) {
    case 'rules': {
      const parsed = houseRulesSchema.safeParse(change.rules);
      if (!parsed.success)
        return failed({
          code: 'house-invalid',
          sentence: `The rules cannot be tried yet: ${parsed.error.issues.map(({ path, message }) => `${path.join('.')} ${message}`).join('; ')}.`,
        });
      const { houseRules } = houseFacts(context);
      const asked: readonly HouseRule[] = parsed.data.filter(({ off }) => off !== true);
      return ok({ ...SAME, site: (site) => withRules(site, { houseRules, asked }) });
    }
    case 'retire':
      return ok({ ...SAME, models: (models) => models.filter(({ number }) => number !== change.number) });
    case 'model': {
      const read = readFlat(change.fields, { role: change.role, currency: houseFacts(context).pricing.currency });
      if (!read.ok)
        return failed({ code: 'model-invalid', sentence: read.problems.map(({ sentence }) => sentence).join(' ') });
      const model = modelSchema.parse(read.json);
      return ok({
        ...SAME,
        models: (models) => {
          const others = models.filter(({ number }) => number !== model.number);
          // Rates come from the card that holds, as in a plan.
          const rates = models.find(({ number }) => number === model.number)?.rates ?? model.rates;
          return [...others, { ...model, rates }].sort((a, b) => (a.number < b.number ? -1 : 1));
        },
      });
    }
  }
}

/** The rules of customer and site stay; those of the house are exchanged. */
function withRules(
  site: Site,
  { houseRules, asked }: { readonly houseRules: readonly HouseRule[]; readonly asked: readonly HouseRule[] },
): Site {
  const isHouse = (rule: HouseRule) =>
    houseRules.some(({ id, kind, value }) => id === rule.id && kind === rule.kind && value === rule.value);
  const own = site.houseRules.filter((rule) => !isHouse(rule));
  const taken = new Set(own.map(({ id }) => id));
  return { ...site, houseRules: [...asked.filter(({ id }) => !taken.has(id)), ...own] };
}

function caseOf(
  context: Context,
  { enquiryId, world }: { readonly enquiryId: number; readonly world: ChangedWorld },
): ChangeCase | null {
  const enquiry = readEnquiry(context, enquiryId);
  if (!enquiry.ok) return null;
  const { site, constraints } = enquiry.value;
  const models = houseModels(context, site.startsOn);
  return {
    enquiryId,
    lines: uniqueTags(readSchedule(context, enquiry.value).map(({ line, row }) => ({ line, row: row.row }))),
    constraints,
    before: { site, models },
    after: { site: world.site(site), models: world.models(models) },
  };
}

/*
 * Plans an enquiry, or one option of its quote, in the background and keeps the newest answer: one run an option, a newer request replaces an older one.
 * Invariant: a stored plan names the hash of everything it was worked from; a stale plan is told apart from a current one.
 * Not here: the working itself (work-out.ts), which runs in a worker thread.
 * Read next: ../workers/solve.ts, ../planning/work-out.ts.
 */
import type { OptionKey } from '#db/queries/quote-options.ts';
import { insertPlan, latestPlan } from '#db/queries/quotes.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import type { WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';
import { type SolveRun, solveInWorker } from '#lib/workers/solve.ts';
import { authorise } from './authorise.ts';
import { type Context, timestamp } from './context.ts';
import { type EnquiryRecord, PREFERENCES, readEnquiry } from './enquiry-record.ts';
import { freePieces, houseFacts, houseModels } from './house-facts.ts';
import { asOption, OWN_SLOT, readOption } from './option-record.ts';
import { readSchedule } from './schedule-record.ts';
import { sha256 } from './sha256.ts';

/** An enquiry by its id, or one option of its quote. */
export type Planned = number | OptionKey;

export type PlanState =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly note: string; readonly since: string }
  | { readonly kind: 'failed'; readonly sentence: string }
  | { readonly kind: 'ready'; readonly current: boolean; readonly planId: number; readonly at: string };

interface Running {
  readonly hash: string;
  readonly since: string;
  readonly run: SolveRun;
  note: string;
}

declare global {
  var kitwrightRuns: Map<string, Running> | undefined;
  var kitwrightFailures: Map<string, { readonly hash: string; readonly sentence: string }> | undefined;
}

const PLAN_SECONDS = 40;
const PLAN_NODES = 20_000;

/** Starts planning unless a current plan or a run of the same input is there already. */
export function startPlan(context: Context, asked: Planned): Result<PlanState> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const key = keyOf(asked);
  const prepared = prepareInput(context, key);
  if (!prepared.ok) return prepared;
  const { input, hash } = prepared.value;
  if (input.lines.length === 0) {
    return failed({ code: 'no-lines', sentence: 'The schedule is empty: take a list in or type a line first.' });
  }
  const state = planStateOf(context, { ...key, hash });
  if (state.kind === 'running' || (state.kind === 'ready' && state.current)) return ok(state);
  launch(context, { ...key, hash, input });
  return ok(planStateOf(context, { ...key, hash }));
}

export function planState(context: Context, asked: Planned): Result<PlanState> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const prepared = prepareInput(context, asked);
  if (!prepared.ok) return prepared;
  return ok(planStateOf(context, { ...keyOf(asked), hash: prepared.value.hash }));
}

export function haltPlan(context: Context, asked: Planned): Result<true> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const running = runs().get(nameOf(keyOf(asked)));
  runs().delete(nameOf(keyOf(asked)));
  running?.run.halt();
  return ok(true);
}

/** The newest stored plan, whether or not the enquiry has changed since. */
export function readPlan(context: Context, asked: Planned): WorkedOut | undefined {
  const row = latestPlan(context.database.db, keyOf(asked));
  return row ? (JSON.parse(row.result_json) as WorkedOut) : undefined;
}

/** Waits for the run that is under way; for tests, papers and the command line. */
export async function awaitPlan(context: Context, asked: Planned): Promise<Result<PlanState>> {
  await runs()
    .get(nameOf(keyOf(asked)))
    ?.run.done.catch(() => undefined);
  return planState(context, asked);
}

export function prepareInput(
  context: Context,
  asked: Planned,
): Result<{ readonly enquiry: EnquiryRecord; readonly input: WorkOutInput; readonly hash: string }> {
  const key = keyOf(asked);
  const enquiry = readPlanned(context, key);
  if (!enquiry.ok) return enquiry;
  const { enquiryId } = key;
  const { site, constraints } = enquiry.value;
  const input: WorkOutInput = {
    lines: uniqueTags(readSchedule(context, enquiry.value).map(({ line, row }) => ({ line, row: row.row }))),
    site,
    models: houseModels(context, site.startsOn),
    free: freePieces(context, { window: rangeOfDays(site.startsOn, site.days), enquiryId }),
    labour_minor_per_hour: houseFacts(context, site.startsOn).labourMinorPerHour,
    preferences: PREFERENCES,
    constraints,
    budget: { seconds: PLAN_SECONDS, nodes: PLAN_NODES },
  };
  return ok({ enquiry: enquiry.value, input, hash: sha256(JSON.stringify(input)) });
}

function readPlanned(context: Context, key: OptionKey): Result<EnquiryRecord> {
  const enquiry = readEnquiry(context, key.enquiryId);
  if (!enquiry.ok) return enquiry;
  const option = readOption(context, key);
  if (option === undefined)
    return failed({ code: 'no-such-option', sentence: 'That option is not there; load the page again.' });
  const asked = asOption(enquiry.value, option);
  if (asked.site.sourcesAllowed.length > 0) return ok(asked);
  return failed({
    code: 'option-without-source',
    sentence: `The site no longer allows any power source that the option “${option.choices.name}” asks for: choose another for it.`,
  });
}

function keyOf(asked: Planned): OptionKey {
  return typeof asked === 'number'
    ? { enquiryId: asked, slot: OWN_SLOT }
    : { enquiryId: asked.enquiryId, slot: asked.slot };
}

function nameOf({ enquiryId, slot }: OptionKey): string {
  return `${enquiryId}/${slot}`;
}

function runs(): Map<string, Running> {
  globalThis.kitwrightRuns ??= new Map();
  return globalThis.kitwrightRuns;
}

function failures(): Map<string, { readonly hash: string; readonly sentence: string }> {
  globalThis.kitwrightFailures ??= new Map();
  return globalThis.kitwrightFailures;
}

export function planStateOf(
  context: Context,
  asked: { readonly enquiryId: number; readonly slot?: number; readonly hash: string },
): PlanState {
  const key = { enquiryId: asked.enquiryId, slot: asked.slot ?? OWN_SLOT, hash: asked.hash };
  const running = runs().get(nameOf(key));
  if (running && running.hash === key.hash) return { kind: 'running', note: running.note, since: running.since };
  const failure = failures().get(nameOf(key));
  if (failure && failure.hash === key.hash) return { kind: 'failed', sentence: failure.sentence };
  const row = latestPlan(context.database.db, key);
  if (!row) return { kind: 'none' };
  return { kind: 'ready', current: row.input_hash === key.hash, planId: row.id, at: row.created_at };
}

function launch(context: Context, job: OptionKey & { readonly hash: string; readonly input: WorkOutInput }): void {
  const name = nameOf(job);
  runs().get(name)?.run.halt();
  failures().delete(name);
  const running: Running = {
    hash: job.hash,
    since: timestamp(context),
    note: 'Starting.',
    run: solveInWorker(job.input, (note) => {
      running.note = note;
    }),
  };
  runs().set(name, running);
  running.run.done.then(
    (result) => keep(context, { ...job, running, result }),
    (error: unknown) => {
      if (runs().get(name) !== running) return;
      runs().delete(name);
      failures().set(name, {
        hash: job.hash,
        sentence: `The plan could not be worked out: ${error instanceof Error ? error.message : String(error)}`,
      });
    },
  );
}

interface Keeping extends OptionKey {
  readonly hash: string;
  readonly running: Running;
  readonly result: WorkedOut;
}

function keep(context: Context, { enquiryId, slot, hash, running, result }: Keeping): void {
  const name = nameOf({ enquiryId, slot });
  if (runs().get(name) !== running) return;
  runs().delete(name);
  const wrong = result.plans.flatMap((plan) => plan.discrepancies);
  if (wrong.length > 0) {
    failures().set(name, {
      hash,
      sentence: `The independent check did not agree with the plan, so it is not shown: ${wrong.slice(0, 3).join(' ')}`,
    });
    return;
  }
  insertPlan(context.database.db, {
    enquiry_id: enquiryId,
    option_slot: slot,
    input_hash: hash,
    state: 'ready',
    result_json: JSON.stringify(result),
    created_at: timestamp(context),
  });
}

/*
 * Plans an enquiry in the background and keeps the newest answer: one run an enquiry, a newer request replaces an older one.
 * Invariant: a stored plan names the hash of everything it was worked from; a stale plan is told apart from a current one.
 * Not here: the working itself (work-out.ts), which runs in a worker thread.
 * Read next: ../workers/solve.ts, ../planning/work-out.ts.
 */
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
import { readSchedule } from './schedule-record.ts';
import { sha256 } from './sha256.ts';

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
  var kitwrightRuns: Map<number, Running> | undefined;
  var kitwrightFailures: Map<number, { readonly hash: string; readonly sentence: string }> | undefined;
}

const PLAN_SECONDS = 40;
const PLAN_NODES = 20_000;

/** Starts planning unless a current plan or a run of the same input is there already. */
export function startPlan(context: Context, enquiryId: number): Result<PlanState> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const prepared = prepareInput(context, enquiryId);
  if (!prepared.ok) return prepared;
  const { input, hash } = prepared.value;
  if (input.lines.length === 0) {
    return failed({ code: 'no-lines', sentence: 'The schedule is empty: take a list in or type a line first.' });
  }
  const state = planStateOf(context, { enquiryId, hash });
  if (state.kind === 'running' || (state.kind === 'ready' && state.current)) return ok(state);
  launch(context, { enquiryId, hash, input });
  return ok(planStateOf(context, { enquiryId, hash }));
}

export function planState(context: Context, enquiryId: number): Result<PlanState> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const prepared = prepareInput(context, enquiryId);
  if (!prepared.ok) return prepared;
  return ok(planStateOf(context, { enquiryId, hash: prepared.value.hash }));
}

export function haltPlan(context: Context, enquiryId: number): Result<true> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const running = runs().get(enquiryId);
  runs().delete(enquiryId);
  running?.run.halt();
  return ok(true);
}

/** The newest stored plan, whether or not the enquiry has changed since. */
export function readPlan(context: Context, enquiryId: number): WorkedOut | undefined {
  const row = latestPlan(context.database.db, { enquiryId, slot: 0 });
  return row ? (JSON.parse(row.result_json) as WorkedOut) : undefined;
}

/** Waits for the run that is under way; for tests, papers and the command line. */
export async function awaitPlan(context: Context, enquiryId: number): Promise<Result<PlanState>> {
  await runs()
    .get(enquiryId)
    ?.run.done.catch(() => undefined);
  return planState(context, enquiryId);
}

export function prepareInput(
  context: Context,
  enquiryId: number,
): Result<{ readonly enquiry: EnquiryRecord; readonly input: WorkOutInput; readonly hash: string }> {
  const enquiry = readEnquiry(context, enquiryId);
  if (!enquiry.ok) return enquiry;
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

function runs(): Map<number, Running> {
  globalThis.kitwrightRuns ??= new Map();
  return globalThis.kitwrightRuns;
}

function failures(): Map<number, { readonly hash: string; readonly sentence: string }> {
  globalThis.kitwrightFailures ??= new Map();
  return globalThis.kitwrightFailures;
}

export function planStateOf(context: Context, key: { readonly enquiryId: number; readonly hash: string }): PlanState {
  const running = runs().get(key.enquiryId);
  if (running && running.hash === key.hash) return { kind: 'running', note: running.note, since: running.since };
  const failure = failures().get(key.enquiryId);
  if (failure && failure.hash === key.hash) return { kind: 'failed', sentence: failure.sentence };
  const row = latestPlan(context.database.db, { enquiryId: key.enquiryId, slot: 0 });
  if (!row) return { kind: 'none' };
  return { kind: 'ready', current: row.input_hash === key.hash, planId: row.id, at: row.created_at };
}

function launch(
  context: Context,
  job: { readonly enquiryId: number; readonly hash: string; readonly input: WorkOutInput },
): void {
  runs().get(job.enquiryId)?.run.halt();
  failures().delete(job.enquiryId);
  const running: Running = {
    hash: job.hash,
    since: timestamp(context),
    note: 'Starting.',
    run: solveInWorker(job.input, (note) => {
      running.note = note;
    }),
  };
  runs().set(job.enquiryId, running);
  running.run.done.then(
    (result) => keep(context, { ...job, running, result }),
    (error: unknown) => {
      if (runs().get(job.enquiryId) !== running) return;
      runs().delete(job.enquiryId);
      failures().set(job.enquiryId, {
        hash: job.hash,
        sentence: `The plan could not be worked out: ${error instanceof Error ? error.message : String(error)}`,
      });
    },
  );
}

interface Keeping {
  readonly enquiryId: number;
  readonly hash: string;
  readonly running: Running;
  readonly result: WorkedOut;
}

function keep(context: Context, { enquiryId, hash, running, result }: Keeping): void {
  if (runs().get(enquiryId) !== running) return;
  runs().delete(enquiryId);
  const wrong = result.plans.flatMap((plan) => plan.discrepancies);
  if (wrong.length > 0) {
    failures().set(enquiryId, {
      hash,
      sentence: `The independent check did not agree with the plan, so it is not shown: ${wrong.slice(0, 3).join(' ')}`,
    });
    return;
  }
  insertPlan(context.database.db, {
    enquiry_id: enquiryId,
    option_slot: 0,
    input_hash: hash,
    state: 'ready',
    result_json: JSON.stringify(result),
    created_at: timestamp(context),
  });
}

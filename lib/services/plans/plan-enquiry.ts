/*
 * Plans an enquiry, or one option of its quote, in the background and keeps the newest answer: one run an option, a newer request replaces an older one.
 * Invariant: a stored plan names the hash of everything it was worked from; a stale plan is told apart from a current one.
 * Not here: the working itself (work-out.ts), which runs in a worker thread.
 * Read next: ../../workers/solve.ts, ../../planning/work-out.ts.
 */
import type { OptionKey } from '#db/queries/quote-options.ts';
import { insertPlan, latestPlan } from '#db/queries/quotes.ts';
import { rangeOfDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { uniqueTags } from '#lib/planning/unique-tags.ts';
import type { PlanProgress, WorkedOut, WorkOutInput } from '#lib/planning/worked-out.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { type EnquiryRecord, PREFERENCES, readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { freePieces, houseFacts, houseModels } from '#lib/services/house/house-facts.ts';
import { asOption, OWN_SLOT, readOption } from '#lib/services/quotes/option-record.ts';
import { reportIncident } from '#lib/services/report-incident.ts';
import { readSchedule } from '#lib/services/schedule/schedule-record.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { type SolveRun, solveInWorker } from '#lib/workers/solve.ts';

/** An enquiry by its id, or one option of its quote. */
export type Planned = number | OptionKey;

export type PlanState =
  | { readonly kind: 'none' }
  | {
      readonly kind: 'running';
      readonly note: string;
      readonly since: string;
      /** Best and bound as they came, the newest last. */
      readonly trail?: readonly PlanProgress[];
      /** Asked to stop; it ends with the best it has. */
      readonly halting?: true;
    }
  | { readonly kind: 'failed'; readonly sentence: string }
  | {
      readonly kind: 'ready';
      readonly current: boolean;
      readonly planId: number;
      readonly at: string;
      readonly halted?: true;
    };

interface Running {
  readonly hash: string;
  readonly since: string;
  readonly run: SolveRun<WorkedOut>;
  note: string;
  readonly trail: PlanProgress[];
  halting?: true;
}

declare global {
  var kitwrightRuns: Map<string, Running> | undefined;
  var kitwrightFailures: Map<string, { readonly hash: string; readonly sentence: string }> | undefined;
}

const HALTED = 'halted';
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
  if (state.kind === 'running' || (state.kind === 'ready' && state.current && !state.halted)) return ok(state);
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

/** The run ends with the best plan so far, which is kept and marked halted. */
export function haltPlan(context: Context, asked: Planned): Result<true> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const name = nameOf(keyOf(asked));
  const running = runs().get(name);
  if (running === undefined) return ok(true);
  if (running.halting) {
    // Asked twice: it is ended at once, and nothing is kept.
    runs().delete(name);
    running.run.drop();
    return ok(true);
  }
  running.halting = true;
  running.note = 'Halting: the best plan so far is being finished and checked.';
  running.run.halt();
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
  if (running && running.hash === key.hash) {
    const { note, since, trail, halting } = running;
    return { kind: 'running', note, since, trail: [...trail], ...(halting ? { halting } : {}) };
  }
  const failure = failures().get(nameOf(key));
  if (failure && failure.hash === key.hash) return { kind: 'failed', sentence: failure.sentence };
  const row = latestPlan(context.database.db, key);
  if (!row) return { kind: 'none' };
  return {
    kind: 'ready',
    current: row.input_hash === key.hash,
    planId: row.id,
    at: row.created_at,
    ...(row.state === HALTED ? { halted: true } : {}),
  };
}

function launch(context: Context, job: OptionKey & { readonly hash: string; readonly input: WorkOutInput }): void {
  const name = nameOf(job);
  runs().get(name)?.run.drop();
  failures().delete(name);
  const running: Running = {
    hash: job.hash,
    since: timestamp(context),
    note: 'Starting.',
    trail: [],
    run: solveInWorker(job.input, {
      onNote: (note) => {
        if (!running.halting) running.note = note;
      },
      onProgress: (progress) => addToTrail(running.trail, progress),
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

const TRAIL_KEPT = 120;

/** Only what is better than before is kept; of a long run the first and the newest. */
function addToTrail(trail: PlanProgress[], next: PlanProgress): void {
  const last = trail.at(-1);
  if (last?.preference === next.preference && last.best === next.best && last.bound === next.bound) return;
  if (trail.length >= TRAIL_KEPT) trail.splice(1, 1);
  trail.push(next);
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
    failures().set(name, { hash, sentence: reportIncident(context, { enquiryId, hash, wrong }) });
    return;
  }
  const isWhole = running.halting === undefined && result.plans.every(({ fleet }) => fleet.proof !== HALTED);
  insertPlan(context.database.db, {
    enquiry_id: enquiryId,
    option_slot: slot,
    input_hash: hash,
    state: isWhole ? 'ready' : HALTED,
    result_json: JSON.stringify(result),
    created_at: timestamp(context),
  });
}

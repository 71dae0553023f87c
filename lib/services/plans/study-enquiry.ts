/*
 * Plans an enquiry under other terms in the background: one run an enquiry and kind, its cases kept as they come, a halt keeps what is there.
 * Invariant: what is kept names the hash of everything it was worked from; a case that the independent check refuses is an incident and is left out.
 * Not here: which terms (study-cases.ts) and taking one over (adopt-case.ts).
 * Read next: study-cases.ts, ../../planning/try-cases.ts.
 */
import { findStudy, putStudy } from '#db/queries/studies.ts';
import type { Preference } from '#lib/equipment/choices.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { CaseFigures, PlanCase } from '#lib/planning/try-cases.ts';
import type { WorkOutInput } from '#lib/planning/worked-out.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { reportIncident } from '#lib/services/report-incident.ts';
import { sha256 } from '#lib/services/sha256.ts';
import { type SolveRun, tryInWorker } from '#lib/workers/solve.ts';
import { prepareInput, readPlan } from './plan-enquiry.ts';
import { frontierCases, frontierPoints, type Point, wayCases, withoutCases } from './study-cases.ts';

export const STUDY_KINDS = ['frontier', 'without', 'ways'] as const;
export type StudyKind = (typeof STUDY_KINDS)[number];

export interface StudyView {
  readonly state:
    | { readonly kind: 'none' }
    | {
        readonly kind: 'running';
        readonly since: string;
        readonly done: number;
        readonly of: number;
        readonly halting: boolean;
      }
    | { readonly kind: 'failed'; readonly sentence: string }
    | { readonly kind: 'ready'; readonly current: boolean; readonly whole: boolean; readonly at: string };
  readonly preference: Preference;
  readonly cases: readonly CaseFigures[];
}

interface Kept {
  readonly preference: Preference;
  readonly cases: readonly CaseFigures[];
  readonly points: readonly Point[];
}

interface Running {
  readonly hash: string;
  readonly since: string;
  readonly of: number;
  readonly cases: CaseFigures[];
  readonly run: SolveRun<readonly CaseFigures[]>;
  halting: boolean;
}

declare global {
  var kitwrightStudies: Map<string, Running> | undefined;
  var kitwrightStudyFailures: Map<string, string> | undefined;
}

interface StudyKey {
  readonly enquiryId: number;
  readonly kind: StudyKind;
}

interface Asked {
  readonly input: WorkOutInput;
  readonly preference: Preference;
  readonly cases: readonly PlanCase[];
  readonly points: readonly Point[];
  readonly hash: string;
}

const CASE_BUDGET = { seconds: 10, nodes: 4_000 };

export function startStudy(context: Context, key: StudyKey): Result<StudyView> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const asked = askedOf(context, { ...key, points: undefined });
  if (!asked.ok) return asked;
  if (asked.value.input.lines.length === 0)
    return failed({ code: 'no-lines', sentence: 'The schedule is empty: take a list in or type a line first.' });
  if (asked.value.cases.length <= 1)
    return failed({
      code: 'nothing-to-try',
      sentence: 'There is nothing to try yet: work out a plan of this enquiry first.',
    });
  if (runs().get(nameOf(key))?.hash !== asked.value.hash) launch(context, { key, asked: asked.value });
  return readStudy(context, key);
}

export function haltStudy(context: Context, key: StudyKey): Result<StudyView> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const running = runs().get(nameOf(key));
  if (running) {
    running.halting = true;
    running.run.halt();
  }
  return readStudy(context, key);
}

export function readStudy(context: Context, key: StudyKey): Result<StudyView> {
  const allowed = authorise(context, 'read enquiries');
  if (!allowed.ok) return allowed;
  const row = findStudy(context.database.db, key);
  const kept = row === undefined ? undefined : (JSON.parse(row.result_json) as Kept);
  const asked = askedOf(context, { ...key, points: kept?.points });
  if (!asked.ok) return asked;
  const { preference } = asked.value;
  const running = runs().get(nameOf(key));
  if (running) {
    const { since, of, cases, halting } = running;
    return ok({ state: { kind: 'running', since, of, done: cases.length, halting }, preference, cases: [...cases] });
  }
  const failure = failures().get(nameOf(key));
  if (failure !== undefined)
    return ok({ state: { kind: 'failed', sentence: failure }, preference, cases: kept?.cases ?? [] });
  if (row === undefined || kept === undefined) return ok({ state: { kind: 'none' }, preference, cases: [] });
  return ok({
    state: {
      kind: 'ready',
      current: row.input_hash === asked.value.hash,
      whole: row.state === 'whole',
      at: row.created_at,
    },
    preference: kept.preference,
    cases: kept.cases,
  });
}

/** Waits for the run that is under way; for tests. */
export async function awaitStudy(context: Context, key: StudyKey): Promise<Result<StudyView>> {
  await runs()
    .get(nameOf(key))
    ?.run.done.catch(() => undefined);
  return readStudy(context, key);
}

function askedOf(context: Context, at: StudyKey & { readonly points: readonly Point[] | undefined }): Result<Asked> {
  const { enquiryId, kind } = at;
  const prepared = prepareInput(context, enquiryId);
  if (!prepared.ok) return prepared;
  const { enquiry, hash } = prepared.value;
  const input = { ...prepared.value.input, budget: CASE_BUDGET };
  if (kind === 'frontier') {
    const points = at.points ?? frontierPoints(input);
    const cases = frontierCases(context, { enquiryId, input, points });
    // The days and crews asked are only where one stands on the frontier.
    const base = { ...input, free: {}, site: { ...input.site, days: 0, crews: 0 } };
    return ok({ input, preference: 'cost', cases, points, hash: sha256(JSON.stringify([base, cases])) });
  }
  const worked = readPlan(context, enquiryId);
  const { preference } = enquiry;
  const plan = worked?.plans.find((one) => one.preference === preference) ?? worked?.plans[0];
  const parts = [...new Set(plan?.kits.flatMap(({ items }) => items.map(({ item }) => item)))].sort();
  const chosen = new Set(plan?.fleet.kits.flatMap(({ items }) => items.map(({ item }) => item)));
  const cases =
    kind === 'without'
      ? withoutCases(context, {
          enquiryId,
          input,
          parts: parts.filter((part) => chosen.has(part)),
          kits: plan?.kits ?? [],
        })
      : wayCases(context, { enquiryId, input, shortage: worked?.shortage ?? null });
  const keys = cases.map(({ key }) => key);
  return ok({ input, preference, cases, points: [], hash: sha256(JSON.stringify([hash, kind, preference, keys])) });
}

function launch(context: Context, { key, asked }: { readonly key: StudyKey; readonly asked: Asked }): void {
  const name = nameOf(key);
  runs().get(name)?.run.drop();
  failures().delete(name);
  const { input, preference, cases, hash } = asked;
  const running: Running = {
    hash,
    since: timestamp(context),
    of: cases.length,
    cases: [],
    halting: false,
    run: tryInWorker({ base: input, preference, cases }, { onCase: (figures) => running.cases.push(figures) }),
  };
  runs().set(name, running);
  running.run.done.then(
    (done) => keep(context, { key, asked, running, done }),
    (error: unknown) => {
      if (runs().get(name) !== running) return;
      // A run that had to be ended still leaves the cases that it had told.
      keep(context, { key, asked, running, done: running.cases });
      if (running.cases.length > 0) return;
      const why = error instanceof Error ? error.message : String(error);
      failures().set(name, `This could not be worked out: ${why}`);
    },
  );
}

function keep(
  context: Context,
  at: {
    readonly key: StudyKey;
    readonly asked: Asked;
    readonly running: Running;
    readonly done: readonly CaseFigures[];
  },
): void {
  const { key, asked, running, done } = at;
  const name = nameOf(key);
  if (runs().get(name) !== running) return;
  runs().delete(name);
  const { enquiryId, kind } = key;
  const { hash, preference, points } = asked;
  const wrong = done.flatMap(({ discrepancies }) => discrepancies);
  if (wrong.length > 0) failures().set(name, reportIncident(context, { enquiryId, hash, wrong }));
  const sound = done.filter(({ discrepancies }) => discrepancies.length === 0);
  if (sound.length === 0) return;
  // What was free is known again from the window; it need not be kept with each case.
  const cases = sound.map(({ change: { free: _free, ...change }, ...figures }) => ({ ...figures, change }));
  putStudy(context.database.db, {
    enquiry_id: enquiryId,
    kind,
    input_hash: hash,
    state: done.length === asked.cases.length ? 'whole' : 'halted',
    result_json: JSON.stringify({ preference, points, cases } satisfies Kept),
    created_at: timestamp(context),
  });
}

function nameOf({ enquiryId, kind }: StudyKey): string {
  return `${enquiryId} ${kind}`;
}

function runs(): Map<string, Running> {
  globalThis.kitwrightStudies ??= new Map();
  return globalThis.kitwrightStudies;
}

function failures(): Map<string, string> {
  globalThis.kitwrightStudyFailures ??= new Map();
  return globalThis.kitwrightStudyFailures;
}

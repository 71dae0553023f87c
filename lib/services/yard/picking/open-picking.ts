/*
 * What a person sees who picks a booking: pieces in walking order, what was tried, and what still keeps it from being picked.
 * Invariant: reads only; the reasons are those that finishing would give.
 * Not here: scans (../take-scan.ts), finishing (finish-picking.ts).
 * Read next: pick-facts.ts, ../../../stock/pick-checks.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { checksOfBooking, type PickCheckRow } from '#db/queries/picking.ts';
import { ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import type { Context } from '#lib/services/context.ts';
import { lackingSentences } from '#lib/services/plans/crew-numbers.ts';
import { missingObligatory } from '#lib/stock/obligatory.ts';
import { chainsToTry, type LimiterFacts, torqueTests } from '#lib/stock/pick-checks.ts';
import { bookingNumbered } from '../booking-record.ts';
import { obligatoryNeeds, type PickFacts, pickedCounts, pickedUnits, pickFacts, plannedChains } from './pick-facts.ts';
import { type PickLine, pickLines } from './pick-lines.ts';

export interface DoneCheck {
  readonly who: string;
  readonly at: string;
  readonly passed: boolean;
}

export interface ChainView {
  readonly id: string;
  readonly serials: readonly string[];
  readonly done: DoneCheck | null;
}

export interface TestView {
  readonly serial: string;
  readonly name: string;
  readonly limiter: LimiterFacts | null;
  readonly done:
    | (DoneCheck & { readonly set_nm: number | null; readonly measured_nm: number; readonly instrument: string })
    | null;
}

export interface PickingView {
  readonly number: string;
  readonly state: string;
  readonly customer: string;
  readonly title: string;
  readonly startsOn: string;
  readonly endsBefore: string;
  readonly lines: readonly PickLine[];
  readonly chains: readonly ChainView[];
  readonly tests: readonly TestView[];
  /** Why it does not count as picked yet; empty where nothing keeps it. */
  readonly open: readonly string[];
  /** What the plan itself goes without. */
  readonly lacking: readonly string[];
}

export function openPicking(context: Context, number: string): Result<PickingView> {
  const allowed = authorise(context, 'read the yard');
  if (!allowed.ok) return allowed;
  const db = context.database.db;
  const found = bookingNumbered(db, number);
  if (!found.ok) return found;
  return ok(pickingView(db, pickFacts(db, { context, booking: found.value })));
}

export function pickingView(db: DbOrTx, facts: PickFacts): PickingView {
  const { booking, papers, window } = facts;
  const checks = checksOfBooking(db, booking.id);
  const picked = pickedUnits(facts);
  const chains = chainsToTry({ chains: plannedChains(facts), picked }).map(
    ({ id, serials }): ChainView => ({
      id,
      serials,
      done: doneOf(checks, { kind: 'chain tried', subject: id, serials }),
    }),
  );
  const names = new Map(picked.map(({ serial, model }) => [serial, model.name]));
  const tests = torqueTests(picked).map(({ serial, limiter }): TestView => {
    const done = checkOf(checks, { kind: 'function test', subject: serial, serials: [serial] });
    const { set_nm, measured_nm, instrument } = done ?? { set_nm: null, measured_nm: 0, instrument: '' };
    return {
      serial,
      limiter,
      name: names.get(serial) ?? '',
      done: done === null ? null : { ...told(done), set_nm, measured_nm: measured_nm ?? 0, instrument },
    };
  });
  const lines = pickLines(db, facts);
  return {
    number: booking.number,
    state: booking.state,
    customer: papers?.customer.name ?? '',
    title: papers?.title ?? booking.note,
    startsOn: window.starts_on,
    endsBefore: window.ends_before,
    lines,
    chains,
    tests,
    open: openReasons({ facts, lines, chains, tests }),
    lacking: papers === null ? [] : lackingSentences(papers),
  };
}

interface Asked {
  readonly kind: 'chain tried' | 'function test';
  readonly subject: string;
  readonly serials: readonly string[];
}

/** The newest check of the subject, if it was done with these very units. */
function checkOf(checks: readonly PickCheckRow[], { kind, subject, serials }: Asked): PickCheckRow | null {
  const last = checks.findLast((one) => one.kind === kind && one.subject === subject);
  return last !== undefined && last.serials_json === JSON.stringify(serials) ? last : null;
}

function doneOf(checks: readonly PickCheckRow[], asked: Asked): DoneCheck | null {
  const done = checkOf(checks, asked);
  return done === null ? null : told(done);
}

function told({ who, at, passed }: PickCheckRow): DoneCheck {
  return { who, at, passed };
}

interface Standing {
  readonly facts: PickFacts;
  readonly lines: readonly PickLine[];
  readonly chains: readonly ChainView[];
  readonly tests: readonly TestView[];
}

function openReasons({ facts, lines, chains, tests }: Standing): readonly string[] {
  const waiting = lines.filter(({ picked }) => !picked);
  const missing = missingObligatory({ needs: obligatoryNeeds(facts), picked: pickedCounts(facts) });
  const other = waiting.filter(({ why }) => why === null);
  const failedTests = tests.filter(({ done }) => done !== null && !done.passed);
  const untested = tests.filter(({ done }) => done === null);
  const untried = chains.filter(({ done }) => done === null);
  return [
    ...missing.map((sentence) => `Cannot be left behind: ${sentence}`),
    ...(other.length === 0
      ? []
      : [`Not picked yet: ${other.map(({ code, count }) => (count === 1 ? code : `${count} × ${code}`)).join(', ')}.`]),
    ...(untried.length === 0 ? [] : [`Not tried together yet: ${untried.map(({ id }) => id).join('; ')}.`]),
    ...(untested.length === 0
      ? []
      : [`No function test at torque yet: ${untested.map(({ serial }) => serial).join(', ')}.`]),
    ...failedTests.map(({ serial }) => `${serial} failed its function test: undo it and pick another.`),
  ];
}

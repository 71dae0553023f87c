/*
 * Writes down that a chain was put together and fits, or what a function test at torque read.
 * Invariant: a check names the units it was done with; a test outside the limiter's error is kept as failed, never as passed.
 * Not here: which checks there are (lib/stock/pick-checks.ts).
 * Read next: finish-picking.ts.
 */
import { insertCheck } from '#db/queries/picking.ts';
import type { TorqueTestRequest } from '#lib/contracts/yard-scan.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { actingPerson } from '#lib/services/access/acting-person.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { logChange } from '#lib/services/log-change.ts';
import { chainsToTry, judgeTest, type TestVerdict, torqueTests } from '#lib/stock/pick-checks.ts';
import { withBooking } from '../with-booking.ts';
import { pickedUnits, pickFacts, plannedChains } from './pick-facts.ts';
import { stillInTheYard } from './still-in-the-yard.ts';

export interface ChainTried {
  readonly number: string;
  readonly id: string;
}

export function recordChainTried(context: Context, { number, id }: ChainTried): Result<{ readonly id: string }> {
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const stays = stillInTheYard(booking);
      if (!stays.ok) return stays;
      const facts = pickFacts(tx, { context, booking });
      const picked = pickedUnits(facts);
      const chain = chainsToTry({ chains: plannedChains(facts), picked }).find((one) => one.id === id);
      if (chain === undefined) return failed({ code: 'no-such-chain', sentence: 'This job has no such chain.' });
      const lacks = chain.models.filter((model) => !picked.some(({ planned }) => planned === model));
      if (lacks.length > 0)
        return failed({ code: 'chain-incomplete', sentence: `Pick ${lacks.join(', ')} first, then try the chain.` });
      const person = actingPerson(context);
      insertCheck(tx, {
        booking_id: booking.id,
        kind: 'chain tried',
        subject: id,
        serials_json: JSON.stringify(chain.serials),
        passed: true,
        at: timestamp(context),
        who_id: person.id,
        who: person.name,
      });
      const detail = { chain: id, serials: chain.serials };
      logChange(tx, { context, deed: { action: 'chain tried together', subject: `booking ${number}`, detail } });
      return ok({ id });
    },
  });
}

export interface TorqueTested extends TorqueTestRequest {
  readonly number: string;
}

export function recordTorqueTest(context: Context, tested: TorqueTested): Result<TestVerdict> {
  const { number, serial, set_nm, measured_nm, instrument } = tested;
  return withBooking(context, {
    number,
    work: (tx, booking) => {
      const stays = stillInTheYard(booking);
      if (!stays.ok) return stays;
      const test = torqueTests(pickedUnits(pickFacts(tx, { context, booking }))).find((one) => one.serial === serial);
      if (test === undefined)
        return failed({
          code: 'no-such-test',
          sentence: `${serial} is no machine or limiter that was picked for this job.`,
        });
      const verdict = judgeTest({ test, reading: { set: set_nm, measured: measured_nm, instrument } });
      if (!verdict.ok) return verdict;
      const person = actingPerson(context);
      insertCheck(tx, {
        booking_id: booking.id,
        kind: 'function test',
        subject: serial,
        serials_json: JSON.stringify([serial]),
        passed: verdict.value.passed,
        set_nm: test.limiter === null ? null : set_nm,
        measured_nm,
        instrument: instrument.trim(),
        at: timestamp(context),
        who_id: person.id,
        who: person.name,
      });
      const detail = { serial, set_nm, measured_nm, instrument, passed: verdict.value.passed };
      logChange(tx, { context, deed: { action: 'function test at torque', subject: `booking ${number}`, detail } });
      return verdict;
    },
  });
}

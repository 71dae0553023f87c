/*
 * A storm of bookings: many clients in several processes want the same few units on overlapping days, some processes are killed midway and started again.
 * Afterwards the file is looked through: nothing overlaps, nothing is half there, and everything that was answered is there.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openDatabase } from '#db/client.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';
import { HOUSE_DAY } from '../houses/demo-house.ts';
import type { StormAnswer } from './storm-answer.ts';

const CLIENT = fileURLToPath(new URL('./booking-client.ts', import.meta.url));
/** Units of each of the two models that are left. */
const UNITS = 4;

export interface Storm {
  readonly processes: number;
  readonly clientsEach: number;
  readonly asksEach: number;
  /** Processes that are killed outright once this many answers were written down in all, and started again. */
  readonly killed: number;
  readonly killAfterAnswers: number;
}

export interface StormTold {
  readonly clients: number;
  readonly kills: number;
  readonly answers: number;
  readonly booked: number;
  readonly givenUp: number;
  readonly refused: number;
  readonly busy: number;
  /** In the file, whether or not the answer got out before the kill. */
  readonly bookings: number;
  readonly unanswered: number;
  readonly overlaps: number;
  readonly half: number;
  readonly lost: number;
}

export async function stormOfBookings(storm: Storm): Promise<StormTold> {
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-storm-'));
  try {
    const database = join(folder, 'house.sqlite');
    const answers = join(folder, 'answers.jsonl');
    const models = await fewUnits(database);
    const start = (index: number): ChildProcess =>
      fork(
        CLIENT,
        [database, answers, index * storm.clientsEach, storm.clientsEach, storm.asksEach, ...models].map(String),
        { execArgv: ['--import', 'tsx'], stdio: ['ignore', 'inherit', 'inherit', 'ipc'] },
      );
    const children = Array.from({ length: storm.processes }, (_, index) => start(index));
    await Promise.all(children.map((child) => new Promise((resolve) => child.once('message', resolve))));
    while (linesIn(answers).length < storm.killAfterAnswers && children.some(isRunning)) await pause();
    const again = children.slice(0, storm.killed).flatMap((child, index) => {
      if (!isRunning(child)) return [];
      child.kill('SIGKILL');
      return [index];
    });
    await Promise.all(again.map((index) => ended(children[index])));
    const restarted = again.map((index) => start(index));
    const failures = await Promise.all(
      [...children.filter((_, index) => !again.includes(index)), ...restarted].map(ended),
    );
    const wrong = failures.find((code) => code !== 0);
    if (wrong !== undefined) throw new Error(`A process of the storm ended with ${wrong}.`);
    return judge({ storm, database, answers: linesIn(answers), kills: again.length });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The demo house with two models of which few units are left; answers their numbers. */
async function fewUnits(database: string): Promise<readonly string[]> {
  await prepareHouse({ databasePath: database, now: new Date(`${HOUSE_DAY}T08:00:00Z`) });
  const { raw } = openDatabase(database);
  const models = raw
    .prepare(
      `SELECT model_number FROM unit WHERE state = 'ready' AND coalesce(inspection_due_on, '2030') > '2026-06-30'
        AND coalesce(calibration_due_on, '2030') > '2026-06-30' GROUP BY model_number HAVING count(*) >= ${UNITS} LIMIT 2`,
    )
    .pluck()
    .all()
    .map(String);
  const few = raw.prepare(
    `UPDATE unit SET state = 'retired' WHERE model_number = ? AND serial NOT IN
      (SELECT serial FROM unit WHERE model_number = ? AND state = 'ready' AND coalesce(inspection_due_on, '2030') > '2026-06-30'
        AND coalesce(calibration_due_on, '2030') > '2026-06-30' ORDER BY serial LIMIT ${UNITS})`,
  );
  for (const model of models) few.run(model, model);
  raw.close();
  return models;
}

function isRunning(child: ChildProcess): boolean {
  return child.exitCode === null && child.signalCode === null;
}

function ended(child: ChildProcess | undefined): Promise<number | string> {
  if (child === undefined) return Promise.resolve(0);
  const of = () => child.signalCode ?? child.exitCode ?? 0;
  return isRunning(child) ? new Promise((resolve) => child.once('exit', () => resolve(of()))) : Promise.resolve(of());
}

function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 20));
}

/** A line that a kill cut short was not answered to anybody. */
function linesIn(path: string): readonly StormAnswer[] {
  if (!existsSync(path)) return [];
  return readFileSync(path, 'utf8')
    .split('\n')
    .flatMap((line) => {
      try {
        return line === '' ? [] : [JSON.parse(line) as StormAnswer];
      } catch {
        return [];
      }
    });
}

interface Judged {
  readonly storm: Storm;
  readonly database: string;
  readonly answers: readonly StormAnswer[];
  readonly kills: number;
}

function judge({ storm, database, answers, kills }: Judged): StormTold {
  const { raw } = openDatabase(database);
  const number = (sql: string): number => Number(raw.prepare(sql).pluck().get());
  const booked = answers.filter((one) => one.code === '' && one.number !== undefined && !('gives' in one.asked));
  const givenUp = answers.filter((one) => one.code === '' && 'gives' in one.asked);
  const bookings = number("SELECT count(*) FROM booking WHERE note LIKE 'storm%' OR state = 'cancelled'");
  const told = {
    clients: storm.processes * storm.clientsEach,
    kills,
    answers: answers.length,
    booked: booked.length,
    givenUp: givenUp.length,
    refused: answers.filter(({ code }) => code !== '' && code !== 'busy').length,
    busy: answers.filter(({ code }) => code === 'busy').length,
    bookings,
    unanswered: bookings - booked.length,
    overlaps: number(OVERLAPS),
    half: number(HALF) + gaps(),
    lost: [...booked, ...givenUp].filter((one) => !isThere(one)).length,
  };
  raw.close();
  return told;

  /** A number that was taken without a booking, or a booking whose number is not the series' own. */
  function gaps(): number {
    const next = number("SELECT coalesce(max(next), 1) FROM number_series WHERE name = 'booking'");
    return Math.abs(next - 1 - number('SELECT count(*) FROM booking'));
  }

  function isThere(answer: StormAnswer): boolean {
    const { asked } = answer;
    if ('gives' in asked)
      return raw.prepare('SELECT state FROM booking WHERE number = ?').pluck().get(asked.gives) === 'cancelled';
    const rows = raw
      .prepare(
        `SELECT unit_serial, starts_on, ends_before FROM booking_unit JOIN booking ON booking.id = booking_id
         WHERE booking.number = ? ORDER BY unit_serial`,
      )
      .all(answer.number);
    const right = (answer.serials ?? [])
      .toSorted()
      .map((unit_serial) => ({ unit_serial, starts_on: asked.startsOn, ends_before: asked.endsBefore }));
    return right.length === asked.count && JSON.stringify(rows) === JSON.stringify(right);
  }
}

/** Days are compared here by themselves, not by the column that the triggers look at; two hires of a unit lie a turnaround apart. */
const OVERLAPS = `SELECT count(*) FROM booking_unit a JOIN booking_unit b ON a.unit_serial = b.unit_serial AND a.id < b.id
  WHERE a.state = 'held' AND b.state = 'held' AND a.starts_on < b.free_again_on AND b.starts_on < a.free_again_on`;

/** A booking without units, without its line of history or of the log, or one that was cancelled and still holds. */
const HALF = `SELECT count(*) FROM booking WHERE
  NOT EXISTS (SELECT 1 FROM booking_unit WHERE booking_id = booking.id)
  OR NOT EXISTS (SELECT 1 FROM booking_move WHERE booking_id = booking.id AND what = 'held')
  OR (SELECT count(*) FROM audit_entry WHERE subject = 'booking ' || booking.number AND action = 'equipment booked without a quote') <> 1
  OR (state = 'cancelled') <> NOT EXISTS (SELECT 1 FROM booking_unit WHERE booking_id = booking.id AND state = 'held')
  OR (state = 'cancelled') <> EXISTS (SELECT 1 FROM booking_move WHERE booking_id = booking.id AND to_state = 'cancelled')`;

export function tellStorm(told: StormTold): string {
  return Object.entries(told)
    .map(([name, count]) => `${name} ${count}`)
    .join(', ');
}

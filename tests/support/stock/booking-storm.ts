/*
 * A storm of bookings: many clients in several processes want the same few units on overlapping days, by quotes and without, some processes are killed
 * midway and started again. Afterwards the file is looked through.
 */
import { type ChildProcess, fork } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { openDatabase } from '#db/client.ts';
import type { StormAnswer } from './storm-answer.ts';
import { stormHouse } from './storm-house.ts';
import { judgeStorm, type StormFound } from './storm-judge.ts';

const CLIENT = fileURLToPath(new URL('./booking-client.ts', import.meta.url));

export interface Storm {
  readonly processes: number;
  readonly clientsEach: number;
  readonly asksEach: number;
  /** Issued quotes that all of them may accept. */
  readonly quotes: number;
  /** Processes that are killed outright once this many answers were written down in all, and started again. */
  readonly killed: number;
  readonly killAfterAnswers: number;
}

export interface StormTold extends StormFound {
  readonly clients: number;
  readonly kills: number;
  readonly answers: number;
}

export async function stormOfBookings(storm: Storm): Promise<StormTold> {
  const folder = mkdtempSync(join(tmpdir(), 'kitwright-storm-'));
  try {
    const database = join(folder, 'house.sqlite');
    const answers = join(folder, 'answers.jsonl');
    const house = JSON.stringify(await stormHouse(database, storm.quotes));
    const start = (index: number): ChildProcess =>
      fork(
        CLIENT,
        [database, answers, index * storm.clientsEach, storm.clientsEach, storm.asksEach, house].map(String),
        { execArgv: ['--import', 'tsx'], stdio: ['ignore', 'inherit', 'inherit', 'ipc'] },
      );
    const kills = await runAndKill({ storm, answers, start });
    const { raw } = openDatabase(database);
    const lines = linesIn(answers);
    const told = {
      clients: storm.processes * storm.clientsEach,
      kills,
      answers: lines.length,
      ...judgeStorm(raw, lines),
    };
    raw.close();
    return told;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

interface Running {
  readonly storm: Storm;
  readonly answers: string;
  readonly start: (index: number) => ChildProcess;
}

/** Answers how many were killed while they ran. */
async function runAndKill({ storm, answers, start }: Running): Promise<number> {
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
  const codes = await Promise.all([...children.filter((_, index) => !again.includes(index)), ...restarted].map(ended));
  const wrong = codes.find((code) => code !== 0);
  if (wrong !== undefined) throw new Error(`A process of the storm ended with ${wrong}.`);
  return again.length;
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

export function tellStorm({ done, ...told }: StormTold): string {
  return [...Object.entries(told), ...Object.entries(done)].map(([name, count]) => `${name} ${count}`).join(', ');
}

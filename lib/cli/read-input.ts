/*
 * Reads the list and the site that a command names, and the house's models and stock.
 * Invariant: what cannot be used is refused with a sentence; the database is prepared when it is not there yet.
 * Not here: working anything out.
 * Read next: plan-command.ts.
 */
import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { parseSite } from '#lib/contracts/site.ts';
import type { Site } from '#lib/duty/site.ts';
import { proposeMapping } from '#lib/intake/propose-mapping.ts';
import { readTables } from '#lib/intake/read-table.ts';
import { type Taken, takeRows } from '#lib/intake/take-rows.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { COMMAND_LINE, type Context, today } from '#lib/services/context.ts';
import { withHouseRules } from '#lib/services/enquiries/enquiry-record.ts';
import { databasePath, openHouse } from '#lib/services/house/open-house.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';
import type { Options } from './arguments.ts';

export interface CommandInput {
  readonly context: Context;
  readonly taken: Taken;
  readonly site: Site;
}

export async function openPreparedHouse(): Promise<Context> {
  await prepareHouse({ databasePath: databasePath() });
  return openHouse(COMMAND_LINE);
}

export async function readInput(options: Options): Promise<Result<CommandInput>> {
  const taken = await readSchedule(options.list);
  if (!taken.ok) return taken;
  const context = await openPreparedHouse();
  const site = await readSite(options, addDays(today(context), 7));
  if (!site.ok) return site;
  return ok({ context, taken: taken.value, site: withHouseRules(context, site.value) });
}

async function readSchedule(path: string): Promise<Result<Taken>> {
  const bytes = await readFile(path).catch(() => undefined);
  if (!bytes) return failed({ code: 'no-such-list', sentence: `The list ${path} cannot be opened; check the path.` });
  const tables = await readTables({ bytes, fileName: basename(path) });
  if (!tables.ok) return tables;
  const takens = tables.value.map((table) => takeRows({ table, mapping: proposeMapping(table) }));
  const [best] = [...takens].sort((a, b) => b.counts.lines - a.counts.lines);
  if (!best || best.counts.lines === 0) {
    return failed({
      code: 'no-lines',
      sentence: `No row of ${path} could be read as a valve; look at its headers or start from the template.`,
    });
  }
  return ok(best);
}

async function readSite(options: Options, startsOn: string): Promise<Result<Site>> {
  const json = options.site === undefined ? ok<unknown>({}) : await readJson(options.site);
  if (!json.ok) return json;
  if (json.value === null || typeof json.value !== 'object') {
    return failed({ code: 'site-unreadable', sentence: `The site ${options.site ?? ''} is not a JSON object.` });
  }
  return parseSite(
    {
      ...json.value,
      ...(options.from === undefined ? {} : { starts_on: options.from }),
      ...(options.days === undefined ? {} : { days: options.days }),
      ...(options.crews === undefined ? {} : { crews: options.crews }),
    },
    { startsOn },
  );
}

async function readJson(path: string): Promise<Result<unknown>> {
  try {
    return ok(JSON.parse(await readFile(path, 'utf8')));
  } catch (error) {
    return failed({
      code: 'site-unreadable',
      sentence: `The site ${path} cannot be read: ${error instanceof Error ? error.message : String(error)}.`,
    });
  }
}

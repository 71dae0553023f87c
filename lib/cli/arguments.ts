/*
 * Reads the words of a command line.
 * Invariant: an unknown word or a value that cannot be read is refused with a sentence, never ignored.
 * Not here: running commands (main.ts).
 * Read next: main.ts.
 */
import { parseArgs } from 'node:util';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import type { UnitSystem } from '#lib/units/format-quantity.ts';

export const USAGE = `kitwright plan  LIST [--site SITE.json] [--from YYYY-MM-DD] [--days N] [--crews N] [--prefer cost|pieces|time|surest] [--out DIR] [--units si|us] [--json]
kitwright duty  LIST [--site SITE.json] [--spread N] [--units si|us] [--json]    torque, turns, never-exceed, limiter window, basis; with N draws also percentiles
kitwright why   LIST TAG [PART] [--site SITE.json] [--units si|us] [--json]    why these parts, why not PART, or why nothing fits
kitwright why   LIST TAG PART --without [--from … --days … --crews … --prefer …]    and what the plan would lose without PART
kitwright rules [--json]    every rule with its source
kitwright password EMAIL    a new one-time password for a user of the house, for when the last administrator has lost theirs

--units us gives text and papers in US customary units; JSON is always in SI, with the unit in the key.

Exit status: 0 when every readable line is served, 3 when some are not, 2 for unusable input.`;

const COMMANDS = ['plan', 'duty', 'why', 'rules', 'password'] as const;
const NEED_LIST: ReadonlySet<string> = new Set(['plan', 'duty', 'why']);
const UNITS = ['si', 'us'] as const;
const PREFER = ['cost', 'pieces', 'time', 'surest'] as const;

export interface Options {
  readonly command: (typeof COMMANDS)[number];
  readonly list: string;
  readonly tag?: string;
  readonly part?: string;
  readonly site?: string;
  readonly from?: string;
  readonly days?: number;
  readonly crews?: number;
  readonly prefer: (typeof PREFER)[number];
  readonly out?: string;
  readonly json: boolean;
  /** How often what is not known is drawn for percentiles; absent: not at all. */
  readonly spread?: number;
  /** Units of text and papers. */
  readonly units: UnitSystem;
  /** Plan with and without the part, and tell the difference. */
  readonly without: boolean;
}

export function readArguments(words: readonly string[]): Result<Options> {
  const parsed = parse(words);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  const [name, list, tag, part] = positionals;
  const command = COMMANDS.find((known) => known === name);
  if (!command) return no(name === undefined ? 'Name a command.' : `There is no command “${name}”.`);
  if (NEED_LIST.has(command) && list === undefined) return no(`“${command}” needs a LIST: a CSV, TSV or XLSX file.`);
  if (command === 'password' && list === undefined) return no('“password” needs the EMAIL of a user.');
  if (command === 'why' && tag === undefined) return no('“why” needs the TAG of a line.');
  if (values.without === true && part === undefined) return no('“--without” needs the PART to leave out.');
  const prefer = PREFER.find((known) => known === (values.prefer ?? 'cost'));
  if (!prefer) return no(`--prefer takes ${PREFER.join(', ')}, not “${values.prefer}”.`);
  const units = UNITS.find((known) => known === (values.units ?? 'si'));
  if (!units) return no(`--units takes ${UNITS.join(', ')}, not “${values.units}”.`);
  if (values.from !== undefined && !isIsoDate(values.from))
    return no(`--from takes a date as YYYY-MM-DD, not “${values.from}”.`);
  const days = count('days', values.days);
  if (!days.ok) return days;
  const crews = count('crews', values.crews);
  if (!crews.ok) return crews;
  const spread = draws(values.spread);
  if (!spread.ok) return spread;
  return ok({
    command,
    list: list ?? '',
    prefer,
    units,
    json: values.json ?? false,
    without: values.without ?? false,
    ...(tag === undefined ? {} : { tag }),
    ...(part === undefined ? {} : { part }),
    ...(values.site === undefined ? {} : { site: values.site }),
    ...(values.from === undefined ? {} : { from: values.from }),
    ...(values.out === undefined ? {} : { out: values.out }),
    ...(days.value === undefined ? {} : { days: days.value }),
    ...(crews.value === undefined ? {} : { crews: crews.value }),
    ...(spread.value === undefined ? {} : { spread: spread.value }),
  });
}

function parse(words: readonly string[]) {
  try {
    const text = { type: 'string' } as const;
    return ok(
      parseArgs({
        args: [...words],
        allowPositionals: true,
        options: {
          site: text,
          from: text,
          days: text,
          crews: text,
          spread: text,
          prefer: text,
          out: text,
          units: text,
          json: { type: 'boolean' },
          without: { type: 'boolean' },
        },
      }),
    );
  } catch (error) {
    return no(error instanceof Error ? error.message : String(error));
  }
}

function count(name: string, text: string | undefined): Result<number | undefined> {
  if (text === undefined) return ok(undefined);
  if (!/^[1-9]\d{0,3}$/.test(text)) return no(`--${name} takes a whole number from 1, not “${text}”.`);
  return ok(Number(text));
}

function draws(text: string | undefined): Result<number | undefined> {
  if (text === undefined) return ok(undefined);
  const runs = /^\d{1,6}$/.test(text) ? Number(text) : 0;
  if (runs < 100 || runs > LIMITS.spread_runs)
    return no(`--spread takes a number of draws from 100 to ${LIMITS.spread_runs}, not “${text}”.`);
  return ok(runs);
}

function no(sentence: string) {
  return failed({ code: 'usage', sentence });
}

/*
 * The house that the storm of bookings is about: issued quotes whose days overlap, and two models of their kits of which few units are left.
 */
import { openDatabase } from '#db/client.ts';
import { addDays } from '#lib/kernel/date-range.ts';
import type { Context } from '#lib/services/context.ts';
import { prepareHouse } from '#lib/services/house/prepare-house.ts';
import { issueQuote } from '#lib/services/quotes/issue-quote.ts';
import type { PapersInput } from '#lib/services/quotes/papers-of.ts';
import { granted } from '../granted.ts';
import { HOUSE_DAY } from '../houses/demo-house.ts';
import { planOneValve } from '../houses/one-valve.ts';
import type { StormHouse, StormModel, StormQuote } from './storm-answer.ts';

/** Units of each of the two models that are left. */
const UNITS = 4;
/** A month after the last day that anybody asks for; what falls due before is left out. */
const SOUND_UNTIL = '2026-06-30';
const HIRE_DAYS = 3;
/** First days of the quotes lie this far apart, so that each overlaps with the next ones, turnaround included. */
const APART = 2;

export async function stormHouse(database: string, quotes: number): Promise<StormHouse> {
  const now = () => new Date(`${HOUSE_DAY}T08:00:00Z`);
  await prepareHouse({ databasePath: database, now: now() });
  const context: Context = {
    database: openDatabase(database),
    now,
    actor: { id: 'storm', name: 'Storm', role: 'desk' },
  };
  const issued: StormQuote[] = [];
  for (let index = 0; index < quotes; index += 1)
    issued.push(await quoteFrom(context, addDays(HOUSE_DAY, 2 + APART * (index % 20))));
  const kit = soundUnits(context, kitOf(context, issued[0]));
  const models = fewUnits(context, kit);
  context.database.raw.close();
  return { models, kit, quotes: issued };
}

async function quoteFrom(context: Context, startsOn: string): Promise<StormQuote> {
  const site = { sources_allowed: ['battery'], crews: 1, days: HIRE_DAYS, starts_on: startsOn };
  const enquiryId = await planOneValve(context, { title: `One valve from ${startsOn}`, site });
  const { id } = granted(await issueQuote(context, { enquiryId }));
  const quote = { id, enquiryId, startsOn, endsBefore: addDays(startsOn, HIRE_DAYS), units: 0 };
  return { ...quote, units: kitOf(context, quote).reduce((sum, { count }) => sum + count, 0) };
}

/** What has serial numbers in the kits of a quote. */
function kitOf(context: Context, quote: StormQuote | undefined) {
  const frozen = context.database.raw.prepare('SELECT frozen_json FROM quote WHERE id = ?').pluck().get(quote?.id);
  const { outcome, models } = JSON.parse(String(frozen)) as PapersInput;
  const serialised = new Set(models.filter((one) => !one.counted && !one.madeToOrder).map(({ number }) => number));
  return outcome.kits.flatMap(({ items }) => items).filter(({ item }) => serialised.has(item));
}

function soundUnits({ database: { raw } }: Context, kit: readonly { readonly item: string }[]): readonly StormModel[] {
  const sound = raw
    .prepare(
      `SELECT serial FROM unit WHERE model_number = ? AND state = 'ready' AND coalesce(inspection_due_on, '2030') > '${SOUND_UNTIL}'
        AND coalesce(calibration_due_on, '2030') > '${SOUND_UNTIL}' ORDER BY serial`,
    )
    .pluck();
  return kit.map(({ item }) => ({ number: item, serials: sound.all(item).map(String).slice(0, UNITS) }));
}

/** Writes off all but a few units of the first two models of the kit. */
function fewUnits({ database: { raw } }: Context, kit: readonly StormModel[]): readonly StormModel[] {
  const models = kit.filter(({ serials }) => serials.length === UNITS).slice(0, 2);
  const few = raw.prepare(`UPDATE unit SET state = 'retired'
    WHERE model_number = ? AND serial NOT IN (SELECT value FROM json_each(?))`);
  for (const { number, serials } of models) few.run(number, JSON.stringify(serials));
  return models;
}

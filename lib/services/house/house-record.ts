/*
 * What the house holds besides equipment, in its three parts: what stands, what is charged from a day on, and its own rules.
 * Invariant: each part passes its schema before it is written; a price list begins today or later, and one that has begun stays.
 * Not here: trying a rule before it is saved (try-change.ts).
 * Read next: ../../contracts/house.ts.
 */
import type { z } from 'zod';
import type { DbOrTx } from '#db/client.ts';
import { changeHouse, readHouse, readHouseVersion } from '#db/queries/house.ts';
import { listHousePrices, putHousePrices, removeHousePrices } from '#db/queries/rates.ts';
import {
  type HouseJson,
  type HousePricesJson,
  type HouseRuleJson,
  type HouseStandingJson,
  housePricesSchema,
  houseRulesSchema,
  houseStandingSchema,
} from '#lib/contracts/house.ts';
import { SELF_SERVICE_FACTS } from '#lib/contracts/self-service-facts.ts';
import { heldOn } from '#lib/equipment/rate-on.ts';
import type { IsoDate } from '#lib/kernel/date-range.ts';
import { type Failed, failed, ok, type Refused, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp, today } from '#lib/services/context.ts';
import { type ChangeView, readHistory } from '#lib/services/equipment/equipment-history.ts';
import { CHANGED_MEANWHILE } from '#lib/services/equipment/model-record.ts';
import { wrongDay } from '#lib/services/equipment/rate-cards.ts';
import { toldHouse } from '#lib/services/equipment/told-states.ts';
import { keepChange } from '#lib/services/keep-change.ts';

export interface HouseRecord {
  readonly version: number;
  readonly standing: HouseStandingJson;
  readonly rules: readonly HouseRuleJson[];
  /** What is charged, the opening list first; `starts_on` is null there. */
  readonly prices: readonly {
    readonly starts_on: IsoDate | null;
    readonly note: string;
    readonly held: HousePricesJson;
  }[];
  /** Which of them holds today. */
  readonly current: IsoDate | null;
  readonly today: IsoDate;
  readonly mayChange: boolean;
  readonly changes: readonly ChangeView[];
}

export interface RefusedHouse extends Refused {
  readonly problems: readonly { readonly path: string; readonly sentence: string }[];
}

const STANDING_KEYS = Object.keys(houseStandingSchema.shape);
const PRICE_KEYS = Object.keys(housePricesSchema.shape);

export function readHouseRecord(context: Context): Result<HouseRecord> {
  const allowed = authorise(context, 'read equipment');
  if (!allowed.ok) return allowed;
  const { db } = context.database;
  const json = storedHouse(db);
  const dated = listHousePrices(db);
  return ok({
    version: readHouseVersion(db),
    standing: pick<HouseStandingJson>(json, STANDING_KEYS),
    rules: json.house_rules,
    prices: [
      { starts_on: null, note: '', held: pick<HousePricesJson>(json, PRICE_KEYS) },
      ...dated.map(({ starts_on, note, prices_json }) => ({ starts_on, note, held: JSON.parse(prices_json) })),
    ],
    current: heldOn(dated, today(context))?.starts_on ?? null,
    today: today(context),
    mayChange: authorise(context, 'change the house').ok,
    changes: ['house facts', 'house prices', 'house rules']
      .flatMap((subject) => readHistory(context, { subject, tell: (state) => toldHouse(state, json.currency) }))
      .sort((a, b) => b.id - a.id),
  });
}

export function saveHouseStanding(
  context: Context,
  input: { readonly version: number; readonly standing: unknown },
): Result<{ readonly version: number }, RefusedHouse> {
  const allowed = authorise(context, 'change the house');
  if (!allowed.ok) return bare(allowed);
  const parsed = houseStandingSchema.safeParse(input.standing);
  if (!parsed.success) return invalid(parsed.error.issues);
  const before = storedHouse(context.database.db);
  if (parsed.data.currency !== before.currency)
    return invalid([{ path: ['currency'], message: 'stays as it is, because all rates are in it' }]);
  return write(context, {
    version: input.version,
    subject: 'house facts',
    before: pick(before, STANDING_KEYS),
    after: pick(Object(input.standing), STANDING_KEYS),
  });
}

export function saveHouseRules(
  context: Context,
  input: { readonly version: number; readonly rules: unknown },
): Result<{ readonly version: number }, RefusedHouse> {
  const allowed = authorise(context, 'change the house');
  if (!allowed.ok) return bare(allowed);
  const parsed = houseRulesSchema.safeParse(input.rules);
  if (!parsed.success) return invalid(parsed.error.issues);
  const before = storedHouse(context.database.db);
  return write(context, {
    version: input.version,
    subject: 'house rules',
    before: { house_rules: before.house_rules },
    after: { house_rules: parsed.data },
  });
}

export interface PricesInput {
  readonly starts_on: IsoDate;
  readonly note: string;
  readonly held: unknown;
}

export function saveHousePrices(context: Context, input: PricesInput): Result<{ readonly put: true }, RefusedHouse> {
  const allowed = authorise(context, 'change the house');
  if (!allowed.ok) return bare(allowed);
  const day = wrongDay(context, input.starts_on);
  if (day !== null) return failed({ ...day, problems: [{ path: 'starts_on', sentence: day.sentence }] });
  const parsed = housePricesSchema.safeParse(input.held);
  if (!parsed.success) return invalid(parsed.error.issues);
  changePrices(context, 'house prices put on', (tx) =>
    putHousePrices(tx, { starts_on: input.starts_on, note: input.note, prices_json: JSON.stringify(input.held) }),
  );
  return ok({ put: true });
}

export function takeOffHousePrices(context: Context, startsOn: IsoDate): Result<{ readonly taken: true }> {
  const allowed = authorise(context, 'change the house');
  if (!allowed.ok) return allowed;
  const isThere = listHousePrices(context.database.db).some(({ starts_on }) => starts_on === startsOn);
  if (!isThere)
    return failed({
      code: 'no-such-prices',
      sentence: `No prices begin on ${startsOn}; somebody may have taken them off.`,
    });
  if (startsOn <= today(context))
    return failed({
      code: 'prices-begun',
      sentence: 'These prices have begun and stay, because quotes were made with them. Put new ones on instead.',
    });
  changePrices(context, 'house prices taken off', (tx) => removeHousePrices(tx, startsOn));
  return ok({ taken: true });
}

function changePrices(context: Context, ...[action, make]: readonly [string, (tx: DbOrTx) => void]): void {
  const listed = (tx: DbOrTx) =>
    Object.fromEntries(listHousePrices(tx).map(({ starts_on, prices_json }) => [starts_on, JSON.parse(prices_json)]));
  context.database.db.transaction(
    (tx) => {
      const before = listed(tx);
      make(tx);
      const after = listed(tx);
      keepChange(tx, context, { subject: 'house prices', version: Object.keys(after).length, action, before, after });
    },
    { behavior: 'immediate' },
  );
}

interface HouseWrite {
  readonly version: number;
  readonly subject: 'house facts' | 'house rules';
  readonly before: object;
  readonly after: object;
}

function write(
  context: Context,
  { version, subject, before, after }: HouseWrite,
): Result<{ readonly version: number }, RefusedHouse> {
  return context.database.db.transaction(
    (tx): Result<{ readonly version: number }, RefusedHouse> => {
      const factsJson = JSON.stringify({ ...storedHouse(tx), ...after });
      if (!changeHouse(tx, { factsJson, at: timestamp(context), version }))
        return failed({ ...CHANGED_MEANWHILE, problems: [] });
      keepChange(tx, context, { subject, version: version + 1, action: `${subject} changed`, before, after });
      return ok({ version: version + 1 });
    },
    { behavior: 'immediate' },
  );
}

function storedHouse(db: DbOrTx): HouseJson {
  const stored: HouseJson = JSON.parse(readHouse(db) ?? '{}');
  return { ...stored, self_service: { ...SELF_SERVICE_FACTS, ...stored.self_service } };
}

function pick<Part extends object>(json: object, keys: readonly string[]): Part {
  return JSON.parse(JSON.stringify(Object.fromEntries(keys.map((key) => [key, Reflect.get(json, key)]))));
}

function invalid(issues: readonly Pick<z.core.$ZodIssue, 'path' | 'message'>[]): Failed<RefusedHouse> {
  const problems = issues.map(({ path, message }) => ({
    path: path.join('.'),
    sentence: `${path
      .filter((part) => typeof part === 'string')
      .join(', ')
      .replaceAll('_', ' ')} ${message}.`,
  }));
  const [first] = problems;
  const more = problems.length > 1 ? ` ${problems.length - 1} more to put right are marked.` : '';
  return failed({
    code: 'house-invalid',
    sentence: `${first?.sentence ?? 'The house cannot be read.'}${more}`,
    problems,
  });
}

function bare({ reason }: Failed<Refused>): Failed<RefusedHouse> {
  return failed({ ...reason, problems: [] });
}

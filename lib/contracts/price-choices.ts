/*
 * What the Desk chooses for the price of one option: its name, own lines, discounts, waiver, and for a further option how it is planned.
 * Invariant: amounts are whole minor units and never below nought (EN 16931, BR-27); a discount says why.
 * Not here: what it comes to (lib/pricing).
 * Read next: price-list.ts, ../pricing/manual-line.ts.
 */
import { z } from 'zod';
import { isIsoDate } from '#lib/kernel/date-range.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { toMinor } from '#lib/money/money.ts';
import { LINE_GROUPS } from '#lib/pricing/line-groups.ts';
import { MANUAL_KINDS } from '#lib/pricing/manual-line.ts';
import { MANUAL_UNITS } from '#lib/pricing/manual-units.ts';

const date = z.string().refine(isIsoDate, 'is not a date in the form YYYY-MM-DD');
const minor = z
  .int('is not an amount of money')
  .min(0, 'is below nought: give a discount instead')
  .max(LIMITS.line_minor, 'is more than one line may come to')
  .transform(toMinor);
const words = (most: number) => z.string().trim().min(1, 'is empty').max(most, `has more than ${most} characters`);
const percent = z
  .number('is not a number')
  .min(0, 'is below 0 %')
  .max(100, 'is above 100 %')
  .refine((value) => Math.abs(value * 100 - Math.round(value * 100)) < 1e-6, 'has more than two decimals');

const rehired = z
  .strictObject({ house: words(120), starts_on: date, ends_before: date, cost_minor: minor })
  .refine(({ starts_on, ends_before }) => starts_on < ends_before, 'ends before it begins');

const manualLine = z
  .strictObject({
    id: words(40),
    kind: z.enum(MANUAL_KINDS),
    text: words(200),
    quantity: z
      .number('is not a number')
      .positive('is not above nought')
      .max(LIMITS.line_quantity, 'is more than one line may hold')
      .refine((value) => Math.abs(value * 1000 - Math.round(value * 1000)) < 1e-6, 'has more than three decimals'),
    unit: z.enum(MANUAL_UNITS),
    unit_minor: minor,
    per: z.enum(['day', 'once']),
    tax: words(4),
    /** Id in the house's price list, where it was taken from there. */
    list_item: z.string().max(40).nullable().default(null),
    rehired: rehired.nullable().default(null),
  })
  .refine(({ kind, rehired: from }) => (kind === 're-hired') === (from !== null), {
    path: ['rehired'],
    message: 'says from which house, for which days and at what cost for a re-hired piece, and for no other',
  });

const discount = { percent, reason: words(300) };

const ownPlan = z.strictObject({
  crews: z.int().min(1).max(LIMITS.crews),
  days: z.int().min(1).max(LIMITS.hire_days),
  sources_allowed: z.array(z.enum(['battery', 'air', 'petrol'])).min(1),
  preference: z.enum(['cost', 'pieces', 'time', 'surest']),
  /** As constraints.ts reads it. */
  constraints: z.record(z.string(), z.unknown()).default({}),
});

export const priceChoicesSchema = z
  .strictObject({
    name: words(60).default('As asked'),
    lines: z.array(manualLine).max(LIMITS.manual_lines, 'holds more lines than a quote may have').default([]),
    discounts: z
      .strictObject({
        groups: z.array(z.strictObject({ group: z.enum(LINE_GROUPS), ...discount })).default([]),
        whole: z.strictObject(discount).nullable().default(null),
      })
      .default({ groups: [], whole: null }),
    /** In which its amounts are; null is the house's own. The service writes it, whoever sends the choices. */
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/, 'is not a code of ISO 4217')
      .nullable()
      .default(null),
    waiver: z.enum(['taken', 'declined']).default('taken'),
    /** Whether the quote says after how many days buying would have been cheaper. */
    purchase: z.enum(['shown', 'left out']).default('left out'),
    /** Null for the enquiry itself, which has crews, days and constraints of its own. */
    plan: ownPlan.nullable().default(null),
  })
  .superRefine(({ lines, discounts }, context) => {
    const ids = lines.map(({ id }) => id);
    if (new Set(ids).size !== ids.length)
      context.addIssue({ code: 'custom', path: ['lines'], message: 'names a line twice' });
    const groups = discounts.groups.map(({ group }) => group);
    if (new Set(groups).size !== groups.length)
      context.addIssue({ code: 'custom', path: ['discounts'], message: 'gives two discounts on one group' });
  })
  .meta({ id: 'PriceChoices', description: 'Lines added by hand, discounts and terms of one option of a quote.' });

export type PriceChoices = z.output<typeof priceChoicesSchema>;

export const NO_CHOICES: PriceChoices = priceChoicesSchema.parse({});

export function parsePriceChoices(json: unknown): Result<PriceChoices> {
  const parsed = priceChoicesSchema.safeParse(json);
  if (parsed.success) return ok(parsed.data);
  const [issue] = parsed.error.issues;
  return failed({
    code: 'price-choices-unreadable',
    sentence: `${tellPlace(issue?.path ?? [])} ${issue?.message ?? 'cannot be read'}.`,
  });
}

/** `Line 2, quantity` rather than a path. */
function tellPlace(path: readonly PropertyKey[]): string {
  const [part, index, field] = path.map(String);
  if (part === 'lines' && index !== undefined)
    return `Line ${Number(index) + 1}${field === undefined ? '' : `, ${FIELD_WORDS[field] ?? field},`}`;
  return path.length === 0 ? 'What was sent' : path.map(String).join(', ');
}

const FIELD_WORDS: Readonly<Record<string, string>> = { unit_minor: 'price', rehired: 're-hire' };

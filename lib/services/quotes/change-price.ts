/*
 * Changes what is chosen for the price of an option: its lines, discounts, waiver, name and plan; adds options and takes them out.
 * Invariant: a change made on an older version is a clear conflict; an option that was taken out can be put back as it was.
 * Not here: what it comes to (option-price.ts).
 * Read next: ../../contracts/price-choices.ts.
 */
import type { DbOrTx } from '#db/client.ts';
import { addAuditEntry } from '#db/queries/audit.ts';
import { findOption, listOptions, nextSlot, type OptionKey, writeOption } from '#db/queries/quote-options.ts';
import { type PriceChoices, parsePriceChoices } from '#lib/contracts/price-choices.ts';
import { LIMITS } from '#lib/kernel/limits.ts';
import { failed, ok, type Result } from '#lib/kernel/result.ts';
import { authorise } from '#lib/services/authorise.ts';
import { type Context, timestamp } from '#lib/services/context.ts';
import { readEnquiry } from '#lib/services/enquiries/enquiry-record.ts';
import { houseFacts } from '#lib/services/house/house-facts.ts';
import { OWN_SLOT } from './option-record.ts';
import { quotedExchange } from './quote-currency.ts';

export interface PriceChange extends OptionKey {
  /** Version that was changed; 0 where nothing was chosen yet. */
  readonly version: number;
  readonly choices: unknown;
}

export interface ChangedOption {
  readonly slot: number;
  readonly version: number;
}

export function changePrice(context: Context, change: PriceChange): Result<ChangedOption> {
  const checked = check(context, { enquiryId: change.enquiryId, choices: change.choices });
  if (!checked.ok) return checked;
  const choices = checked.value;
  if ((change.slot === OWN_SLOT) !== (choices.plan === null)) return PLAN_MISPLACED;
  return context.database.db.transaction(
    (tx): Result<ChangedOption> => {
      if (change.slot !== OWN_SLOT && findOption(tx, change) === undefined) return NO_SUCH_OPTION;
      return save(tx, {
        context,
        key: change,
        version: change.version,
        choices,
        action: 'price changed',
        removed: false,
      });
    },
    { behavior: 'immediate' },
  );
}

export function addOption(
  context: Context,
  input: { readonly enquiryId: number; readonly choices: unknown },
): Result<ChangedOption> {
  const checked = check(context, input);
  if (!checked.ok) return checked;
  if (checked.value.plan === null) return PLAN_MISPLACED;
  return context.database.db.transaction(
    (tx): Result<ChangedOption> => {
      const others = listOptions(tx, input.enquiryId).filter(({ slot }) => slot !== OWN_SLOT).length;
      if (others + 1 >= LIMITS.quote_options) {
        return failed({
          code: 'too-many-options',
          sentence: `A quote offers at most ${LIMITS.quote_options} options: take one out first.`,
        });
      }
      const key = { enquiryId: input.enquiryId, slot: nextSlot(tx, input.enquiryId) };
      return save(tx, { context, key, version: 0, choices: checked.value, action: 'option added', removed: false });
    },
    { behavior: 'immediate' },
  );
}

/** Takes an option out, or puts it back. */
export function keepOption(
  context: Context,
  input: OptionKey & { readonly keep: 'out' | 'back' },
): Result<ChangedOption> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  return context.database.db.transaction(
    (tx): Result<ChangedOption> => {
      const row = findOption(tx, input);
      if (row === undefined || input.slot === OWN_SLOT) return NO_SUCH_OPTION;
      const choices = parsePriceChoices(JSON.parse(row.choices_json));
      if (!choices.ok) return choices;
      const removed = input.keep === 'out';
      const action = removed ? 'option taken out' : 'option put back';
      return save(tx, { context, key: input, version: row.version, choices: choices.value, action, removed });
    },
    { behavior: 'immediate' },
  );
}

function check(
  context: Context,
  { enquiryId, choices }: { readonly enquiryId: number; readonly choices: unknown },
): Result<PriceChoices> {
  const allowed = authorise(context, 'change enquiries');
  if (!allowed.ok) return allowed;
  const enquiry = readEnquiry(context, enquiryId);
  if (!enquiry.ok) return enquiry;
  const read = parsePriceChoices(choices);
  if (!read.ok) return read;
  const house = houseFacts(context, enquiry.value.site.startsOn);
  const codes = house.pricing.taxCategories.map(({ code }) => code);
  const strange = read.value.lines.find(({ tax }) => !codes.includes(tax));
  // Whoever sends them saw them in the currency that is quoted now.
  const quoted = quotedExchange(house, enquiry.value.customer.currency)?.to ?? null;
  if (strange === undefined) return ok({ ...read.value, currency: quoted });
  return failed({
    code: 'tax-unknown',
    sentence: `“${strange.text}” has the tax category ${strange.tax}; the house has ${codes.join(', ')}.`,
  });
}

interface Saving {
  readonly context: Context;
  readonly key: OptionKey;
  readonly version: number;
  readonly choices: PriceChoices;
  readonly action: string;
  readonly removed: boolean;
}

function save(tx: DbOrTx, { context, key, version, choices, action, removed }: Saving): Result<ChangedOption> {
  const at = timestamp(context);
  const written = writeOption(tx, {
    enquiryId: key.enquiryId,
    slot: key.slot,
    version,
    choicesJson: JSON.stringify(choices),
    removedAt: removed ? at : null,
    at,
  });
  if (!written) {
    return failed({
      code: 'changed-meanwhile',
      sentence: 'Somebody else changed this price while you were working: load the page again, then make your change.',
    });
  }
  addAuditEntry(tx, {
    at,
    who: context.actor,
    action,
    subject: `enquiry ${key.enquiryId}`,
    detail_json: JSON.stringify({ option: key.slot, ...choices }),
  });
  return ok({ slot: key.slot, version: version + 1 });
}

const NO_SUCH_OPTION = failed({ code: 'no-such-option', sentence: 'That option is not there; load the page again.' });
const PLAN_MISPLACED = failed({
  code: 'option-plan-misplaced',
  sentence: 'Crews and days of the first option are those of the enquiry; every further option says its own.',
});

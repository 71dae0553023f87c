/*
 * The options of an enquiry's quote as they stand: the enquiry itself first, then those that were added.
 * Invariant: the first option is always there and takes crews, days, preference and constraints from the enquiry.
 * Not here: changing them (change-price.ts) and what they come to (option-price.ts).
 * Read next: option-price.ts.
 */
import { findOption, listOptions, type OptionKey, type OptionRow } from '#db/queries/quote-options.ts';
import { parseConstraints } from '#lib/contracts/constraints.ts';
import { NO_CHOICES, type PriceChoices, parsePriceChoices } from '#lib/contracts/price-choices.ts';
import { invariant } from '#lib/kernel/invariant.ts';
import type { Context } from '#lib/services/context.ts';
import type { EnquiryRecord } from '#lib/services/enquiries/enquiry-record.ts';

/** The option that is the enquiry itself. */
export const OWN_SLOT = 0;

export interface OptionRecord {
  readonly slot: number;
  /** 0 until something was chosen. */
  readonly version: number;
  readonly choices: PriceChoices;
}

export function readOptions(context: Context, enquiryId: number): readonly OptionRecord[] {
  const options = listOptions(context.database.db, enquiryId).map(recordOf);
  const own = options.find(({ slot }) => slot === OWN_SLOT) ?? UNTOUCHED;
  return [own, ...options.filter(({ slot }) => slot !== OWN_SLOT)];
}

/** Also one that was taken out; undefined where there never was one. */
export function readOption(context: Context, key: OptionKey): OptionRecord | undefined {
  const row = findOption(context.database.db, key);
  if (row === undefined) return key.slot === OWN_SLOT ? UNTOUCHED : undefined;
  return recordOf(row);
}

/** The enquiry as this option asks it: its own crews, days, sources, preference and constraints. */
export function asOption(enquiry: EnquiryRecord, { choices }: OptionRecord): EnquiryRecord {
  const { plan } = choices;
  if (plan === null) return enquiry;
  const { site } = enquiry;
  const sources = site.sourcesAllowed.filter((source) => plan.sources_allowed.includes(source));
  return {
    ...enquiry,
    site: { ...site, crews: plan.crews, days: plan.days, sourcesAllowed: sources },
    preference: plan.preference,
    constraints: parseConstraints(plan.constraints),
  };
}

const UNTOUCHED: OptionRecord = { slot: OWN_SLOT, version: 0, choices: NO_CHOICES };

function recordOf(row: OptionRow): OptionRecord {
  const choices = parsePriceChoices(JSON.parse(row.choices_json));
  invariant(choices.ok, `The stored choices of option ${row.slot} cannot be read.`);
  return { slot: row.slot, version: row.version, choices: choices.value };
}

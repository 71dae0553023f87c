/*
 * What stands in the papers of an enquiry as somebody wrote it: tags, places, numbers of equipment, people, addresses.
 * Invariant: none of it is ever rewritten with dates and figures in the customer's form.
 * Not here: how words are rewritten (../../documents/words/written-forms.ts).
 * Read next: papers-of.ts.
 */
import type { HouseFacts } from '#lib/contracts/house.ts';
import type { PriceChoices } from '#lib/contracts/price-choices.ts';
import type { CustomerInput } from '#lib/documents/papers/paper-inputs.ts';
import { type WrittenForms, writer } from '#lib/documents/words/written-forms.ts';
import type { ScheduleLine } from '#lib/duty/schedule-line.ts';
import type { Site } from '#lib/duty/site.ts';
import type { Model } from '#lib/equipment/model.ts';
import type { Language } from '#lib/wording/language.ts';
import { type Teller, tellerFor } from '#lib/wording/told-in.ts';

interface OfOption {
  readonly site: Pick<Site, 'name'>;
  readonly option?: { readonly name: string };
  readonly choices?: PriceChoices;
}

/** What papers-of.ts is given, as far as names stand in it. */
interface NamesOnPapers extends OfOption {
  readonly number: string;
  readonly forms?: WrittenForms;
  readonly language?: Language;
  readonly house: HouseFacts;
  readonly customer: CustomerInput;
  readonly title: string;
  readonly models: readonly Model[];
  readonly lines: readonly ScheduleLine[];
  readonly serials: Readonly<Record<string, readonly string[]>>;
  readonly bookingNumber?: string;
  readonly others?: readonly OfOption[];
}

/** Words in the customer's form of dates and figures; as they are where none is agreed. */
export function writerFor(input: NamesOnPapers): (words: string) => string {
  const { forms } = input;
  return forms === undefined ? (words) => words : writer({ forms, names: paperNames(input) });
}

/** Texts in the language of the papers, with the names of equipment and the house's own words in it. */
export function tellerOf(input: NamesOnPapers): Teller {
  const { language = 'en' } = input;
  return tellerFor({ language, names: paperNames(input), own: ownWords(input) });
}

/** What an enquiry is called where nobody gave it a name. */
const UNNAMED = [['Self-service', 'Anfrage über den Link']] as const;

/** What the house has a German name for. */
export function ownWords({
  models,
  house,
}: {
  readonly models: readonly Model[];
  readonly house: Pick<HouseFacts, 'germanWords'>;
}): ReadonlyMap<string, string> {
  return new Map([
    ...UNNAMED,
    ...models.flatMap(({ name, germanName }): readonly (readonly [string, string])[] =>
      germanName === undefined ? [] : [[name, germanName]],
    ),
    ...(house.germanWords ?? []).map(({ english, german }) => [english, german] as const),
  ]);
}

export function paperNames(input: NamesOnPapers): readonly string[] {
  const { house, customer, models, lines, serials, others = [] } = input;
  return [
    input.number,
    input.title,
    input.bookingNumber ?? '',
    ...[house.name, house.telephone, house.email, house.registration, ...house.address],
    ...house.depots.flatMap(({ name, address }) => [name, ...address]),
    ...[customer.name, customer.contact ?? '', customer.reference ?? '', ...customer.address],
    ...[input, ...others].flatMap(({ site, option, choices }) => [
      site.name ?? '',
      option?.name ?? '',
      ...(choices?.lines ?? []).map(({ text }) => text),
    ]),
    ...models.flatMap(({ number, name, germanName, marking }) => [number, name, germanName ?? '', marking ?? '']),
    ...lines.flatMap(({ tag, place }) => [tag, place.location ?? '']),
    ...Object.values(serials).flat(),
  ].filter((name) => name !== '');
}
